/** A draft's content as single entries, each by its path, and put together again. */

/** Each value by its path. */
export type Leaves = Map<string, unknown>
/** Stands between the keys of a path: no key holds it. */
const separator = '\u0000'
export const isGroup = (value: unknown): value is Record<string, unknown> =>
	typeof value === 'object' && value !== null && !Array.isArray(value)

/** The keys of a path. */
export const keysOfPath = (path: string): string[] => path.split(separator)
/** A path as it is said to people: keys with dots between them. */
export const saidPath = (path: string): string => path.replaceAll(separator, '.')

/**
 * Every value by its path; a list is one value, since its items have no name of their own, and so
 * is a group without anything in it.
 * @param whole paths at which a group is one value too
 */
export function leavesOf(value: unknown, whole: ReadonlySet<string> = new Set()): Leaves {
	const found: Leaves = new Map()
	collect(value, '', whole, found)
	return found
}
function collect(value: unknown, path: string, whole: ReadonlySet<string>, found: Leaves): void {
	if (isGroup(value) && !whole.has(path)) {
		const entries = Object.entries(value)
		for (const [key, inner] of entries)
			collect(inner, path === '' ? key : path + separator + key, whole, found)
		if (entries.length > 0) return
	}
	if (value !== undefined && path !== '') found.set(path, value)
}
/** Paths that are a value in one and a group with entries in another: there both are one value. */
export function clashing(...several: readonly Leaves[]): Set<string> {
	const groups = new Set<string>()
	for (const leaves of several) for (const path of leaves.keys()) addGroupsOf(path, groups)
	const clashes = new Set<string>()
	for (const leaves of several)
		for (const [path, value] of leaves)
			if (groups.has(path) && !isEmptyGroup(value)) clashes.add(path)
	return clashes
}
function addGroupsOf(path: string, groups: Set<string>): void {
	for (let end = path.lastIndexOf(separator); end > 0; end = path.lastIndexOf(separator, end - 1)) {
		const group = path.slice(0, end)
		// its own groups are in already
		if (groups.has(group)) return
		groups.add(group)
	}
}
/** A group without anything in it says nothing by itself. */
export const isEmptyGroup = (value: unknown): boolean =>
	isGroup(value) && Object.keys(value).length === 0

/** The content of which these are the leaves. */
export function build(leaves: Leaves): Record<string, unknown> {
	const whole: Record<string, unknown> = {}
	for (const [path, value] of leaves) {
		const keys = keysOfPath(path)
		const last = keys.pop() ?? ''
		let here = whole
		for (const key of keys) {
			const next = Object.hasOwn(here, key) ? here[key] : undefined
			const group = isGroup(next) ? next : {}
			here[key] = group
			here = group
		}
		if (!isEmptyGroup(value)) here[last] = value
		else if (!isGroup(here[last])) here[last] = {}
	}
	return whole
}
