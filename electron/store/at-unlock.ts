/** What only the key can give or tell, at the first moment it is there. */
import { z } from 'zod'
import { diskTrouble } from './disk.ts'
import { isEnvelope, open } from './envelope.ts'
import type { InstallationValue } from './installation.ts'
import type { Slot } from './key-slots.ts'
import type { Parts } from './parts.ts'
import { copiedWords, isSamePlace, notedPlace, notePlace, placeOf } from './place.ts'
import { repairRoll, rollFaults } from './roll-repair.ts'

/**
 * How many of the last records are asked whether one was written later than this PC's clock shows.
 */
const clockLooksBack = 2000
/** Under this name a restored file says so: sealed where the key was open, else in clear. */
export const restoredSetting = 'restored'
/** What a restored file says of itself. */
export const restoredSchema = z.object({ of: z.string() })

interface Moment {
	/** ISO 8601 */
	now: string
	/** the records file */
	records: string
	/** key slots that were made for this opening */
	toPut: readonly Slot[]
	/** whether a copy of the folder is nothing to tell anybody of */
	isCopyMeant: boolean
}
type AuthorMoment = Omit<Moment, 'toPut'> & { isRestored: boolean }

/**
 * Holds the records against the heads and the inventory, gives a store of an earlier version what it
 * lacks, takes a new name where it is a copy, and keeps what was found amiss until somebody looks.
 * @returns what the person should know, in words
 */
export function settleIn(parts: Parts, { now, records, toPut, isCopyMeant }: Moment): string[] {
	const restored = restoredOf(parts)
	// a file that was put back with the key open is older than the heads on purpose
	if (restored?.isTrue) parts.heads.remove()
	const seen = [...parts.inventory.compare(), ...parts.keeper.differences(restored !== undefined)]
	const amiss = restored?.isTrue ? [] : seen
	const isUpgrade = parts.chain.firstKeyed === Number.POSITIVE_INFINITY
	const said: string[] = []
	try {
		parts.database.together(() => {
			said.push(...mendRoll(parts, amiss))
			parts.keeper.begin()
			for (const slot of toPut) parts.slots.put(slot)
			parts.keyring.fitMissingBox()
			said.push(
				...beAuthor(parts, { now, records, isRestored: restored !== undefined, isCopyMeant }),
			)
			bindFirstForm(parts, now)
			if (isUpgrade) fitFirstCards(parts)
			noteRestore(parts, restored)
			parts.alarms.add(now, amiss)
		})
	} catch (error) {
		// a full or read-only disk must not keep anyone from reading; a new passphrase must be kept
		if (!diskTrouble(error) || toPut.length > 0) throw error
	}
	const found = new Set([...parts.alarms.open().map(({ says }) => says), ...amiss])
	return [...found, ...said, clockWarning(parts, now)].filter(Boolean)
}
interface Restored {
	/** the backup that was put back, in words */
	of: string
	/** whether who put it back had the key */
	isTrue: boolean
}
function restoredOf({ settings, keyring }: Parts): Restored | undefined {
	const bytes = settings.bytes(restoredSetting)
	if (!bytes) return undefined
	const keys = keyring.opened()
	if (!isEnvelope(keys, bytes)) return { of: Buffer.from(bytes).toString('utf8'), isTrue: false }
	try {
		const clear = open(keys, bytes, ['setting', restoredSetting])
		return {
			...restoredSchema.parse(JSON.parse(Buffer.from(clear).toString('utf8'))),
			isTrue: true,
		}
	} catch {
		return { of: 'unknown', isTrue: false }
	}
}
/** A damaged roll is made anew from the records; only looked for where something is amiss. */
function mendRoll(parts: Parts, amiss: readonly string[]): string[] {
	if (amiss.length === 0) return []
	const mended = repairRoll(parts, rollFaults(parts))
	return mended === 0
		? []
		: [
				`${mended} entries in the list of the records were damaged and made anew from the records ` +
					'themselves. The disk may be failing: make a backup on another one.',
			]
}
/** Gives this installation its name and key, anew where the records are a copy of others. */
function beAuthor(
	{ settings, installation, order, records, roll }: Parts,
	{ now, records: file, isRestored, isCopyMeant }: AuthorMoment,
): string[] {
	const [before, here] = [notedPlace(settings), placeOf(file)]
	const isCopy = !isRestored && before !== undefined && !isSamePlace(before, here)
	if (!before || !isSamePlace(before, here)) notePlace(settings, here)
	if (isCopy || isRestored) order.renew()
	else if (installation.isMade) return []
	const isFirst = roll.count === 0
	const what: InstallationValue['what'] = isRestored
		? 'restore'
		: isCopy
			? 'copy'
			: isFirst
				? 'set-up'
				: 'upgrade'
	const value = installation.make(now, what)
	records.append({ kind: 'installation', at: now, value })
	return isCopy && before && !isCopyMeant ? [copiedWords(before, here)] : []
}
/** Records of the first form bound neither time nor place: one record binds them as a whole. */
function bindFirstForm({ records }: Parts, now: string): void {
	if (records.hasUnbound() && records.anchorId() === undefined)
		records.append({ kind: 'anchor', at: now, value: { records: records.unboundDigests() } })
}
/** Records of the first form had no cards: the lists need them. Looked for once, at the upgrade. */
function fitFirstCards({ roll, cards, records }: Parts): void {
	const without = roll.all().filter(({ form, cardForm }) => form === 1 && cardForm === 0)
	for (const row of without) {
		// a damaged one is named where it is read
		const record = records.isReadable(row.id) ? records.find(row.id) : undefined
		const card = record && cards.cardOf(record, row.form)
		if (!card) continue
		const made = cards.ofRecord(row, card)
		roll.replace(made.row, made.card)
	}
}
function noteRestore({ trail, settings }: Parts, restored: Restored | undefined): void {
	if (!restored) return
	trail.note({ function: 'restore', objectRef: restored.of })
	settings.drop(restoredSetting)
}
function clockWarning({ records }: Parts, now: string): string {
	const newest = records.newestOfLast(clockLooksBack)
	if (newest === null || newest <= now) return ''
	return (
		`This PC's clock shows ${minuteOf(now)} UTC, yet a ` +
		`record was written at ${minuteOf(newest)} UTC. Check the date ` +
		'and time of this PC before signing. The order of the records is kept either way.'
	)
}
const minuteOf = (at: string) => at.slice(0, 16).replace('T', ' ')
