/** A clinic's values that were set under keys of before, read under the key that stands now. Pure. */
import { limitsOf, type ValueProblem, valueProblem } from './check.ts'
import { droppedKeys, retiredKeys } from './retired.table.ts'
import { rows } from './rows.ts'

type Retired = keyof typeof retiredKeys
type Values = Readonly<Record<string, number>>

const isRetired = (key: string): key is Retired => Object.hasOwn(retiredKeys, key)
const isDropped = (key: string): boolean => droppedKeys.some((dropped) => dropped === key)
/** Whether a row has the key, or had it before. */
export const isReadable = (key: string): boolean =>
	Object.hasOwn(rows, key) || isRetired(key) || isDropped(key)
/** Values under keys of before that never could be set: none under zero, none above the limit. */
export function retiredProblems(values: Values): ValueProblem[] {
	return Object.entries(values).flatMap(([key, given]) => {
		if (!isRetired(key)) return []
		const [, most] = limitsOf(retiredKeys[key])
		if (given >= 0 && given <= most) return []
		const { unit } = rows[retiredKeys[key]]
		return [valueProblem(key, given, 'beyond-limits', { least: 0, most, unit })]
	})
}
/**
 * Of several old keys the highest counts, and never less than the shipped value: what is said to
 * minors only adds care, so nobody whom one of the old values held a minor is an adult by the
 * change. A value set under the new key stands.
 * @param values a clinic's values by key; @returns them under the keys that rows have today
 */
export function withCurrentKeys(values: Values): Record<string, number> {
	const now = new Map<string, number>()
	for (const [key, given] of Object.entries(values)) {
		if (!isRetired(key)) continue
		const current = retiredKeys[key]
		now.set(current, Math.max(given, now.get(current) ?? rows[current].value))
	}
	const standing = Object.entries(values).filter(([key]) => !isRetired(key) && !isDropped(key))
	return Object.fromEntries([...now, ...standing])
}
