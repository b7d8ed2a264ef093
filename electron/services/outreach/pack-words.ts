/** Pack files: where they are put, and what stands in their way, in words. */
import { existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { PackRefused } from '../../store/pack-file.ts'
import { folderToWrite, writeTrouble } from '../clinic/places.ts'
import { Refusal } from '../records/refusal.ts'

/**
 * Packs and stores refuse in words.
 * @param folder where the work writes to; empty where it only reads
 * @throws Refusal
 */
export async function packWords<T>(work: () => Promise<T>, folder = ''): Promise<T> {
	try {
		return await work()
	} catch (error) {
		if (error instanceof PackRefused) throw new Refusal(error.why, error.message)
		const trouble = folder === '' ? undefined : writeTrouble(error, folder, 'No half pack')
		if (trouble) throw new Refusal(trouble.code, trouble.says)
		throw error
	}
}
/** The whole path of a new file. @throws Refusal where there is one already */
export function newFileIn(folder: string, name: string): string {
	const file = join(folderToWrite(folder), name)
	if (existsSync(file))
		throw new Refusal(
			'places.file-exists',
			`There is a file ${name} in this folder already. It was not overwritten: choose another ` +
				'folder.',
		)
	return file
}
/** Notes that a file was made; where that cannot be noted the file goes again. */
export function orNoFile(file: string, note: () => void): void {
	try {
		note()
	} catch (error) {
		rmSync(file, { force: true })
		throw error
	}
}
/**
 * A random-looking id that the same content always gets: the same pack twice makes the same record.
 */
export const idOfDigest = (digest: string): string =>
	[
		digest.slice(0, 8),
		digest.slice(8, 12),
		`4${digest.slice(13, 16)}`,
		`8${digest.slice(17, 20)}`,
		digest.slice(20, 32),
	].join('-')
