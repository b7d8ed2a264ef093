/**
 * Entries that this version does not know, put back into the next version of what they stood in:
 * an older program never strips what a newer one wrote.
 */
import { canonicalJson } from '../../engine/plain/canonical.ts'
import { copyOf, isObject } from './cutting.ts'
import type { UnknownEntry } from './read.ts'

/**
 * The next version with the unknown entries of the one before, each where what it stood in still
 * is. What the next version says itself is never overwritten.
 * @param before the one before as it was read, without the entries
 */
export function putBack(next: unknown, before: unknown, unknown: readonly UnknownEntry[]): unknown {
	if (unknown.length === 0) return next
	const whole = copyOf(next)
	// lists are matched as they are before any entry comes back
	const places = unknown.map((entry) => ({ entry, into: placeOf(whole, before, entry.parent) }))
	for (const { entry, into } of places) if (isObject(into)) put(into, entry)
	return whole
}
function put(into: Record<PropertyKey, unknown>, { key, value }: UnknownEntry): void {
	if (!Array.isArray(into)) {
		if (into[key] === undefined) into[key] = value
		return
	}
	if (!into.some((item) => isSame(item, value))) into.splice(Number(key), 0, value)
}
/** The group or list of the next version that is the one at this path of the one before. */
function placeOf(next: unknown, before: unknown, path: readonly PropertyKey[]): unknown {
	let [was, is] = [before, next]
	for (const key of path) {
		if (!isObject(was) || !isObject(is) || Array.isArray(was) !== Array.isArray(is))
			return undefined
		const at = Array.isArray(was) && Array.isArray(is) ? matching(was, Number(key), is) : key
		if (at === undefined) return undefined
		was = was[key]
		is = is[at]
	}
	return is
}
/** Where an entry of a list stands now: by its id, else as it was, else at its place. */
function matching(was: readonly unknown[], index: number, is: readonly unknown[]) {
	const entry = was[index]
	const id = idOf(entry)
	if (idOf(is[index]) === id && (id !== undefined || isSame(is[index], entry))) return index
	if (id !== undefined) return found(is.findIndex((other) => idOf(other) === id))
	const same = is.findIndex((other) => isSame(other, entry))
	if (same >= 0) return same
	return was.length === is.length ? index : undefined
}
const found = (index: number): number | undefined => (index < 0 ? undefined : index)
/** What tells an entry of a list from the others: its `id`, else the first key that ends so. */
function idOf(entry: unknown): string | undefined {
	if (!isObject(entry)) return undefined
	const key = ['id', ...Object.keys(entry).filter((name) => name.endsWith('Id'))].find(
		(name) => typeof entry[name] === 'string',
	)
	return key === undefined ? undefined : `${key} ${String(entry[key])}`
}
const isSame = (left: unknown, right: unknown): boolean =>
	canonicalJson(left ?? null) === canonicalJson(right ?? null)
