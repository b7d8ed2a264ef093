/** What people type into a field, and what it is taken for. */
import { describe, expect, it } from 'vitest'
import { parseDate } from '../../renderer/parts/parseDate.ts'
import { parseNumber } from '../../renderer/parts/parseNumber.ts'

describe('a number as typed', () => {
	it.each<[string, string, number[]]>([
		['263,5', 'mm', [263.5]],
		['263.5', 'mm', [263.5]],
		['246 247', 'mm', [246, 247]],
		['246; 247', 'mm', [246, 247]],
		['26.4 cm', 'mm', [264]],
		// 10 3/8 in = 10.375 x 25.4 mm (the international inch)
		['10 3/8 in', 'mm', [263.525]],
		['-2 1 0', 'score', [-2, 1, 0]],
		['', 'mm', []],
		['2,5', 'cm', [2.5]],
	])('%j in %s is %j', (text, unit, values) =>
		expect(parseNumber(text, unit)).toEqual({ ok: true, values }),
	)
	it.each([
		['1,234.5', 'mm'],
		['263,5,1', 'mm'],
		['26 kg', 'mm'],
		['abc', 'mm'],
		['1/0 in', 'mm'],
		['26 cm', 'deg'],
	])('%j in %s is refused in words', (text, unit) => {
		const parsed = parseNumber(text, unit)
		expect(parsed.ok).toBe(false)
		expect(parsed.ok ? '' : parsed.says).toMatch(/Type|Is the/)
	})
})
describe('a date as typed', () => {
	it.each([
		['2013-05-02', '2013-05-02'],
		['2 May 2013', '2013-05-02'],
		['2 may 2013', '2013-05-02'],
		['25/5/2013', '2013-05-25'],
		['5/25/2013', '2013-05-25'],
		['2.5.2013', '2013-05-02'],
		['4/4/2012', '2012-04-04'],
		['29 Feb 2012', '2012-02-29'],
	])('%j is %s', (text, iso) => expect(parseDate(text)).toEqual({ ok: true, iso }))
	it.each([
		['3/4/2013', 'two ways: 3 April or 4 March'],
		['30 Feb 2013', 'not a day of the calendar'],
		['2013-02-29', 'not a day of the calendar'],
		['2 Mayday 2013', 'not a date'],
		['soon', 'not a date'],
		['2/5/13', 'not a date'],
	])('%j asks: %s', (text, words) => {
		const parsed = parseDate(text)
		expect(parsed.ok ? '' : parsed.says).toContain(words)
	})
})
