/** What the disk or the folder refuses, told from faults of the program. */
import { closeSync, openSync } from 'node:fs'

interface SystemError {
	code?: string
	errcode?: number
	errstr?: string
}
/** What SQLite answers: the file cannot be written, not opened, is full; not whole, no database. */
const sqlite = {
	busy: 5,
	readOnly: 8,
	ioError: 10,
	corrupt: 11,
	full: 13,
	cannotOpen: 14,
	notADatabase: 26,
} as const
/** SQLite's further distinctions stand above the lowest byte. */
const plainCode = ({ errcode = 0 }: SystemError): number => errcode & 0xff
const notWritable = ['EROFS', 'EACCES', 'EPERM']
const noRoom = ['ENOSPC', 'EDQUOT']

/** Whether a failure is the disk's, full or not writable, and not ours. */
export const diskTrouble = (error: unknown): boolean =>
	/full|readonly|read-only/.test((error as SystemError).errstr ?? '')

/** Whether a file was opened that is no store any more. */
export function isRuined(error: unknown): boolean {
	const code = plainCode(error as SystemError)
	return code === sqlite.corrupt || code === sqlite.notADatabase
}

/** Whether another program holds what was asked of a database. */
export const isBusy = (error: unknown): boolean => plainCode(error as SystemError) === sqlite.busy

/** A database is opened with its side files and its folder: so many handles are wanted at once. */
const handlesWanted = 8
/** Tries to open that many. @returns the system's code where it refuses one for want of handles */
function handlesRefused(): 'EMFILE' | 'ENFILE' | undefined {
	const handles: number[] = []
	try {
		while (handles.length < handlesWanted) handles.push(openSync(process.execPath, 'r'))
		return undefined
	} catch (error) {
		const { code } = error as SystemError
		return code === 'EMFILE' || code === 'ENFILE' ? code : undefined
	} finally {
		for (const handle of handles) closeSync(handle)
	}
}
/** Handles of this program, and of the PC as a whole. */
const handleWords = {
	EMFILE:
		'Lastwright has as many files open as this PC allows one program. Nothing was changed. Close ' +
		'Lastwright and start it again; if it comes back, let whoever looks after this PC raise the ' +
		'number of open files for one program (on Linux and macOS: ulimit -n 4096).',
	ENFILE:
		'This PC has as many files open as it allows all programs together. Nothing was changed. ' +
		'Close other programs, or start the PC anew, and try again.',
}
/**
 * Words where something failed because no more files may be open at once; undefined where it failed
 * for another reason. SQLite only says that it cannot open a file: there it is tried out.
 */
export function tooFewHandles(error: unknown): string | undefined {
	const fault = error as SystemError
	if (fault.code === 'EMFILE' || fault.code === 'ENFILE') return handleWords[fault.code]
	const code = plainCode(fault)
	const refused =
		code === sqlite.cannotOpen || code === sqlite.ioError ? handlesRefused() : undefined
	return refused && handleWords[refused]
}
/** The failures of a folder in words: which, and what to do. */
export function inWords(error: unknown, folder: string): Error {
	const { code = '' } = error as SystemError
	const sqliteCode = plainCode(error as SystemError)
	const handles = tooFewHandles(error)
	if (handles !== undefined) return new Error(handles)
	if (
		notWritable.includes(code) ||
		sqliteCode === sqlite.readOnly ||
		sqliteCode === sqlite.cannotOpen
	)
		return new Error(
			`The data folder ${folder} cannot be written to. Make it writable, or start Lastwright ` +
				'with another folder. Nothing was changed.',
		)
	if (noRoom.includes(code) || sqliteCode === sqlite.full)
		return new Error(
			`The disk that holds ${folder} is full. Free some space and start Lastwright again. ` +
				'Nothing was changed.',
		)
	return error instanceof Error ? error : new Error(String(error))
}
