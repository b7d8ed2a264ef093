/** What a folder shows: its folders, and the files that the purpose wants. No file is opened. */
import { constants, type Dirent } from 'node:fs'
import { access, readdir, stat, statfs } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { Look, PlaceEntry } from '../../../shared/desk/places/calls.ts'
import { isWanted, type Purpose } from '../../../shared/desk/places/purposes.table.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { byName, wayDown } from './path-rules.ts'
import type { Place } from './places.ts'
import { insidePlaces, placeTrouble } from './real-path.ts'

/** Most entries of one answer. A choice of this program. */
const mostEntries = 5000
/** Entries that are asked of the disk at the same time. A choice of this program. */
const atOnce = 32

/** The places themselves. */
export const listPlaces = (places: readonly Place[], says: string): Look => ({
	above: [],
	entries: places.map(({ path, name, kind }) => ({ name, path, is: 'place', kind })),
	more: 0,
	says,
})
/** @throws Refusal where the folder leads outside of the places, is gone, or may not be read */
export async function lookInto(
	places: readonly Place[],
	purpose: Purpose,
	asked: string,
): Promise<Look> {
	const { path, place } = await insidePlaces(places, asked)
	const found = await direntsOf(path)
	const listed: PlaceEntry[] = []
	for (let from = 0; from < found.length; from += atOnce)
		listed.push(
			...(
				await Promise.all(
					found
						.slice(from, from + atOnce)
						.map((dirent) => entryOf(places, purpose, join(path, dirent.name), dirent)),
				)
			).flatMap((entry) => entry ?? []),
		)
	const folders = listed.filter(({ is }) => is === 'folder').sort(byName)
	const files = listed.filter(({ is }) => is === 'file').sort(byName)
	const entries = [...files, ...folders]
	return {
		at: {
			path,
			name: path === place.path ? place.name : basename(path),
			canWrite: await canWrite(path),
			...present({ freeBytes: await freeBytes(path) }),
		},
		above: wayDown(place, path),
		entries: entries.slice(0, mostEntries),
		more: Math.max(0, entries.length - mostEntries),
		says: '',
	}
}
/** All that may be shown: what is hidden by its name is left out. */
async function direntsOf(path: string): Promise<Dirent[]> {
	try {
		const found = await readdir(path, { withFileTypes: true })
		return found.filter(({ name }) => !name.startsWith('.'))
	} catch (error) {
		throw placeTrouble(error, path)
	}
}
/** Undefined for what is not shown: other files, and links that lead outside or nowhere. */
async function entryOf(
	places: readonly Place[],
	purpose: Purpose,
	path: string,
	dirent: Dirent,
): Promise<PlaceEntry | undefined> {
	const { name } = dirent
	if (dirent.isDirectory()) return { name, path, is: 'folder' }
	const isLink = dirent.isSymbolicLink()
	if (!isLink && !(dirent.isFile() && isWanted(purpose, name))) return undefined
	try {
		if (isLink) await insidePlaces(places, path)
		const { size, mtime, ...stats } = await statOf(path)
		if (stats.isFolder) return { name, path, is: 'folder' }
		if (!stats.isFile || !isWanted(purpose, name)) return undefined
		return { name, path, is: 'file', bytes: size, changedAt: mtime.toISOString() }
	} catch {
		return undefined
	}
}
async function statOf(path: string) {
	const stats = await stat(path)
	const { size, mtime } = stats
	return { size, mtime, isFolder: stats.isDirectory(), isFile: stats.isFile() }
}
async function canWrite(path: string): Promise<boolean> {
	try {
		await access(path, constants.W_OK)
		return true
	} catch {
		return false
	}
}
/** Some file systems do not tell. */
async function freeBytes(path: string): Promise<number | undefined> {
	try {
		const { bavail, bsize } = await statfs(path)
		return bavail * bsize
	} catch {
		return undefined
	}
}
