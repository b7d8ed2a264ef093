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
		for (const [key, inner] of Object.entries(value)) leavesOf(inner, [...path, key], found)
	else if (value !== undefined && path.length > 0) found.set(path.join(separator), value)
	return found
}
const same = (first: unknown, second: unknown): boolean =>
	canonicalJson(first ?? null) === canonicalJson(second ?? null)
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
interface DraftJoin {
	value: Record<string, unknown>
	/** paths that both changed, each to something else */
	conflicts: string[]
}
/** Whose value stands where at most one of them changed it; undefined where both did. */
function whichStands(was: unknown, left: unknown, right: unknown): 'first' | 'second' | undefined {
	if (same(left, right)) return 'first'
	if (same(left, was)) return 'second'
	return same(right, was) ? 'first' : undefined
}
/**
 * Joins two contents of a draft.
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
	const [ofBase, ofFirst, ofSecond] = [leavesOf(base), leavesOf(first), leavesOf(second)]
	const leaves: Leaves = new Map()
	const conflicts: string[] = []
	for (const path of new Set([...ofFirst.keys(), ...ofSecond.keys()])) {
		const [was, left, right] = [ofBase.get(path), ofFirst.get(path), ofSecond.get(path)]
		const said = path.replaceAll(separator, '.')
		const stands = whichStands(was, left, right) ?? choose(said)
		if (stands === undefined) conflicts.push(said)
		const value = stands === 'second' ? right : left
		if (value !== undefined) leaves.set(path, value)
	}
	const value = build(leaves)
	return { value, conflicts: [...new Set([...conflicts, ...halfMeasured(value)])].sort() }
}
