/** Files that must be whole or not there. */
import { closeSync, fsyncSync, openSync, renameSync } from 'node:fs'
import { dirname } from 'node:path'

function syncFile(file: string): void {
	const handle = openSync(file, 'r+')
	try {
		fsyncSync(handle)
	} finally {
		closeSync(handle)
	}
}
/** Windows cannot sync a folder; there the rename itself is journalled. */
function syncFolder(folder: string): void {
	if (process.platform === 'win32') return
	const handle = openSync(folder, 'r')
	try {
		fsyncSync(handle)
	} finally {
		closeSync(handle)
	}
}
/**
 * Puts a finished file in its place: after a crash the old or the new one stands there, never half
 * of one.
 */
export function putInPlace(from: string, to: string): void {
	syncFile(from)
	renameSync(from, to)
	syncFolder(dirname(to))
}
