/** Rules about paths that need no disk: what lies inside what, and the way down to it. */
import { posix, win32 } from 'node:path'

/** The rules of a system's paths; Windows takes both slashes and either case of letters. */
export const pathsOf = (platform: NodeJS.Platform) => (platform === 'win32' ? win32 : posix)

/**
 * Whether a path is a folder or lies below it. Both are whole; links are not followed here.
 * @param platform whose rules count
 * @internal
 */
export function isInside(
	folder: string,
	path: string,
	platform: NodeJS.Platform = process.platform,
): boolean {
	const paths = pathsOf(platform)
	if (!paths.isAbsolute(folder) || !paths.isAbsolute(path) || path.includes('\0')) return false
	const way = paths.relative(folder, path)
	// a folder whose name begins with two dots is inside; one step up is not
	return way !== '..' && !way.startsWith(`..${paths.sep}`) && !paths.isAbsolute(way)
}
/**
 * The outermost of the places that a path lies in, so that the way up is as long as it may be;
 * undefined where it lies in none.
 */
export const holding = <Place extends { path: string }>(
	places: readonly Place[],
	path: string,
	platform: NodeJS.Platform = process.platform,
): Place | undefined =>
	places
		.filter((place) => isInside(place.path, path, platform))
		.toSorted((left, right) => left.path.length - right.path.length)[0]

/** The folders from a place down to the one above a path, the place first. */
export function wayDown(
	place: { path: string; name: string },
	path: string,
	platform: NodeJS.Platform = process.platform,
): { name: string; path: string }[] {
	const paths = pathsOf(platform)
	const names = paths
		.relative(place.path, path)
		.split(paths.sep)
		.filter((name) => name !== '')
	if (names.length === 0) return []
	const above = [{ name: place.name, path: place.path }]
	for (const name of names.slice(0, -1))
		above.push({ name, path: paths.join(above.at(-1)?.path ?? place.path, name) })
	return above
}
const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })
/** In the order of names as people read them: 2 before 10, whatever the case of letters. */
export const byName = (left: { name: string }, right: { name: string }): number =>
	collator.compare(left.name, right.name) || (left.name < right.name ? -1 : 1)
