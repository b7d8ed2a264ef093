/** Published and recomputed check values of the posture room, each with its source. */
import { describe, expect, it } from 'vitest'
import { durationFactor, firstLiftBelowMm } from '../../shared/engine/posture/leg-length.ts'
import { posture } from '../../shared/engine/posture/posture.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

const raw = openProtocol(),
	trial = openProtocol({ ...shippedProtocol, fpiScheme: 'trial' })
const visit = (
	recorded: NonNullable<Visit['posture']>,
	more: Partial<Visit> & { born?: string; sex?: 'male' | 'female' } = {},
): Visit => {
	const { born = '1998-01-01', sex = 'male', ...rest } = more
	return {
		format: 'lastwright-visit',
		version: 1,
		visitDate: '2026-09-01',
		player: { givenName: 'A', familyName: 'B', birthDate: born, sex },
		posture: recorded,
		...rest,
	}
}
/** Six items of -2 to 2 with the total asked for. */
const items = (total: number): number[] =>
	Array.from({ length: 6 }, (_, i) => {
		const left = Math.abs(total) - 2 * i
		return Math.sign(total) * Math.max(0, Math.min(2, left)) + 0
	})
const ids = (v: Visit): string[] => posture(v, [], raw).findings.map((one) => one.id)

describe('foot posture index', () => {
	// clinical.md 3.1 CHECK: sums of six items.
	it.each([
		[[1, 1, 1, 1, 0, 0], 4],
		[[2, 2, 2, 2, 2, 2], 12],
		[[-2, -2, -2, -2, -2, -2], -12],
	])('%j is %i', (fpi6, fpi) =>
		expect(posture(visit({ left: { fpi6 } }), [], raw).left.fpi).toBe(fpi),
	)
	// Raw banding, Redmond 2006/2008 (outer bands from memory); trial banding, Rabusin 2021
	// (clinical.md 3.1). The schemes part at 0 and at 6 and 7.
	it.each([
		[-12, 'highly-supinated', 'supinated'],
		[-5, 'highly-supinated', 'supinated'],
		[-4, 'supinated', 'supinated'],
		[-1, 'supinated', 'supinated'],
		[0, 'normal', 'supinated'],
		[1, 'normal', 'normal'],
		[5, 'normal', 'normal'],
		[6, 'pronated', 'normal'],
		[7, 'pronated', 'normal'],
		[8, 'pronated', 'pronated'],
		[9, 'pronated', 'pronated'],
		[10, 'highly-pronated', 'pronated'],
		[12, 'highly-pronated', 'pronated'],
	])('%i is %s (raw), %s (trial)', (total, rawBand, trialBand) => {
		const v = visit({ right: { fpi6: items(total) } })
		expect(posture(v, [], raw).right).toMatchObject({ fpi: total, fpiBand: rawBand })
		expect(posture(v, [], trial)).toMatchObject({
			fpiScheme: 'trial',
			right: { fpiBand: trialBand },
		})
	})
	// clinical.md 9 row 18: all items +1 is pronated in one scheme, normal in the other.
	it('all items +1', () => {
		const v = visit({ left: { fpi6: [1, 1, 1, 1, 1, 1] } })
		expect([posture(v, [], raw).left.fpiBand, posture(v, [], trial).left.fpiBand]).toEqual([
			'pronated',
			'normal',
		])
	})
	// The Foot 2013 (n 930): right 7 and left 3 differ by 4, asymmetry; 5 severe; 2 within normal
	// (clinical.md 3.1 CHECK).
	it.each([
		[5, 7, undefined],
		[4, 7, 'note'],
		[3, 7, 'note'],
		[2, 7, 'advise'],
	])('left %i, right %i', (l, r, level) =>
		expect(
			posture(
				visit({ left: { fpi6: items(l) }, right: { fpi6: items(r) } }),
				[],
				raw,
			).findings.find((one) => one.id === 'posture.fpi-asymmetry.both')?.level,
		).toBe(level),
	)
	// Gijon-Nogueron 2016: P85 is 6 in children of 6 to 11 years; a child of 9 with 6 is at the upper
	// limit (clinical.md 9 row 19).
	it.each([
		[5, undefined],
		[6, 'is at the upper limit'],
		[7, 'is above the upper limit'],
	])('child of 9 with %i', (total, says) => {
		const found = posture(
			visit({ left: { fpi6: items(total) } }, { born: '2017-03-01' }),
			[],
			raw,
		).findings.find((one) => one.id === 'posture.fpi-minor.left')
		if (says === undefined) expect(found).toBeUndefined()
		else expect(found?.says).toContain(says)
	})
})

describe('first MTP joint', () => {
	// clinical.md 3.3: from 65 free with Jack's free; from 50 with Jack's under 12 functional; under
	// 50 with a painful joint structural; 50 to 65 grey (JAPMA 2002;92:269, Laird, Gatt 2014).
	const painful = {
		conditions: [
			{ condition: 'hallux-limitus' as const, side: 'left' as const, status: 'current' as const },
		],
	}
	it.each([
		[65, 12, {}, 'free'],
		[65, 11.9, {}, 'functional-limit'],
		[50, 11.9, {}, 'functional-limit'],
		[50, 12, {}, 'grey'],
		[64.9, 30, {}, 'grey'],
		[49.9, 5, painful, 'structural-limit'],
		[49.9, 5, {}, 'grey'],
	])('%f off the ground, %f standing, %j: %s', (range, jack, more, state) =>
		expect(
			posture(
				visit({ left: { firstMtpDegNonWeightBearing: range, jackTestDeg: jack } }, more),
				[],
				raw,
			).left.firstMtp,
		).toBe(state),
	)
	it('says nothing of what was not measured', () => {
		expect(posture(visit({ left: { jackTestDeg: 5 } }), [], raw).left.firstMtp).toBeUndefined()
		expect(
			posture(visit({ left: { firstMtpDegNonWeightBearing: 70 } }), [], raw).left.firstMtp,
		).toBeUndefined()
	})
	it('pain on the other side does not count', () =>
		expect(
			posture(visit({ right: { firstMtpDegNonWeightBearing: 40 } }, painful), [], raw).right
				.firstMtp,
		).toBe('grey'))
})

describe('heel rises', () => {
	// Hébert-Losier 2017 Physiotherapy 103:446 (n 566), by decade from 20-29 (clinical.md 3.4). Under
	// 20 and from 80: none found.
	it.each([
		['male', [37, 32, 28, 23, 19, 14]],
		['female', [30, 27, 24, 21, 19, 16]],
	] as const)('%s', (sex, norms) =>
		norms.forEach((norm, i) => {
			for (const age of [20 + 10 * i, 29 + 10 * i]) {
				const of = (heelRises: number) =>
					ids(visit({ left: { heelRises } }, { sex, born: `${2026 - age}-01-01` }))
				expect(of(norm), `${age} y, ${norm}`).not.toContain('posture.heel-rises.left')
				expect(of(norm - 1), `${age} y, ${norm - 1}`).toContain('posture.heel-rises.left')
			}
		}),
	)
	it.each(['2007-01-01', '1946-01-01'])('no figure for a player born %s', (born) =>
		expect(ids(visit({ left: { heelRises: 1 } }, { born }))).not.toContain(
			'posture.heel-rises.left',
		),
	)
	// Side gap under 10 % is practice (clinical.md 3.4).
	it.each([
		[20, 18, true],
		[20, 19, false],
		[0, 0, false],
		[0, 1, true],
	])('%i and %i', (left, right, differs) =>
		expect(
			ids(visit({ left: { heelRises: left }, right: { heelRises: right } })).includes(
				'posture.heel-rise-gap.both',
			),
		).toBe(differs),
	)
	it('spells its source', () =>
		expect(raw.row('posture.riseMen20').source).toContain('Hébert-Losier'))
})

// Glasoe 2022 (expert): a hypermobile first ray counts above 8 mm with symptoms; the other readings
// are common practice (clinical.md 3.2).
it('first ray: each reading on its own basis', () => {
	const of = (firstRay: 'hypermobile' | 'plantarflexed') =>
		posture(visit({ left: { firstRay } }), [], raw).findings.find(
			(one) => one.id === 'posture.first-ray.left',
		)!
	expect(of('hypermobile')).toMatchObject({
		says: expect.stringContaining('above 8 mm'),
		basis: { source: expect.stringContaining('Glasoe 2022'), strength: 'expert' },
	})
	expect(of('plantarflexed').basis).toMatchObject({
		source: 'common practice, no source',
		strength: 'practice',
	})
})
// Cain 2007 JSAMS 10:311: futsal boys, FPI below 2 (clinical.md 3.1); boys only, strictly below.
it.each([
	[1, 'male', '2012-01-01', true],
	[2, 'male', '2012-01-01', false],
	[1, 'female', '2012-01-01', false],
	[1, 'male', '1998-01-01', false],
] as const)('FPI %i, %s born %s', (total, sex, born, said) =>
	expect(
		posture(visit({ left: { fpi6: items(total) } }, { sex, born }), [], raw).findings.some(
			(one) => one.id === 'posture.fpi-low.left',
		),
	).toBe(said),
)
// Mueller, in Nielsen 2009 JFAR 2:12: upper limit 10 mm; 13 and 15 also in print (clinical.md 3.2).
it.each([
	[10, false],
	[10.1, true],
])('navicular drop of %f mm', (navicularDropMm, over) =>
	expect(ids(visit({ left: { navicularDropMm } })).includes('posture.navicular-drop.left')).toBe(
		over,
	),
)

// Munuera: IPJ = 27.17 - 0.381 x MTP (clinical.md 3.3 CHECK, 9 row 20), tolerance 0.01; nothing
// where the line falls below nought.
it.each([
	[40, 11.93],
	[50, 8.12],
	[65, 2.41],
])('MTP %i degrees: IPJ %f', (firstMtpDegNonWeightBearing, ipj) =>
	expect(
		Math.abs(
			posture(visit({ left: { firstMtpDegNonWeightBearing } }), [], raw).left.ipjEstimateDeg! - ipj,
		),
	).toBeLessThan(0.01),
)
it('no IPJ estimate below nought', () =>
	expect(
		posture(visit({ left: { firstMtpDegNonWeightBearing: 80 } }), [], raw).left.ipjEstimateDeg,
	).toBeUndefined())

// Hébert-Losier 2017: day-to-day limits -6.2 to +6.5; 24 to 30 is within, 31 beyond (clinical.md
// 3.4, 9 row 22).
it.each([
	[30, 'within-error'],
	[31, 'real'],
	[18, 'within-error'],
	[17, 'real'],
])('heel rises 24 then %i: %s', (now, verdict) => {
	const result = posture(
		visit({ left: { heelRises: now } }),
		[{ ...visit({ left: { heelRises: 24 } }), visitDate: '2026-03-01' }],
		raw,
	)
	expect(result.changes.left.heelRises?.verdict).toBe(verdict)
	expect(result.findings.some((one) => one.id === 'posture.heel-rise-change.left')).toBe(
		verdict === 'real',
	)
})
it('an index has no published smallest change and is never called changed', () =>
	expect(
		posture(
			visit({ left: { fpi6: items(12) } }),
			[{ ...visit({ left: { fpi6: items(-12) } }), visitDate: '2026-03-01' }],
			raw,
		).changes.left.fpi?.verdict,
	).toBe('cannot-compare'))

describe('Beighton score by maturity', () => {
	// 2017 criteria, PMC7785693 (clinical.md 3.5 CHECK, 9 row 23): prepubertal 13 y 5 no; mature 17 y
	// 5 yes; 55 y 4 yes; 30 y 4 with two yes answers yes.
	it.each([
		['2013-01-01', { beighton: 5, puberty: 'before' as const }, 'not-met'],
		['2009-01-01', { beighton: 5, puberty: 'after' as const }, 'met'],
		['1971-01-01', { beighton: 4 }, 'met'],
		['1996-01-01', { beighton: 4, hypermobilityHistory: 2 }, 'met'],
		['1996-01-01', { beighton: 4, hypermobilityHistory: 1 }, 'not-met'],
		['1996-01-01', { beighton: 3, hypermobilityHistory: 5 }, 'not-met'],
		['2013-01-01', { beighton: 6, puberty: 'during' as const }, 'met'],
		['2013-01-01', { beighton: 9 }, 'maturity-unknown'],
	])('born %s, %j: %s', (born, body, state) =>
		expect(posture(visit({}, { born, body }), [], raw).beighton?.state).toBe(state),
	)
	it('one below the cut-off asks for the history, once', () => {
		expect(ids(visit({}, { born: '1996-01-01', body: { beighton: 4 } }))).toContain(
			'posture.beighton-near.none',
		)
		expect(
			ids(visit({}, { born: '1996-01-01', body: { beighton: 4, hypermobilityHistory: 0 } })),
		).not.toContain('posture.beighton-near.none')
	})
})

describe('leg-length difference', () => {
	const of = (body: NonNullable<Visit['body']>, born = '1990-01-01') =>
		posture(visit({}, { born, body }), [], raw).legLength
	// Practice bands 5, 10 and 20 mm (clinical.md 2.5); 10 mm x 70 % = 7 mm, trial PMC6417033 (9 row
	// 21).
	it.each([
		[4.9, 'record-only'],
		[5, 'only-if-symptomatic'],
		[9.9, 'only-if-symptomatic'],
		[10, 'consider'],
		[19.9, 'consider'],
		[20, 'refer'],
	])('%f mm: %s', (legLengthDifferenceMm, action) =>
		expect(of({ legLengthDifferenceMm })?.action).toBe(action),
	)
	it('symptoms are one answer for every room: as recorded, else a current condition', () => {
		const condition = {
			conditions: [
				{
					condition: 'leg-length-difference' as const,
					side: 'left' as const,
					status: 'current' as const,
				},
			],
		}
		const correction = (body: NonNullable<Visit['body']>) =>
			posture(visit({}, { born: '1990-01-01', body, ...condition }), [], raw).legLength
				?.correctionMm
		expect([
			correction({ legLengthDifferenceMm: 8 }),
			correction({ legLengthDifferenceMm: 8, legLengthSymptoms: false }),
		]).toEqual([{ min: 4, max: 5.6 }, undefined])
	})
	it('50 to 70 %', () =>
		expect(of({ legLengthDifferenceMm: 10, shorterLeg: 'left' })?.correctionMm).toEqual({
			min: 5,
			max: 7,
		}))
	it('without symptoms: none below 10 mm, and none in a growing player', () => {
		expect(of({ legLengthDifferenceMm: 8 })?.correctionMm).toBeUndefined()
		expect(of({ legLengthDifferenceMm: 8, legLengthSymptoms: true })?.correctionMm).toEqual({
			min: 4,
			max: 5.6,
		})
		expect(of({ legLengthDifferenceMm: 12 }, '2012-01-01')?.correctionMm).toBeUndefined()
	})
	// Heilig (clinical.md 2.5 CHECK): 12 / (2 + 1) = 4; 12 / (1 + 0) = 12; 10 / (3 + 2) = 2.
	it.each([
		[12, 2, 1, 4],
		[12, 1, 0, 12],
		[10, 3, 2, 2],
	])('%i / (%i + %i) is %i', (difference, duration, compensation, lift) =>
		expect(firstLiftBelowMm(difference, duration, compensation)).toBeCloseTo(lift, 9),
	)
	it('duration in years', () => expect([5, 10, 29, 30].map(durationFactor)).toEqual([1, 2, 2, 3]))
})
