/** What lies inside a pair, and the return to studs, as the season reads them. */
import { describe, expect, it } from 'vitest'
import type { Holdable } from '../../shared/engine/findings/assessment.ts'
import { type SeasonPlan, startsInsert } from '../../shared/engine/season/problem/prescribed.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { seasonVisit } from './random-season.ts'
import { boots, built, hold, holding, planWith, sessions } from './season-plans.ts'

describe('return to studs after bone stress', () => {
	const bone = {
		condition: 'navicular-stress-fracture',
		side: 'left',
		status: 'recovering',
	} as const
	const cleared = {
		rule: 'bone-stress-recovering',
		side: 'left',
		result: 'recovered',
		found: 'healed',
		how: 'imaging',
		by: 'A. Example',
		treatingDoctorClears: true,
		lifts: ['match', 'impact'] as Holdable[],
	} as const
	const minutesOf = (more: Partial<Visit>, plan: SeasonPlan) =>
		built(seasonVisit([boots('a')], sessions, { conditions: [bone], ...more }), plan)
			.problem.caps.find(({ id }) => id === 'season.cap-studs')!
			.weeks.map(({ minutes }) => minutes)
	it('begins with the outcome that cleared it; until then each week is the first', () => {
		const waiting = minutesOf(
			{},
			holding({ ...hold('impact', 'treating-doctor'), rule: 'bone-stress-recovering' }),
		)
		expect(new Set(waiting).size).toBe(1)
		const atVisit = minutesOf({ outcomes: [{ ...cleared, on: '2027-01-04' }] }, planWith())
		const before = minutesOf({ outcomes: [{ ...cleared, on: '2026-12-21' }] }, planWith())
		expect(atVisit[0]).toBeGreaterThan(waiting[0]!)
		for (const [week, minutes] of atVisit.entries()) expect(before[week]).toBeGreaterThan(minutes)
	})
})
describe('what lies inside', () => {
	const sore = seasonVisit([boots('a')], sessions, {
		conditions: [{ condition: 'achilles-midportion', side: 'left', status: 'current' }],
	})
	const raised = (addMm: number) => ({
		aim: { kind: 'pain' as const, because: [] },
		steps: [],
		pairs: [
			{
				pair: 'a',
				offsetMm: 0,
				offsetFrom: 'measured' as const,
				limits: [],
				left: {
					addMm,
					madeBy: 'wedge' as const,
					addedUnderHeelMm: addMm,
					heelAboveForefootMm: addMm,
				},
				right: {
					addMm,
					madeBy: 'wedge' as const,
					addedUnderHeelMm: addMm,
					heelAboveForefootMm: addMm,
				},
			},
		],
	})
	it('the raise of the plan lifts the limit on low boots', () => {
		const capped = (plan: SeasonPlan) =>
			built(sore, plan).findings.some(({ code }) => code === 'season.cap-low-offset')
		expect(capped(planWith())).toBe(true)
		expect(capped(planWith({ raise: raised(2) }))).toBe(true)
		expect(capped(planWith({ raise: raised(12) }))).toBe(false)
	})
	it('an insert that is settled begins with the new pairs; one that is open does not', () => {
		const insert = {
			left: { state: 'proposed' as const, elements: ['shell'], pairs: ['a'] },
			right: { state: 'not-needed' as const, elements: [], pairs: [] },
		}
		expect(startsInsert(planWith({ insert }))).toBe(true)
		expect(startsInsert(planWith({ insert, open: ['insert'] }))).toBe(false)
		expect(startsInsert(planWith({ raise: raised(4) }))).toBe(true)
		expect(startsInsert(planWith({ raise: raised(4), open: ['raise'] }))).toBe(false)
		expect(startsInsert(planWith())).toBe(false)
	})
})
