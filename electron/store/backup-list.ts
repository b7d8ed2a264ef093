/** The backups of some folders, and which of them go by the rule. */
import { existsSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import {
	type BackupName,
	newestFirst,
	readBackupName,
	readPartName,
} from '../../shared/desk/records/backup-name.ts'
import { notKept } from '../../shared/desk/records/keep.ts'

export interface BackupPlace extends BackupName {
	folder: string
	/** 'unknown': its name does not say, and it lies where other PCs may write too */
	madeBy: 'this-pc' | 'other' | 'unknown'
}
/** Whose backups are ours: our origins, and the folder that nobody else writes to. */
export interface Ours {
	origins: ReadonlySet<string>
	/** the data folder: a backup there that names no origin was made by this PC */
	folder: string
}
function makerOf({ origin }: BackupName, folder: string, ours: Ours): BackupPlace['madeBy'] {
	if (origin !== undefined) return ours.origins.has(origin) ? 'this-pc' : 'other'
	return folder === ours.folder ? 'this-pc' : 'unknown'
}
/** Backups in a folder by their names, newest first; anything else there is left alone. */
function listBackups(folder: string): BackupName[] {
	if (!existsSync(folder)) return []
	return newestFirst(readdirSync(folder).flatMap((file) => readBackupName(file) ?? []))
}
/** The backups in some folders, newest first. */
export const backupsIn = (folders: readonly string[], ours: Ours): BackupPlace[] =>
	newestFirst(
		[...new Set(folders)].flatMap((folder) =>
			listBackups(folder).map((name) => ({
				...name,
				folder,
				madeBy: makerOf(name, folder, ours),
			})),
		),
	)
/**
 * Removes what the rule no longer keeps, and parts that a crash left behind: only what carries the
 * mark of one of our own origins, as another PC may keep its backups in the same folder.
 * @param made the file just made, which always stays
 * @param now ISO 8601
 */
export function tidy(
	folder: string,
	origins: ReadonlySet<string>,
	{ made, now }: { made: string; now: string },
): void {
	const ours = ({ origin }: BackupName) => origin !== undefined && origins.has(origin)
	for (const file of notKept(listBackups(folder).filter(ours), { made, now }))
		rmSync(join(folder, file), { force: true })
	removeParts(folder, origins)
}
/** Takes away the parts of our own backups that never became whole. */
export function removeParts(folder: string, origins: ReadonlySet<string>): void {
	if (!existsSync(folder)) return
	for (const file of readdirSync(folder)) {
		const { origin } = readPartName(file) ?? {}
		if (origin !== undefined && origins.has(origin)) rmSync(join(folder, file), { force: true })
	}
}
