/**
 * What keeps a clinic's values from being used: unknown keys, a changed sign, a span turned round.
 * Pure.
 */
import { rows } from './rows.ts'

export interface ValueProblem {
	path: string
	message: string
}
type Key = keyof typeof rows
/** Parts of a key that belong together, least first. */
const ladder = ['Min', 'Target', 'Max'] as const

/**
 * @param values the clinic's values by key, each in the unit of its row; @returns one problem per
 * value, with what is allowed
 */
export function protocolProblems(values: Readonly<Record<string, number>>): ValueProblem[] {
	const known = Object.keys(values).filter((key): key is Key => Object.hasOwn(rows, key))
	const inForce = (key: string): number | undefined =>
		values[key] ?? (Object.hasOwn(rows, key) ? rows[key as Key].value : undefined)
	const unknown = Object.keys(values)
		.filter((key) => !Object.hasOwn(rows, key))
		.map((key) => ({
			path: `values.${key}`,
			message: `no such threshold, given ${values[key]}, allowed: a key of the protocol table`,
		}))
	const signs = known.flatMap((key) => {
		const given = values[key] ?? 0,
			{ value: shipped, unit } = rows[key]
		if (!Number.isFinite(given))
			return [
				{
					path: `values.${key}`,
					message: `not a number, given ${given}, allowed: a number in ${unit}`,
				},
			]
		if (shipped > 0 && given < 0)
			return [
				{
					path: `values.${key}`,
					message: `below zero, given ${given}, allowed: 0 or more (${unit})`,
				},
			]
		if (shipped < 0 && given > 0)
			return [
				{
					path: `values.${key}`,
					message: `above zero, given ${given}, allowed: 0 or less (${unit})`,
				},
			]
		return []
	})
	const spans = known.flatMap((key) => {
		const part = ladder.find((one) => key.includes(one))
		if (!part) return []
		const at = ladder.indexOf(part),
			given = values[key] ?? 0
		return ladder.flatMap((other, place) => {
			if (place === at) return []
			const limitKey = key.replace(part, other)
			const limit = inForce(limitKey)
			if (limit === undefined || (place < at ? given >= limit : given <= limit)) return []
			return [
				{
					path: `values.${key}`,
					message:
						`${place < at ? 'below' : 'above'} ${limitKey}, given ${given}, allowed: ` +
						`${limit} or ${place < at ? 'more' : 'less'}`,
				},
			]
		})
	})
	return [...unknown, ...signs, ...spans]
}
