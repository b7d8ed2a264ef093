/** The heel raise: when, how much, within what limits. */
import { describe, expect, it } from 'vitest'
import { pitchDeg } from '../../shared/engine/ankle/pitch.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { of, protocol } from './ankle-visit.ts'

describe('heel raise', () => {
	// Common practice, no source (clinical.md 2.4): 4 mm for a restricted ankle, 5 for apophysitis, 6
	// for a front block; both feet; the largest, never the sum.
	const apophysitis = {
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
describe('more of the heel raise', () => {
	// Dixon and Kerwin 1999: observed over geometric 0.82 (clinical.md 1.8, 9 row 4).
	it('transfer of a raise', () =>
		expect(Math.abs(pitchDeg(15, 180) * protocol.value('ankle.raiseTransfer') - 3.9)).toBeLessThan(
			0.05,
		))
	const body = { legLengthDifferenceMm: 8, shorterLeg: 'right' as const, legLengthSymptoms: true }
	it('both feet alike unless a leg-length reason is recorded', () => {
		expect(of({ left: { lungeDeg: 30 } }, { body }).heelRaiseMm).toEqual({ left: 4, right: 4 })
		// 8 mm x 0.7 = 5.6 mm (clinical.md 2.5).
		expect(of({}, { body: { ...body, legLengthReason: 'back pain' } }).heelRaiseMm).toEqual({
			left: 0,
			right: 5.6,
		})
		// With 4 mm on both feet only 2 of the 5.6 fit below the boot limit of 6.
		const result = of(
			{ left: { lungeDeg: 30 } },
			{ body: { ...body, legLengthReason: 'back pain' } },
		)
		expect(result.heelRaiseMm).toEqual({ left: 4, right: 6 })
		expect(result.findings.find((finding) => finding.id === 'ankle.heel-raise.both')).toMatchObject(
			{
				code: 'ankle.heel-raise',
				params: { mm: { left: 4, right: 6 }, shorter: 'right', capped: true },
			},
		)
	})
	it.each([
		[{ ...body, legLengthReason: 'x', legLengthDifferenceMm: 4.9 }],
		[{ ...body, legLengthReason: 'x', legLengthSymptoms: false }],
		[{ ...body, legLengthReason: 'x', legLengthDifferenceMm: 20 }],
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
