/** A pair of the prescription that is planned before it is bought. */
import { describe, expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { assess } from '../../shared/engine/assess.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import {
	plannedFor,
	plannedPair,
	withoutPlanned,
	withPlanned,
} from '../../shared/engine/prescription/planned-pair.ts'
import { heelAboveForefootMm } from '../../shared/engine/season/problem/prescribed.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { seasonVisit } from './random-season.ts'
import { boots, built, hold, holding, planWith } from './season-plans.ts'

const role = {
	id: 'match.2',
	role: 'match',
	sole: 'firm-ground',
	insideLengthMm: { min: 276, target: 280, max: 284 },
	offsetMm: { min: 4, max: 8 },
} as const
const model = {
	id: 'm1',
	name: 'A model',
	sole: 'artificial-ground',
	size: { system: 'uk', label: 8.5, insideLengthMm: 281, ballWidthMm: 96 },
	offsetMm: 6,
	price: 120,
}
const sessions: Session[] = Array.from({ length: 20 }, (_, place) => ({
	id: `s${place}`,
	date: addDays('2027-02-01', 3 * place),
	start: '18:00',
	minutes: 75,
	kind: place % 4 === 3 ? 'match' : 'training',
	surface: 'natural-firm',
}))
const visit = seasonVisit([boots('a', { sole: 'turf' })], sessions)

describe('a planned pair', () => {
	it('has the length to look for, the careful end of the offset, and a day', () =>
		expect(plannedPair(role, undefined, '2027-02-01')).toEqual({
			id: 'planned-match-2',
			name: 'new match pair',
			sole: 'firm-ground',
			insideLengthMm: 280,
			heelToForefootOffsetMm: 4,
			roles: ['match'],
			minutesWorn: 0,
			newFrom: '2027-02-01',
			plannedAs: 'match.2',
		}))
	it('of a model has what the model has, and nothing that it does not record', () => {
		expect(plannedPair(role, model, '2027-02-01')).toMatchObject({
			id: 'planned-match-2',
			name: 'A model',
			sole: 'artificial-ground',
			sizeSystem: 'uk',
			size: 8.5,
			insideLengthMm: 281,
			heelToForefootOffsetMm: 6,
			price: 120,
			model: 'm1',
		})
		const { offsetMm: _, ...bare } = model
		expect(plannedPair(role, bare, '2027-02-01')).not.toHaveProperty('heelToForefootOffsetMm')
	})
	it('is planned once for each pair of the prescription, and taken out again', () => {
		const once = withPlanned(visit, role, undefined, '2027-02-01')
		const twice = withPlanned(once, role, model, '2027-03-01')
		expect(twice.footwear?.map(({ id }) => id)).toEqual(['a', 'planned-match-2'])
		expect(plannedFor(twice, role)).toMatchObject({ newFrom: '2027-03-01', model: 'm1' })
		expect(visitSchema.safeParse(twice).success).toBe(true)
		expect(withoutPlanned(twice, role)).toEqual(visit)
		expect(withoutPlanned(visit, role)).toBe(visit)
	})
	it('changes nothing of the assessment: it is not owned', () =>
		expect(assess(withPlanned(visit, role, model, '2027-02-01'))).toEqual(assess(visit)))
	it('is broken in from its day and then worn; not before', async () => {
		const plan = await planSeason(withPlanned(visit, role, undefined, '2027-02-10'))
		const wornOn = plan.sessions
			.filter(({ pair, parts = [] }) =>
				[pair, ...parts.map((part) => part.pair)].includes('planned-match-2'),
			)
			.map(({ date }) => date)
		expect(wornOn.length).toBeGreaterThan(0)
		expect(wornOn.every((date) => date >= '2027-02-10')).toBe(true)
		expect(plan.findings.map(({ id }) => id)).toContain('season.break-in-planned-match-2')
	})
	it('is not planned while buying is held', () => {
		const planned = withPlanned(visit, role, model, '2027-02-01')
		const idsWith = (plan: Parameters<typeof built>[1]) =>
			built(planned, plan).problem.pairs.map(({ id }) => id)
		expect(idsWith(planWith())).toEqual(['a', 'planned-match-2'])
		expect(idsWith(holding(hold('purchase')))).toEqual(['a'])
	})
	it('is raised as its role is', () => {
		const foot = { addMm: 4, madeBy: 'wedge', addedUnderHeelMm: 4 } as const
		const raise = {
			aim: { kind: 'none' as const, because: [] },
			steps: [],
			pairs: [
				{
					pair: 'role.match',
					offsetFrom: 'stated' as const,
					limits: [],
					left: foot,
					right: { ...foot, addMm: 3, addedUnderHeelMm: 3 },
				},
			],
		}
		const pair = plannedPair(role, model, '2027-02-01')
		expect(heelAboveForefootMm(pair, { raise })).toBe(9)
		expect(heelAboveForefootMm(pair, planWith())).toBeUndefined()
	})
})
