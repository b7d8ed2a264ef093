/** What only the key can give or tell, at the first moment it is there. */
import type { Keyring } from './keyring.ts'
import type { Records } from './records.ts'
import type { Settings } from './settings.ts'
import type { Trail } from './trail.ts'

/**
 * How many of the last records are asked whether one was written later than this PC's clock shows:
 * a look at all of them would read the whole file at each unlock.
 */
const clockLooksBack = 2000

/**
 * Gives a store of an earlier version what it lacks (letter box, anchor of the old records), notes
 * a restore, and looks at the trail's head and the clock. The caller decides on the transaction.
 * @param now ISO 8601
 * @returns what the person should know, in words
 */
export function settleIn(
	parts: { keyring: Keyring; settings: Settings; records: Records; trail: Trail },
	now: string,
): string[] {
	const { keyring, settings, records, trail } = parts
	keyring.fitMissingBox()
	if (records.hasUnbound() && records.anchorId() === undefined)
		records.append({ kind: 'anchor', at: now, value: { records: records.unboundDigests() } })
	const restored = settings.text('restored')
	if (restored === undefined)
		return [trail.headWarning(), clockWarning(records, now)].filter(Boolean)
	trail.note({ function: 'restore', objectRef: restored })
	settings.drop('restored')
	return [clockWarning(records, now)].filter(Boolean)
}
function clockWarning(records: Records, now: string): string {
	const newest = records.newestOfLast(clockLooksBack)
	if (newest === null || newest <= now) return ''
	return (
		`This PC's clock shows ${minuteOf(now)} UTC, yet a ` +
		`record was written at ${minuteOf(newest)} UTC. Check the date ` +
		'and time of this PC before signing. The order of the records is kept either way.'
	)
}
const minuteOf = (at: string) => at.slice(0, 16).replace('T', ' ')
