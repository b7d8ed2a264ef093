/**
 * Reading a file that a person named: a plain file of a bounded length, or refused in words. A pipe,
 * a socket, a device or a folder is refused at once: reading one could wait for ever.
 */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs'
import { tooFewHandles } from './disk.ts'

type Why = 'absent' | 'not-a-file' | 'too-long' | 'not-readable'

/** Why a file was not read. The message is for the person: it names the path and the remedy. */
export class FileRefused extends Error {
	readonly why: Why
	constructor(why: Why, message: string) {
		super(message)
		this.why = why
	}
}
const kinds: readonly { is: (stats: Stats) => boolean; said: string }[] = [
	{ is: (stats) => stats.isDirectory(), said: 'a folder' },
	{ is: (stats) => stats.isFIFO(), said: 'a pipe' },
	{ is: (stats) => stats.isSocket(), said: 'a socket' },
	{ is: (stats) => stats.isCharacterDevice() || stats.isBlockDevice(), said: 'a device' },
]
function mustBePlain(file: string, stats: Stats): void {
	if (stats.isFile()) return
	const said = kinds.find(({ is }) => is(stats))?.said ?? 'something else'
	throw new FileRefused(
		'not-a-file',
		`${file} is ${said}, not a file. Give the whole path of a file on a disk or stick.`,
	)
}
function refusalOf(error: unknown, file: string): Error {
	if (error instanceof FileRefused) return error
	const handles = tooFewHandles(error)
	if (handles !== undefined) return new FileRefused('not-readable', handles)
	const { code = '' } = error as NodeJS.ErrnoException
	if (code === 'ENOENT' || code === 'ENOTDIR')
		return new FileRefused(
			'absent',
			`There is no file ${file}. Check the spelling, and that the stick is plugged in.`,
		)
	if (code === 'EACCES' || code === 'EPERM')
		return new FileRefused(
			'not-readable',
			`The file ${file} may not be read. Ask whoever looks after this PC for the right to read it.`,
		)
	return new FileRefused(
		'not-readable',
		`The file ${file} cannot be read${code && ` (${code})`}. Copy it anew and try again.`,
	)
}
/**
 * The length of a plain file in bytes, without opening it.
 * @throws FileRefused where it is no plain file or not there
 */
export function plainFileSize(file: string): number {
	try {
		const stats = statSync(file)
		mustBePlain(file, stats)
		return stats.size
	} catch (error) {
		throw refusalOf(error, file)
	}
}
function withHandle<T>(file: string, use: (handle: number) => T): T {
	let handle: number | undefined
	try {
		// opening a device may already do something: what it is is looked at first, and again once it
		// is open, since it may have been changed meanwhile
		mustBePlain(file, statSync(file))
		// without O_NONBLOCK opening a pipe waits for somebody to write; Windows knows neither flag
		const flags = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOCTTY ?? 0)
		handle = openSync(file, flags)
		mustBePlain(file, fstatSync(handle))
		return use(handle)
	} catch (error) {
		throw refusalOf(error, file)
	} finally {
		if (handle !== undefined) closeSync(handle)
	}
}
const chunkBytes = 1024 * 1024
/** At most so many bytes; the length that the system tells is only a first guess. */
function readUpTo(handle: number, most: number): Buffer {
	const parts: Buffer[] = []
	let total = 0
	while (total < most) {
		const part = Buffer.allocUnsafe(Math.min(chunkBytes, most - total))
		const read = readSync(handle, part, 0, part.length, null)
		if (read === 0) break
		parts.push(part.subarray(0, read))
		total += read
	}
	return Buffer.concat(parts, total)
}
/**
 * The bytes of a plain file.
 * @param mostBytes the longest that is read
 * @throws FileRefused in words that name the path
 */
export function readPlainFile(file: string, mostBytes: number): Buffer {
	return withHandle(file, (handle) => {
		// a file of the system may say that it is empty and still never end
		const bytes = fstatSync(handle).size > mostBytes ? undefined : readUpTo(handle, mostBytes + 1)
		if (bytes === undefined || bytes.length > mostBytes)
			throw new FileRefused(
				'too-long',
				`The file ${file} is longer than ${sizeWords(mostBytes)}, which is the most that is read ` +
					'here. Choose another file.',
			)
		return bytes
	})
}
/** The first bytes of a plain file: `length` of them, or all where it is shorter. @throws FileRefused */
export const startOfPlainFile = (file: string, length: number): Buffer =>
	withHandle(file, (handle) => readUpTo(handle, length))

function sizeWords(bytes: number): string {
	const kilo = 1024
	if (bytes >= kilo * kilo) return `${Math.floor(bytes / kilo / kilo)} MB`
	return bytes >= kilo ? `${Math.floor(bytes / kilo)} kB` : `${bytes} bytes`
}
