/** One picture of the player, whichever entry it comes from. */
import { describe, expect, it } from 'vitest'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'
import { brokenAnkle, gateAt, gated, heldIn, outcomeOf, visitOf } from './gate-visit.ts'

describe('foot at risk, from any entry', () => {
	it.each<[string, Screening, Partial<Visit>]>([
		[
			'a condition',
			{},
			{ conditions: [{ condition: 'neuropathy', side: 'left', status: 'current' }] },
		],
		['the monofilament', { neurological: { left: { feltHallux: false } } }, {}],
		['pulses', { vascular: { left: { noDorsalisPedis: true, noPosteriorTibial: true } } }, {}],
		['an answer', { diabeticFoot: { left: { previousUlcer: true } } }, {}],
		['moderate risk', { diabeticFoot: { left: { deformity: true } } }, {}],
	])('%s', (_, answers, more) => {
		const visit = visitOf(answers, more)
		const { gate, facts } = gated(visit)
		expect(facts.left.footAtRisk.length).toBeGreaterThan(0)
		expect(facts.right.footAtRisk).toEqual([])
		expect(facts.left.jointsAtRisk.map(({ joint }) => joint)).toHaveLength(3)
		expect(heldIn(gate)).toMatchObject({
			person: ['purchase', 'shelf'],
			left: ['insert'],
			right: [],
		})
	})
	it('diabetes alone at low risk is nothing', () => {
		const low = { callus: true, deformity: false, neuropathy: false, ischaemia: false } as const
		const no = {
			previousUlcer: false,
			amputation: false,
			ulcer: false,
			infection: false,
			criticalIschaemia: false,
			gangrene: false,
			hotRedSwollen: false,
		} as const
		const foot = { ...low, ...no }
		const visit = visitOf(
			{ diabeticFoot: { left: foot, right: foot, renalReplacement: false } },
			{ conditions: [{ condition: 'diabetes', side: 'none', status: 'current' }] },
		)
		expect(gated(visit).found.diabeticFoot).toEqual({ left: 'low', right: 'low' })
		expect(heldIn(gateAt(visit))).toEqual({ person: [], left: [], right: [] })
	})
	it('reduced feeling counts until the monofilament was felt everywhere', () => {
		const felt = { feltHallux: true, feltFirstHead: true, feltFifthHead: true } as const
		const said = visitOf({ reducedSensation: true })
		const tested = visitOf({ reducedSensation: true, neurological: { left: felt, right: felt } })
		expect(heldIn(gateAt(said)).left).toEqual(['insert'])
		expect(heldIn(gateAt(tested)).left).toEqual([])
	})
	it('a review stands for three months, at the next visit too', () => {
		const at = (visitDate: string, outcomes: ReturnType<typeof outcomeOf>[] = []) =>
			visitOf({ neurological: { left: { feltHallux: false } } }, { visitDate, outcomes })
		const reviewed = at('2027-01-20', [
			outcomeOf('foot-at-risk', ['purchase', 'shelf', 'insert'], { result: 'confirmed' }),
		])
		const none = { person: [], left: [], right: [] }
		expect(heldIn(gateAt(reviewed))).toEqual(none)
		expect(heldIn(gateAt(at('2027-04-20'), [reviewed]))).toEqual(none)
		expect(heldIn(gateAt(at('2027-04-21'), [reviewed])).left).toEqual(['insert'])
	})
})
it('roles: few, and only where something recorded asks for one', () => {
	const roles = (more: Partial<Visit>) => gated(visitOf({}, more)).facts.roles
	expect(roles({})).toEqual(['match', 'training'])
	expect(roles({ play: { code: 'association', matchesPerWeek: 0 } })).toEqual(['training'])
	expect(roles({ footwear: [{ id: 'p1', sole: 'road' }] })).toEqual([
		'match',
		'training',
		'running',
	])
	expect(roles({ footwear: [{ id: 'p1', sole: 'road', roles: ['everyday'] }] })).toEqual([
		'match',
		'training',
		'everyday',
	])
	expect(
		roles({
			conditions: [{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' }],
		}),
	).toContain('everyday')
})
it.each<[string, Screening, Partial<Visit>]>([
	['Ottawa met', brokenAnkle, {}],
	[
		'an injury that is not fully asked about',
		{ injury: { side: 'left', daysAgo: 2, midfootZonePain: true } },
		{},
	],
	['no weight borne', { limp: { side: 'left', cannotBearWeight: true } }, {}],
	['a torn heel cord', { achilles: { side: 'left', gap: true } }, {}],
	['a hot joint', { infection: { side: 'left', hotSwollenJoint: true } }, {}],
	[
		'severe pain',
		{},
		{ conditions: [{ condition: 'calf-strain', side: 'left', status: 'current', painWorst: 9 }] },
	],
])('acute: %s', (_, answers, more) => {
	const { facts } = gated(visitOf(answers, more))
	expect(facts.left.acute.length).toBeGreaterThan(0)
	expect(facts.right.acute).toEqual([])
})
const allNo = {
	malleolarZonePain: false,
	midfootZonePain: false,
	tenderLateralMalleolus: false,
	tenderMedialMalleolus: false,
	tenderNavicular: false,
	tenderFifthMetatarsalBase: false,
	unableToBearWeightThen: false,
	unableToBearWeightNow: false,
} as const
it('an old injury, or one without a sign, is not acute', () => {
	for (const injury of [
		{ side: 'left', daysAgo: 2, ...allNo } as const,
		{ side: 'left', daysAgo: 200, ...allNo } as const,
	])
		expect(gated(visitOf({ injury })).facts.left.acute).toEqual([])
})
it('a fresh injury of which a zone was not asked is acute: open is never no', () => {
	const { midfootZonePain: _, ...asked } = allNo
	const { facts } = gated(visitOf({ injury: { side: 'left', daysAgo: 2, ...asked } }))
	expect(facts.left.acute.map(({ value }) => value)).toEqual(['ottawa-incomplete'])
	expect(facts.right.acute).toEqual([])
})
it('a sesamoid that is sore by the answers puts its joint at risk', () => {
	const { facts } = gated(
		visitOf({ boneStress: { side: 'left', site: 'hallux-sesamoid', loadPain: true } }),
	)
	expect(facts.left.jointsAtRisk.map(({ joint }) => joint)).toEqual(['first metatarsal head'])
	expect(facts.right.jointsAtRisk).toEqual([])
})
it('what an outcome excluded is no longer acute; a fresh injury stays one', () => {
	const torn = { achilles: { side: 'left', gap: true } } as const
	const excluded = [outcomeOf('screening.achilles-rupture', ['test'])]
	const acute = (visit: Visit) => gated(visit).facts.left.acute
	expect(acute(visitOf(torn, { outcomes: excluded }))).toEqual([])
	expect(acute(visitOf(torn, { outcomes: [{ ...excluded[0]!, side: 'right' }] }))).not.toEqual([])
	const noFracture = [outcomeOf('screening.ottawa-met', ['test'])]
	expect(acute(visitOf(brokenAnkle, { outcomes: noFracture })).length).toBeGreaterThan(0)
})
