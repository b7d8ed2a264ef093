/** A path with its links followed, and refused where it leads outside of the places. */
import { realpath } from 'node:fs/promises'
import { resolve } from 'node:path'
import type { RefusalCode } from '../../../shared/desk/workplace/refusal.ts'
import { tooFewHandles } from '../../store/disk.ts'
import { Refusal } from '../records/refusal.ts'
import { holding } from './path-rules.ts'
import type { Place } from './places.ts'

const outside = (path: string) =>
	new Refusal(
		'places.outside',
		`Outside of the places that can be looked into: ${path}. Choose a place of the list, or write ` +
			'the path instead.',
	)
type Fault = readonly [code: RefusalCode, says: (path: string) => string]
const gone: Fault = [
	'places.no-folder',
	(path) =>
		`${path} is not there any more. Plug the stick in and look again, or choose another place.`,
]
/** What the system says of a path, as a code of ours and in words. */
const faults: Readonly<Record<string, Fault>> = {
	ENOENT: gone,
	ENOTDIR: ['places.file-not-folder', (path) => `${path} is not a folder. Choose another one.`],
	ENODEV: gone,
	ENXIO: gone,
	EIO: [
		'places.not-readable',
		(path) => `${path} cannot be read: the disk or stick fails. Plug it in again, or use another.`,
	],
	EACCES: [
		'places.not-readable',
		(path) => `${path} may not be looked into. Choose another folder, or ask for the right to it.`,
	],
	ELOOP: ['places.path-not-usable', (path) => `${path} is a link that leads to itself.`],
	ENAMETOOLONG: [
		'places.path-not-usable',
		(path) => `The path ${path.slice(0, 60)}... is longer than this system takes. Choose another.`,
	],
}
/** A failure of the system in words; any other goes on as it is. */
export function placeTrouble(error: unknown, path: string): unknown {
	const handles = tooFewHandles(error)
	if (handles !== undefined) return new Refusal('places.too-many-open', handles)
	const { code = '' } = (error ?? {}) as { code?: string }
	const fault = faults[code === 'EPERM' ? 'EACCES' : code]
	return fault ? new Refusal(fault[0], fault[1](path)) : error
}
/**
 * @returns the path with its links followed, and the place that it lies in
 * @throws Refusal where it leads outside of them: what is not in a place is not even looked for
 */
export async function insidePlaces(
	places: readonly Place[],
	asked: string,
): Promise<{ path: string; place: Place }> {
	if (!holding(places, asked) || !holding(places, resolve(asked))) throw outside(asked)
	let path: string
	try {
		path = await realpath(asked)
	} catch (error) {
		throw placeTrouble(error, asked)
	}
	const place = holding(places, path)
	if (!place) throw outside(asked)
	return { path, place }
}
