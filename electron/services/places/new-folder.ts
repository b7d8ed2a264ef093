/** A new folder inside one that is looked into. */
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { checkFolderName } from '../../../shared/desk/places/folder-name.ts'
import { writeTrouble } from '../clinic/places.ts'
import { Refusal } from '../records/refusal.ts'
import type { Place } from './places.ts'
import { insidePlaces, placeTrouble } from './real-path.ts'

/** Longest path that the calls take. */
const longestPath = 1000

/** @returns its path. @throws Refusal: the name cannot stand, or the folder cannot be written to */
export async function makeFolder(
	places: readonly Place[],
	at: string,
	typed: string,
): Promise<{ path: string }> {
	const checked = checkFolderName(typed)
	if ('says' in checked)
		throw new Refusal('places.folder-name', 'No folder was made.', [
			{ path: 'name', message: checked.says },
		])
	const { path: above } = await insidePlaces(places, at)
	const path = join(above, checked.name)
	if (path.length > longestPath)
		throw new Refusal(
			'places.path-not-usable',
			`The path would have ${path.length} characters, more than ${longestPath}. Make the folder ` +
				'further up.',
		)
	try {
		await mkdir(path)
	} catch (error) {
		if ((error as { code?: string }).code === 'EEXIST')
			throw new Refusal(
				'places.folder-exists',
				`There is something named ${checked.name} in ${above} already. Open it, or choose another ` +
					'name.',
			)
		const trouble = writeTrouble(error, above, 'No half folder')
		throw trouble ? new Refusal(trouble.code, trouble.says) : placeTrouble(error, above)
	}
	return { path }
}
