/** What the disk or the folder refuses, told from faults of the program. */
import { closeSync, openSync } from 'node:fs'
import { isSystemFault, knownFault, startWords } from './faults.ts'
import { Said } from './said.ts'

/** Whether a failure is the disk's, full or not writable, and not ours. */
export const diskTrouble = (error: unknown): boolean =>
	['full', 'read-only'].includes(knownFault(error)?.name ?? '')

/** Whether a file was opened that is no store any more. */
export const isRuined = (error: unknown): boolean => knownFault(error)?.name === 'damaged'

/** Whether another program holds what was asked of a database. */
export const isBusy = (error: unknown): boolean => knownFault(error)?.name === 'in use'

/** A database is opened with its side files and its folder: so many handles are wanted at once. */
const handlesWanted = 8
/** Tries to open that many. @returns the system's error where it refuses one */
function handlesRefused(): unknown {
	const handles: number[] = []
	try {
		while (handles.length < handlesWanted) handles.push(openSync(process.execPath, 'r'))
		return undefined
	} catch (error) {
		return error
	} finally {
		for (const handle of handles) closeSync(handle)
	}
}
const wordsForHandles = (error: unknown): string | undefined => {
	const row = knownFault(error)
	return row?.name.startsWith('handles') ? row.atWork : undefined
}
/**
 * Words where something failed because no more files may be open at once; undefined where it failed
 * for another reason. SQLite only says that it cannot open a file: there it is tried out.
 */
export function tooFewHandles(error: unknown): string | undefined {
	const name = knownFault(error)?.name ?? ''
	const { errcode } = (error ?? {}) as { errcode?: unknown }
	const doubtful = typeof errcode === 'number' && ['gone', 'failing disk'].includes(name)
	return wordsForHandles(doubtful ? handlesRefused() : error)
}
/** The failures of a folder in words: which, and what to do. */
export function inWords(error: unknown, folder: string): Error {
	const handles = tooFewHandles(error)
	if (handles !== undefined) return new Said(handles)
	if (isSystemFault(error)) return new Said(startWords(error, folder), { cause: error })
	return error instanceof Error ? error : new Error(String(error))
}
