/** What people type into a field, and what it is taken for. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judge } from '../../renderer/parts/judge.ts'
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
describe('a comma that may part two readings', () => {
	const toe = 'feet.left.heelToToeMm'
	it.each<[string, unknown]>([
		['263,5', 263.5],
		['24,7 cm', 247],
		['247, 248', [247, 248]],
		['246,5 247,5', [246.5, 247.5]],
		['247.248', 247.248],
	])('%j is clear', (text, value) => expect(judge(toe, text)).toEqual({ value }))
	it('is asked about in words, and each way has a text that is clear', () => {
		const { error, ways, value } = judge(toe, '247,248')
		expect(value).toBeUndefined()
		expect(error).toContain("'247,248'")
		expect(ways).toEqual([
			{ says: '247 and 248 mm', text: '247 248' },
			{ says: '247.248 mm', text: '247.248' },
		])
		expect(ways?.map(({ text }) => judge(toe, text))).toEqual([
			{ value: [247, 248] },
			{ value: 247.248 },
		])
	})
	it('where one value goes it is typed anew', () => {
		const { error, ways } = judge('body.motherStatureCm', '165,166')
		expect(ways).toBeUndefined()
		expect(error).toContain('165.166 cm or 165 and 166 cm. One value goes here')
	})
	it('a decimal that the instrument gives is never asked about', () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 150, max: 350 }),
				fc.integer({ min: 0, max: 9 }),
				(mm, tenth) => {
					expect(judge(toe, `${mm},${tenth}`).value).toBe(Number(`${mm}.${tenth}`))
				},
			),
		)
	})
	it('two usual readings with a comma between them are never one value by themselves', () => {
		const usual = fc.integer({ min: 200, max: 320 })
		fc.assert(
			fc.property(usual, usual, (one, another) => {
				const { value, ways } = judge(toe, `${one},${another}`)
				expect(value).toBeUndefined()
				expect(ways?.[0]?.text).toBe(`${one} ${another}`)
			}),
		)
	})
	it('whatever is typed is a value, or is told why not', () => {
		fc.assert(
			fc.property(fc.stringMatching(/^[0-9][0-9,.; xm]{0,9}$/), (text) => {
				const { value, error, ways } = judge(toe, text)
				expect(error === undefined).toBe(value !== undefined)
				for (const way of ways ?? []) expect(judge(toe, way.text).ways).toBeUndefined()
			}),
		)
	})
})
describe('what is told of a number that cannot be read', () => {
	it.each([
		['24,7x', "'24,7x' is not a number: 'x' is no unit."],
		['26 kg', "'26 kg' is given in kg, and this field takes mm. Type it in mm."],
		['263,5,1', 'more than one comma or point'],
		['246 247 248 249 250 251 252', 'At most 6 readings are kept here, given 7.'],
		['12', '12 is outside what can be measured'],
	])('%j: %s', (text, words) => expect(judge('feet.left.heelToToeMm', text).error).toContain(words))
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
