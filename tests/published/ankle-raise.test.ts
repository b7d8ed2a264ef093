/** What the ankle room alone would wish for, and the limits of what lies in a pair. */
import { describe, expect, it } from 'vitest'
import { pitchDeg } from '../../shared/engine/ankle/pitch.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { of, protocol } from './ankle-visit.ts'

describe('heel raise', () => {
	// Common practice, no source (clinical.md 2.4): 4 mm for a restricted ankle, 5 for apophysitis, 6
	// for a front block; both feet; the largest, never the sum.
	const apophysitis = {
		player: { givenName: 'A', familyName: 'B', birthDate: '2015-01-01', sex: 'male' as const },
		conditions: [
			{
				condition: 'calcaneal-apophysitis' as const,
				side: 'left' as const,
				status: 'current' as const,
			},
		],
	}
	it.each([
		[{ left: { lungeDeg: 30 } }, {}, 4],
		[{ left: { lungeDeg: 40 } }, apophysitis, 5],
		[{ left: { lungeDeg: 30 } }, apophysitis, 5],
		[{ left: { lungeDeg: 30, endFeel: 'hard-stop' as const } }, apophysitis, 6],
	])('%j %j', (ankles, more, mm) =>
		expect(of(ankles, more).heelRaiseMm).toEqual({ left: mm, right: mm }),
	)
	it('none without a reason', () =>
		expect(of({ left: { lungeDeg: 40 }, right: { lungeDeg: 41 } }).heelRaiseMm).toBeUndefined())
	// Boot limits: warn above 6, stop above 10 (clinical.md 2.4, practice).
	it.each([
		[6, undefined],
		[6.1, 'caution'],
		[10, 'caution'],
		[10.1, 'stop'],
	])('a raise of %f mm in a boot', (heelLiftMm, level) =>
		expect(
			of({}, { footwear: [{ id: 'b', heelLiftMm }] }).findings.find(
				(finding) => finding.id === 'ankle.lift-b-1.both',
			)?.level,
		).toBe(level),
	)
	// clinical.md 1.8 example carried through the room: trainer 10 mm, boot 0 mm, heel to ball 180
	// mm.
	it('demand of the boot against the trainer', () => {
		const footwear: Visit['footwear'] = [
			{ id: 't', sole: 'road', heelToForefootOffsetMm: 10 },
			{ id: 'b', sole: 'firm-ground', heelToForefootOffsetMm: 0 },
		]
		expect(
			of({}, { feet: { left: { heelToBallMm: 180 } }, footwear }).findings.find(
				(finding) => finding.id === 'ankle.demand-t-1-b-2.both',
			)?.params,
		).toEqual({ from: 't', to: 'b', moreDeg: 3.2 })
	})
})
const apophysitisOf: Visit['conditions'] = [
	{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' },
]
describe('more of the heel raise', () => {
	// Dixon and Kerwin 1999: observed over geometric 0.82 (clinical.md 1.8, 9 row 4).
	it('transfer of a raise', () =>
		expect(Math.abs(pitchDeg(15, 180) * protocol.value('ankle.raiseTransfer') - 3.9)).toBeLessThan(
			0.05,
		))
	const body = { legLengthDifferenceMm: 8, shorterLeg: 'right' as const, legLengthSymptoms: true }
	it('of an adult no heel is a growing one', () => {
		const conditions = apophysitisOf
		expect(of({}, { conditions }).heelRaiseMm).toBeUndefined()
	})
	it('left less right is the correction; what is for both gives way', () => {
		// 8 mm x 0.7 = 5.6 mm (clinical.md 2.5).
		expect(of({}, { body }).heelRaiseMm).toEqual({ left: 0, right: 5.6 })
		// Of the 4 mm for both only 0.4 would fit below the boot limit of 6 beside them: none is made.
		expect(of({ left: { lungeDeg: 30 } }, { body }).heelRaiseMm).toEqual({ left: 0, right: 5.6 })
		// 5 mm x 0.7 = 3.5 mm, which leaves 2.5 mm for both.
		const smaller = { ...body, legLengthDifferenceMm: 5 }
		expect(of({ left: { lungeDeg: 30 } }, { body: smaller }).heelRaiseMm).toEqual({
			left: 2.5,
			right: 6,
		})
		// 12 mm x 0.7 = 8.4 mm: no more than 6 inside a boot.
		const larger = { ...body, legLengthDifferenceMm: 12 }
		expect(of({}, { body: larger }).heelRaiseMm).toEqual({ left: 0, right: 6 })
	})
	it('none where a raise closes the back of the ankle', () =>
		expect(
			of(
				{ left: { lungeDeg: 30, endFeel: 'front-pinch' } },
				{
					conditions: [
						{ condition: 'posterior-ankle-impingement', side: 'left', status: 'current' },
					],
				},
			).heelRaiseMm,
		).toBeUndefined())
	it.each([
		[{ ...body, legLengthDifferenceMm: 4.9 }],
		[{ ...body, legLengthSymptoms: false }],
		[{ ...body, legLengthDifferenceMm: 20 }],
	])('%j: no one-sided raise', (recorded) =>
		expect(of({}, { body: recorded }).heelRaiseMm).toBeUndefined(),
	)
	// Rabusin 2021 BJSM 55:486: 12 mm in daily shoes (clinical.md 2.3); the boot limits do not hold
	// for trainers.
	it.each([
		[12, undefined],
		[12.1, 'caution'],
	])('%f mm in a trainer', (heelLiftMm, level) =>
		expect(
			of({}, { footwear: [{ id: 't', sole: 'road', heelLiftMm }] }).findings.find(
				(finding) => finding.id === 'ankle.lift-t-1.both',
			)?.level,
		).toBe(level),
	)
	it('a pair named by a person leaves only plain letters in an id', () => {
		const ids = of(
			{},
			{
				footwear: [
					{ id: 'Päir / 1!', heelLiftMm: 11 },
					{ id: '***', heelLiftMm: 11 },
				],
			},
		).findings.map((finding) => finding.id)
		expect(ids).toEqual(['ankle.lift-p-ir-1-1.both', 'ankle.lift-2.both'])
	})
	// atan((10 - 0) / 180) = 3.18 degrees, between any two pairs, not only trainer and boot
	// (clinical.md 1.8).
	it('pitch between any two pairs', () => {
		const { pitches } = of(
			{},
			{
				feet: { left: { heelToBallMm: 180 } },
				footwear: [
					{ id: 'a', sole: 'firm-ground', heelToForefootOffsetMm: 0 },
					{ id: 'b', sole: 'indoor', heelToForefootOffsetMm: 4, heelLiftMm: 6 },
					{ id: 'c', heelToForefootOffsetMm: 10 },
				],
			},
		)
		expect(
			pitches.map(({ from, to, changeDeg }) => [from, to, Number(changeDeg.toFixed(2))]),
		).toEqual([
			['b', 'a', 3.18],
			['c', 'a', 3.18],
			['b', 'c', 0],
		])
	})
})
