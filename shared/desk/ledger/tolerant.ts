/** Reads a value by a schema that knows less than whoever wrote it. */
import type { z } from 'zod'
import { type Problem, problemsOf } from '../../engine/visit/problems.ts'
import { type CutPart, Cutting, valueAt } from './cutting.ts'

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]
export type TolerantReading<Value> =
	| { ok: true; value: Value; unknown: CutPart[] }
	| { ok: false; problems: Problem[] }

/**
 * Rounds after which a value is given up: each takes away at least one part, and what is left shows
 * the next. A choice of this program.
 */
const mostRounds = 200

/**
 * Keys that the schema has no place for are cut off, at any depth, and named.
 * @param partly whether entries that cannot stand are cut off too, with the list entry or the group
 * they belong to where that cannot stand without them
 */
export function readTolerantly<Value>(
	schema: z.ZodType<Value>,
	value: unknown,
	partly: boolean,
): TolerantReading<Value> {
	const first = schema.safeParse(value)
	if (first.success) return { ok: true, value: first.data, unknown: [] }
	const cutting = new Cutting(value)
	let { error } = first
	for (let round = 0; round < mostRounds; round++) {
		const tooLong = error.issues.flatMap(boundOf)
		for (const { path, most } of tooLong) cutting.shorten(path, most)
		const paths = tooLong.length > 0 ? [] : pathsToCut(error.issues, cutting.standing, partly)
		if (paths.length + tooLong.length === 0) break
		cutting.cut(paths)
		const again = schema.safeParse(cutting.standing)
		if (again.success)
			return { ok: true, value: cutting.restore(again.data), unknown: cutting.parts() }
		error = again.error
	}
	return { ok: false, problems: problemsOf(error, cutting.standing) }
}
const sized: readonly string[] = ['string', 'array', 'record', 'map', 'set']
/**
 * A bound on length is for what is typed today: what an earlier version took is read at its length.
 */
function boundOf(issue: Issue): { path: Path; most: number }[] {
	if (issue.code !== 'too_big' || !sized.includes(issue.origin)) return []
	return [{ path: issue.path, most: Number(issue.maximum) }]
}
/** Unknown keys first; where there are none, what cannot stand. Empty where that is all of it. */
function pathsToCut(issues: readonly Issue[], standing: unknown, partly: boolean): Path[] {
	const unknown = issues.flatMap((issue) => unknownKeys(issue, []))
	if (unknown.length > 0 || !partly) return unknown
	const wrong = issues.map((issue) => nearestStanding(standing, issue.path))
	return wrong.every((path) => path.length > 0) ? wrong : []
}
function unknownKeys(issue: Issue, before: Path): Path[] {
	const path = [...before, ...issue.path]
	if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...path, key])
	if (issue.code === 'invalid_key') return [path]
	if (issue.code !== 'invalid_union') return []
	// the branch that the value was meant for is the one that refuses nothing but keys
	const branches = issue.errors.map((branch) => branch.map((inner) => unknownKeys(inner, path)))
	const meant = branches.find(
		(branch) => branch.length > 0 && branch.every((paths) => paths.length > 0),
	)
	return meant?.flat() ?? []
}
/** The place itself, or the group around it where nothing stands there: an entry is missing. */
function nearestStanding(standing: unknown, path: Path): Path {
	let near = path
	while (near.length > 0 && valueAt(standing, near) === undefined) near = near.slice(0, -1)
	return near
}
