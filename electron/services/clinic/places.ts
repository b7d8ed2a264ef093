/**
 * Folders and files that a person chose or wrote: what is wrong with one is said before anything is
 * done, naming the path and the remedy.
 */
import { accessSync, constants, existsSync, statSync } from 'node:fs'
import { dirname, isAbsolute } from 'node:path'
import type { RefusalCode } from '../../../shared/desk/workplace/refusal.ts'
import { tooFewHandles } from '../../store/disk.ts'
import { FileRefused, plainFileSize } from '../../store/plain-file.ts'
import { Refusal } from '../records/refusal.ts'

const example = process.platform === 'win32' ? 'E:\\stick' : '/media/stick'
const codeOf = (error: unknown): string => (error as { code?: string }).code ?? ''
/** The part of a path that is there: it shows where the spelling goes wrong. */
function nearest(path: string): string {
	let at = dirname(path)
	while (!existsSync(at) && dirname(at) !== at) at = dirname(at)
	return at
}
function kindOf(path: string): 'file' | 'folder' | undefined {
	try {
		return statSync(path).isDirectory() ? 'folder' : 'file'
	} catch {
		return undefined
	}
}
/**
 * Why a folder refused a write, and in words; undefined where the error has another cause. @param
 * nothingHalf what was not left there, such as 'No half pack'
 */
export function writeTrouble(
	error: unknown,
	folder: string,
	nothingHalf: string,
): { code: RefusalCode; says: string } | undefined {
	const handles = tooFewHandles(error)
	if (handles !== undefined) return { code: 'places.too-many-open', says: handles }
	const code = codeOf(error)
	if (['ENOSPC', 'EDQUOT', 'EFBIG'].includes(code))
		return {
			code: 'places.no-room',
			says:
				`There is no room in ${folder}. Free some space or use another stick. ${nothingHalf} ` +
				'was left there.',
		}
	if (
		[
			'EACCES',
			'EROFS',
			'EPERM',
			'ENOENT',
			'ENOTDIR',
			'EEXIST',
			'EIO',
			'EINVAL',
			'ENAMETOOLONG',
		].includes(code)
	)
		return {
			code: 'places.not-writable',
			says:
				`The folder ${folder} cannot be written to. Check that the stick is plugged in and ` +
				`not write-protected, or choose another folder. ${nothingHalf} was left there.`,
		}
	return undefined
}
/**
 * A folder that something is to be written into. @throws Refusal: not a whole path, not there, a
 * file, or not writable
 */
export function folderToWrite(folder: string): string {
	if (!isAbsolute(folder))
		throw new Refusal(
			'places.not-a-whole-path',
			`The folder "${folder}" is not a whole path. Write it from the root on, such as ${example}.`,
		)
	const kind = kindOf(folder)
	if (kind === undefined)
		throw new Refusal(
			'places.no-folder',
			`There is no folder ${folder}. Check the spelling, and that the stick is plugged in; ` +
				`${nearest(folder)} is there.`,
		)
	if (kind === 'file')
		throw new Refusal(
			'places.file-not-folder',
			`${folder} is a file, not a folder. Give the folder it stands in: ${dirname(folder)}.`,
		)
	try {
		accessSync(folder, constants.W_OK)
	} catch {
		throw new Refusal(
			'places.not-writable',
			`The folder ${folder} cannot be written to. Check that the stick is not write-protected, ` +
				'or choose another folder.',
		)
	}
	return folder
}
/**
 * A file that is to be read. @throws Refusal: not a whole path, not there, a folder, or not
 * readable
 */
export function fileToRead(file: string): string {
	if (!isAbsolute(file))
		throw new Refusal(
			'places.not-a-whole-path',
			`The file "${file}" is not a whole path. Write it from the root on, with the name of the ` +
				'file at its end. Nothing was changed.',
		)
	const kind = kindOf(file)
	if (kind === undefined)
		throw new Refusal(
			'places.no-file',
			`There is no file ${file}. Check the spelling, and that the stick is plugged in; the ` +
				`folder ${nearest(file)} is there. Nothing was changed.`,
		)
	if (kind === 'folder')
		throw new Refusal(
			'places.folder-not-file',
			`${file} is a folder, not a file. Add the name of the file, which ends in .lwpack. ` +
				'Nothing was changed.',
		)
	try {
		plainFileSize(file)
		accessSync(file, constants.R_OK)
	} catch (error) {
		if (error instanceof FileRefused)
			throw new Refusal('places.file-refused', `${error.message} Nothing was changed.`)
		throw new Refusal(
			'places.not-readable',
			`The file ${file} may not be read. Ask whoever looks after this PC for the right to read ` +
				'it. Nothing was changed.',
		)
	}
	return file
}
