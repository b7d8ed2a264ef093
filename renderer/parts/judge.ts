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
	return typed === 'nm'
		? 'not measured'
		: reasonsNotMeasured.find((one) => one.keys === typed || one.words === typed)?.words
}
export function judge(path: string, text: string): Judged {
	const meta = fieldMeta(visitSchema, path)
	const trimmed = text.trim()
	if (trimmed === '') return { value: undefined }
	const reason = meta.kind === 'number' ? reasonOf(trimmed) : undefined
	if (reason !== undefined) return { notMeasured: reason }
	const limits = `${meta.min ?? ''} to ${meta.max ?? ''} ${meta.unit}`.trim()
	if (meta.kind !== 'number')
		return schemaAt(visitSchema, path).safeParse(trimmed).success
			? { value: trimmed }
			: { error: `"${trimmed}" cannot stand here.` }
	const parsed = parseNumber(text, meta.unit)
	if (!parsed.ok) return { error: parsed.says }
	const outside = parsed.values.find(
		(one) => one < (meta.min ?? -Infinity) || one > (meta.max ?? Infinity),
	)
	if (outside !== undefined)
		return {
			error:
				`${outside} is outside what can be measured: allowed ${limits}. Check the reading ` +
				'and the unit.',
		}
	const list = path.endsWith('fpi6')
	const value = parsed.values.length === 1 && !list ? parsed.values[0] : parsed.values
	if (!schemaAt(visitSchema, path).safeParse(value).success)
		return {
			error: list
				? `Six items are needed, given ${parsed.values.length}.`
				: parsed.values.length > 1
					? 'Give one value here, or at most six repeats.'
					: `Give a whole number, ${limits}.`,
		}
	const odd = parsed.values.find(
		(one) => one < (meta.softMin ?? one) || one > (meta.softMax ?? one),
	)
	return {
		value,
		...(odd === undefined
			? {}
			: {
					warning:
						`${odd} ${meta.unit} is unusual (${meta.softMin} to ${meta.softMax} ` +
						'expected). Right?',
				}),
	}
}
