/**
 * What the typed text means for a field of the visit: a value, 'not measured' with its reason, an
 * error, perhaps a question. Pure.
 */

import { type FieldMeta, fieldMeta, schemaAt } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { parseNumber, twoWays } from './parseNumber.ts'
import { unitShown } from './units.ts'

export interface Judged {
	value?: unknown
	error?: string
	warning?: string
	/** the reason */
	notMeasured?: string
	/** Where it can be read in two ways: what each is called, and the text that says it clearly. */
	ways?: readonly Way[]
}
export interface Way {
	says: string
	text: string
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
/** Readings of one measure that a visit keeps at most. */
const mostReadings = 6
function shapeError({ items, many }: FieldMeta, values: readonly number[], limits: string): string {
	const given = values.length
	if (items > 0) return `${items} values are needed here, one for each item; given ${given}.`
	if (given > mostReadings) return `At most ${mostReadings} readings are kept here, given ${given}.`
	return given > 1 && !many
		? `One value goes here, given ${given}. Type the one that counts.`
		: `Type a whole number, ${limits}.`
}
/** What was typed with a comma that may part two readings: asked, never guessed. */
function doubtOf(text: string, meta: FieldMeta): Judged | undefined {
	const ways = meta.items > 0 ? undefined : twoWays(text, meta)
	if (ways === undefined) return undefined
	const shown = (values: readonly number[]) =>
		`${values.join(' and ')} ${unitShown(meta.unit)}`.trim()
	const [one, several] = [shown(ways.decimal), shown(ways.between)]
	if (!meta.many)
		return { error: `'${text}' can be ${one} or ${several}. One value goes here: type it anew.` }
	return {
		error: `Is '${text}' one reading or several? Choose.`,
		ways: [
			{ says: several, text: ways.between.join(' ') },
			{ says: one, text: ways.decimal.join(' ') },
		],
	}
}
/** Numbers within the hard limits of the field; outside the soft ones they raise a question. */
function judgeNumbers(path: string, values: number[]): Judged {
	const meta = fieldMeta(visitSchema, path)
	const { unit, min, max, softMin, softMax, items } = meta
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
		return { error: shapeError(meta, values, limits) }
	const odd = values.find((read) => read < (softMin ?? read) || read > (softMax ?? read))
	if (odd === undefined) return { value }
	return {
		value,
		warning: `${odd} ${unit} is unusual (${softMin} to ${softMax} expected). Right?`,
	}
}
export function judge(path: string, text: string): Judged {
	const meta = fieldMeta(visitSchema, path)
	const { kind, unit } = meta
	const trimmed = text.trim()
	if (trimmed === '') return { value: undefined }
	if (kind !== 'number')
		return schemaAt(visitSchema, path).safeParse(trimmed).success
			? { value: trimmed }
			: { error: `"${trimmed}" cannot stand here.` }
	const reason = reasonOf(trimmed)
	if (reason !== undefined) return { notMeasured: reason }
	const doubt = doubtOf(trimmed, meta)
	if (doubt) return doubt
	const parsed = parseNumber(text, unit)
	return parsed.ok ? judgeNumbers(path, parsed.values) : { error: parsed.says }
}
