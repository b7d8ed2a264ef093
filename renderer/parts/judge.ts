/**
 * What the typed text means for a field of the visit: a value, 'not measured' with its reason, an
 * error, perhaps a question. Pure.
 */

import { fieldMeta, schemaAt } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { parseNumber } from './parseNumber.ts'

export interface Judged {
	value?: unknown
	error?: string
	warning?: string
	/** the reason */
	notMeasured?: string
}
/** Why a measure was not taken: the letter typed after n, and the words kept. */
export const reasonsNotMeasured: readonly { keys: string; words: string }[] = [
	{ keys: 'n', words: 'not measured' },
	{ keys: 'np', words: 'pain' },
	{ keys: 'nr', words: 'refused' },
	{ keys: 'nd', words: 'no device at hand' },
	{ keys: 'nt', words: 'no time' },
	{ keys: 'nc', words: 'could not hold the position' },
	{ keys: 'nx', words: 'not needed today' },
]
/** The reason a text stands for; undefined where it is none. */
export function reasonOf(text: string): string | undefined {
	const typed = text.trim().toLowerCase()
	if (typed === 'nm') return 'not measured'
	return reasonsNotMeasured.find(({ keys, words }) => keys === typed || words === typed)?.words
}
function shapeError(items: number, values: readonly number[], limits: string): string {
	if (items > 0) return `${items} items are needed, given ${values.length}.`
	return values.length > 1
		? 'Give one value here, or at most six repeats.'
		: `Give a whole number, ${limits}.`
}
/** Numbers within the hard limits of the field; outside the soft ones they raise a question. */
function judgeNumbers(path: string, values: number[]): Judged {
	const { unit, min, max, softMin, softMax, items } = fieldMeta(visitSchema, path)
	const limits = `${min ?? ''} to ${max ?? ''} ${unit}`.trim()
	const outside = values.find((value) => value < (min ?? -Infinity) || value > (max ?? Infinity))
	if (outside !== undefined)
		return {
			error:
				`${outside} is outside what can be measured: allowed ${limits}. Check the reading ` +
				'and the unit.',
		}
	const value = values.length === 1 && items === 0 ? values[0] : values
	if (!schemaAt(visitSchema, path).safeParse(value).success)
		return { error: shapeError(items, values, limits) }
	const odd = values.find((read) => read < (softMin ?? read) || read > (softMax ?? read))
	if (odd === undefined) return { value }
	return {
		value,
		warning: `${odd} ${unit} is unusual (${softMin} to ${softMax} expected). Right?`,
	}
}
export function judge(path: string, text: string): Judged {
	const { kind, unit } = fieldMeta(visitSchema, path)
	const trimmed = text.trim()
	if (trimmed === '') return { value: undefined }
	if (kind !== 'number')
		return schemaAt(visitSchema, path).safeParse(trimmed).success
			? { value: trimmed }
			: { error: `"${trimmed}" cannot stand here.` }
	const reason = reasonOf(trimmed)
	if (reason !== undefined) return { notMeasured: reason }
	const parsed = parseNumber(text, unit)
	return parsed.ok ? judgeNumbers(path, parsed.values) : { error: parsed.says }
}
