/** A number or fact that a finding rests on, in words. */
import { isDay } from '../plain/days.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import { nameOfField } from '../visit/field-names.ts'
import { termWords } from '../visit/terms.ts'
import { amount, capital, day, moment, number } from './en/format.ts'
import { elementName } from './en/insert-names.ts'
import { readings } from './en/readings.ts'
import { signNames } from './en/sign-names.ts'
import { roomNames } from './en/terms.table.ts'

const isTerm = (text: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text)
/** What a reading is called: its own name, that of the field of the visit, or the condition's. */
const nameOf = (measure: string): string =>
	readings[measure] ?? nameOfField(measure) ?? termWords(measure)
/** A sign by its own name, that of the question that was answered, or the condition's. */
const signName = (sign: string): string =>
	signNames[sign] ?? nameOfField(sign) ?? termWords(sign.replace(/^condition-/, ''))
/** Terms that have names of their own among the values of one measure. */
const named: Readonly<Record<string, (term: string) => string>> = {
	element: elementName,
	warningSign: signName,
}
function valueWords({ measure, value, unit }: Because): string {
	if (typeof value === 'number')
		return unit === undefined ? number(value, 3) : amount(value, unit, 3)
	if (isDay(value)) return day(value)
	const own = named[measure]
	if (own) return own(value)
	return isTerm(value) ? termWords(value) : value
}
/** 'knee to wall, left'. */
export function readingName({ measure, side }: Pick<Because, 'measure' | 'side'>): string {
	return `${nameOf(measure)}${side === undefined ? '' : `, ${side}`}`
}
/** 'knee to wall, left: 7.1 cm'. What an older record wrote in words stands as it was written. */
export function readingInWords(because: Because): string {
	const at = because.at === undefined ? '' : `${moment(because.at)}, `
	return `${at}${readingName(because)}: ${valueWords(because)}`
}
/** '4 mm', '36.5 degrees, knee bent': what a rule was set to; undefined where it is yes or no. */
export function limitInWords({ limit }: Pick<Basis, 'limit'>): string | undefined {
	if (!limit) return undefined
	// the unit of a row may go on to say what is measured
	const [sign] = /^[a-z%]+(?![a-z/%])/.exec(limit.unit) ?? []
	if (sign === undefined) return amount(limit.value, limit.unit, 4)
	return `${amount(limit.value, sign, 4)}${limit.unit.slice(sign.length)}`
}
/** 'toeRoomAdultMinMm' in words; the unit stands beside the number. */
export const thresholdName = (key: string): string =>
	capital(
		key
			.slice(key.indexOf('.') + 1)
			.replace(/(Mm|Cm|Deg|Kg|Years|Days|Percent)$/, '')
			.replace(/([a-z0-9])([A-Z])|([a-z])(?=\d)/g, '$1$3 $2')
			.replace(/[-.]/g, ' ')
			.toLowerCase()
			.replace(/\b(fpi|ipj|jis|mtp|us)\b/g, (short) => short.toUpperCase()),
	)
/** The first letter small, unless it begins letters that stand for words. */
const uncapital = (text: string): string =>
	text.replace(/^[A-Z](?![A-Z])/, (first) => first.toLowerCase())
/** 'Ankle, restricted: 36.5 degrees': the row of the protocol, as the settings name it, and its value. */
export function thresholdInWords(basis: Pick<Basis, 'threshold' | 'limit'>): string | undefined {
	const limit = limitInWords(basis)
	const { threshold = '' } = basis
	if (limit === undefined) return basis.threshold
	const room = threshold.slice(0, threshold.indexOf('.'))
	return `${roomNames[room] ?? capital(room)}, ${uncapital(thresholdName(threshold))}: ${limit}`
}
