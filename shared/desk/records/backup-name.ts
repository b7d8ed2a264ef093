/** The names of backups: when one was made, by which installation, why, and whether it is whole. */
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
	/** when it was made, ISO 8601 */
	at: string
	reason: BackupReason
	/** of the installation that made it; absent in the names that version 0.1.0 gave */
	origin?: string
	/** true where a record was damaged already when it was made */
	damaged?: boolean
}
const damagedMark = '-damaged'
const namePattern =
	/^lastwright-backup-(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z-(?:([0-9a-f]{12})-)?([a-z-]+)\.db$/
const partPattern = /^(lastwright-backup-.*\.db)\.part(?:-journal|-wal|-shm)?$/

const isReason = (text: string): text is BackupReason =>
	(backupReasons as readonly string[]).includes(text)

/** The name of a backup that is made now. */
export function nameBackup(made: Omit<BackupName, 'file'>): BackupName {
	const { at, origin, reason, damaged } = made
	const stamp = at.replace(/[:.]/g, '-')
	const mark = origin === undefined ? '' : `${origin}-`
	return {
		file: `lastwright-backup-${stamp}-${mark}${reason}${damaged ? damagedMark : ''}.db`,
		...made,
	}
}
/** What the name of a file says; undefined where it is not the name of a backup. */
export function readBackupName(file: string): BackupName | undefined {
	const [, day, hour, minute, second, milli, origin, why = ''] = namePattern.exec(file) ?? []
	const damaged = why.endsWith(damagedMark)
	const reason = damaged ? why.slice(0, -damagedMark.length) : why
	if (!day || !isReason(reason)) return undefined
	return {
		file,
		at: `${day}T${hour}:${minute}:${second}.${milli}Z`,
		reason,
		...(origin !== undefined && { origin }),
		...(damaged && { damaged }),
	}
}
/** The backup that a part was to become, by its name; undefined where it is no part of one. */
export function readPartName(file: string): BackupName | undefined {
	const [, whole] = partPattern.exec(file) ?? []
	return whole === undefined ? undefined : readBackupName(whole)
}
/** Newest first; of the same moment in the order of their names. */
export function newestFirst<Named extends BackupName>(backups: readonly Named[]): Named[] {
	return [...backups].sort((left, right) => {
		if (left.at !== right.at) return left.at < right.at ? 1 : -1
		return left.file < right.file ? 1 : -1
	})
}
