/** Which backups are kept: a simple rule, and never fewer than one good copy. */
import { type BackupName, backupReasons, newestFirst } from './backup-name.ts'

/**
 * Days, weeks and months of which the newest backup is kept, and how many of each other reason:
 * common practice, no source.
 */
const keepRule = { days: 7, weeks: 4, months: 12, perReason: 5 } as const

const dayMs = 86_400_000
/** The number of the week that begins on a Monday; 1 January 1970 was a Thursday. */
const weekOf = (at: string): string => String(Math.floor((Date.parse(at) / dayMs + 3) / 7))
const farFuture = '9999'

/**
 * The files that the rule no longer keeps. What was just made always stays, as does what is dated
 * after now: a clock that once stood ahead must not count against the others. While the newest one
 * holds damage nothing goes; a damaged one is never counted in the place of a good one.
 * @param backups of one PC: another PC's are never given here
 * @param now ISO 8601; without it no date counts as lying ahead
 * @param made the file just made
 */
export function notKept(
	backups: readonly BackupName[],
	{ now = farFuture, made }: { now?: string; made?: string } = {},
): string[] {
	const counted = newestFirst(backups).filter(({ at }) => at <= now)
	const newest = backups.find(({ file }) => file === made) ?? counted[0]
	if (!newest || newest.damaged) return []
	const kept = new Set([newest.file, ...keptOf(counted.filter((name) => !name.damaged))])
	for (const { file } of counted.filter((name) => name.damaged).slice(0, keepRule.perReason))
		kept.add(file)
	return counted.filter((name) => !kept.has(name.file)).map((name) => name.file)
}
/** @param good the newest first */
function keptOf(good: readonly BackupName[]): string[] {
	const daily = good.filter((name) => name.reason === 'daily')
	const others = backupReasons.filter((reason) => reason !== 'daily')
	return [
		...good.slice(0, 1).map((name) => name.file),
		...newestPer(daily, (at) => at.slice(0, 10), keepRule.days),
		...newestPer(daily, weekOf, keepRule.weeks),
		...newestPer(daily, (at) => at.slice(0, 7), keepRule.months),
		...others.flatMap((reason) =>
			good
				.filter((name) => name.reason === reason)
				.slice(0, keepRule.perReason)
				.map((name) => name.file),
		),
	]
}
/** The newest backup of each of the last slots of time. */
function newestPer(
	daily: readonly BackupName[],
	slot: (at: string) => string,
	most: number,
): string[] {
	const found = new Map<string, string>()
	for (const { at, file } of daily) if (!found.has(slot(at))) found.set(slot(at), file)
	return [...found.values()].slice(0, most)
}
/**
 * Whole days since the last backup, undefined where there is none or the clock stands before it.
 */
export function backupAgeDays(lastAt: string | undefined, now: string): number | undefined {
	return lastAt === undefined || now < lastAt
		? undefined
		: Math.floor((Date.parse(now) - Date.parse(lastAt)) / dayMs)
}
