/** What gives way in an insert, and the room that it shares with the raise: trade files as marked. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { InsertResult } from '../../shared/engine/findings/assessment.ts'
import { insert } from '../../shared/engine/insert/insert.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { amountOf, flat, has, idsOf, leftOf, visitWith } from './known-insert.ts'

const protocol = openProtocol()
const settledIn = ({ settled = [] }: InsertResult) => settled.map(({ id }) => id)
describe('an insert passes its own limits', () => {
	// clinical.md 2.4: 6 mm of material inside a boot, all together; one figure wherever it stands
	it('insert and raise share the room under a heel, and one figure', () => {
		const { insert: both, prescription } = assess(
			visitWith({
				posture: { left: { fpi6: flat } },
				conditions: [has('flexible-flatfoot-pain'), has('achilles-insertional', 'right')],
				body: { massKg: 80 },
				footwear: [
					{ id: 'b', sole: 'firm-ground', heelToForefootOffsetMm: 0 },
					{ id: 't', sole: 'road', heelToForefootOffsetMm: 8 },
				],
			}),
		)
		const boot = prescription.raise.pairs.find(({ pair }) => pair === 'b')!
		expect([boot.left.addMm, boot.right.addMm]).toEqual([3.5, 3.5])
		expect([boot.left.madeBy, boot.right.madeBy]).toEqual(['insert', 'wedge'])
		expect([boot.left.addedUnderHeelMm, boot.right.addedUnderHeelMm]).toEqual([6, 6])
		expect(amountOf(both.left, 'shell')).toBe(2.5)
		expect(amountOf(both.left, 'heel-raise')).toBe(3.5)
		expect(both.right.state).toBe('not-needed')
		// in trainers there is more room: the insert carries the least, a loose wedge the rest
		const trainer = prescription.raise.pairs.find(({ pair }) => pair === 't')!
		expect(trainer.left.addMm).toBe(6)
		expect(
			both.left.elements
				.find(({ element }) => element === 'heel-raise')!
				.cautioned!.map(({ code }) => code),
		).toContain('insert.caution-by-pair')
	})
	it('a raise alone is a wedge and no insert', () => {
		const { insert: both, prescription } = assess(
			visitWith({ conditions: [has('achilles-insertional')] }),
		)
		expect([both.left.state, both.right.state]).toEqual(['not-needed', 'not-needed'])
		const boot = prescription.raise.pairs.find(({ pair }) => pair === 'role.match')!
		expect([boot.left.addMm, boot.left.madeBy]).toEqual([6, 'wedge'])
	})
	// common practice, no source: a soft raise is cushion enough; pain now before range
	it('a cushion gives way to a raise for pain, and stands before one for range', () => {
		const growing = assess(
			visitWith({
				player: { givenName: 'A', familyName: 'B', birthDate: '2015-01-01', sex: 'male' },
				conditions: [has('calcaneal-apophysitis')],
			}),
		)
		expect(growing.insert.left.state).toBe('not-needed')
		expect(settledIn(growing.insert)).toContain('insert.settled-room-heel-heel-cushion.left')
		expect(growing.prescription.raise.pairs[0]!.left.addMm).toBe(5)
		const sore = assess(
			visitWith({
				conditions: [has('heel-fat-pad-pain')],
				ankles: { left: { lungeDeg: 30 }, right: { lungeDeg: 30 } },
			}),
		)
		expect([
			amountOf(sore.insert.left, 'heel-cushion'),
			amountOf(sore.insert.left, 'heel-raise'),
		]).toEqual([3, 3])
	})
	// clinical.md 2.5: the correction is on top of what is for both, on the shorter side only
	it('a leg-length correction is the difference between the feet', () => {
		const { insert: both, prescription } = assess(
			visitWith({
				conditions: [has('metatarsalgia', 'both'), has('leg-length-difference')],
				body: { legLengthDifferenceMm: 6, shorterLeg: 'left', legLengthSymptoms: true },
			}),
		)
		const { left, right } = prescription.raise.pairs[0]!
		expect(left.addMm - right.addMm).toBeGreaterThan(0)
		expect(amountOf(both.left, 'leg-length-raise')).toBeCloseTo(left.addMm - right.addMm, 9)
		expect(amountOf(both.right, 'leg-length-raise')).toBeUndefined()
	})
	// Telfer 2013: the inward moment on the knee rises with medial posting
	it('an osteoarthritic knee has neither post nor skive on the inner side, and is offered neither', () => {
		const { insert: both } = assess(
			visitWith({
				posture: { left: { fpi6: flat, supinationResistance: 'high' } },
				conditions: [has('flexible-flatfoot-pain'), has('knee-osteoarthritis')],
				body: { massKg: 70 },
			}),
		)
		expect(idsOf(both.left).filter((id) => /medial/.test(id))).toEqual([])
		expect(settledIn(both)).toEqual(
			expect.arrayContaining([
				'insert.withheld-rearfoot-post-medial.left',
				'insert.withheld-medial-skive.left',
			]),
		)
		expect(both.settled!.map(({ code }) => code)).not.toContain('insert.settled-skive')
	})
	// clinical.md 4.4: cut-out for a functional limit, stiff plate for a structural one
	it.each([
		[{ firstMtpDegNonWeightBearing: 70, jackTestDeg: 5 }, 'first-ray-cutout'],
		[{ firstMtpDegNonWeightBearing: 40, jackTestDeg: 5 }, 'forefoot-stiffener'],
	] as const)('a stiff first joint %j: %s alone', (joint, wanted) => {
		const ids = idsOf(
			leftOf({
				conditions: [has('hallux-limitus'), has('metatarsalgia')],
				posture: { left: { ...joint, firstRay: 'plantarflexed' } },
			}),
		)
		expect(ids.filter((id) => id === 'first-ray-cutout' || id === 'forefoot-stiffener')).toEqual([
			wanted,
		])
	})
	// common practice, no source: what hurts more now is what is treated, then the stronger evidence
	it.each([
		[8, 2, 'rearfoot-post-lateral', 'pain-now'],
		[2, 8, 'rearfoot-post-medial', 'pain-now'],
		[4, 4, 'rearfoot-post-medial', 'strength'],
	] as const)('pain of a high arch %i, of the shin %i: %s, by %s', (outer, inner, wanted, by) => {
		const both = assess(
			visitWith({
				posture: { left: { fpi6: flat } },
				conditions: [
					{ ...has('cavus-foot-pain'), painWorst: outer },
					{ ...has('shin-pain'), painWorst: inner },
				],
			}),
		).insert
		expect(idsOf(both.left).filter((id) => id.startsWith('rearfoot-post'))).toEqual([wanted])
		const said = both.settled!.filter(({ code }) => code === 'insert.settled-opposite')
		expect(said.map(({ params }) => [params.to, params.by])).toEqual([[wanted, by]])
	})
	it('where nothing tells two opposites apart, neither is proposed', () => {
		const both = assess(
			visitWith({
				posture: { left: { fpi6: flat, forefoot: 'varus-flexible', firstRay: 'plantarflexed' } },
				conditions: [has('shin-pain'), has('metatarsalgia')],
			}),
		).insert
		expect(idsOf(both.left).filter((id) => id.startsWith('forefoot-post'))).toEqual([])
		expect(settledIn(both)).toContain(
			'insert.settled-neither-forefoot-post-medial-forefoot-post-lateral.left',
		)
	})
	// common practice, no source
	it.each([
		[{ hurts: true }, {}, 'take-out-hurts'],
		[{}, {}, 'leave'],
		[{}, { conditions: [has('metatarsalgia')] }, 'take-out-new'],
		[{}, { screening: { rigidFlatFoot: true } }, 'leave-held'],
	] as const)('an insert already worn, %j, %j: %s', (pair, more, verdict) => {
		const { insert: both } = assess(
			visitWith({
				footwear: [{ id: 'p', name: 'boots', sole: 'firm-ground', insertInside: true, ...pair }],
				...(more as Partial<Visit>),
			}),
		)
		expect(both.findings.find(({ code }) => code === 'insert.worn')!.params).toEqual({
			pair: 'boots',
			verdict,
		})
	})
	it('the liner that comes out gives its room back', () => {
		const given = visitWith({
			posture: { left: { fpi6: flat } },
			conditions: [has('flexible-flatfoot-pain'), has('achilles-midportion')],
			body: { massKg: 70 },
		})
		const { posture, prescription } = assess(given)
		const nothing = { aim: { kind: 'none' as const, because: [] }, steps: [] }
		const wanted = {
			...nothing,
			pairs: prescription.raise.pairs.map((pair) => ({
				...pair,
				left: { ...pair.left, addMm: 4, addedUnderHeelMm: 4 },
			})),
		}
		const shellMm = (room?: { removableLiner: boolean; linerMm: number }) =>
			amountOf(
				insert(
					given,
					{ posture, gate: prescription.gate, wanted, ...(room ? { room } : {}) },
					protocol,
				).left,
				'shell',
			)
		expect([shellMm(), shellMm({ removableLiner: true, linerMm: 5 })]).toEqual([2.5, 3.5])
	})
})
