/** Ottawa truth table (Stiell 1993) and Wells two-level score (Wells 2003, NICE NG158). */
import { describe, expect, it } from 'vitest'
import { loading } from '../../shared/engine/loading/loading.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { askedAlways, complaints } from '../../shared/engine/screening/complaints.table.ts'
import { diabeticRisk } from '../../shared/engine/screening/diabetic.ts'
import {
	filmNeeded,
	negativeLikelihoodRatio,
	probabilityAfter,
} from '../../shared/engine/screening/ottawa.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import { type Screening, screeningSchema, type Visit } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
const visit = (
	answers: Screening,
	birthDate = '2000-01-01',
	play?: Visit['play'],
	massKg?: number,
): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
	visitDate: '2027-01-20',
	screening: answers,
	...(play ? { play } : {}),
	...(massKg ? { body: { massKg } } : {}),
})

describe('Ottawa', () => {
	it.each([
		[0, 1, 1, 1, 'not-met'],
		[1, 0, 0, 0, 'not-met'],
		[1, 1, 0, 0, 'met'],
		[1, 0, 1, 1, 'met'],
		[1, 0, 1, 0, 'not-met'],
		[1, 0, 0, 1, 'not-met'],
		[1, 1, 1, 1, 'met'],
	] as const)('P%i T%i I%i N%i', (p, t, i, n, state) =>
		expect(filmNeeded(p === 1, t === 1, i === 1, n === 1)).toBe(state),
	)
	it('a missing answer is never no', () =>
		expect([
			filmNeeded(true, undefined, false, false),
			filmNeeded(undefined, true, false, false),
			filmNeeded(true, true, undefined, undefined),
		]).toEqual(['incomplete', 'incomplete', 'met']))
	// flags-load.md 1.2 row 8: any missing input with the rest negative is incomplete, never no; a
	// rule already met stays met.
	it('each question left open alone', () => {
		const answers = [false, false, false, false] as (boolean | undefined)[]
		for (const pain of [false, true])
			for (const at of [0, 1, 2, 3]) {
				const [p, t, i, n] = answers.map((one, k) => (k === at ? undefined : k === 0 ? pain : one))
				expect(filmNeeded(p, t, i, n), `pain ${pain}, question ${at}`).toBe('incomplete')
			}
	})
	// All sixteen rows against the printed Boolean: P and (T or (I and N)).
	it('the whole truth table', () => {
		for (let row = 0; row < 16; row++) {
			const [p, t, i, n] = [8, 4, 2, 1].map((bit) => (row & bit) !== 0) as [
				boolean,
				boolean,
				boolean,
				boolean,
			]
			expect(filmNeeded(p, t, i, n)).toBe(p && (t || (i && n)) ? 'met' : 'not-met')
		}
	})
	const quiet = {
		side: 'left',
		daysAgo: 2,
		malleolarZonePain: true,
		midfootZonePain: false,
		tenderLateralMalleolus: false,
		tenderMedialMalleolus: false,
		tenderNavicular: false,
		tenderFifthMetatarsalBase: false,
		unableToBearWeightThen: false,
		unableToBearWeightNow: false,
	} as const
	it('met is same-day, newly unable is imaging, quiet proceeds', () => {
		expect(
			screening(visit({ injury: { ...quiet, tenderLateralMalleolus: true } }), protocol),
		).toMatchObject({ action: 'same-day', ottawa: { left: { ankle: 'met', foot: 'not-met' } } })
		expect(
			screening(visit({ injury: { ...quiet, unableToBearWeightNow: true } }), protocol),
		).toMatchObject({ action: 'imaging', ottawa: { left: { ankle: 'not-met' } } })
		expect(screening(visit({ injury: quiet }), protocol).action).toBe('proceed')
	})
	// Row 1: tenderness without pain in the zone is no by the rule, with a warning; row 6: new loss
	// of weight bearing asks for imaging; both rules may be met.
	it('rows 1 and 6, and both rules at once', () => {
		const one = screening(
			visit({
				injury: {
					...quiet,
					malleolarZonePain: false,
					tenderLateralMalleolus: true,
					unableToBearWeightThen: true,
					unableToBearWeightNow: true,
				},
			}),
			protocol,
		)
		expect([
			one.ottawa.left?.ankle,
			one.findings.some(
				(each) => each.id === 'screening.tender-without-pain.left' && each.level === 'caution',
			),
		]).toEqual(['not-met', true])
		expect(
			screening(visit({ injury: { ...quiet, unableToBearWeightNow: true } }), protocol).items.find(
				(each) => each.id === 'screening.newly-unable.left',
			)?.action,
		).toBe('imaging')
		expect(
			screening(
				visit({
					injury: {
						...quiet,
						midfootZonePain: true,
						unableToBearWeightThen: true,
						unableToBearWeightNow: true,
					},
				}),
				protocol,
			).ottawa.left,
		).toEqual({ ankle: 'met', foot: 'met' })
	})
	it.each([
		[10, '2000-01-01', 'not-met'],
		[11, '2000-01-01', 'not-applicable'],
		[2, '2021-01-20', 'not-met'],
		[2, '2021-01-21', 'not-applicable'],
	] as const)('%i days, born %s: %s', (daysAgo, birth, state) =>
		expect(
			screening(visit({ injury: { ...quiet, daysAgo } }, birth), protocol).ottawa.left?.ankle,
		).toBe(state),
	)
	it('reduced sensation: not applicable, never not met', () =>
		expect(
			screening(visit({ injury: quiet, reducedSensation: true }), protocol).ottawa.left,
		).toEqual({ ankle: 'not-applicable', foot: 'not-applicable' }))
	it.each([
		[{ daysAgo: 11 }, '2000-01-01'],
		[{ pregnant: true }, '2000-01-01'],
		[{ cannotBeAssessed: true }, '2000-01-01'],
		[{}, '2022-01-01'],
	])('not applicable %o', (more, birth) =>
		expect(screening(visit({ injury: { ...quiet, ...more } }, birth), protocol)).toMatchObject({
			action: 'same-day',
			ottawa: { left: { ankle: 'not-applicable', foot: 'not-applicable' } },
		}),
	)
})
describe('Wells', () => {
	const all = {
		activeCancer: true,
		paralysisOrCast: true,
		bedriddenOrSurgery: true,
		deepVeinTenderness: true,
		entireLegSwollen: true,
		calfDifferenceCm: 3,
		pittingOedema: true,
		collateralVeins: true,
		previousDvt: true,
	}
	it.each([
		[{}, 0, 'unlikely', 'proceed'],
		[{ calfDifferenceCm: 3, deepVeinTenderness: true }, 2, 'likely', 'same-day'],
		[{ calfDifferenceCm: 2.9, deepVeinTenderness: true }, 1, 'unlikely', 'same-day'],
		[all, 9, 'likely', 'same-day'],
		[{ alternativeAsLikely: true }, -2, 'unlikely', 'proceed'],
	] as const)('%o', (wells, score, band, action) =>
		expect(screening(visit({ wells }), protocol)).toMatchObject({ wells: { score, band }, action }),
	)
	it('under 18: no score', () =>
		expect(screening(visit({ wells: all }, '2013-01-01'), protocol)).toMatchObject({
			wells: { band: 'not-applicable' },
			action: 'same-day',
		}))
})
// Jayanthi 2015: strictly more hours than years; strictly more than 2 to 1.
it.each([
	[14, 14, 'hours'],
	[13, 13, ''],
	[12, 6, ''],
	[12, 5, 'ratio'],
	[12, 0, 'ratio'],
])('youth load: %i h, free %i', (organisedHoursPerWeek, freePlayHoursPerWeek, flag) => {
	const ids = loading(
		visit({}, '2014-01-20', { organisedHoursPerWeek, freePlayHoursPerWeek }),
		protocol,
	).findings.map((one) => one.id)
	expect([
		ids.includes('loading.hours-over-age'),
		ids.includes('loading.organised-to-free'),
	]).toEqual([flag === 'hours', flag === 'ratio'])
})
it('95 kg at 2.5 body weights is 2329.9 N, the middle of the span', () => {
	const force = loading(visit({}, '2000-01-01', undefined, 95), protocol).peakForceN!
	expect((force.lowN + force.highN) / 2).toBeCloseTo(2329.9, 1)
})

// Bachmann 2003 and Mayer 2009: what a negative rule leaves.
it('post-test probabilities', () => {
	expect(probabilityAfter(0.15, 0.08) * 100).toBeCloseTo(1.392, 2)
	expect(probabilityAfter(0.15, 0.07) * 100).toBeCloseTo(1.22, 2)
	expect(Math.abs(negativeLikelihoodRatio(0.978, 0.315) - 0.0698)).toBeLessThan(0.0005)
})
const at = (answers: Screening, birthDate?: string) =>
	screening(visit(answers, birthDate), protocol)
const child = '2016-01-01'
describe('bone stress by site', () => {
	const pain = { side: 'left', focalTenderness: true, loadPain: true } as const
	it.each([
		['navicular', 'imaging'],
		['fifth-metatarsal-proximal', 'imaging'],
		['hallux-sesamoid', 'imaging'],
		['medial-malleolus', 'imaging'],
		['talus', 'imaging'],
		['anterior-tibia', 'imaging'],
		['second-metatarsal-base', 'imaging'],
		['patella', 'imaging'],
		['femoral-neck', 'same-day'],
		['metatarsal-shaft', 'letter'],
		['calcaneus', 'letter'],
		['posteromedial-tibia', 'letter'],
		['fibula', 'letter'],
		['cuboid', 'letter'],
	] as const)('%s: %s', (site, action) =>
		expect(at({ boneStress: { ...pain, site } }).action).toBe(action),
	)
	it.each([
		[{ hopPain: true }, 'imaging'],
		[{ nightPain: true }, 'imaging'],
		[{ weeksOfPain: 2 }, 'letter'],
		[{ weeksOfPain: 2.5 }, 'imaging'],
	] as const)('low-risk site with %o: %s', (more, action) =>
		expect(at({ boneStress: { ...pain, site: 'cuboid', ...more } }).action).toBe(action),
	)
	it('blocks that limb only', () =>
		expect(at({ boneStress: { ...pain, site: 'navicular' } })).toMatchObject({
			blockedSides: ['left'],
			blockedBy: { right: [] },
		}))
	it('warns against hopping at a high-risk site and asks for the bone', () => {
		expect(
			at({ boneStress: { ...pain, site: 'navicular', hopPain: true } }).findings.map(
				(one) => one.id,
			),
		).toContain('screening.hop-tested.left')
		expect(at({ boneStress: pain }).findings.map((one) => one.id)).toContain(
			'screening.bone-site.left',
		)
	})
	it('an open answer is not asked, never no', () =>
		expect(
			at({ boneStress: { side: 'left', focalTenderness: true, site: 'cuboid' } }).items.find(
				(one) => one.id === 'screening.bone-stress-low.left',
			)!.state,
		).toBe('not-asked'))
})
describe('other screens', () => {
	it.each([
		[{ achilles: { side: 'left', noMovementOnSqueeze: true } }, 'same-day'],
		[{ achilles: { side: 'left', footDropsKneeBent: true } }, 'same-day'],
		[{ achilles: { side: 'left', gap: true } }, 'same-day'],
		[
			{
				achilles: {
					side: 'left',
					noMovementOnSqueeze: false,
					footDropsKneeBent: false,
					gap: false,
				},
			},
			'proceed',
		],
		[{ syndesmosis: { side: 'left', ligamentTenderness: true, cannotHop: true } }, 'imaging'],
		[{ syndesmosis: { side: 'left', ligamentTenderness: true, squeezePain: true } }, 'imaging'],
		[{ syndesmosis: { side: 'left', ligamentTenderness: true, rotationPain: true } }, 'imaging'],
		[{ syndesmosis: { side: 'left', ligamentTenderness: false, squeezePain: true } }, 'proceed'],
		[{ syndesmosis: { side: 'left', ligamentTenderness: true } }, 'proceed'],
		[{ lisfranc: { side: 'left', midfootPain: true, plantarBruise: true } }, 'imaging'],
		[{ lisfranc: { side: 'left', midfootPain: true, cannotHeelRise: true } }, 'imaging'],
		[{ lisfranc: { side: 'left', midfootPain: true, cannotBearWeight: true } }, 'same-day'],
		[{ infection: { side: 'left', spreadingRedness: true } }, 'same-day'],
		[{ infection: { side: 'left', spreadingRedness: true, generallyIll: true } }, 'emergency'],
		[{ infection: { side: 'left', infectedNailOrBlister: true } }, 'letter'],
		[{ neurological: { left: { feltHallux: false } } }, 'letter'],
		[
			{ neurological: { left: { feltHallux: true, feltFirstHead: true, feltFifthHead: true } } },
			'proceed',
		],
		[{ neurological: { gettingWorse: true } }, 'emergency'],
		[{ vascular: { left: { noDorsalisPedis: true, noPosteriorTibial: true } } }, 'letter'],
		[{ vascular: { left: { noDorsalisPedis: true, noPosteriorTibial: false } } }, 'proceed'],
		[{ vascular: { left: { anklePressureIndex: 0.89 } } }, 'letter'],
		[{ vascular: { left: { anklePressureIndex: 0.9 } } }, 'proceed'],
		[{ vascular: { left: { restPain: true } } }, 'emergency'],
		[{ tumour: { side: 'left', enlargingLump: true } }, 'imaging'],
		[{ tumour: { side: 'left', unexplainedBonePain: true } }, 'letter'],
		[{ lowEnergy: { periodsMissed: 3 } }, 'letter'],
		[{ lowEnergy: { periodsMissed: 2 } }, 'proceed'],
		[{ lowEnergy: { highRiskBoneStress: 1 } }, 'letter'],
		[{ lowEnergy: { otherBoneStress: 1 } }, 'proceed'],
		[{ lowEnergy: { otherBoneStress: 2 } }, 'letter'],
		[{ lowEnergy: { monthsLostToBoneStress: 6 } }, 'letter'],
		[{ inflammatory: { morningStiffnessMin: 30 } }, 'proceed'],
		[{ inflammatory: { morningStiffnessMin: 31 } }, 'letter'],
	] as [Screening, string][])('%o: %s', (answers, action) =>
		expect(at(answers).action).toBe(action),
	)
	it.each([
		[{ feverInPastWeek: true }, 'same-day'],
		[{ days: 8, examinedBefore: false }, 'same-day'],
		[{ days: 7, examinedBefore: false }, 'proceed'],
		[{ days: 14, examinedBefore: true }, 'proceed'],
		[{ days: 15, examinedBefore: true }, 'same-day'],
		[{ hipThighKneePain: true }, 'imaging'],
		[{ hipThighKneePain: true, cannotBearWeight: true }, 'same-day'],
	] as const)('child limp %o: %s', (more, action) =>
		expect(at({ limp: { side: 'left', ...more } }, child).action).toBe(action),
	)
	// flags-load.md 1.5: above 9 years, so from the day after the ninth birthday.
	it.each([
		['2018-01-20', 'proceed'],
		['2017-12-20', 'imaging'],
		['2017-06-20', 'imaging'],
		['2009-01-21', 'imaging'],
		['2009-01-20', 'proceed'],
	])('hip pain, born %s: %s', (birth, action) =>
		expect(at({ limp: { side: 'left', hipThighKneePain: true } }, birth).action).toBe(action),
	)
	it('hip pain under nine is not the growth-plate question', () =>
		expect(at({ limp: { side: 'left', hipThighKneePain: true } }, '2018-06-01').action).toBe(
			'proceed',
		))
	it('a child with bone pain: X-ray within 48 hours', () =>
		expect(at({ tumour: { side: 'left', unexplainedBonePain: true } }, child)).toMatchObject({
			action: 'imaging',
			findings: expect.arrayContaining([
				expect.objectContaining({ says: expect.stringContaining('48 hours') }),
			]),
		}))
})
describe('diabetic foot, NICE NG19', () => {
	const all = {
		callus: false,
		deformity: false,
		neuropathy: false,
		ischaemia: false,
		previousUlcer: false,
		amputation: false,
		ulcer: false,
		infection: false,
		criticalIschaemia: false,
		gangrene: false,
		hotRedSwollen: false,
	}
	it.each([
		[{ callus: true }, 'low'],
		[{ deformity: true }, 'moderate'],
		[{ neuropathy: true, callus: true }, 'high'],
		[{ ischaemia: true, deformity: true }, 'high'],
		[{ previousUlcer: true }, 'high'],
		[{ ulcer: true }, 'active'],
		[{ neuropathy: true, ischaemia: true }, 'high'],
		[{ hotRedSwollen: true }, 'active'],
	] as const)('%o: %s', (more, risk) =>
		expect(diabeticRisk({ ...all, ...more }, false)).toEqual({ risk, complete: true }),
	)
	it('an unasked question leaves it open', () => {
		expect(diabeticRisk({ callus: true }, undefined)).toEqual({
			risk: 'incomplete',
			complete: false,
		})
		expect(diabeticRisk({ deformity: true }, undefined)).toEqual({
			risk: 'moderate',
			complete: false,
		})
	})
	it.each([
		[{ deformity: true }, 'letter'],
		[{ ulcer: true }, 'same-day'],
	] as const)('%o: %s', (more, action) =>
		expect(
			at({ diabeticFoot: { left: { ...all, ...more }, renalReplacement: false } }).action,
		).toBe(action),
	)
	it('limb in danger is an emergency', () =>
		expect(at({ diabeticFoot: { limbOrLifeThreat: true } }).action).toBe('emergency'))
})
it('complaints open only questions that exist, and every unfolding group is reached', () => {
	const paths = [...askedAlways, ...complaints.flatMap((one) => one.opens)]
	for (const path of paths)
		expect(Object.keys(screeningSchema.shape)).toContain(path.replace('screening.', ''))
	expect(
		Object.keys(screeningSchema.shape).filter((key) => !paths.includes(`screening.${key}`)),
	).toEqual([])
})
it('nothing is ever said to be cleared', () => {
	for (const answers of [
		{},
		{
			achilles: { side: 'left', noMovementOnSqueeze: false, footDropsKneeBent: false, gap: false },
		},
	] as Screening[])
		for (const one of at(answers).findings)
			expect(one.says).not.toMatch(/\bcleared\b|is clear|ruled out/)
})
