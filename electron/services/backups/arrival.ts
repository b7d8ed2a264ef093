/** Records that were brought to this PC, or copied, are made safe when they are first opened. */
import { z } from 'zod'
import type { Store } from '../../store/store.ts'
import { loadMemory } from '../records/load.ts'
import type { Memory } from '../records/memory.ts'
import { destroyedIds, idsInBackups } from './destroyed.ts'
import { makeSafe } from './guarded.ts'
import { destroyedLines } from './retention.ts'

const arrivedSchema = z.object({
	how: z.enum(['move', 'copy']),
	/** the backup, or the folder that was copied */
	of: z.string(),
	/** the last record in it, ISO 8601; empty where it held none */
	lastAt: z.string(),
})
interface Here {
	store: Store
	now: () => Date
}
/** Forgets everything and reads the store anew, made safe first where it has just arrived. */
export function loadSafely(memory: Memory, deps: Here): void {
	let isSafe = true
	try {
		settle(deps)
	} catch {
		// a full disk keeps nobody from reading, but nothing may leave
		isSafe = false
	}
	loadMemory(memory, deps)
	memory.restored.unsafe = !isSafe
}
function settle({ store, now }: Here): void {
	// a crash may have come between a destruction and the head that tells of it
	store.noteDestroyed(destroyedLines(store).flatMap((line) => line.recordIds))
	const arrived = store.arrived()
	if (arrived === undefined) return
	const { how, of, lastAt } = arrivedSchema.parse(arrived)
	makeSafe(store, {
		arrival: { at: now().toISOString(), how, backup: of, backupAt: lastAt },
		playerOf: (record) => record.about,
		destroyed: new Set([...destroyedIds(store), ...idsInBackups(store, [])]),
		done: () => store.settled(),
	})
}
