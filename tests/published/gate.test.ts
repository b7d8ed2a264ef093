/** What guidance says must wait, held against the gate. */
import { describe, expect, it } from 'vitest'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'
import { aged, gateAt, heldIn, visitOf } from '../engine/gate-visit.ts'

const hip = 'no weight, seen the same day'
/**
 * Suspected slipped growth plate of the hip: emergency department or on-call orthopaedics, no weight
 * on the leg, whatever its duration. Queensland Health paediatric orthopaedics; Royal Children's
 * Hospital Melbourne guideline.
 */
describe(`hip, groin, thigh or knee pain with a limp at 12: ${hip}`, () => {
	const knee = { condition: 'patellofemoral-pain', side: 'left', status: 'current' } as const
	it.each<[string, Screening, Partial<Visit>]>([
		['the limp group', { limp: { side: 'left', hipThighKneePain: true } }, {}],
		['the limp group, one day', { limp: { side: 'left', hipThighKneePain: true, days: 1 } }, {}],
		['the general question', { hipPainWithLimp: true }, {}],
		['a limp and a recorded knee', { limpUnexplained: true }, { conditions: [knee] }],
		['the limp group and a recorded knee', { limp: { side: 'left' } }, { conditions: [knee] }],
		[
			'bone stress of the hip',
			{ boneStress: { side: 'left', site: 'femoral-neck', loadPain: true } },
			{},
		],
	])('%s', (_, answers, more) => {
		const gate = gateAt(visitOf(answers, { ...aged('2015-01-20'), ...more }))
		expect(gate.left.action).toBe('same-day')
		expect(heldIn(gate).left).toContain('weight')
		expect(heldIn(gate).person).toContain('sport')
	})
	it('an adult with the same has no growth plate to slip', () => {
		const gate = gateAt(visitOf({ limp: { side: 'left', hipThighKneePain: true } }))
		expect(gate.left.action).toBe('letter')
		expect(heldIn(gate).left).not.toContain('weight')
	})
	// younger than the ages named for the hip: examined the same day all the same
	it.each([
		['by its group', { limp: { side: 'left', days: 2, hipThighKneePain: true } }],
		['by the general question', { hipPainWithLimp: true, limp: { side: 'left' } }],
	] as const)('a child of five, %s', (_, answers) => {
		const gate = gateAt(visitOf(answers, aged('2022-01-10')))
		expect(gate.left.action).toBe('same-day')
		expect(heldIn(gate).left).toContain('weight')
		expect(heldIn(gate).right).toEqual([])
		expect(heldIn(gate).person).toEqual(
			expect.arrayContaining(['sport', 'match', 'impact', 'purchase', 'season', 'raise']),
		)
	})
})
/** Not for use in those who cannot be examined: intoxicated, head-injured, insensate, under 6. */
describe('Ottawa rules that cannot be used (Stiell): seen the same day, held like a fracture', () => {
	it.each([
		['intoxicated or head-injured', { cannotBeAssessed: true }, '2000-01-01', {}],
		['too swollen', { swellingOrOpenSkin: true }, '2000-01-01', {}],
		['under 6 years', { malleolarZonePain: true }, '2022-01-01', {}],
		['reduced sensation', { malleolarZonePain: true }, '2000-01-01', { reducedSensation: true }],
	] as const)('%s', (_, injury, birthDate, answers) => {
		const gate = gateAt(
			visitOf({ ...answers, injury: { side: 'left', daysAgo: 1, ...injury } }, aged(birthDate)),
		)
		const rule = 'screening.ottawa-not-applicable'
		expect(gate.left.action).toBe('same-day')
		expect(
			gate.left.holds
				.filter((hold) => hold.rule === rule)
				.map(({ what }) => what)
				.sort(),
		).toEqual(['exercise', 'insert', 'test', 'weight'])
	})
})
/** NICE NG19: neuropathy, ischaemia, deformity: moderate; a previous ulcer: high; both are referred. */
it.each([
	[{ neuropathy: true }, ['insert']],
	[{ ischaemia: true }, ['insert']],
	[{ previousUlcer: true }, ['insert']],
	[{ callus: true }, []],
] as const)('a diabetic foot with %j holds %j on the limb', (foot, held) => {
	expect(heldIn(gateAt(visitOf({ diabeticFoot: { left: foot } }))).left).toEqual(held)
})
/** Am Fam Physician 2003;67:85: a navicular stress fracture is treated without weight, uncleared by a plain film. */
it('a navicular stress fracture bears no weight and its sport waits for the treating doctor', () => {
	const { person, left } = gateAt(
		visitOf(
			{},
			{ conditions: [{ condition: 'navicular-stress-fracture', side: 'left', status: 'current' }] },
		),
	)
	expect(left.holds.map(({ what }) => what)).toContain('weight')
	expect(person.holds.filter(({ what }) => what === 'sport').map(({ until }) => until)).toEqual([
		'treating-doctor',
	])
})
