/**
 * A formula with its numbers put in: the same parts compute it and write it down, so that no
 * coefficient stands twice. Written with x, /, + and -, brackets where they are needed.
 */
import { figure } from './working.ts'

/** How the parts of what is written hold together: what is looser needs brackets inside another. */
type Hold = 'sum' | 'product' | 'power' | 'whole'
interface Written {
	/** Without its sign. */
	text: string
	negative: boolean
	hold: Hold
}
type Style = 'numbers' | 'names'
/** What a formula comes to, unrounded, and how it is written. */
export interface Formula {
	readonly value: number
	/** @internal */
	readonly write: (style: Style) => Written
}
const bracketed = ({ text, negative, hold }: Written, looser: readonly Hold[]): string =>
	negative || looser.includes(hold) ? `(${negative ? '-' : ''}${text})` : text
const signed = ({ text, negative }: Written): string => (negative ? `-${text}` : text)
const whole = (text: string): Written => ({ text, negative: false, hold: 'whole' })

/** A number of the formula itself, written as it stands. */
export const exactly = (value: number): Formula => ({
	value,
	write: () => ({ text: String(Math.abs(value)), negative: value < 0, hold: 'whole' }),
})
/**
 * A number that is put in. @param digits decimals to which it is written; @param name what it is
 * called where the formula is written with names
 */
export const quantity = (value: number, digits = 2, name?: string): Formula => ({
	value,
	write: (style) => {
		if (style === 'names' && name !== undefined) return whole(name)
		const text = figure(Math.abs(value), digits)
		return { text, negative: value < 0 && text !== '0', hold: 'whole' }
	},
})
/** A sum, added from left to right; a negative term is taken off. */
export const plus = (first: Formula, ...terms: readonly Formula[]): Formula => ({
	value: terms.reduce((sum, { value }) => sum + value, first.value),
	write: (style) => ({
		text: terms.reduce(
			(line, { write }) => {
				const term = write(style)
				const operand = bracketed({ ...term, negative: false }, ['sum'])
				return `${line} ${term.negative ? '-' : '+'} ${operand}`
			},
			signed(first.write(style)),
		),
		negative: false,
		hold: 'sum',
	}),
})
/** A difference, taken off from left to right. */
export const minus = (first: Formula, ...terms: readonly Formula[]): Formula => ({
	value: terms.reduce((rest, { value }) => rest - value, first.value),
	write: (style) => ({
		text: terms.reduce(
			(line, { write }) => `${line} - ${bracketed(write(style), ['sum'])}`,
			signed(first.write(style)),
		),
		negative: false,
		hold: 'sum',
	}),
})
/** A product, multiplied from left to right. */
export const times = (first: Formula, ...factors: readonly Formula[]): Formula => ({
	value: factors.reduce((product, { value }) => product * value, first.value),
	write: (style) => {
		const leading = first.write(style)
		return {
			text: [
				bracketed({ ...leading, negative: false }, ['sum']),
				...factors.map(({ write }) => bracketed(write(style), ['sum'])),
			].join(' x '),
			negative: leading.negative,
			hold: 'product',
		}
	},
})
/** A quotient. */
export const over = (top: Formula, bottom: Formula): Formula => ({
	value: top.value / bottom.value,
	write: (style) => {
		const above = top.write(style)
		return {
			text: `${bracketed({ ...above, negative: false }, ['sum'])} / ${bracketed(
				bottom.write(style),
				['sum', 'product'],
			)}`,
			negative: above.negative,
			hold: 'product',
		}
	},
})
const powerOf = (base: Formula, exponent: number, words: (style: Style) => string): Formula => ({
	value: base.value ** exponent,
	write: (style) => ({
		text: `${bracketed(base.write(style), ['sum', 'product', 'power'])} ${words(style)}`,
		negative: false,
		hold: 'power',
	}),
})
export const squared = (base: Formula): Formula => powerOf(base, 2, () => 'squared')
export const cubed = (base: Formula): Formula => powerOf(base, 3, () => 'cubed')
/** A positive base to a power. */
export const toThePower = (base: Formula, exponent: Formula): Formula =>
	powerOf(
		base,
		exponent.value,
		(style) => `to the power ${bracketed(exponent.write(style), ['sum', 'product', 'power'])}`,
	)
const functionOf = (name: string, of: (value: number) => number, argument: Formula): Formula => ({
	value: of(argument.value),
	write: (style) => whole(`${name}(${signed(argument.write(style))})`),
})
export const squareRoot = (of: Formula): Formula => functionOf('square root', Math.sqrt, of)
/** The natural logarithm. */
export const naturalLog = (of: Formula): Formula => functionOf('ln', Math.log, of)
const degrees = 180 / Math.PI
/** The angle, degrees, whose tangent is given. */
export const arcTangentDeg = (tangent: Formula): Formula =>
	functionOf('atan', (value) => Math.atan(value) * degrees, tangent)
/** The angle, degrees, whose sine is given; a sine beyond 1 is held at 1. */
export const arcSineDeg = (sine: Formula): Formula =>
	functionOf('asin', (value) => Math.asin(Math.min(1, Math.max(-1, value))) * degrees, sine)

/** The formula with its numbers put in. */
export const inNumbers = ({ write }: Formula): string => signed(write('numbers'))
/** The formula with the names of what is put in. */
export const inNames = ({ write }: Formula): string => signed(write('names'))
/**
 * The formula with its numbers put in and what it comes to: '(10 - 0) / 180 = 0.06'.
 * @param unit stands after the result; @param digits decimals of the result, at least 1
 */
export const equation = (formula: Formula, unit = '', digits = 2): string =>
	`${inNumbers(formula)} = ${figure(formula.value, digits)}${unit === '' ? '' : ` ${unit}`}`
