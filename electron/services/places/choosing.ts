/** Where looking begins, and what becomes of a choice. */
import { stat } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Look } from '../../../shared/desk/places/calls.ts'
import { isWanted, type Purpose, purposes } from '../../../shared/desk/places/purposes.table.ts'
import { fileToRead, folderToWrite } from '../clinic/places.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { listPlaces, lookInto } from './looking.ts'
import { type Place, placesHere, thisMachine } from './places.ts'
import { insidePlaces } from './real-path.ts'

type Needs = Pick<Deps, 'lastPlaces' | 'store'>
/** The places of this PC now: sticks come and go. */
export const placesNow = ({ store, lastPlaces }: Needs): Promise<Place[]> =>
	placesHere(thisMachine(), [
		{ path: store.backupFolder, kind: 'backups' },
		...Object.values(lastPlaces.get()).map((path) => ({ path, kind: 'last' as const })),
	])

/**
 * A folder, or the places. Without `at` it begins where the last choice for this purpose was made;
 * where that is gone it is said.
 * @throws Refusal
 */
export async function look(
	needs: Needs,
	{ purpose, at }: InputOf<'places.look'>,
): Promise<OutputOf<'places.look'>> {
	const places = await placesNow(needs)
	if (at === '') return listPlaces(places, '')
	if (at !== undefined) return lookInto(places, purpose, at)
	const last = needs.lastPlaces.get()[purpose]
	return last === undefined ? listPlaces(places, '') : lookFromLast(places, purpose, last)
}
async function lookFromLast(
	places: readonly Place[],
	purpose: Purpose,
	last: string,
): Promise<Look> {
	try {
		return await lookInto(places, purpose, last)
	} catch (error) {
		if (!(error instanceof Refusal)) throw error
		return listPlaces(
			places,
			`${last}, chosen the last time, cannot be opened now. Plug the stick in and look again, or ` +
				'choose another place.',
		)
	}
}
/** @returns the path to work with. @throws Refusal where it cannot serve its purpose */
export async function choose(
	needs: Needs,
	{ purpose, path: given, written = false }: InputOf<'places.choose'>,
): Promise<OutputOf<'places.choose'>> {
	const path = written ? given : (await insidePlaces(await placesNow(needs), given)).path
	const { picks } = purposes[purpose]
	if (picks === 'folder') folderToWrite(path)
	else mustBeWanted(purpose, fileToRead(path))
	needs.lastPlaces.keep(purpose, await folderOf(path))
	return { path }
}
function mustBeWanted(purpose: Purpose, file: string): void {
	if (isWanted(purpose, file)) return
	throw new Refusal(
		'places.file-refused',
		`${file} is not what is asked for. Choose a file that ends in ` +
			`${purposes[purpose].endings.join(' or ')}.`,
	)
}
const folderOf = async (path: string): Promise<string> =>
	(await stat(path)).isDirectory() ? path : dirname(path)
