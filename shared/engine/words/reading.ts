/** A number or fact that a finding rests on, in words. */
import { isDay } from '../plain/days.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import { nameOfField } from '../visit/field-names.ts'
import { termWords } from '../visit/terms.ts'
import { amount, day, moment, number } from './en/format.ts'
import { elementName } from './en/insert-names.ts'
import { readings } from './en/readings.ts'

const isTerm = (text: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text)
/** What a reading is called: its own name, that of the field of the visit, or the condition's. */
const nameOf = (measure: string): string =>
	readings[measure] ?? nameOfField(measure) ?? termWords(measure)
/** Terms that have names of their own among the values of one measure. */
const named: Readonly<Record<string, (term: string) => string>> = { element: elementName }
function valueWords({ measure, value, unit }: Because): string {
	if (typeof value === 'number')
		return unit === undefined ? number(value, 3) : amount(value, unit, 3)
	if (isDay(value)) return day(value)
	const own = named[measure]
	if (own) return own(value)
	return isTerm(value) ? termWords(value) : value
}
/** 'knee to wall, left: 7.1 cm'. What an older record wrote in words stands as it was written. */
export function readingInWords(because: Because): string {
	const side = because.side === undefined ? '' : `, ${because.side}`
	const at = because.at === undefined ? '' : `${moment(because.at)}, `
	return `${at}${nameOf(because.measure)}${side}: ${valueWords(because)}`
}
/** '4 mm': what a rule was set to; undefined where it is yes or no. */
export const limitInWords = ({ limit }: Pick<Basis, 'limit'>): string | undefined =>
	limit && amount(limit.value, limit.unit, 4)
/** 'ankle.flagCm = 2 cm': the row of the protocol and its value, as the clinic reads it. */
export function thresholdInWords(basis: Pick<Basis, 'threshold' | 'limit'>): string | undefined {
	const limit = limitInWords(basis)
	return limit === undefined ? basis.threshold : `${basis.threshold} = ${limit}`
}
