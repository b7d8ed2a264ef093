/** What the disk or the folder refuses, told from faults of the program. */
interface SystemError {
	code?: string
	errcode?: number
	errstr?: string
}
/** What SQLite answers: the file cannot be written, not opened, is full; not whole, no database. */
const sqlite = { full: 13, readOnly: 8, cannotOpen: 14, corrupt: 11, notADatabase: 26 } as const
const notWritable = ['EROFS', 'EACCES', 'EPERM']

/** Whether a failure is the disk's, full or not writable, and not ours. */
export const diskTrouble = (error: unknown): boolean =>
	/full|readonly|read-only/.test((error as SystemError).errstr ?? '')

/** Whether a file was opened that is no store any more. */
export function isRuined(error: unknown): boolean {
	const { errcode } = error as SystemError
	return errcode === sqlite.corrupt || errcode === sqlite.notADatabase
}
/** The failures of a folder in words: which, and what to do. */
export function inWords(error: unknown, folder: string): Error {
	const { code = '', errcode } = error as SystemError
	if (notWritable.includes(code) || errcode === sqlite.readOnly || errcode === sqlite.cannotOpen)
		return new Error(
			`The data folder ${folder} cannot be written to. Make it writable, or start Lastwright ` +
				'with another folder. Nothing was changed.',
		)
	if (code === 'ENOSPC' || errcode === sqlite.full)
		return new Error(
			`The disk that holds ${folder} is full. Free some space and start Lastwright again. ` +
				'Nothing was changed.',
		)
	return error instanceof Error ? error : new Error(String(error))
}
