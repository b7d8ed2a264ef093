/** Foot posture and first ray: published and recomputed check values, each with its source. */
import { describe, expect, it } from 'vitest'
import { posture } from '../../shared/engine/posture/posture.ts'
import { ids, items, raw, trial, visit } from './posture-visit.ts'

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
			).findings.find((finding) => finding.id === 'posture.fpi-asymmetry.both')?.level,
		).toBe(level),
	)
	// Gijon-Nogueron 2016: P85 is 6 in children of 6 to 11 years; a child of 9 with 6 is at the upper
	// limit (clinical.md 9 row 19).
	it.each([
		[5, undefined],
		[6, { side: 'left', fpi: 6, limit: 6 }],
		[7, { side: 'left', fpi: 7, limit: 6 }],
	])('child of 9 with %i', (total, params) => {
		const found = posture(
			visit({ left: { fpi6: items(total) } }, { born: '2017-03-01' }),
			[],
			raw,
		).findings.find((finding) => finding.id === 'posture.fpi-minor.left')
		expect(found?.params).toEqual(params)
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
	// 65 degrees is free (JAPMA 2002;92:269): at 55 a joint that is held standing does not move freely.
	it.each([
		[55, false],
		[64.9, false],
		[65, true],
	])('%f off the ground and held standing: free %s', (firstMtpDegNonWeightBearing, free) =>
		expect(
			posture(
				visit({ left: { firstMtpDegNonWeightBearing, jackTestDeg: 5 } }),
				[],
				raw,
			).findings.find(({ code }) => code === 'posture.first-mtp')?.params,
		).toEqual({ side: 'left', verdict: 'functional-limit', free }),
	)
	it('says nothing of what was not measured', () => {
		expect(posture(visit({ left: { jackTestDeg: 5 } }), [], raw).left.firstMtp).toBeUndefined()
		expect(
			posture(visit({ left: { firstMtpDegNonWeightBearing: 70 } }), [], raw).left.firstMtp,
		).toBeUndefined()
	})
	it('pain recorded without a side counts on either', () =>
		expect(
			posture(
				visit(
					{ right: { firstMtpDegNonWeightBearing: 40 } },
					{ conditions: [{ condition: 'hallux-limitus', side: 'none', status: 'current' }] },
				),
				[],
				raw,
			).right.firstMtp,
		).toBe('structural-limit'))
	it('pain on the other side does not count', () =>
		expect(
			posture(visit({ right: { firstMtpDegNonWeightBearing: 40 } }, painful), [], raw).right
				.firstMtp,
		).toBe('grey'))
})
// Glasoe 2022 (expert): a hypermobile first ray counts above 8 mm with symptoms; the other readings
// are common practice (clinical.md 3.2).
it('first ray: each reading on its own basis', () => {
	const of = (firstRay: 'hypermobile' | 'plantarflexed') =>
		posture(visit({ left: { firstRay } }), [], raw).findings.find(
			(finding) => finding.id === 'posture.first-ray.left',
		)!
	expect(of('hypermobile')).toMatchObject({
		params: { side: 'left', firstRay: 'hypermobile', excessMm: 8 },
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
			(finding) => finding.id === 'posture.fpi-low.left',
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
