/** What is hidden in the audit of the clinic cannot be found again by adding and subtracting. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hiddenCells, type Sum } from '../../shared/desk/clinic-audit/cells.ts'

const least = 5
const sums: readonly Sum[] = [
	['all', ['gone', 'again']],
	['gone', ['missing', 'due']],
	['again', ['told', 'untold']],
	['again', ['with', 'without']],
]
const leaves = fc.record({
	missing: fc.nat(9),
	due: fc.nat(3),
	again: fc.nat(14),
	told: fc.double({ min: 0, max: 1, noNaN: true }),
	with: fc.double({ min: 0, max: 1, noNaN: true }),
})
type Leaves = typeof leaves extends fc.Arbitrary<infer Value> ? Value : never
function countsOf({ missing, due, again, ...parts }: Leaves): Map<string, number> {
	const told = Math.round(parts.told * again)
	const by = Math.round(parts.with * again)
	return new Map([
		['all', missing + due + again],
		['gone', missing + due],
		['missing', missing],
		['due', due],
		['again', again],
		['told', told],
		['untold', again - told],
		['with', by],
		['without', again - by],
	])
}
type Table = Record<string, number>
const of = (table: Table, name: string): number => table[name] ?? 0
/** A cell that is chosen freely, and those that follow from it and the ones before. */
const steps: readonly [name: string, follows: (table: Table) => Table][] = [
	['again', () => ({})],
	['told', (table) => ({ untold: of(table, 'again') - of(table, 'told') })],
	['with', (table) => ({ without: of(table, 'again') - of(table, 'with') })],
	['missing', () => ({})],
	[
		'due',
		(table) => {
			const gone = of(table, 'missing') + of(table, 'due')
			return { gone, all: gone + of(table, 'again') }
		},
	],
]
const most = 24
type Fits = (name: string, value: number) => boolean
function* tablesOf(fits: Fits, at = 0, table: Table = {}): Generator<Table> {
	const [name, follows] = steps[at] ?? []
	if (name === undefined || follows === undefined) {
		yield table
		return
	}
	for (let value = 0; value <= most; value++) {
		const chosen = { ...table, [name]: value }
		const derived = follows(chosen)
		const all = Object.entries({ [name]: value, ...derived })
		if (all.every(([each, count]) => count >= 0 && fits(each, count)))
			yield* tablesOf(fits, at + 1, { ...chosen, ...derived })
	}
}
/**
 * By trying: every table that has the same cells to show. A second way, which knows nothing of bounds;
 * numbers past the end would only add to what a cell could be.
 */
function couldBe(counts: ReadonlyMap<string, number>, hidden: ReadonlySet<string>) {
	const found = new Map([...hidden].map((name) => [name, new Set<number>()]))
	const fits: Fits = (name, value) => (hidden.has(name) ? value > 0 : value === counts.get(name))
	for (const table of tablesOf(fits))
		for (const [name, values] of found) values.add(of(table, name))
	return found
}
const small = (counts: ReadonlyMap<string, number>) =>
	[...counts].filter(([, count]) => count > 0 && count < least).map(([name]) => name)

describe('a small cell of the audit', () => {
	it('is never shown, and could as well be no small one by all that is', () => {
		fc.assert(
			fc.property(leaves, (given) => {
				const counts = countsOf(given)
				const hidden = hiddenCells(counts, { sums, least })
				const could = couldBe(counts, hidden)
				for (const name of small(counts)) {
					expect(hidden.has(name), name).toBe(true)
					expect(Math.max(...(could.get(name) ?? [])), name).toBeGreaterThanOrEqual(least)
				}
			}),
		)
	})
	it('hides nothing where there is none', () => {
		fc.assert(
			fc.property(leaves, (given) => {
				const counts = countsOf(given)
				fc.pre(small(counts).length === 0)
				expect(hiddenCells(counts, { sums, least }).size).toBe(0)
			}),
		)
	})
	it('would be found by subtraction if it alone were hidden', () => {
		const counts = countsOf({ missing: 2, due: 0, again: 8, told: 1, with: 1 })
		expect(couldBe(counts, new Set(['missing'])).get('missing')).toEqual(new Set([2]))
		expect(hiddenCells(counts, { sums, least })).toContain('missing')
	})
})
