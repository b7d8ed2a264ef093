/**
 * Two drafts of one visit, worked at in two places, joined field by field: what only one of them
 * has or changed stands; what both changed otherwise is asked.
 */
import { canonicalJson } from '../../engine/plain/canonical.ts'

type Leaves = Map<string, unknown>
const separator = '\u0000'
const isGroup = (value: unknown): value is Record<string, unknown> =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
/**
 * Every value by its path; a list is one value, since its items have no name of their own, and so
 * is a group without anything in it.
 */
function leavesOf(value: unknown, path: readonly string[] = [], found: Leaves = new Map()): Leaves {
	if (isGroup(value) && Object.keys(value).length > 0)
		for (const [key, one] of Object.entries(value)) leavesOf(one, [...path, key], found)
	else if (value !== undefined && path.length > 0) found.set(path.join(separator), value)
	return found
}
const same = (a: unknown, b: unknown): boolean =>
	canonicalJson(a ?? null) === canonicalJson(b ?? null)
function build(leaves: Leaves): Record<string, unknown> {
	const whole: Record<string, unknown> = {}
	for (const [path, value] of leaves) {
		const keys = path.split(separator)
		const last = keys.pop() ?? ''
		let here = whole
		for (const key of keys) {
			const next = here[key]
			const group = isGroup(next) ? next : {}
			here[key] = group
			here = group
		}
		if (isGroup(value)) here[last] ??= {}
		else here[last] = value
	}
	return whole
}
/** A field that one place measured and the other marked as not measured. */
function halfMeasured(whole: Record<string, unknown>): string[] {
	const visit = whole.visit
	if (!isGroup(visit) || !isGroup(visit.notMeasured)) return []
	return Object.keys(visit.notMeasured)
		.filter(
			(path) =>
				path
					.split('.')
					.reduce<unknown>((here, key) => (isGroup(here) ? here[key] : undefined), visit) !==
				undefined,
		)
		.map((path) => `visit.notMeasured.${path}`)
}
export interface DraftJoin {
	value: Record<string, unknown>
	/** paths that both changed, each to something else */
	conflicts: string[]
}
/**
 * @param base the content both began from; undefined where each was begun for itself
 * @param choose for a path that both changed: which one stands; without an answer it is a conflict
 * and the first one's value is put
 */
export function joinDraftContents(
	base: unknown,
	first: unknown,
	second: unknown,
	choose: (path: string) => 'first' | 'second' | undefined = () => undefined,
): DraftJoin {
	const [from, a, b] = [leavesOf(base), leavesOf(first), leavesOf(second)]
	const leaves: Leaves = new Map()
	const conflicts: string[] = []
	for (const path of new Set([...a.keys(), ...b.keys()])) {
		const [was, one, two] = [from.get(path), a.get(path), b.get(path)]
		const said = path.replaceAll(separator, '.')
		let value = one
		if (same(one, two)) value = one
		else if (same(one, was)) value = two
		else if (!same(two, was)) {
			const answer = choose(said)
			if (answer === undefined) conflicts.push(said)
			value = answer === 'second' ? two : one
		}
		if (value !== undefined) leaves.set(path, value)
	}
	const value = build(leaves)
	return { value, conflicts: [...new Set([...conflicts, ...halfMeasured(value)])].sort() }
}
