/** The season reads the settled plan: what is held, which pairs are worn where, what lies inside. */
import { describe, expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import { heldSeason, type SeasonPlan } from '../../shared/engine/season/problem/prescribed.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Pair, Session } from '../../shared/engine/visit/visit.ts'
import { seasonVisit } from './random-season.ts'
import {
	barred,
	boots,
	built,
	hold,
	holding,
	judged,
	on,
	planWith,
	protocol,
	sessions,
	two,
} from './season-plans.ts'

describe('what the gate holds is not planned', () => {
	it.each([
		['season', 'outcome', true],
		['sport', 'treating-doctor', true],
		['match', 'outcome', false],
		['shelf', 'outcome', false],
		['purchase', 'outcome', false],
		['purchase', 'foot-protection-review', true],
	] as const)('%s until %s: nothing is planned: %s', (what, until, wanted) => {
		const found = heldSeason(holding(hold(what, until)))
		expect(found !== undefined).toBe(wanted)
		if (found) expect(found).toMatchObject({ id: 'season.held', level: 'stop' })
	})
	it('a held season has no session, and its finding says what ends it', async () => {
		const visit = seasonVisit([boots('a')], sessions, { screening: { nightPain: true } })
		const plan = await planSeason(visit)
		expect([plan.sessions, plan.pairs, plan.purchases]).toEqual([[], [], []])
		expect(plan.findings.map(({ code }) => code)).toEqual(['season.held'])
		expect(plan.findings[0]!.params).toMatchObject({
			holds: expect.arrayContaining([{ what: 'season', until: 'outcome' }]),
		})
	})
	it('held matches are left out, trainings are not; the match of the past stays', () => {
		const { problem, findings } = buildProblem({
			visit: two,
			protocol,
			suitability,
			from: '2027-03-01',
			plan: holding(hold('match', 'treating-doctor'), hold('impact')),
		})
		expect(problem.slots.map(({ date, kind }) => [date, kind])).toEqual([
			['2027-02-02', 'training'],
			['2027-02-04', 'training'],
			['2027-02-06', 'match'],
			['2027-03-02', 'training'],
		])
		const told = findings.find(({ code }) => code === 'season.match-held')!
		expect(told.because.map(({ at }) => at)).toContain('2027-03-06T18:00')
		expect(findings.map(({ code }) => code)).toContain('season.impact-held')
	})
	it('a match that is held ends no lay-off: the training after it is eased', () => {
		const off = (date: string): Session => ({ ...on(date, 'training'), status: 'injured' })
		const visit = seasonVisit(
			[boots('a')],
			[off('2027-02-02'), on('2027-02-20', 'match'), on('2027-03-09', 'training')],
		)
		const minutes = (plan: SeasonPlan) =>
			built(visit, plan).problem.slots.find(({ date }) => date === '2027-03-09')!.minutes
		expect(minutes(planWith())).toBe(60)
		expect(minutes(holding(hold('match')))).toBe(30)
	})
	it('severe pain now keeps the player out of matches', async () => {
		const visit = seasonVisit([boots('a')], sessions, {
			conditions: [{ condition: 'turf-toe', side: 'left', status: 'current', painWorst: 9 }],
		})
		const { sessions: planned } = await planSeason(visit)
		expect(planned.map(({ kind }) => kind)).toEqual(['training', 'training', 'training'])
	})
})
describe('pairs as the prescription judges them', () => {
	it('one to leave off is never worn', () =>
		expect(barred(two, judged('a', 'stop-wearing'))).toEqual(sessions.map(() => 'left-off')))
	it('one for training only is worn in no match', () =>
		expect(barred(two, judged('a', 'training-only'))).toEqual([
			undefined,
			undefined,
			'training-only',
			undefined,
			'training-only',
		]))
	it('one that is only not broken in climbs its ladder, and then plays', () => {
		const said = { said: [{ code: 'pairs.not-broken-in', params: {} }] }
		const plan = judged('a', 'training-only')
		const [verdict] = plan.owned
		const because = { ...plan, owned: [{ ...verdict!, params: said }] }
		const weeks = Array.from({ length: 8 }, (_, week) => on(`2027-02-${10 + week}`, 'training'))
		const matches = [on('2027-02-09', 'match'), on('2027-02-20', 'match')]
		const visit = (more: Partial<Pair>) =>
			seasonVisit([boots('a', { brokenIn: false, ...more }), boots('b')], [...weeks, ...matches])
		const atMatches = (more: Partial<Pair>, asked: SeasonPlan) => {
			const all = barred(visit(more), asked)
			return [all[0], all.at(-1)]
		}
		expect(atMatches({ minutesWorn: 0 }, because)).toEqual(['breaking-in', undefined])
		// worn long and still not broken in; or the clinician wants it so
		const worn = visit({ minutesWorn: 3000 })
		expect(barred(worn, because).filter(Boolean)).toEqual(['training-only', 'training-only'])
		expect(atMatches({ minutesWorn: 0 }, plan)).toEqual(['training-only', 'training-only'])
	})
	it('one to be replaced is worn until its day', () =>
		expect(barred(two, judged('a', 'replace', '2027-02-28'))).toEqual([
			undefined,
			undefined,
			undefined,
			'replaced',
			'replaced',
		]))
	it.each(['keep', 'modify'] as const)('%s: worn everywhere', (verdict) =>
		expect(barred(two, judged('a', verdict))).toEqual(sessions.map(() => undefined)),
	)
	it('a sharp stud: the plan wears the other pair, every session', async () => {
		const visit = seasonVisit([boots('a', { damage: ['stud-sharp'] }), boots('b')], sessions)
		const plan = await planSeason(visit)
		expect(plan.sessions.map(({ pair }) => pair)).toEqual(sessions.map(() => 'b'))
	})
	it('the verifier finds such a pair worn, whatever the points say', () => {
		for (const [plan, places] of [
			[judged('a', 'stop-wearing'), [0, 1, 2, 3, 4]],
			[judged('a', 'training-only'), [2, 4]],
			[judged('a', 'replace', '2027-02-28'), [3, 4]],
		] as const) {
			const { problem } = built(two, plan)
			const blind = { ...problem, cost: problem.cost.map(() => [0, 0]) }
			const uses = sessions.map(() => [{ pair: 0, minutes: 60 }])
			const found = verify(blind, { uses }).problems.filter(({ is }) => is === 'barred')
			expect(found.map((breach) => 'date' in breach && breach.date)).toEqual(
				places.map((place) => sessions[place]!.date),
			)
		}
	})
	it('the verifier finds a match that is held', () => {
		const { problem } = built(two, planWith())
		const uses = sessions.map(() => [{ pair: 0, minutes: 60 }])
		const found = verify({ ...problem, matchesHeld: true }, { uses }).problems
		expect(found.filter(({ is }) => is === 'held')).toHaveLength(2)
	})
})
