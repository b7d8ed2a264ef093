/** Reading a file that somebody else made: a plain file of a bounded length, or refused. */
import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs'

/** Why a file was not read: no plain file (a pipe, a device, a folder), too long, or not readable. */
export class FileRefused extends Error {
	readonly why: 'no-file' | 'too-long' | 'unreadable'
	/** its length in bytes, where that is why */
	readonly bytes: number
	constructor(why: FileRefused['why'], bytes = 0) {
		super(why)
		this.why = why
		this.bytes = bytes
	}
}
/**
 * The bytes of a plain file. A pipe or a device is refused at once: reading one would wait for ever.
 * @param most the longest that is read, in bytes
 * @throws FileRefused
 */
export function readRegularFile(file: string, most: number): Buffer {
	return withHandle(file, (handle, size) => {
		if (size > most) throw new FileRefused('too-long', size)
		return readStart(handle, size)
	})
}
/** The first bytes of a plain file, as many as there are of `long`. @throws FileRefused */
export const startOfFile = (file: string, long: number): Buffer =>
	withHandle(file, (handle, size) => readStart(handle, Math.min(long, size)))

function withHandle<T>(file: string, read: (handle: number, size: number) => T): T {
	let handle: number
	try {
		// without O_NONBLOCK opening a pipe waits for somebody to write; Windows knows neither
		handle = openSync(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
	} catch {
		throw new FileRefused('unreadable')
	}
	try {
		const stat = fstatSync(handle)
		if (!stat.isFile()) throw new FileRefused('no-file')
		return read(handle, stat.size)
	} catch (error) {
		throw error instanceof FileRefused ? error : new FileRefused('unreadable')
	} finally {
		closeSync(handle)
	}
}
function readStart(handle: number, long: number): Buffer {
	const bytes = Buffer.alloc(long)
	let read = 0
	while (read < long) {
		const more = readSync(handle, bytes, read, long - read, read)
		if (more === 0) break
		read += more
	}
	return bytes.subarray(0, read)
}
