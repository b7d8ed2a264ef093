/** Counting of the audit: the order of players tells nothing, and the middle of values is the middle. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { thirdsOf } from '../../shared/desk/clinic-audit/account.ts'
import type { Mark } from '../../shared/desk/clinic-audit/seen.ts'
import { shapes } from '../../shared/desk/clinic-audit/tables.table.ts'
import { hidden, Tally } from '../../shared/desk/clinic-audit/tally.ts'
import { quantile, spreadOf } from '../../shared/engine/plain/middle.ts'

const condition = fc.constantFrom('sesamoid-pain', 'turf-toe', 'turf-toe|insert', 'turf-toe|none')
const pain = fc.integer({ min: 0, max: 10 })
const mark: fc.Arbitrary<Mark> = fc.oneof(
	fc.record({
		table: fc.constant('condition' as const),
		row: condition,
		cells: fc.constant(['missing']),
	}),
	fc.record({
		table: fc.constant('condition' as const),
		row: condition,
		cells: fc.constant(['pain-told', 'sessions-missing']),
		values: fc.record({ 'pain-before': pain, 'pain-after': pain }),
	}),
)
const players = fc.array(fc.array(mark, { maxLength: 2 }), { maxLength: 40 })
function tallied(marks: readonly (readonly Mark[])[]): Tally {
	const tally = new Tally()
	for (const each of marks) tally.add(each)
	return tally
}
describe('the tables of the audit', () => {
	it('are the same in whatever order the players come', () => {
		fc.assert(
			fc.property(players, (all) => {
				expect(tallied(all.toReversed()).tables(5)).toEqual(tallied(all).tables(5))
			}),
		)
	})
	it('show no count from one to four, and no value of fewer than five players', () => {
		fc.assert(
			fc.property(players, (all) => {
				for (const { cells, spreads } of tallied(all).tables(5).condition) {
					for (const cell of Object.values(cells))
						expect(cell === hidden || cell === 0 || cell >= 5).toBe(true)
					for (const spread of Object.values(spreads))
						expect(spread === hidden || spread.n >= 5).toBe(true)
				}
			}),
		)
	})
	it('show the parts of a row only where none of them is small', () => {
		fc.assert(
			fc.property(players, (all) => {
				const rows = tallied(all).tables(5).condition
				const parts = rows.filter(({ row }) => row.includes('|'))
				for (const { cells } of parts) expect(Object.values(cells)).not.toContain(hidden)
			}),
		)
	})
	it.each(Object.entries(shapes))('%s: each cell is a part of one sum at most', (_, { sums }) => {
		const parts = sums.flatMap(([, each]) => each)
		expect(new Set(parts).size).toBe(parts.length)
	})
})
const values = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
	minLength: 1,
	maxLength: 30,
})
/** The middle by taking away the least and the most, again and again. */
function middleOf(given: readonly number[]): number {
	const left = [...given]
	const takeOut = (value: number) => left.splice(left.indexOf(value), 1)
	while (left.length > 2) {
		takeOut(Math.min(...left))
		takeOut(Math.max(...left))
	}
	return left.reduce((sum, value) => sum + value, 0) / left.length
}
describe('number, median and range', () => {
	it('agree with taking away least and most', () => {
		fc.assert(
			fc.property(values, (given) => {
				const { n, median, low, high } = spreadOf(given)!
				expect({ n, low, high }).toEqual({
					n: given.length,
					low: Math.min(...given),
					high: Math.max(...given),
				})
				expect(median).toBeCloseTo(middleOf(given), 9)
			}),
		)
	})
	it('are nothing of nothing', () => {
		expect(spreadOf([])).toBeUndefined()
		expect(quantile([], 0.5)).toBeUndefined()
	})
	it('of thirds go with the growth that was forecast', () => {
		const expected = Array.from({ length: 16 }, (_, at) => 16 - at)
		const counted = {
			cells: new Map(),
			values: new Map([
				['expected', expected],
				['grown', expected],
			]),
		}
		expect(thirdsOf(counted, 5).map((third) => [third.expected.n, third.grown.median])).toEqual([
			[5, 3],
			[6, 8.5],
			[5, 14],
		])
		expect(thirdsOf(counted, 6)).toEqual([])
	})
})
