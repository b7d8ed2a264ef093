/** What is left as it was at the last visit: only where nothing that it rests on changed. */
import { describe, expect, it } from 'vitest'
import { unchangedSince } from '../../shared/engine/prescription/unchanged.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
const visitOn = (visitDate: string, parts: object = {}) =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '1998-04-02', sex: 'male' },
		visitDate,
		feet: { examiner: 'X', left: { heelToToeMm: 260 }, right: { heelToToeMm: 261 } },
		ankles: { left: { lungeCm: 9 }, right: { lungeCm: 10 } },
		footwear: [{ id: 'p1', sole: 'turf' }],
		...parts,
	})
const last = visitOn('2026-03-01')
const unchanged = (parts: object, minor = false) =>
	unchangedSince(visitOn('2026-09-01', parts), [last], minor, protocol)
const feet = (left: number) => ({
	feet: { examiner: 'X', left: { heelToToeMm: left }, right: { heelToToeMm: 261 } },
})

describe('a question', () => {
	it('is unchanged where all that it rests on is, but never that of the gate', () => {
		const is = unchanged({})
		for (const id of ['size', 'raise', 'pair.match', 'owned', 'insert', 'review'])
			expect([id, is(id)]).toEqual([id, true])
		expect(is('gate')).toBe(false)
	})
	it('is new without a visit before', () => {
		expect(unchangedSince(last, [], false, protocol)('size')).toBe(false)
	})
	it('stands a change within the published error and none beyond it', () => {
		expect(unchanged(feet(260.5))('size')).toBe(true)
		expect(unchanged(feet(270))('size')).toBe(false)
		// a longer foot may leave off the pair that held the raise
		expect(unchanged(feet(270))('raise')).toBe(false)
		expect(unchanged(feet(270))('complaint')).toBe(true)
		const { left: _, ...right } = feet(260).feet
		expect(unchanged({ feet: right })('size')).toBe(false)
	})
	it('is another one with another condition, pair or answer', () => {
		const current = { condition: 'blister', side: 'left', status: 'current' }
		expect(unchanged({ conditions: [current] })('size')).toBe(false)
		expect(unchanged({ footwear: [{ id: 'p1', sole: 'turf', hurts: true }] })('owned')).toBe(false)
		expect(unchanged({ footwear: [] })('size')).toBe(true)
		expect(unchanged({ screening: { nightPain: false } })('insert')).toBe(false)
	})
	it('is another one for a growing player after a birthday', () => {
		expect(unchanged({}, true)('size')).toBe(false)
		expect(unchanged({}, false)('size')).toBe(true)
	})
})
