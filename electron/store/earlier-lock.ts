/**
 * The lock of version 0.1.0: a file with a process number in it. It is still written, so that a
 * program of that version stays out; one that is found counts only where its process really works
 * on the records.
 */
import { existsSync, readdirSync, readlinkSync, realpathSync, rmSync, writeFileSync } from 'node:fs'
import { join, sep } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { isBusy } from './disk.ts'
import { readPlainFile } from './plain-file.ts'

const lockIn = (folder: string): string => join(folder, 'lastwright.lock')
const mostBytes = 64

/** Whether a process of this number lives on this PC, whoever's it is. */
export function isAlive(pid: number): boolean {
	try {
		process.kill(pid, 0)
		return true
	} catch (error) {
		return (error as NodeJS.ErrnoException).code === 'EPERM'
	}
}
/** The process number in the file; undefined where there is none that could be one. */
function numberIn(file: string): number | undefined {
	try {
		const text = readPlainFile(file, mostBytes).toString('utf8').trim()
		return /^[1-9]\d{0,9}$/.test(text) ? Number(text) : undefined
	} catch {
		return undefined
	}
}
/** Whether a process has a file of the folder open, where the system shows it (Linux). */
function hasOpen(pid: number, folder: string): boolean {
	try {
		const within = realpathSync(folder) + sep
		const handles = `/proc/${pid}/fd`
		return readdirSync(handles).some((handle) => {
			try {
				return readlinkSync(join(handles, handle)).startsWith(within)
			} catch {
				return false
			}
		})
	} catch {
		return false
	}
}
/** Whether any program has the records open: SQLite gives them to one alone only if none has. */
function areOpen(records: string): boolean {
	if (!existsSync(records)) return false
	let db: DatabaseSync | undefined
	try {
		db = new DatabaseSync(records)
		db.exec('PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE; ROLLBACK')
		return false
	} catch (error) {
		// damage is said where the records are opened
		return isBusy(error)
	} finally {
		db?.close()
	}
}
/**
 * Puts this process into the lock of the earlier version, over one that nobody stands behind.
 * @param taken makes the error from words
 * @returns what the person should know, in words; empty where nothing is to be said
 * @throws what `taken` makes, where a program works on the records
 */
export function clearEarlierLock(
	folder: string,
	records: string,
	taken: (words: string) => Error,
): string {
	const file = lockIn(folder)
	const pid = numberIn(file)
	const isForeign = pid !== undefined && pid !== process.pid && isAlive(pid)
	if (isForeign && (hasOpen(pid, folder) || areOpen(records)))
		throw taken(
			`The records in this folder are already open in another Lastwright (process ${pid}). ` +
				'Close it first, or use its window.',
		)
	try {
		rmSync(file, { force: true })
		writeFileSync(file, String(process.pid), { flag: 'wx', mode: 0o600 })
	} catch {
		/* it only keeps the earlier version out; the lock that counts is held already */
	}
	return isForeign
		? `A lock left by a power cut or a crash stood in this folder. Its number, ${pid}, now ` +
				'belongs to another program, which does not use the records: they were opened.'
		: ''
}
/** Takes this process out of the lock of the earlier version. */
export function giveBackEarlierLock(folder: string): void {
	if (numberIn(lockIn(folder)) === process.pid) rmSync(lockIn(folder), { force: true })
}
