/** Where looking may begin on this PC. */
import { readdir, realpath, stat } from 'node:fs/promises'
import { homedir, userInfo } from 'node:os'
import type { PlaceKind } from '../../../shared/desk/places/calls.ts'
import { byName, pathsOf } from './path-rules.ts'

/** A folder with its links followed, and what it is called. */
export interface Place {
	path: string
	name: string
	kind: PlaceKind
}
/** What the places are read from. */
export interface Machine {
	platform: NodeJS.Platform
	home: string
	/** under whose name Linux mounts sticks */
	user: string
	/** folders in which the system mounts sticks and other disks; none on Windows */
	mounts: readonly string[]
}
const mountsOf: Partial<Record<NodeJS.Platform, readonly string[]>> = {
	linux: ['/media', '/run/media', '/mnt'],
	darwin: ['/Volumes'],
}
export function thisMachine(): Machine {
	const { platform } = process
	return { platform, home: homedir(), user: userName(), mounts: mountsOf[platform] ?? [] }
}
/** A user without an entry among the users of the system has no name. */
function userName(): string {
	try {
		return userInfo().username
	} catch {
		return ''
	}
}
/** What is set already, each with its kind; folders that are not there are left out. */
export type SetAlready = readonly { path: string; kind: 'backups' | 'last' }[]

type Wish = Omit<Place, 'name'> & { name?: string }
/** All places that are there now, each once, in the order in which they are offered. */
export async function placesHere(machine: Machine, already: SetAlready): Promise<Place[]> {
	const { platform, home } = machine
	const paths = pathsOf(platform)
	const wishes: Wish[] = [
		...(await sticksOf(machine)).map((path) => ({ path, kind: 'stick' as const })),
		...drivesOf(platform).map((path) => ({ path, name: path, kind: 'drive' as const })),
		{ path: paths.join(home, 'Documents'), kind: 'documents' },
		{ path: home, name: 'Home folder', kind: 'home' },
		...already,
	]
	const found = await Promise.all(wishes.map((wish) => placeOf(wish, platform)))
	const places = new Map<string, Place>()
	for (const place of found) if (place && !places.has(place.path)) places.set(place.path, place)
	return [...places.values()]
}
/** The folder with its links followed; the root of a whole system is no place. */
async function placeOf(wish: Wish, platform: NodeJS.Platform): Promise<Place | undefined> {
	const paths = pathsOf(platform)
	try {
		const path = await realpath(wish.path)
		if (!(await stat(path)).isDirectory()) return undefined
		if (platform !== 'win32' && path === paths.parse(path).root) return undefined
		return { path, name: wish.name ?? paths.basename(path), kind: wish.kind }
	} catch {
		return undefined
	}
}
/** On Linux sticks stand below a folder of the user, or right in the folder of mounts. */
async function sticksOf({ platform, user, mounts }: Machine): Promise<string[]> {
	const paths = pathsOf(platform)
	const below = async (folder: string) =>
		(await namesIn(folder)).map((name) => ({ name, path: paths.join(folder, name) })).sort(byName)
	const found = await Promise.all(
		mounts.map(async (mount) => {
			const here = await below(mount)
			const nested = await Promise.all(
				here.map((one) => (one.name === user ? below(one.path) : [one])),
			)
			return nested.flat()
		}),
	)
	return found.flat().map(({ path }) => path)
}
async function namesIn(folder: string): Promise<string[]> {
	try {
		return (await readdir(folder)).filter((name) => !name.startsWith('.'))
	} catch {
		return []
	}
}
/** A and B are left out: asking an empty floppy drive makes Windows wait. */
const drivesOf = (platform: NodeJS.Platform): string[] =>
	platform === 'win32' ? [...'CDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `${letter}:\\`) : []
