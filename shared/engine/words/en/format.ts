/** Numbers, units, lists, plurals, articles and days in English: every sentence is made with these. */
import { dayInWords, weekdayName } from '../../plain/days.ts'
import { termWords } from '../../visit/terms.ts'

const locale = 'en-GB'
const numberFormats = new Map<number, Intl.NumberFormat>()
/** Whole, or with so few digits after the point that nothing is to be rounded. */
function isShort(written: string, digits: number): boolean {
	const point = written.indexOf('.')
	return /^-?[\d.]+$/.test(written) && (point < 0 || written.length - point - 1 <= digits)
}
/** A number for reading, without trailing zeros. @param digits the most after the point */
export function number(value: number, digits = 1): string {
	const written = String(value)
	// most are rounded already, and a shelf of 500 models says thousands of them
	if (isShort(written, digits)) return written
	const known = numberFormats.get(digits)
	const format =
		known ??
		new Intl.NumberFormat(locale, {
			maximumFractionDigits: digits,
			useGrouping: false,
			signDisplay: 'negative',
			roundingMode: 'halfExpand',
		})
	if (!known) numberFormats.set(digits, format)
	return format.format(value)
}
const plurals = new Intl.PluralRules(locale)
/** '1 boot', '2 boots', '0.5 boots'. */
export const count = (value: number, one: string, many = `${one}s`, digits = 1): string =>
	`${number(value, digits)} ${plurals.select(value) === 'one' ? one : many}`
/** The word alone that goes with a number: 'is' or 'are', 'stud' or 'studs'. */
export const plural = (value: number, one: string, many = `${one}s`): string =>
	plurals.select(value) === 'one' ? one : many

/** Units by the short sign that thresholds and measures carry. */
const unitWords: Readonly<Record<string, readonly [one: string, many: string]>> = {
	mm: ['mm', 'mm'],
	cm: ['cm', 'cm'],
	kg: ['kg', 'kg'],
	'%': ['%', '%'],
	deg: ['degree', 'degrees'],
	years: ['year', 'years'],
	months: ['month', 'months'],
	weeks: ['week', 'weeks'],
	days: ['day', 'days'],
	hours: ['hour', 'hours'],
	h: ['hour', 'hours'],
	minutes: ['minute', 'minutes'],
	min: ['minute', 'minutes'],
	seconds: ['second', 'seconds'],
	matches: ['match', 'matches'],
	rises: ['rise', 'rises'],
	points: ['point', 'points'],
	sessions: ['session', 'sessions'],
}
/** '4 mm', '1 degree', '8 %': a number with its unit. A unit not listed stands as it is. */
export function amount(value: number, unit: string, digits = 1): string {
	const [one, many] = unitWords[unit] ?? [unit, unit]
	if (one === '') return number(value, digits)
	// a shelf of 500 models says millimetres thousands of times: no plural is looked up for them
	return one === many ? `${number(value, digits)} ${one}` : count(value, one, many, digits)
}
/** The words of a unit that go with a number: 'degree' or 'degrees'. */
export const unitOf = (value: number, unit: string): string =>
	plural(value, ...(unitWords[unit] ?? [unit, unit]))
const lists = {
	and: new Intl.ListFormat(locale, { type: 'conjunction' }),
	or: new Intl.ListFormat(locale, { type: 'disjunction' }),
}
/** 'a, b and c'. */
export const listed = (words: readonly string[], joint: keyof typeof lists = 'and'): string =>
	words.length === 1 ? (words[0] ?? '') : lists[joint].format(words)
/** Words that begin otherwise than they are spelt. */
const spokenVowel =
	/^(a[^bcdfgklmnpqrstvwxyz]|[aeiou]|hour|honest|x-ray|8|11(?!\d)|18(?!\d)|fpi|mtp)/i
const spokenConsonant = /^(uni|use|us[^aeiou]|eu|one|uk\b|u-)/i
/** 'an artificial surface', 'a boot'. */
export const article = (noun: string): string =>
	`${spokenVowel.test(noun) && !spokenConsonant.test(noun) ? 'an' : 'a'} ${noun}`
/** The text with its first letter a capital. */
/** A sentence as a part of a longer line: without its full stop. */
export const asPart = (sentence: string): string => sentence.replace(/\.$/, '')
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
/** '2027-01-20' as '20 January 2027'. */
export const day = (isoDate: string): string => dayInWords(isoDate)
/** 'Tuesday' for any Tuesday. */
export const weekday = (isoDate: string): string => weekdayName(isoDate)
/** '2027-01-12' as 'Tuesday 12 January 2027', the way every sentence of a season names a day. */
export const fullDay = (isoDate: string): string => `${weekdayName(isoDate)} ${dayInWords(isoDate)}`
/** '2027-01-12T18:00' as 'Tuesday 12 January 2027, 18:00'; a day alone without a time. */
export const moment = (iso: string): string =>
	iso.length > 10 ? `${fullDay(iso.slice(0, 10))}, ${iso.slice(11, 16)}` : fullDay(iso)
/** The words for a term of a list: 'firm-ground' is 'firm ground'. */
export const term = (name: string): string => termWords(name)
/** The words for terms, in a row. */
export const terms = (names: readonly string[], joint: keyof typeof lists = 'and'): string =>
	listed(names.map(termWords), joint)
/** 'left', 'right', 'both' before a noun: 'the left foot', 'both feet'. */
export const ofSide = (side: string, one: string, many = `${one}s`): string =>
	side === 'both' ? `both ${many}` : side === 'none' ? `the ${one}` : `the ${side} ${one}`
/** Sentences in a row, empty ones left out. */
export const together = (...parts: (string | undefined | false)[]): string =>
	parts.filter((part) => !!part).join(' ')
