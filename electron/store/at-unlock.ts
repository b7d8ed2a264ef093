/** What only the key can give or tell, at the first moment it is there. */
import { diskTrouble } from './disk.ts'
import { bringUp, isOfFirstVersions } from './first-form.ts'
import type { InstallationValue } from './installation.ts'
import type { Slot } from './key-slots.ts'
import type { Parts } from './parts.ts'
import { copiedWords, isSamePlace, notedPlace, notePlace, placeOf } from './place.ts'
import { type Restored, restoredOf, restoredSetting } from './restored-mark.ts'
import { repairRoll, rollFaults } from './roll-repair.ts'
import { ownSetting } from './settings.ts'

/**
 * How many of the last records are asked whether one was written later than this PC's clock shows.
 */
const clockLooksBack = 2000
/** Under this name stands, sealed, what was brought here and is to be made safe. */
export const arrivedSetting = 'arrived'

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
type AuthorMoment = Omit<Moment, 'toPut'> & { restored: Restored | undefined }

/**
 * Holds the records against the heads and the inventory, gives a store of an earlier version what it
 * lacks, takes a new name where it is a copy, and keeps what was found amiss until somebody looks.
 * @returns what the person should know, in words
 */
export function settleIn(parts: Parts, { now, records, toPut, isCopyMeant }: Moment): string[] {
	const restored = restoredOf(parts)
	const listed = parts.inventory.compare()
	// a file that was put back with the key open is older than the heads on purpose
	if (restored?.isTrue) parts.keeper.goBack()
	const seen = [
		...listed.map((says) => ({ says })),
		...parts.keeper.differences(restored !== undefined),
	]
	const amiss = restored?.isTrue ? [] : seen
	const fresh = parts.alarms.fresh(amiss)
	const isUpgrade = isOfFirstVersions(parts)
	const said: string[] = []
	try {
		parts.database.together(() => {
			if (amiss.length > 0) said.push(...mendRoll(parts))
			parts.keeper.begin()
			for (const slot of toPut) parts.slots.put(slot)
			parts.keyring.fitMissingBox()
			said.push(...beAuthor(parts, { now, records, restored, isCopyMeant }))
			bringUp(parts, now, isUpgrade)
			noteRestore(parts, restored)
			parts.alarms.add(now, amiss)
		})
	} catch (error) {
		// a full or read-only disk must not keep anyone from reading; a new passphrase must be kept
		if (!diskTrouble(error) || toPut.length > 0) throw error
	}
	const found = new Set([...parts.alarms.open(), ...fresh].map(({ says }) => says))
	return [...found, ...said, clockWarning(parts, now)].filter(Boolean)
}
/** A damaged roll is made anew from the records; only looked for where something is amiss. */
function mendRoll(parts: Parts): string[] {
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
	parts: Parts,
	{ now, records: file, restored, isCopyMeant }: AuthorMoment,
): string[] {
	const { settings, installation, records, roll } = parts
	const [before, here] = [notedPlace(settings), placeOf(file)]
	const isElsewhere = before !== undefined && !isSamePlace(before, here)
	if (!before || isElsewhere) notePlace(settings, here)
	const isCopy = restored === undefined && isElsewhere && !isCopyMeant
	const isBrought = restored !== undefined && !restored.renewed
	if (isBrought) arrive(parts, 'move', restored)
	else if (isCopy) arrive(parts, 'copy', { of: `${before.folder} on ${before.host}`, lastAt: '' })
	else if (installation.isMade) return []
	const fresh: InstallationValue['what'] = roll.count === 0 ? 'set-up' : 'upgrade'
	const brought: InstallationValue['what'] = isBrought ? 'restore' : 'copy'
	const value = installation.make(now, isBrought || isCopy ? brought : fresh)
	records.append({ kind: 'installation', at: now, value })
	return isCopy ? [copiedWords(before, here)] : []
}
/** Records that were brought or copied get a name of their own, and are to be made safe. */
function arrive(
	{ order, settings, keyring }: Parts,
	how: 'move' | 'copy',
	{ of, lastAt }: Pick<Restored, 'of' | 'lastAt'>,
): void {
	order.renew()
	// the other names of these records are those of the PC that they come from
	settings.drop(ownSetting)
	keyring.putSealedSetting(arrivedSetting, Buffer.from(JSON.stringify({ how, of, lastAt }), 'utf8'))
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
