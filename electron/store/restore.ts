/**
 * A backup in the place of the records. It is made ready in a copy beside them: the present keys and
 * slots are put in, it gets a name of its own, and what protects people is taken over, before it
 * stands in place at once.
 */
import { existsSync, renameSync, rmSync } from 'node:fs'
import { basename } from 'node:path'
import { damagedBackupWords, damagedThere } from '../../shared/desk/backups/words.ts'
import { dayOfMoment } from '../../shared/desk/workplace/local-day.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { BackupRefused, openChecked, SourceRuined } from './backup-file.ts'
import type { MadeBackup } from './backups.ts'
import {
	closeBeside,
	copyBeside,
	copyOfKeys,
	openBeside,
	placeBeside,
	removeFile,
} from './beside.ts'
import { BroughtFile } from './brought.ts'
import type { DataKeys, OlderKeyRow } from './data-keys.ts'
import { emptyLog } from './destruction.ts'
import { putInPlace } from './files.ts'
import { lockUp } from './forgetting.ts'
import type { Slot } from './key-slots.ts'
import { type Opening, openFile } from './opening.ts'
import type { Parts } from './parts.ts'
import { becomeRestored, type KnownNames, markBrought } from './restored-mark.ts'

/** What is known of a restore when the brought records are made safe. */
interface RestoreFacts {
	/** file name of the backup */
	backup: string
	/** time of its last record, ISO 8601 */
	lastAt?: string
	/** file name of what stood before */
	before?: string
	/** key slots that another secret opens than in the backup */
	changedSlots: string[]
}
export interface RestoreNeeds<Known> {
	/** whether what is damaged in the backup was read, and it is wanted all the same */
	damageRead: boolean
	/**
	 * reads what must not be lost, while nothing can be written any more
	 * @param lastAt time of the last record of the backup, ISO 8601; empty where it holds none
	 */
	gather: (lastAt: string) => Known
	/** makes the records of the backup safe before they stand in place */
	fill: (brought: BroughtFile, known: Known, facts: RestoreFacts) => void
}
/** A file that takes the place of the records, and what is done around that. */
interface Restoring extends Opening {
	beside: (file: string) => Parts
	/** backs up what stands now, so that it is never lost */
	backUp: () => Promise<MadeBackup>
}
/** What whoever would write meanwhile is told. */
export const heldWords =
	'A backup is being restored: nothing can be written until it stands. Wait a moment; what you ' +
	'typed is still on this screen.'
const otherRecords =
	'This backup belongs to other records: the key of this clinic does not open it. Choose one of ' +
	'this clinic.'
const lockedWords = 'Unlock the records first: a backup is restored with their key open.'

/**
 * Puts a backup in the place of records that stand here, with their key open. From before the copy
 * of what stands is begun until the backup stands in place nothing is written.
 * @returns the file name of what stood before
 * @throws BackupRefused in words; the records are as they were then
 */
export async function restoreFrom<Known>(
	restoring: Restoring,
	file: string,
	needs: RestoreNeeds<Known>,
): Promise<{ before: string }> {
	const { parts, files } = restoring
	const { keyring, database, trail } = parts
	const lastAt = mustBeSetUp(file)
	if (!keyring.keys) throw new BackupRefused(lockedWords, 'people.locked')
	const keys = copyOfKeys(keyring.keys)
	const place = placeBeside(files.records, 'restoring')
	try {
		copyBeside(file, place)
		await mustBeUsable(parts, place, keys, needs.damageRead)
		trail.settleSearch()
		database.hold(heldWords)
		const known = needs.gather(lastAt ?? '')
		const now = presentKeys(parts)
		const kept = await keptBefore(restoring)
		if (!database.isOpen) throw new BackupRefused('Lastwright was closed. Nothing was changed.')
		const brought = restoring.beside(place)
		openBeside(brought, place, keys)
		try {
			const changedSlots = putPresentKeys(brought, now)
			becomeRestored(brought, restoring.now(), `backup of ${lastAt ?? 'unknown time'}`, now)
			const backup = basename(file)
			needs.fill(new BroughtFile(brought), known, {
				...{ backup, changedSlots, before: kept.name },
				...present({ lastAt }),
			})
		} finally {
			closeBeside(brought, place)
		}
		openChecked(place).db.close()
		putThere(restoring, place, kept.setAside)
		return { before: kept.name }
	} finally {
		database.release()
		keys.forget()
		removeFile(place)
	}
}
/** On a PC without records: a backup becomes the records, as it is; the next unlock makes it safe. */
export function bringIn(restoring: Opening, file: string): void {
	const { files } = restoring
	const lastAt = mustBeSetUp(file)
	const place = placeBeside(files.records, 'restoring')
	try {
		copyBeside(file, place)
		markBrought(place, { of: basename(file), lastAt: lastAt ?? '' })
		openChecked(place).db.close()
		putThere(restoring, place, undefined)
	} finally {
		removeFile(place)
	}
}
/** @throws BackupRefused where it is another clinic's, or damaged and that was not read */
async function mustBeUsable(
	{ backups }: Parts,
	place: string,
	keys: DataKeys,
	damageRead: boolean,
): Promise<void> {
	const { sameClinic, damage = [] } = await backups.lookAt(place, keys)
	if (sameClinic === false) throw new BackupRefused(otherRecords, 'backups.other-records')
	if (damage.length > 0 && !damageRead)
		throw new BackupRefused(
			damagedBackupWords(damage.map((one) => damagedThere(one, dayOfMoment(one.at)))),
			'backups.damage-not-read',
		)
}
interface Kept {
	/** the file name of what stood before */
	name: string
	/** where the records file itself goes, as it cannot be copied */
	setAside?: string
}
/** What stands now, backed up; a file too damaged for that is itself kept. */
async function keptBefore({ backUp, files, now }: Restoring): Promise<Kept> {
	try {
		return { name: (await backUp()).file }
	} catch (error) {
		if (!(error instanceof SourceRuined)) throw error
		const setAside = `${files.records}.damaged-${now().replace(/[:.]/g, '-')}`
		return { name: basename(setAside), setAside }
	}
}
interface PresentKeys extends KnownNames {
	slots: readonly Slot[]
	/** the last one first */
	olderKeys: readonly OlderKeyRow[]
}
const presentKeys = ({ slots, order, heads }: Parts): PresentKeys => ({
	slots: slots.all(),
	olderKeys: slots.olderKeys(),
	recordsId: order.recordsId,
	origin: order.origin,
	former: order.former,
	own: order.own,
	head: heads.number,
})
/**
 * The present slots and keys take the place of the backup's: an old passphrase opens nothing, nor
 * does the slot of a person who left.
 * @returns slots that another secret opens now
 */
function putPresentKeys({ database, slots }: Parts, now: PresentKeys): string[] {
	return database.together(() => {
		const before = new Map(slots.all().map((slot) => [slot.slot, slot]))
		const present = new Set(now.slots.map(({ slot }) => slot))
		for (const name of before.keys()) if (!present.has(name)) slots.drop(name)
		for (const slot of now.slots) slots.put(slot)
		slots.replaceOlderKeys([...now.olderKeys].reverse())
		return now.slots
			.filter(({ slot, sealed, public: key }) => {
				const was = before.get(slot)
				// a slot of the first versions is made anew when its person unlocks: no other secret
				return was?.public && key && !Buffer.from(was.sealed).equals(sealed)
			})
			.map(({ slot }) => slot)
	})
}
/** Puts the copy in place; the records are locked then. */
function putThere(restoring: Opening, place: string, setAside: string | undefined): void {
	const { parts, files, notices } = restoring
	const { database, trail, heads } = parts
	lockUp(parts)
	if (setAside === undefined) emptyLog(database)
	database.close()
	try {
		if (setAside !== undefined)
			for (const end of ['', '-wal', '-shm'])
				if (existsSync(files.records + end)) renameSync(files.records + end, setAside + end)
		// an empty log of the old file must not be read into the new one
		for (const end of ['-wal', '-shm']) rmSync(files.records + end, { force: true })
		putInPlace(place, files.records)
	} finally {
		database.release()
		trail.dropWaiting()
		notices.length = 0
		heads.close()
		openFile(restoring)
	}
}
/** @returns the time of the last record in a backup; undefined where it holds none */
function mustBeSetUp(file: string): string | undefined {
	const { db, setUp, lastAt } = openChecked(file)
	db.close()
	if (!setUp)
		throw new BackupRefused(
			'This backup holds no records: it was made before the clinic was set up. Choose another ' +
				'one.',
			'backups.without-records',
		)
	return lastAt
}
