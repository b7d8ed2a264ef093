/** Which backups are kept: a simple rule, and never fewer than one good copy. */
export const backupReasons = [
	'daily',
	'asked',
	'before-upgrade',
	'before-restore',
	'after-destruction',
] as const
export type BackupReason = (typeof backupReasons)[number]
export interface BackupName {
	file: string
	at: string
	reason: BackupReason
}
/**
 * Days, weeks and months of which the newest backup is kept, and how many of each other reason:
 * common practice, no source.
 */
const keepRule = { days: 7, weeks: 4, months: 12, perReason: 5 } as const

const dayMs = 86_400_000
/** The number of the week that begins on a Monday; 1 January 1970 was a Thursday. */
const weekOf = (at: string): string => String(Math.floor((Date.parse(at) / dayMs + 3) / 7))
/** The files that the rule no longer keeps. The newest of all always stays. */
export function notKept(backups: readonly BackupName[]): string[] {
	const newestFirst = [...backups].sort((earlier, later) => (earlier.at < later.at ? 1 : -1))
	const kept = new Set<string>(newestFirst.slice(0, 1).map((name) => name.file))
	const daily = newestFirst.filter((name) => name.reason === 'daily')
	const newestPer = (slot: (at: string) => string, most: number) => {
		const seen = new Set<string>()
		for (const name of daily) {
			const key = slot(name.at)
			if (seen.has(key)) continue
			if (seen.size === most) break
			seen.add(key)
			kept.add(name.file)
		}
	}
	newestPer((at) => at.slice(0, 10), keepRule.days)
	newestPer(weekOf, keepRule.weeks)
	newestPer((at) => at.slice(0, 7), keepRule.months)
	for (const reason of backupReasons) {
		if (reason === 'daily') continue
		const ofReason = newestFirst.filter((name) => name.reason === reason)
		for (const { file } of ofReason.slice(0, keepRule.perReason)) kept.add(file)
	}
	return newestFirst.filter((name) => !kept.has(name.file)).map((name) => name.file)
}
/**
 * Whole days since the last backup, undefined where there is none or the clock stands before it.
 */
export function backupAgeDays(lastAt: string | undefined, now: string): number | undefined {
	return lastAt === undefined || now < lastAt
		? undefined
		: Math.floor((Date.parse(now) - Date.parse(lastAt)) / dayMs)
}
