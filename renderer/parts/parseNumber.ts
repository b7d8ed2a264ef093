/** Reading measures as a clinician types them. Pure. */
import { unitShown } from './units.ts'

type Parsed = { ok: true; values: number[] } | { ok: false; says: string }
/** What a comma within a number is: its decimal mark, or what stands between two readings. */
type Comma = 'decimal' | 'between'
/**
 * Millimetres in each unit of length; the inch is 25.4 mm exactly by its international definition.
 */
const lengthMm: Record<string, number> = { mm: 1, cm: 10, m: 1000, in: 25.4 }
/** Units that people write behind a number and that no field of length takes. */
const otherUnits: readonly string[] = ['kg', 'g', 'lb', 'deg', '%', 'h', 'min', 'n']
const measure = /^([+-]?\d+(?:[.,]\d+)?)(?:\s+(\d+)\/(\d+))?\s*([a-z°"%/]+)?$/i

const inUnit = (unit: string): string => unitShown(unit) || 'a plain number'
const typeDigits = 'Type digits, for instance 24 or 24.5.'
function otherUnit(text: string, given: string, unit: string): string {
	if (!otherUnits.includes(given) && lengthMm[given] === undefined)
		return `'${text}' is not a number: '${given}' is no unit. ${typeDigits}`
	const wanted = unitShown(unit) ? `in ${unitShown(unit)}` : 'as a plain number'
	return `'${text}' is given in ${given}, and this field takes ${inUnit(unit)}. Type it ${wanted}.`
}
function single(text: string, unit: string): number | string {
	if (/\d[.,]\d+[.,]\d/.test(text))
		return (
			`'${text}' has more than one comma or point. Is it one number? Type it with one of them. ` +
			'Are they several readings? Type a space between them.'
		)
	const found = measure.exec(text)
	if (!found) return `'${text}' is not a number. ${typeDigits}`
	const whole = Number((found[1] ?? '').replace(',', '.'))
	if (found[3] && Number(found[3]) === 0)
		return `'${text}' divides by zero. Type the fraction again.`
	const part = found[2] ? Number(found[2]) / Number(found[3]) : 0
	const value = whole < 0 ? whole - part : whole + part
	const given = (found[4] ?? unit).toLowerCase().replace('"', 'in').replace('°', 'deg')
	if (given === unit.toLowerCase()) return value
	const from = lengthMm[given]
	const to = lengthMm[unit]
	if (from === undefined || to === undefined) return otherUnit(text, given, unit)
	return Number(((value * from) / to).toFixed(6))
}
/**
 * What stands for one reading each: a unit or a fraction belongs to the number before it; other
 * spaces, a semicolon and a comma with a space separate.
 */
function piecesOf(text: string, comma: Comma): string[] {
	const apart = comma === 'between' ? text.replace(/(\d),(?=\d)/g, '$1;') : text
	return apart
		.split(/;|,\s+|\s+(?=[+-]?\d)(?!\d+\/\d)/)
		.map((piece) => piece.trim())
		.filter(Boolean)
}
/** Reads one measure or repeats ('246 247', '246; 247') into `unit`; empty text is no values. */
export function parseNumber(text: string, unit: string, comma: Comma = 'decimal'): Parsed {
	const values: number[] = []
	for (const piece of piecesOf(text.trim(), comma)) {
		const value = single(piece, unit)
		if (typeof value === 'string') return { ok: false, says: value }
		values.push(value)
	}
	return { ok: true, values }
}
/** What is known of a measure that a comma can be judged by. */
export interface Instrument {
	unit: string
	/** Digits after the point that it gives. */
	digits: number
	/** The span in which a reading is usual. */
	softMin?: number
	softMax?: number
}
const commaNumber = /^\d+,(\d+)$/
/** One number that no instrument gives, while its parts would be two readings. */
function isDoubtful(piece: string, { unit, digits, softMin, softMax }: Instrument): boolean {
	const [, decimals = ''] = commaNumber.exec(piece) ?? []
	if (decimals.length <= digits) return false
	const parts = parseNumber(piece, unit, 'between')
	return (
		parts.ok &&
		parts.values.every((value) => value >= (softMin ?? value) && value <= (softMax ?? value))
	)
}
/**
 * '247,248' of a measure read to half a millimetre: one number with a decimal comma, or two
 * readings. @returns the readings of each way; undefined where only one can be meant
 */
export function twoWays(
	text: string,
	instrument: Instrument,
): { decimal: number[]; between: number[] } | undefined {
	if (!piecesOf(text.trim(), 'decimal').some((piece) => isDoubtful(piece, instrument)))
		return undefined
	const decimal = parseNumber(text, instrument.unit)
	const between = parseNumber(text, instrument.unit, 'between')
	return decimal.ok && between.ok ? { decimal: decimal.values, between: between.values } : undefined
}
