/** Folders and files that a person typed: what is wrong with one is said before anything is done, naming the path and the remedy. */
import { accessSync, constants, existsSync, statSync } from 'node:fs'
import { dirname, isAbsolute } from 'node:path'
import { Refusal } from './state.ts'

const example = process.platform === 'win32' ? 'E:\\stick' : '/media/stick'
const codeOf = (error: unknown): string => (error as { code?: string }).code ?? ''
/** The part of a path that is there: it shows where the spelling goes wrong. */
function nearest(path: string): string {
	let at = dirname(path)
	while (!existsSync(at) && dirname(at) !== at) at = dirname(at)
	return at
}
function kindOf(path: string): 'file' | 'folder' | undefined {
	try { return statSync(path).isDirectory() ? 'folder' : 'file' } catch { return undefined }
}
/** Words for a write that a folder refused; undefined where the error has another cause. @param nothingHalf what was not left there, such as 'No half pack' */
export function writeTrouble(error: unknown, folder: string, nothingHalf: string): string | undefined {
	const code = codeOf(error)
	if (['ENOSPC', 'EDQUOT', 'EFBIG'].includes(code)) return `There is no room in ${folder}. Free some space or use another stick. ${nothingHalf} was left there.`
	if (['EACCES', 'EROFS', 'EPERM', 'ENOENT', 'ENOTDIR', 'EEXIST', 'EIO', 'EINVAL', 'ENAMETOOLONG'].includes(code)) return `The folder ${folder} cannot be written to. Check that the stick is plugged in and not write-protected, or choose another folder. ${nothingHalf} was left there.`
	return undefined
}
/** A folder that something is to be written into. @throws Refusal: not a whole path, not there, a file, or not writable */
export function folderToWrite(folder: string): string {
	const refuse = (message: string, given: string) => new Refusal(message, [{ path: 'folder', message: given }])
	if (!isAbsolute(folder)) throw refuse('The folder is not a whole path.', `given ${folder}, allowed: a whole path such as ${example}`)
	const kind = kindOf(folder)
	if (kind === undefined) throw refuse(`There is no folder ${folder}. Check the spelling, and that the stick is plugged in.`, `given ${folder}, allowed: a folder that is there; ${nearest(folder)} is`)
	if (kind === 'file') throw refuse(`${folder} is a file, not a folder.`, `given ${folder}, allowed: the folder it stands in, ${dirname(folder)}`)
	try { accessSync(folder, constants.W_OK) } catch { throw refuse(`The folder ${folder} cannot be written to. Check that the stick is not write-protected, or choose another folder.`, `given ${folder}, allowed: a folder you may write to`) }
	return folder
}
/** A file that is to be read. @throws Refusal: not a whole path, not there, a folder, or not readable */
export function fileToRead(file: string): string {
	const refuse = (message: string, given: string) => new Refusal(`${message} Nothing was changed.`, [{ path: 'file', message: given }])
	if (!isAbsolute(file)) throw refuse('The file is not a whole path.', `given ${file}, allowed: a whole path with the name of the file at its end`)
	const kind = kindOf(file)
	if (kind === undefined) throw refuse(`There is no file ${file}. Check the spelling, and that the stick is plugged in.`, `given ${file}, allowed: a file that is there; the folder ${nearest(file)} is`)
	if (kind === 'folder') throw refuse(`${file} is a folder, not a file. Add the name of the file, which ends in .lwpack.`, `given ${file}, allowed: a file in it`)
	try { accessSync(file, constants.R_OK) } catch { throw refuse(`The file ${file} may not be read. Ask whoever looks after this PC for the right to read it.`, `given ${file}, allowed: a file you may read`) }
	return file
}
