/** Wells two-level score (Wells 2003, NICE NG158), and the questions that unfold by complaint. */
import { describe, expect, it } from 'vitest'
import {
	askedAlways,
	askedInPrivate,
	complaints,
	restrictedNote,
} from '../../shared/engine/screening/complaints.table.ts'
import { diabeticRisk } from '../../shared/engine/screening/diabetic.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import { screeningSchema } from '../../shared/engine/visit/recorded/screening.ts'
import type { BoneSite } from '../../shared/engine/visit/terms.ts'
import type { Screening } from '../../shared/engine/visit/visit.ts'
import { protocol, screened, visit } from './screened-visit.ts'

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
		expect(screened({ wells })).toMatchObject({ wells: { score, band }, action }),
	)
	it('under 18: no score', () =>
		expect(screened({ wells: all }, '2013-01-01')).toMatchObject({
			wells: { band: 'not-applicable' },
			action: 'same-day',
		}))
})
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
		expect(screened({ boneStress: { ...pain, site } }).action).toBe(action),
	)
	it.each([
		[{ hopPain: true }, 'imaging'],
		[{ nightPain: true }, 'imaging'],
		[{ weeksOfPain: 2 }, 'letter'],
		[{ weeksOfPain: 2.5 }, 'imaging'],
	] as const)('low-risk site with %o: %s', (more, action) =>
		expect(screened({ boneStress: { ...pain, site: 'cuboid', ...more } }).action).toBe(action),
	)
	it('blocks that limb only', () =>
		expect(screened({ boneStress: { ...pain, site: 'navicular' } })).toMatchObject({
			blockedSides: ['left'],
			blockedBy: { right: [] },
		}))
	it('warns against hopping at a high-risk site and asks for the bone', () => {
		expect(
			screened({ boneStress: { ...pain, site: 'navicular', hopPain: true } }).findings.map(
				(finding) => finding.id,
			),
		).toContain('screening.hop-tested.left')
		expect(screened({ boneStress: pain }).findings.map((finding) => finding.id)).toContain(
			'screening.bone-site.left',
		)
	})
	it('a rule that is open for the site is not told as not met by that of other sites', () => {
		const told = (site: BoneSite, answers: { loadPain?: boolean; hopPain?: boolean } = {}) =>
			screened({
				boneStress: { side: 'left', site, focalTenderness: true, ...answers },
			})
				.findings.map((finding) => finding.id)
				.filter((id) => id.endsWith('-not-met'))
		expect(told('navicular')).toEqual([])
		expect(told('cuboid')).toEqual([])
		expect(told('cuboid', { loadPain: false, hopPain: false })).toEqual([
			'screening.bone-stress-low.left-not-met',
		])
	})
	it('an open answer is not asked, never no', () =>
		expect(
			screened({ boneStress: { side: 'left', focalTenderness: true, site: 'cuboid' } }).items.find(
				(item) => item.id === 'screening.bone-stress-low.left',
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
		expect(screened(answers).action).toBe(action),
	)
	it.each([
		[{ feverInPastWeek: true }, 'same-day'],
		[{ days: 8, examinedBefore: false }, 'same-day'],
		[{ days: 7, examinedBefore: false }, 'proceed'],
		[{ days: 14, examinedBefore: true }, 'proceed'],
		[{ days: 15, examinedBefore: true }, 'same-day'],
		[{ hipThighKneePain: true }, 'same-day'],
		[{ hipThighKneePain: true, cannotBearWeight: true }, 'same-day'],
	] as const)('child limp %o: %s', (more, action) =>
		expect(screened({ limp: { side: 'left', ...more } }, child).action).toBe(action),
	)
	// Queensland Health paediatric orthopaedics and Royal Children's Hospital Melbourne: 8 to 16
	// years, hip, groin, thigh or knee pain with a limp: the same day, no weight on the leg.
	it.each([
		['2019-01-21', 'not suspected'],
		['2019-01-20', 'same-day'],
		['2018-12-20', 'same-day'],
		['2015-01-20', 'same-day'],
		['2009-01-21', 'same-day'],
		['2009-01-20', 'not suspected'],
	])('hip pain with a limp, born %s: %s', (birth, slipped) => {
		const { items } = screened({ limp: { side: 'left', hipThighKneePain: true } }, birth)
		const item = items.find(({ code }) => code === 'screening.limp-hip')!
		expect(item.state === 'yes' ? item.action : 'not suspected').toBe(slipped)
	})
	// Below and above those ages the same guidelines have the limp examined: in a minor the same day.
	it.each([
		['2019-01-21', 'same-day'],
		['2009-01-20', 'letter'],
	])('hip pain with a limp at other ages, born %s: %s', (birth, action) => {
		const grouped = screened({ limp: { side: 'left', hipThighKneePain: true } }, birth)
		expect(grouped.action).toBe(action)
		expect(screened({ hipPainWithLimp: true }, birth).action).toBe(action)
	})
	// NICE NG12: an X-ray within 48 hours.
	it('a child with bone pain is imaged within 48 hours', () =>
		expect(screened({ tumour: { side: 'left', unexplainedBonePain: true } }, child)).toMatchObject({
			action: 'imaging',
			findings: expect.arrayContaining([
				expect.objectContaining({
					code: 'screening.bone-pain-unexplained',
					params: { minor: true, hours: 48 },
				}),
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
			screened({ diabeticFoot: { left: { ...all, ...more }, renalReplacement: false } }).action,
		).toBe(action),
	)
	it('limb in danger is an emergency', () =>
		expect(screened({ diabeticFoot: { limbOrLifeThreat: true } }).action).toBe('emergency'))
})
it('complaints open only questions that exist, and every unfolding group is reached', () => {
	const paths = [
		...askedAlways,
		...askedInPrivate,
		restrictedNote,
		...complaints.flatMap((complaint) => complaint.opens),
	]
	for (const path of paths)
		expect(Object.keys(screeningSchema.shape)).toContain(path.replace('screening.', ''))
	expect(
		Object.keys(screeningSchema.shape).filter((key) => !paths.includes(`screening.${key}`)),
	).toEqual([])
})
// common practice, no source
describe('posterior tibial pain', () => {
	const withRises = (heelRises?: { left?: number; right?: number }) => {
		const posture = heelRises && {
			left: heelRises.left === undefined ? {} : { heelRises: heelRises.left },
			right: heelRises.right === undefined ? {} : { heelRises: heelRises.right },
		}
		return screening(
			{
				...visit({}),
				conditions: [
					{ condition: 'posterior-tibial-tendinopathy', side: 'left', status: 'current' },
				],
				...(posture ? { posture } : {}),
			},
			protocol,
		).action
	}
	it.each([
		[{ left: 0 }, 'letter'],
		[{ left: 1 }, 'proceed'],
		[{ left: 5, right: 0 }, 'proceed'],
		[undefined, 'proceed'],
	] as const)('heel rises %o: %s', (rises, action) => expect(withRises(rises)).toBe(action))
})
