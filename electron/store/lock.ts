/**
 * One program at a time on a data folder. What counts is a lock that the system keeps for an open
 * database: it ends with its process, whatever ends that. Beside it stands who holds it, for other
 * PCs on a shared folder, where such locks cannot be relied on.
 */
import { chmodSync, statSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { isBusy, isRuined } from './disk.ts'
import { clearEarlierLock, giveBackEarlierLock, isAlive } from './earlier-lock.ts'
import {
	type Holder,
	keepNote,
	type NoteOptions,
	noteOf,
	refusedByOtherPc,
	thisPc,
	usualGoneMs,
} from './holder-note.ts'

/** The records are held by another program or PC; the message is for the person. */
export class FolderTaken extends Error {}

export interface FolderLock {
	/** what the person should know, in words */
	notices: string[]
	/** @throws FolderTaken where another PC took the folder over meanwhile */
	mustHold: () => void
	release: () => void
}
export interface LockOptions extends NoteOptions {
	/** told once, in words, where another PC took the folder over */
	lost?: (words: string) => void
}
/** It is held open and stays empty: nothing in it can be damaged, and it is never deleted. */
const lockName = 'lastwright.lock.db'
/**
 * How long the lock is asked for, in ms, one try after another: two that ask at the same moment may
 * both be refused at first.
 */
const triesMs = [0, 40, 400] as const

/**
 * Takes a data folder for this program alone.
 * @param records the records file in it
 * @throws FolderTaken in words where another program or PC holds it
 */
export function takeLock(folder: string, records: string, options: LockOptions = {}): FolderLock {
	const db = hold(folder)
	try {
		const known = noteOf(folder)
		const notices = [
			refuseOrNotice(folder, known, options),
			clearEarlierLock(folder, records, (words) => new FolderTaken(words)),
		].filter((words) => words !== '')
		let lostWords: string | undefined
		const note = keepNote(folder, known, options, (other) => {
			lostWords = takenOver(other)
			options.lost?.(lostWords)
		})
		if (!note) throw new FolderTaken(heldWords(noteOf(folder)))
		return {
			notices,
			mustHold: () => {
				if (lostWords !== undefined) throw new FolderTaken(lostWords)
			},
			release: () => {
				note.end()
				giveBackEarlierLock(folder)
				if (db.isOpen) db.close()
			},
		}
	} catch (error) {
		db.close()
		throw error
	}
}
/** What is to be said where the PC that held the folder is gone; empty where none did. */
function refuseOrNotice(folder: string, known: Holder | undefined, options: LockOptions): string {
	if (!known || thisPc(known, options)) return ''
	const wait = refusedByOtherPc(folder, known, options)
	if (wait !== undefined) throw new FolderTaken(otherPc(known, wait))
	return (
		`The PC ${known.host} had the records in this folder open and did not close them. It ` +
		'gave no sign of life since; the records were opened here. Do not use Lastwright on both.'
	)
}
/** Holds the lock database. @throws FolderTaken where another one does */
function hold(folder: string): DatabaseSync {
	const file = join(folder, lockName)
	if (statSync(file, { throwIfNoEntry: false })?.isFile() === false)
		throw new Error(`${file} is not a file. Move it elsewhere, then start Lastwright again.`)
	const db = new DatabaseSync(file)
	try {
		chmodSync(file, 0o600)
		for (const [attempt, waitMs] of triesMs.entries()) {
			if (isOurs(db, file, waitMs)) return db
			const known = noteOf(folder)
			// one try more where nobody is known to be at work: it may just be opening or closing
			if (attempt > 0 && known && isAtWork(known)) break
		}
		throw new FolderTaken(heldWords(noteOf(folder)))
	} catch (error) {
		db.close()
		throw error
	}
}
const isAtWork = (holder: Holder): boolean => !thisPc(holder) || isAlive(holder.process)

function isOurs(db: DatabaseSync, file: string, waitMs: number): boolean {
	try {
		// a journal on the disk would need room, and stay there after a power cut
		db.exec(`PRAGMA busy_timeout=${waitMs}; PRAGMA journal_mode=MEMORY; BEGIN EXCLUSIVE`)
		return true
	} catch (error) {
		// nothing is kept in it: what a power cut left there is taken out, and it stays the same file
		if (isRuined(error)) truncateSync(file)
		else if (!isBusy(error)) throw error
		return false
	}
}
function heldWords(known: Holder | undefined): string {
	if (known && !thisPc(known)) return otherPc(known, usualGoneMs)
	const number = known ? ` (process ${known.process})` : ''
	return (
		`The records in this folder are already open in another Lastwright${number}. Close it first, ` +
		'or use its window.'
	)
}
const whenWords = (at: string): string => `${at.slice(0, 16).replace('T', ' ')} UTC by its clock`
const otherPc = ({ host, process, since }: Holder, waitMs: number): string =>
	`The records in this folder are open on another PC: ${host} (process ${process}), since ` +
	`${whenWords(since)}. Only one PC at a time may work on a folder: close Lastwright there. If ` +
	'that PC crashed or was cut off, start Lastwright here again in ' +
	`${Math.ceil(waitMs / 1000)} seconds: it then looks whether the other one still works.`
const takenOver = ({ host, process }: Holder): string =>
	`Another PC, ${host} (process ${process}), opened the records in this folder while this one ` +
	'slept or was cut off. Nothing more is written here. Close Lastwright on one of the two, then ' +
	'start it again here.'
