/**
 * Looked at after each unlock: a backup that is late and a disk that is nearly full are rows of the
 * trail, by which the owner hears of them; once for each time that it came to it.
 */
import { backupAgeDays } from '../../../shared/desk/records/keep.ts'
import { noticedAs } from '../people/notices.ts'
import { toldOfRoom } from '../people/sealed-notes.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'

/** Choices of this program: so much room, or so many times the records, must be left. */
const leastFreeBytes = 2 ** 30
const timesTheRecords = 5

/** @internal */
export const isNearlyFull = ({ free, records }: { free: number; records: number }): boolean =>
	free < Math.max(leastFreeBytes, records * timesTheRecords)

/** The newest backup of this PC that is late; '' where there is none at all, undefined where none is. */
function lateBackup({ clinic }: Pick<Memory, 'clinic'>, { store, now }: Deps): string | undefined {
	const at = now().toISOString()
	const newest = store.backups().find((made) => made.madeBy !== 'other' && made.at <= at)?.at
	const ageDays = backupAgeDays(newest, at)
	const isLate = ageDays === undefined || ageDays >= clinic.settings.backupWarnDays
	return isLate ? (newest ?? '') : undefined
}
/** Writes what is new. Where the disk takes nothing the row waits, and is said again the next time. */
export function watchRoom(memory: Pick<Memory, 'clinic'>, deps: Deps): void {
	const { store } = deps
	if (!store.isOpen) return
	const read = toldOfRoom.read(store)
	const before = read.state === 'read' ? read.value : { late: null, isFull: false }
	const late = lateBackup(memory, deps) ?? null
	const room = deps.room()
	const isFull = room ? isNearlyFull(room) : before.isFull
	const tell = (purpose: string) =>
		store.audit({ function: 'backup', outcome: 'failed', purpose, personId: null, role: 'program' })
	store.together(() => {
		if (late !== null && late !== before.late) tell(noticedAs['backup-late'])
		if (isFull && !before.isFull) tell(noticedAs['disk-nearly-full'])
		if (late !== before.late || isFull !== before.isFull) toldOfRoom.write(store, { late, isFull })
	})
}
