/** Pregnancy and medicines: what is asked for, against what regulators and studies say. */
import { describe, expect, it } from 'vitest'
import { screening } from '../../shared/engine/screening/screening.ts'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'
import { protocol, visit } from './screened-visit.ts'

const woman = (answers: Screening, more: Partial<Visit> = {}) => {
	const { player, ...rest } = visit(answers)
	return screening({ ...rest, player: { ...player, sex: 'female' }, ...more }, protocol)
}
const condition = (
	name: NonNullable<Visit['conditions']>[number]['condition'],
): Partial<Visit> => ({
	conditions: [{ condition: name, side: 'left', status: 'current' }],
})
const codes = ({ findings }: ReturnType<typeof woman>) => findings.map(({ code }) => code)

describe('fluoroquinolone', () => {
	it('alone is a caution and calls for nobody', () => {
		const result = woman({ fluoroquinolone: true })
		expect(result.action).toBe('proceed')
		expect(result.findings).toContainEqual(
			expect.objectContaining({ id: 'screening.fluoroquinolone', level: 'caution' }),
		)
	})
	// MHRA Drug Safety Update 2019 (read): stop at the first tendon pain, doctor at once; Swissmedic
	// (read): Achilles tendons first, within 48 hours and months after.
	it.each([
		'achilles-midportion',
		'achilles-insertional',
		'posterior-tibial-tendinopathy',
		'peroneal-tendinopathy',
		'patellar-tendinopathy',
	] as const)('with %s: the prescriber the same day, that leg only', (name) =>
		expect(woman({ fluoroquinolone: true }, condition(name))).toMatchObject({
			action: 'same-day',
			blockedSides: ['left'],
			blockedBy: { left: ['screening.fluoroquinolone-tendon.left'], right: [] },
		}),
	)
	it('the reason is the recorded tendon, by its side', () =>
		expect(
			woman({ fluoroquinolone: true }, condition('achilles-midportion')).findings.find(
				({ code }) => code === 'screening.fluoroquinolone-tendon',
			)?.because,
		).toEqual([{ measure: 'achilles-midportion', side: 'left', value: 'current' }]))
	it('without it, or with tendon pain long past, nothing of the kind', () => {
		expect(woman({ fluoroquinolone: false }, condition('achilles-midportion')).action).toBe(
			'proceed',
		)
		expect(
			woman(
				{ fluoroquinolone: true },
				{ conditions: [{ condition: 'achilles-midportion', side: 'left', status: 'past' }] },
			).action,
		).toBe('proceed')
	})
	// MHRA (read): not together with a corticosteroid.
	it('with a systemic corticosteroid the prescriber is asked', () =>
		expect(codes(woman({ fluoroquinolone: true, corticosteroidLongTerm: true }))).toContain(
			'screening.fluoroquinolone-steroid',
		))
})
describe('corticosteroid', () => {
	// van Staa 2003, abstract read: more fractures with repeated courses. Early imaging: from memory.
	it('raises pain at a low-risk bone from a letter to imaging', () => {
		expect(woman({ boneStressLowRisk: true }).action).toBe('letter')
		expect(woman({ boneStressLowRisk: true, corticosteroidLongTerm: true }).action).toBe('imaging')
	})
	it.each([
		{ fluoroquinolone: true },
		{ corticosteroidLongTerm: true },
		{ corticosteroidInjection: true },
	])('%o: a hop test is not repeated', (medicine) =>
		expect(codes(woman({ boneStress: { side: 'left', hopPain: false }, ...medicine }))).toContain(
			'screening.hop-tested-medicine',
		),
	)
	// growth.md, cautions: steroid treatment, so the estimates are not for this child.
})
describe('anticoagulant', () => {
	const injury = { side: 'left', daysAgo: 2, malleolarZonePain: true } as const
	// Am J Orthop 2008;37:E201, introduction read: compartment syndrome after low-energy injury.
	it.each([
		[injury, 'same-day'],
		[{ ...injury, daysAgo: 11, unableToBearWeightNow: false }, 'not raised'],
	] as const)('with injury %o: %s', (given, action) =>
		expect(
			woman({ anticoagulant: true, injury: given }).items.find(
				({ code }) => code === 'screening.anticoagulant-injury',
			)?.action ?? 'not raised',
		).toBe(action),
	)
	// NICE QS74 statement 2 (read) and NG232 (secondary page read): emergency department and CT.
	it('a blow to the head is an emergency instead of same-day', () => {
		expect(woman({ cardiacOrConcussion: true }).action).toBe('same-day')
		expect(woman({ cardiacOrConcussion: true, anticoagulant: true }).action).toBe('emergency')
	})
	it.each(['subungual-haematoma', 'ingrown-toenail', 'blister'] as const)(
		'%s is left to the doctor (common practice, no source)',
		(name) =>
			expect(woman({ anticoagulant: true }, condition(name)).findings).toContainEqual(
				expect.objectContaining({
					id: `screening.anticoagulant-nail.${name}.left`,
					params: { condition: name },
				}),
			),
	)
	it('never takes a suspected clot back', () =>
		expect(woman({ anticoagulant: true, calfSuspicion: true }).action).toBe('same-day'))
})
describe('pregnancy', () => {
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
	it('by itself is a caution and calls for nobody', () => {
		const result = woman({ pregnant: true })
		expect(result.action).toBe('proceed')
		expect(result.findings).toContainEqual(
			expect.objectContaining({ id: 'screening.pregnant', level: 'caution' }),
		)
	})
	// Stiell: not for pregnant players.
	it('the general answer takes the Ottawa rules out as the one with the injury did', () => {
		const barred = { ankle: 'not-applicable', foot: 'not-applicable' }
		expect(woman({ pregnant: true, injury: quiet }).ottawa.left).toEqual(barred)
		expect(woman({ injury: { ...quiet, pregnant: true } }).ottawa.left).toEqual(barred)
		expect(woman({ pregnant: false, injury: quiet }).ottawa.left?.ankle).toBe('not-met')
	})
	// LEFt rule (Haematologica 2013, abstract read): 2 cm; not to stand alone, so no score is given.
	it.each([
		[1.9, 'proceed'],
		[2, 'same-day'],
	])('a calf %s cm larger: %s', (calfDifferenceCm, action) => {
		const result = woman({ pregnant: true, wells: { calfDifferenceCm } })
		expect(result).toMatchObject({ action, wells: { band: 'not-applicable' } })
		expect(result.wells?.score).toBeUndefined()
	})
	it('counts as a risk of its own beside a previous clot', () => {
		expect(woman({ wells: { previousDvt: true } }).action).toBe('proceed')
		expect(woman({ pregnant: true, wells: { previousDvt: true } }).action).toBe('same-day')
	})
	it('is not asked of men, nor are periods, and an answer given counts all the same', () => {
		const asked = (answers: Screening) =>
			screening(visit(answers), protocol).items.map(({ id }) => id)
		expect(asked({})).not.toContain('screening.pregnant')
		expect(asked({})).not.toContain('screening.periodsAbsent')
		expect(asked({ periodsAbsent: true })).toContain('screening.periodsAbsent')
	})
})
