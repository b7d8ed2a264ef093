/**
 * What keeps a clinic's values from being used: unknown keys, a changed sign, a span turned round.
 * Pure.
 */
import { rows } from './rows.ts'

interface ValueProblem {
	path: string
	message: string
}
type Key = keyof typeof rows
/** Parts of a key that belong together, least first. */
const ladder = ['Min', 'Target', 'Max'] as const

type Values = Readonly<Record<string, number>>
const isKnown = (key: string): key is Key => Object.hasOwn(rows, key)
/** The value in force for a key, the clinic's or the shipped one; undefined where no row has it. */
const inForce = (values: Values, key: string): number | undefined =>
	values[key] ?? (isKnown(key) ? rows[key].value : undefined)
const problem = (key: string, wrong: string, given: number, allowed: string): ValueProblem => ({
	path: `values.${key}`,
	message: `${wrong}, given ${given}, allowed: ${allowed}`,
})
/** A value that is no number, or whose sign is not that of the row. */
function signProblems(key: Key, given: number): ValueProblem[] {
	const { value: shipped, unit } = rows[key]
	if (!Number.isFinite(given)) return [problem(key, 'not a number', given, `a number in ${unit}`)]
	if (shipped > 0 && given < 0) return [problem(key, 'below zero', given, `0 or more (${unit})`)]
	if (shipped < 0 && given > 0) return [problem(key, 'above zero', given, `0 or less (${unit})`)]
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
			return [problem(key, `below ${limitKey}`, given, `${limit} or more`)]
		if (otherPlace > place && given > limit)
			return [problem(key, `above ${limitKey}`, given, `${limit} or less`)]
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
			.map(([key, given]) =>
				problem(key, 'no such threshold', given, 'a key of the protocol table'),
			),
		...known.flatMap(({ key, given }) => signProblems(key, given)),
		...known.flatMap(({ key, given }) => spanProblems(values, key, given)),
	]
}
