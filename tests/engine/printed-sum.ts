/**
 * Works out a sum as it is printed in a working: '(10 - 0) / 180'. Each printed number stands for
 * any number that is rounded to it, so that the answer is a range.
 */

/** All numbers from low to high. */
interface Range {
	low: number
	high: number
}
const rangeOf = (...ends: number[]): Range => ({ low: Math.min(...ends), high: Math.max(...ends) })
/** A printed number: trailing zeros are left out, so that at least one decimal is meant. */
function printedNumber(text: string): Range {
	const decimals = Math.max(1, text.split('.')[1]?.length ?? 0)
	const half = 0.5 * 10 ** -decimals * (1 + 1e-9)
	return { low: Number(text) - half, high: Number(text) + half }
}
const corners = (a: Range, b: Range, of: (a: number, b: number) => number): Range =>
	rangeOf(of(a.low, b.low), of(a.low, b.high), of(a.high, b.low), of(a.high, b.high))
const divided = (a: Range, b: Range): Range =>
	b.low <= 0 && b.high >= 0
		? { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }
		: corners(a, b, (top, bottom) => top / bottom)
const toPower = (base: Range, exponent: Range): Range =>
	corners({ low: Math.max(0, base.low), high: base.high }, exponent, (b, e) => b ** e)
const squaredRange = (of: Range): Range =>
	of.low < 0 && of.high > 0
		? { low: 0, high: Math.max(of.low ** 2, of.high ** 2) }
		: rangeOf(of.low ** 2, of.high ** 2)
const monotone =
	(of: (value: number) => number) =>
	({ low, high }: Range): Range => ({ low: of(low), high: of(high) })
const degrees = 180 / Math.PI
const functions: Record<string, (argument: Range) => Range> = {
	atan: monotone((value) => Math.atan(value) * degrees),
	asin: monotone((value) => Math.asin(Math.min(1, Math.max(-1, value))) * degrees),
	ln: monotone(Math.log),
	'square root': monotone((value) => Math.sqrt(Math.max(0, value))),
}
const token = /\s*(\d+(?:\.\d+)?|to the power|squared|cubed|square root|atan|asin|ln|[-+x/()])/y

function tokensOf(text: string): string[] | undefined {
	const tokens: string[] = []
	token.lastIndex = 0
	while (token.lastIndex < text.length) {
		const from = token.lastIndex
		const found = token.exec(text)
		if (!found?.[1]) return text.slice(from).trim() === '' ? tokens : undefined
		tokens.push(found[1])
	}
	return tokens
}
/** Reads from the left: a sum of products of powers. */
class Reader {
	private at = 0
	private readonly tokens: readonly string[]
	private readonly numberOf: (text: string) => Range
	constructor(tokens: readonly string[], numberOf: (text: string) => Range) {
		this.tokens = tokens
		this.numberOf = numberOf
	}
	private take(...wanted: string[]): string | undefined {
		const next = this.tokens[this.at]
		if (next === undefined || !wanted.includes(next)) return undefined
		this.at++
		return next
	}
	private need(wanted: string): void {
		if (!this.take(wanted))
			throw new SyntaxError(`${wanted} wanted at ${this.at}: ${this.tokens.join(' ')}`)
	}
	whole(): Range {
		const answer = this.sum()
		if (this.at < this.tokens.length)
			throw new SyntaxError(`too much from ${this.at}: ${this.tokens.join(' ')}`)
		return answer
	}
	private sum(): Range {
		let sum = this.product()
		for (let sign = this.take('+', '-'); sign; sign = this.take('+', '-')) {
			const { low, high } = this.product()
			sum =
				sign === '+'
					? { low: sum.low + low, high: sum.high + high }
					: { low: sum.low - high, high: sum.high - low }
		}
		return sum
	}
	private product(): Range {
		if (this.take('-')) {
			const { low, high } = this.product()
			return { low: -high, high: -low }
		}
		let product = this.power()
		for (let sign = this.take('x', '/'); sign; sign = this.take('x', '/')) {
			const factor = this.power()
			product = sign === 'x' ? corners(product, factor, (a, b) => a * b) : divided(product, factor)
		}
		return product
	}
	private power(): Range {
		const base = this.atom()
		const sign = this.take('squared', 'cubed', 'to the power')
		if (sign === 'squared') return squaredRange(base)
		if (sign === 'cubed') return rangeOf(base.low ** 3, base.high ** 3)
		return sign ? toPower(base, this.atom()) : base
	}
	private atom(): Range {
		const name = this.take(...Object.keys(functions))
		if (name) return functions[name]!(this.bracketed())
		if (this.tokens[this.at] === '(') return this.bracketed()
		const text = this.tokens[this.at++]
		if (text === undefined || !/^\d/.test(text))
			throw new SyntaxError(`a number wanted: ${this.tokens.join(' ')}`)
		return this.numberOf(text)
	}
	private bracketed(): Range {
		this.need('(')
		const inside = this.sum()
		this.need(')')
		return inside
	}
}
/**
 * What a printed sum comes to. @param numberOf how a printed number is read
 * @throws SyntaxError where it is no sum
 */
export function workedOut(text: string, numberOf: (text: string) => Range = printedNumber): Range {
	const tokens = tokensOf(text)
	if (!tokens) throw new SyntaxError(`not a sum: ${text}`)
	return new Reader(tokens, numberOf).whole()
}
/** A sum printed in a line: what it comes to, and the number that stands behind it. */
interface Printed {
	sum: string
	worked: Range
	result: Range
}
const result = / = (-?)(\d+(?:\.\d+)?)(?! [-+x/] |\.?\d|-)/g
const startOfSum = /^([-(\d]|atan|asin|ln|square root)/
/** The longest end of a text that is a sum. @throws SyntaxError where there is none */
function lastSum(text: string): Pick<Printed, 'sum' | 'worked'> {
	const words = text.split(' ')
	for (const [index] of words.entries()) {
		const sum = words.slice(index).join(' ')
		// what stands after an operator is the end of a sum, not a sum
		if (/^[-+x/]$/.test(words[index - 1] ?? '') || !startOfSum.test(sum)) continue
		try {
			return { sum, worked: workedOut(sum) }
		} catch (error) {
			if (!(error instanceof SyntaxError)) throw error
		}
	}
	throw new SyntaxError(`no sum: ${text}`)
}
/** Every sum of a line that is followed by a number. @throws SyntaxError where that is no sum */
export const sumsIn = (line: string): Printed[] =>
	[...line.matchAll(result)].map((found) => {
		const [, sign, digits = ''] = found
		const { low, high } = printedNumber(digits)
		return {
			...lastSum(line.slice(0, found.index)),
			result: sign ? { low: -high, high: -low } : { low, high },
		}
	})
