/** The gate over any visit: danger never lowers it, acts lift nothing, sides are alike. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Gate } from '../../shared/engine/findings/gate.ts'
import { holdRows } from '../../shared/engine/protocol/holds.table.ts'
import { flagRows } from '../../shared/engine/screening/flags.table.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { gateAt, gated } from './gate-visit.ts'
import { swapVisit } from './mirror.ts'
import { wholeVisit as anyVisit } from './random-visit.ts'

const parts = ['person', 'left', 'right'] as const
const keysOf = (gate: Gate): Set<string> =>
	new Set(
		parts.flatMap((part) =>
			gate[part].holds.map(({ what, rule, side }) => `${part} ${what} ${rule} ${side ?? ''}`),
		),
	)
const heldOf = (gate: Gate): Set<string> =>
	new Set(parts.flatMap((part) => gate[part].holds.map(({ what }) => `${part} ${what}`)))
const without = ({ outcomes: _, ...visit }: Visit): Visit => visit

it('one more sign never lets go what was held', () => {
	fc.assert(
		fc.property(anyVisit, fc.constantFrom(...flagRows), (visit, { key }) => {
			const more = { ...visit, screening: { ...visit.screening, [key]: true } }
			const now = heldOf(gateAt(more))
			for (const held of heldOf(gateAt(visit))) expect(now).toContain(held)
		}),
	)
})
/** A swollen foot is measured anew at the next visit. */
const isOfTheDay = (key: string): boolean =>
	holdRows.some(({ rule, today }) => today === true && key.split(' ')[2] === rule)
it('all that was held at a visit is held at the next, unless an outcome ended it', () => {
	fc.assert(
		fc.property(anyVisit, (visit) => {
			const first = without(visit)
			const next: Visit = { ...without(visit), visitDate: '2099-01-01' }
			const { screening: _, conditions: __, ...silent } = next
			const left = keysOf(gateAt(first))
			const carried = keysOf(gateAt(silent, [first]))
			expect([...left].filter((key) => !carried.has(key) && !isOfTheDay(key))).toEqual([])
		}),
	)
})
it('an outcome that lifts nothing, or names another rule, lets go of nothing', () => {
	fc.assert(
		fc.property(anyVisit, (visit) => {
			const plain = without(visit)
			const rules = [...new Set(gateAt(plain).person.holds.map(({ rule }) => rule))]
			const outcomes = rules.map((rule) => ({
				rule,
				side: 'both' as const,
				result: 'excluded' as const,
				found: 'sent, advised, letter written',
				how: 'letter',
				by: 'clinician',
				on: visit.visitDate,
				treatingDoctorClears: true,
				lifts: [],
			}))
			expect(keysOf(gateAt({ ...plain, outcomes }))).toEqual(keysOf(gateAt(plain)))
		}),
	)
})
it('seen in a mirror it holds the same on the other side', () => {
	fc.assert(
		fc.property(anyVisit, (visit) => {
			const gate = gateAt(visit)
			const mirrored = gateAt(swapVisit(visit))
			const swap = (key: string) =>
				key.replace(/\b(left|right)\b/g, (side) => (side === 'left' ? 'right' : 'left'))
			expect([...keysOf(mirrored)].map(swap).sort()).toEqual([...keysOf(gate)].sort())
			expect(mirrored.left.state).toBe(gate.right.state)
			expect(mirrored.right.unasked).toEqual(gate.left.unasked)
		}),
	)
})
it('the findings behind it exist, each id once', () => {
	fc.assert(
		fc.property(anyVisit, (visit) => {
			const { gate } = gated(visit)
			const ids = assess(visit).findings.map(({ id }) => id)
			for (const part of parts) for (const id of gate[part].because) expect(ids).toContain(id)
			const own = ids.filter((id) => id.startsWith('screening.'))
			expect(own.length).toBe(new Set(own).size)
		}),
		{ numRuns: 50 },
	)
})
