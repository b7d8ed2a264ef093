/** Range, pitch and change of the ankle: published and recomputed check values. */
import { describe, expect, it } from 'vitest'
import { ankle } from '../../shared/engine/ankle/ankle.ts'
import {
	heightForPitch,
	lungeGeometryDeg,
	netPitchChange,
	pitchDeg,
} from '../../shared/engine/ankle/pitch.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { ids, of, protocol } from './ankle-visit.ts'

describe('pitch of a heel raise', () => {
	// Recomputed, atan(h / L), tolerance 0.01 degrees (clinical.md 1.8); L 150, 160, 170, 180, 190,
	// 200 mm.
	const table: [number, number[]][] = [
		[4, [1.53, 1.43, 1.35, 1.27, 1.21, 1.15]],
		[6, [2.29, 2.15, 2.02, 1.91, 1.81, 1.72]],
		[8, [3.05, 2.86, 2.69, 2.54, 2.41, 2.29]],
		[10, [3.81, 3.58, 3.37, 3.18, 3.01, 2.86]],
		[12, [4.57, 4.29, 4.04, 3.81, 3.61, 3.43]],
		[15, [5.71, 5.36, 5.04, 4.76, 4.51, 4.29]],
		[18, [6.84, 6.42, 6.04, 5.71, 5.41, 5.14]],
	]
	it.each(table)('%i mm', (height, angles) =>
		angles.forEach((angle, i) => {
			expect(Math.abs(pitchDeg(height, 150 + 10 * i) - angle)).toBeLessThan(0.01)
		}),
	)
	// The inverse, tolerance 0.01 mm (clinical.md 1.8).
	it.each([
		[180, [3.14, 6.29, 9.43, 12.59, 15.75]],
		[150, [2.62, 5.24, 7.86, 10.49, 13.12]],
	])('height for 1 to 5 degrees, L %i mm', (length, heights) =>
		heights.forEach((height, i) => {
			expect(Math.abs(heightForPitch(i + 1, length) - height)).toBeLessThan(0.01)
		}),
	)
	// clinical.md 1.8 and 9: trainer 10 mm to boot 0 mm, L 180: 3.18 degrees more; with 6 mm inside
	// the boot 1.27.
	it('change between two pairs', () => {
		expect(netPitchChange({ offsetMm: 10 }, { offsetMm: 0 }, 180).value).toBeCloseTo(3.18, 2)
		expect(netPitchChange({ offsetMm: 10 }, { offsetMm: 0, liftMm: 6 }, 180).value).toBeCloseTo(
			1.27,
			2,
		)
		expect(netPitchChange({ offsetMm: 0 }, { offsetMm: 10 }, 180).value).toBeCloseTo(-3.18, 2)
	})
	// Dixon and Kerwin 1999 JAB 15:139: a 15 mm lift cut peak dorsiflexion by 3.9 degrees; geometry
	// within 1.2 (clinical.md 1.8).
	it('near the published effect of 15 mm', () =>
		expect(Math.abs(pitchDeg(15, 180) - 3.9)).toBeLessThanOrEqual(1.2))
	it.each([0, -1, Number.NaN])('refuses a heel to ball of %f mm', (length) => {
		expect(() => pitchDeg(5, length)).toThrow(/give a positive number of mm/)
		expect(() => heightForPitch(5, length)).toThrow(/give a positive number of mm/)
	})
})
describe('lunge', () => {
	// Geometry with ankle-to-toe 19.9, knee 5 and shank 43 cm, from memory (clinical.md 1.4),
	// tolerance 0.1.
	it.each([
		[0, 20.3],
		[5, 27.6],
		[8, 32.2],
		[10, 35.4],
		[12, 38.7],
		[15, 44.1],
	])('%i cm is near %f degrees', (cm, deg) =>
		expect(Math.abs(lungeGeometryDeg(cm, 19.9, 5, 43).value - deg)).toBeLessThan(0.1),
	)
	// clinical.md 9 row 13: 5 cm with 18 degrees is 9.6 from the geometry, more than 8.
	it('a pair that does not fit', () => {
		const finding = of({ left: { lungeCm: 5, lungeDeg: 18 } }).findings.find(
			(finding) => finding.id === 'ankle.pair.left',
		)
		expect(finding?.because.at(-1)).toMatchObject({ value: 27.6, unit: 'deg' })
		expect(ids(of({ left: { lungeCm: 10, lungeDeg: 36 } }))).not.toContain('ankle.pair.left')
	})
	// Backman and Danielson 2011 AJSM 39:2626: restricted below 36.5 degrees (clinical.md 9 row 8).
	it.each([
		[36.4, 'restricted'],
		[36.5, 'adequate'],
	])('%f degrees is %s', (lungeDeg, band) =>
		expect(of({ left: { lungeDeg } }).left.band).toBe(band),
	)
	// Practice pages disagree between 8 and 10 cm; 9 in use (clinical.md 1.5). Degrees decide where
	// both were read.
	// The reading is sure beyond its standard error: 1.4 degrees, 0.6 cm (Konor 2012 IJSPT 7:279).
	it.each([
		[{ lungeDeg: 35.2 }, false],
		[{ lungeDeg: 35 }, true],
		[{ lungeDeg: 37.9 }, false],
		[{ lungeDeg: 38 }, true],
		[{ lungeDeg: 34 }, true],
		[{ lungeCm: 9.5 }, false],
		[{ lungeCm: 9.7 }, true],
		[{}, false],
	])('%j is sure: %s', (left, sure) => expect(of({ left }).left.bandSure).toBe(sure))
	it('centimetres only where no angle was read', () => {
		expect(of({ left: { lungeCm: 8.9 } }).left.band).toBe('restricted')
		expect(of({ left: { lungeCm: 9 } }).left.band).toBe('adequate')
		expect(of({ left: { lungeCm: 8.9, lungeDeg: 37 } }).left.band).toBe('adequate')
		expect(of({}).left.band).toBe('unknown')
	})
	// Chisholm 2012 Physiother Can 64:347: flag from 1.5 cm; act from 2.0 cm or 5 degrees, practice
	// (clinical.md 1.5, 9 row 7).
	it.each([
		[{ lungeCm: 9.2 }, { lungeCm: 11 }, 'flag'],
		[{ lungeCm: 9.6 }, { lungeCm: 11 }, 'none'],
		[{ lungeCm: 9.5 }, { lungeCm: 11 }, 'flag'],
		[{ lungeCm: 9 }, { lungeCm: 11 }, 'act'],
		[{ lungeDeg: 40 }, { lungeDeg: 45 }, 'act'],
		[{ lungeDeg: 40 }, { lungeDeg: 44.9 }, 'none'],
		[{ lungeDeg: 40 }, { lungeCm: 11 }, 'unknown'],
	])('%j and %j: %s', (left, right, asymmetry) =>
		expect(of({ left, right }).asymmetry).toBe(asymmetry),
	)
})
describe('what stops the motion', () => {
	// Off the ground. Barouk 2014 FAC 19:659: 0 degrees or less knee straight and 13 or more gained
	// (clinical.md 1.5, 9 row 12). Baumbach 2014 BMC MSD 15:246: a gap of 15 (12 to 18) is the healthy
	// mean and says nothing. Within 2.5 degrees of 13 (two readings, Konor 2012) it is unclear. End
	// feel, expert opinion (1.6).
	it.each([
		[{ lungeDeg: 30, kneeStraightDeg: 25, kneeBentDeg: 39 }, 'unknown'],
		[{ lungeDeg: 30, kneeStraightDeg: 4, kneeBentDeg: 20 }, 'unknown'],
		[{ lungeDeg: 30, kneeStraightDeg: 1, kneeBentDeg: 20 }, 'unknown'],
		[{ lungeDeg: 30, kneeStraightDeg: 0, kneeBentDeg: 16 }, 'gastrocnemius'],
		[{ lungeDeg: 30, kneeStraightDeg: -5, kneeBentDeg: 12 }, 'gastrocnemius'],
		[{ lungeDeg: 30, kneeStraightDeg: 0, kneeBentDeg: 14 }, 'unknown'],
		[{ lungeDeg: 30, kneeStraightDeg: 0, kneeBentDeg: 12 }, 'unknown'],
		[
			{ lungeDeg: 30, kneeStraightDeg: 2, kneeBentDeg: 14, endFeel: 'calf-stretch' as const },
			'unknown',
		],
		[{ lungeDeg: 30, kneeStraightDeg: -2, kneeBentDeg: 5 }, 'soleus-or-capsule'],
		[
			{ lungeDeg: 30, kneeStraightDeg: 4, kneeBentDeg: 4, endFeel: 'front-pinch' as const },
			'anterior-block',
		],
		[{ lungeDeg: 30, endFeel: 'hard-stop' as const }, 'anterior-block'],
		[
			{ lungeDeg: 30, endFeel: 'joint-pain' as const, kneeStraightDeg: 0, kneeBentDeg: 20 },
			'unknown',
		],
		[{ lungeDeg: 30, endFeel: 'calf-stretch' as const }, 'soleus-or-capsule'],
		[{ lungeDeg: 40, endFeel: 'front-pinch' as const }, 'none'],
	])('%j: %s', (left, limitedBy) => expect(of({ left }).left.limitedBy).toBe(limitedBy))
	it('a front end feel with enough range is still said, on its own basis', () => {
		const finding = of({ right: { lungeDeg: 40, endFeel: 'front-pinch' } }).findings.find(
			(finding) => finding.id === 'ankle.front-end-feel.right',
		)
		expect(finding?.basis).toEqual({
			rule: 'front end feel',
			source: expect.stringContaining('no source'),
			strength: 'expert',
		})
	})
})
// Barouk 2014 FAC 19:659: tight off the ground only with 0 degrees or less knee straight and 13 or
// more gained (clinical.md 1.5).
it.each([
	[0, 13, 'so here'],
	[1, 14, 'not so here'],
	[-2, 5, 'not so here'],
	[-2, 11, 'so here'],
])('knee straight %i, bent %i: %s', (kneeStraightDeg, kneeBentDeg, words) =>
	expect(
		of({ left: { kneeStraightDeg, kneeBentDeg } }).workings.find(
			(working) => working.id === 'ankle.limit.left',
		)!.lines[1],
	).toMatch(new RegExp(`straight: ${words}$`)),
)
// clinical.md 9 rows 1 to 3: 10 mm on 180 is 3.18 degrees, 6 on 170 is 2.02, 4 degrees on 180 is
// 12.59 mm; 1.8: 15 mm at 0.26 degrees a mm; the raise-block row of the trial.
it('numbered checks of pitch', () => {
	expect(
		[pitchDeg(10, 180), pitchDeg(6, 170), heightForPitch(4, 180)].map((value) => value.toFixed(2)),
	).toEqual(['3.18', '2.02', '12.59'])
	expect(3.9 / pitchDeg(15, 180)).toBeCloseTo(protocol.value('ankle.raiseTransfer'), 2)
	// asin(h / L) differs by less than 0.06 degrees to 18 mm and from 150 mm on.
	for (let h = 0; h <= 18; h++)
		for (let length = 150; length <= 200; length += 5)
			expect(Math.abs((Math.asin(h / length) * 180) / Math.PI - pitchDeg(h, length))).toBeLessThan(
				0.06,
			)
})
// Where heel to ball is not measured: 0.72 of foot length, heel centre to ball 0.60, both from
// memory (clinical.md 1.8).
it('levers from foot length', () => {
	const made = of(
		{ left: { lungeDeg: 30 } },
		{ feet: { left: { heelToToeMm: 250 }, right: { heelToToeMm: 250 } } },
	)
	expect(
		made.workings.find((working) => working.id === 'ankle.heel-raise')!.lines.join(' '),
	).toContain('atan(4 / 180) = 1.27 deg on heel to ball; atan(4 / 150) = 1.53 deg on heel centre')
})
describe('change since the last visit', () => {
	// Powden 2015 Man Ther 20:524: same examiner 1.9 cm, 4.7 degrees; different 1.6 cm, 4.6 degrees
	// (clinical.md 1.2, 9 row 9: +1.8 within, +2.0 real).
	const change = (
		ankles: Visit['ankles'],
		then: Visit['ankles'],
		examiners: [string?, string?],
	) => {
		const feet = (examiner?: string) => (examiner ? { feet: { examiner } } : {})
		return ankle(
			{
				format: 'lastwright-visit',
				version: 1,
				visitDate: '2026-09-01',
				player: { givenName: 'A', familyName: 'B', birthDate: '1998-01-01', sex: 'male' },
				...(ankles ? { ankles } : {}),
				...feet(examiners[0]),
			},
			[
				{
					format: 'lastwright-visit',
					version: 1,
					visitDate: '2026-03-01',
					player: { givenName: 'A', familyName: 'B', birthDate: '1998-01-01', sex: 'male' },
					...(then ? { ankles: then } : {}),
					...feet(examiners[1]),
				},
			],
			protocol,
		)
	}
	it.each([
		[9, 10.8, ['R', 'R'], 'within-error'],
		[9, 11, ['R', 'R'], 'real'],
		[9, 10.7, ['R', 'S'], 'real'],
		[9, 10.5, ['R', 'S'], 'within-error'],
		[9, 10.7, [], 'within-error'],
	] as [number, number, [string?, string?], string][])(
		'%f to %f cm, %j: %s',
		(was, now, who, verdict) => {
			const result = change({ left: { lungeCm: now } }, { left: { lungeCm: was } }, who)
			expect(result.changes.left.lungeCm?.verdict).toBe(verdict)
			expect(ids(result).includes('ankle.change-cm.left')).toBe(verdict === 'real')
		},
	)
	it.each([
		[36, 40.6, ['R', 'R'], 'within-error'],
		[36, 40.7, ['R', 'R'], 'real'],
		[36, 40.6, ['R', 'S'], 'real'],
	] as [number, number, [string?, string?], string][])(
		'%f to %f degrees, %j: %s',
		(was, now, who, verdict) =>
			expect(
				change({ right: { lungeDeg: now } }, { right: { lungeDeg: was } }, who).changes.right
					.lungeDeg?.verdict,
			).toBe(verdict),
	)
})
