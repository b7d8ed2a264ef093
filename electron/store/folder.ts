/** The data folder: taken for this program alone, and what lies in it. */
import { createHash } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, renameSync } from 'node:fs'
import { homedir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { inWords } from './disk.ts'
import { type FolderLock, takeLock } from './lock.ts'

const fileName = 'lastwright.db'
export interface StoreFiles {
	folder: string
	/** the records */
	records: string
	/** the second copy of the head */
	head: string
	/** the third one, outside the folder */
	outsideHead: string
	/** ids of records that were destroyed by the rule, outside the folder */
	outsideDestroyed: string
}
/** Where a store keeps its files. */
export const filesIn = (folder: string, outside: string): StoreFiles => ({
	folder,
	records: join(folder, fileName),
	head: join(folder, 'lastwright.head'),
	outsideHead: join(outside, `${nameOfFolder(folder)}.head`),
	outsideDestroyed: join(outside, `${nameOfFolder(folder)}.destroyed`),
})
/** The files of a store that lies in another file; its heads are never written. */
export const filesBeside = (file: string): StoreFiles => ({
	folder: dirname(file),
	records: file,
	head: `${file}.head`,
	outsideHead: `${file}.outside-head`,
	outsideDestroyed: `${file}.destroyed`,
})
/** A name that tells folders apart and tells nobody which they are. */
const nameOfFolder = (folder: string): string =>
	createHash('sha256').update(resolve(folder)).digest('hex').slice(0, 24)
/** Where the person's account keeps what programs remember of this PC. */
export function outsideFolder(): string {
	const given = process.env.LASTWRIGHT_OUTSIDE
	if (given) return given
	const base =
		process.platform === 'win32'
			? process.env.LOCALAPPDATA
			: process.platform === 'darwin'
				? join(homedir(), 'Library', 'Application Support')
				: process.env.XDG_STATE_HOME
	return join(base || join(homedir(), '.local', 'state'), 'lastwright')
}
/**
 * Makes the folder ours alone.
 * @param lost told, in words, where another PC took it over meanwhile
 * @throws FolderTaken where it is open elsewhere, Error in words where it cannot be written
 */
export function takeFolder(folder: string, lost: (words: string) => void): FolderLock {
	try {
		mkdirSync(folder, { recursive: true, mode: 0o700 })
		chmodSync(folder, 0o700)
		return takeLock(folder, join(folder, fileName), { lost })
	} catch (error) {
		throw inWords(error, folder)
	}
}
/**
 * A file that is no store any more is kept under another name, never deleted.
 * @param at ISO 8601
 * @param backups the backups there are, newest first
 * @returns what the person should know, in words
 */
export function setAside(records: string, at: string, backups: () => { file: string }[]): string {
	const stamp = at.replace(/[:.]/g, '-')
	for (const end of ['', '-wal', '-shm'])
		if (existsSync(records + end)) renameSync(records + end, `${records}.damaged-${stamp}${end}`)
	const [newest] = backups()
	const restore = newest
		? `Restore the newest backup, ${newest.file}.`
		: 'Restore a backup: choose the file on your stick or backup folder.'
	return (
		'The records file was damaged as a whole and could not be opened. It was kept as ' +
		`${fileName}.damaged-${stamp}; nothing was deleted. ${restore} Do not set up anew.`
	)
}
/** What the person should know of a folder whose records are gone, in words. */
export const emptiedWords = (folder: string): string =>
	`The records file in ${folder} is empty although records were kept here before. Do ` +
	'not set up anew: choose a backup instead.'
