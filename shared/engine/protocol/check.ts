/**
 * What keeps a clinic's values from being used: unknown keys, a changed sign, what no row can be, a
 * span turned round. Pure.
 */
import { need } from '../plain/need.ts'
import { type Problem, type ProblemCode, problemOf } from '../visit/problems.ts'
import { rowLimits, unitLimits } from './limits.table.ts'
import { rows } from './rows.ts'

/** A problem with the key that it is about. */
export interface ValueProblem extends Problem {
	key: string
}
type Key = keyof typeof rows
/** Parts of a key that belong together, least first. */
const ladder = ['Min', 'Target', 'Max'] as const

type Values = Readonly<Record<string, number>>
const isKnown = (key: string): key is Key => Object.hasOwn(rows, key)
/** The value in force for a key, the clinic's or the shipped one; undefined where no row has it. */
const inForce = (values: Values, key: string): number | undefined =>
	values[key] ?? (isKnown(key) ? rows[key].value : undefined)
/** What is wrong with the value of a key. */
export function valueProblem<Code extends ProblemCode>(
	key: string,
	given: number,
	code: Code,
	params: Parameters<typeof problemOf<Code>>[3],
): ValueProblem {
	return { key, ...problemOf(`values.${key}`, code, given, params) }
}
/** The least and the most that a row may be set to, in its own unit. */
export function limitsOf(key: Key): readonly [least: number, most: number] {
	const { unit } = rows[key]
	const [word = ''] = unit.split(/[ ,;]/)
	return rowLimits[key] ?? need(unitLimits[word], `limits of ${key} (${unit})`)
}
/** A value that is no number, of the other sign than the row, or beyond what it can be. */
function limitProblems(key: Key, given: number): ValueProblem[] {
	const { value: shipped, unit } = rows[key]
	const [least, most] = limitsOf(key)
	if (!Number.isFinite(given)) return [valueProblem(key, given, 'not-a-number', { unit })]
	if (shipped > 0 && given < 0) return [valueProblem(key, given, 'below-zero', { unit })]
	if (shipped < 0 && given > 0) return [valueProblem(key, given, 'above-zero', { unit })]
	if (given < least || given > most)
		return [valueProblem(key, given, 'beyond-limits', { least, most, unit })]
	return []
}
/** A value that stands on the wrong side of another of its span. */
function spanProblems(values: Values, key: Key, given: number): ValueProblem[] {
	const place = ladder.findIndex((part) => key.includes(part))
	const part = ladder[place]
	if (part === undefined) return []
	return ladder.flatMap((other, otherPlace) => {
		const limitKey = key.replace(part, other)
		const limit = inForce(values, limitKey)
		if (otherPlace === place || limit === undefined) return []
		if (otherPlace < place && given < limit)
			return [valueProblem(key, given, 'below-other', { other: limitKey, limit })]
		if (otherPlace > place && given > limit)
			return [valueProblem(key, given, 'above-other', { other: limitKey, limit })]
		return []
	})
}
/**
 * @param values the clinic's values by key, each in the unit of its row; @returns one problem per
 * value, with what is allowed
 */
export function protocolProblems(values: Values): ValueProblem[] {
	const entries = Object.entries(values)
	const known = entries.flatMap(([key, given]) => (isKnown(key) ? [{ key, given }] : []))
	return [
		...entries
			.filter(([key]) => !isKnown(key))
			.map(([key, given]) => valueProblem(key, given, 'no-such-threshold', {})),
		...known.flatMap(({ key, given }) => limitProblems(key, given)),
		...known.flatMap(({ key, given }) => spanProblems(values, key, given)),
	]
}
