/** Whether what is seen now is what was seen then: everything that was there must be there still. */
import { changedSince } from './changed-since.table.ts'
import type { Views } from './views.ts'

const isGroup = (value: unknown): value is Record<string, unknown> =>
	value !== null && typeof value === 'object'
const shown = (value: unknown): string => (JSON.stringify(value) ?? 'nothing').slice(0, 160)

/** Paths of the values that are not as they were; a key that is new to an answer is none. */
function unlike(was: unknown, is: unknown, path: string): { path: string; says: string }[] {
	if (Object.is(was, is)) return []
	const bothLists = Array.isArray(was) && Array.isArray(is)
	const sameSort = Array.isArray(was) === Array.isArray(is)
	if (!isGroup(was) || !isGroup(is) || !sameSort || (bothLists && was.length !== is.length))
		return [{ path, says: `was ${shown(was)}, is ${shown(is)}` }]
	return Object.keys(was).flatMap((key) => unlike(was[key], is[key], `${path} / ${key}`))
}
/**
 * @param written by which version, and which opening or homecoming of its fixture it is
 * @returns a sentence for each answer, or part of one, that is not as it was and that no row of the
 * table of intended changes names
 */
export function lostSince(
	written: { version: string; opening: string },
	was: Views,
	is: Views,
): string[] {
	const known = changedSince.filter(
		({ of, opening }) =>
			of.includes(written.version) && (opening ?? written.opening) === written.opening,
	)
	return Object.entries(was)
		.flatMap(([name, before]) => unlike(before, is[name], name))
		.filter(({ path }) => !known.some(({ where }) => where.test(path)))
		.map(({ path, says }) => `${path}: ${says}`)
}
