/** What a season says of buying: the day, what it is worth, and the choice to wear longer. */
import { describe, expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { planSeason } from '../../electron/solver/plan.ts'
import { assess } from '../../shared/engine/assess.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { composePlan } from '../../shared/engine/season/plan/plan.ts'
import type { Plan } from '../../shared/engine/season/plan-file.ts'
import { levels } from '../../shared/engine/season/problem/levels.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import { soles } from '../../shared/engine/visit/terms.ts'
import type { Pair, Session, Visit } from '../../shared/engine/visit/visit.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { bigSeason, seasonVisit } from './random-season.ts'
import { boots, built, planWith, protocol } from './season-plans.ts'

const weeks = (count: number, of: readonly [number, Session['kind'], number][]): Session[] =>
	Array.from({ length: count }, (_, week) =>
		of.map(
			([day, kind, minutes]): Session => ({
				id: `${kind}-${week}-${day}`,
				date: addDays('2027-02-01', 7 * week + day),
				start: '18:00',
				minutes,
				kind,
				surface: 'natural-firm',
			}),
		),
	).flat()
const uncovered = ({ sessions }: Plan, kind: Session['kind']) =>
	sessions.filter((session) => session.kind === kind && session.pair === undefined).length
const worn: Pair = boots('a', { minutesWorn: 6300, lifeMinutes: 7200 })
const season = (footwear: Pair[]): Visit =>
	seasonVisit(
		footwear,
		weeks(20, [
			[1, 'training', 75],
			[3, 'training', 75],
			[5, 'match', 90],
		]),
	)

describe('a life that ends before the season', () => {
	it('is told as the choice it is: minutes to wear longer, matches without a pair', async () => {
		const plan = await planSeason(season([worn]))
		// 900 minutes are left: ten of twenty matches
		expect(uncovered(plan, 'match')).toBe(10)
		const choice = plan.findings.find(({ code }) => code === 'season.wear-or-buy')!
		expect(choice.params).toMatchObject({ matches: 10, minutes: 900 })
		expect(choice.because).toHaveLength(10)
		const bought = plan.purchases.find(({ sole }) => sole === 'firm-ground')!
		expect(bought.matches).toBeGreaterThan(0)
	})
	it('what a purchase is worth is what it covers once it is planned', async () => {
		const before = await planSeason(season([worn]))
		const bought = before.purchases.find(({ sole }) => sole === 'firm-ground')!
		const after = await planSeason(
			season([worn, { id: 'new', sole: 'firm-ground', newFrom: bought.buyBy, minutesWorn: 0 }]),
		)
		const covered = (kind: Session['kind']) => uncovered(before, kind) - uncovered(after, kind)
		expect(covered('match')).toBe(bought.matches)
		expect(covered('training')).toBeGreaterThanOrEqual(bought.trainings!)
		expect(after.findings.map(({ code }) => code)).not.toContain('season.wear-or-buy')
	})
	it('says nothing where every match has a pair', async () => {
		const plan = await planSeason(season([worn, boots('b', { minutesWorn: 0, brokenIn: true })]))
		expect(uncovered(plan, 'match')).toBe(0)
		expect(plan.findings.map(({ code }) => code)).not.toContain('season.wear-or-buy')
	})
})
describe('a time that runs out', () => {
	it('twelve pairs and 120 sessions: a sound plan with every level and what is left of it', async () => {
		const many = Array.from({ length: 12 }, (_, place) =>
			boots(`p${place + 10}`, { sole: soles[place % 5]!, minutesWorn: 200 * place }),
		)
		const visit = { ...bigSeason(1, 24), footwear: many }
		const { problem } = built(visit, planWith())
		expect([problem.slots.length, problem.pairs.length]).toEqual([120, 12])
		const solved = solveLevels(await loadHighs(), problem, { timeLimitSeconds: 0.4, gap: 0.001 })
		expect(verify(problem, solved.rotation).problems).toEqual([])
		expect(solved.levels).toHaveLength(levels.length)
		for (const { proven, gap } of solved.levels) {
			expect(gap).toBeGreaterThanOrEqual(0)
			expect(gap).toBeLessThanOrEqual(proven ? 0.001 : 1)
		}
		expect(solved.status === 'optimal').toBe(solved.levels.every(({ proven }) => proven))
	})
	it('names the levels whose gap is left', async () => {
		const visit = bigSeason(3)
		const made = built(visit, planWith())
		const solved = solveLevels(await loadHighs(), made.problem, { timeLimitSeconds: 0.02, gap: 0 })
		const plan = composePlan({
			visit,
			assessment: assess(visit),
			protocol,
			suitability,
			built: made,
			...solved,
			from: visit.visitDate,
		})
		const told = plan.findings.find(({ code }) => code === 'season.time-limit')!
		const open = solved.levels.filter(({ proven }) => !proven).map(({ level }) => level)
		expect(open.length).toBeGreaterThan(0)
		expect((told.params!.open as { level: string }[]).map(({ level }) => level)).toEqual(open)
		expect(spokenTo('clinician', told)).not.toMatch(/undefined|NaN/)
		expect(spokenTo('player', told)).toBeUndefined()
	})
})
