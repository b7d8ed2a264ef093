/** No danger is worn: whatever was answered, and to the day. */
import { describe, expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { assess } from '../../shared/engine/assess.ts'
import {
	asProposed,
	changedTo,
	setAside,
	withAnswer,
} from '../../shared/engine/prescription/answers.ts'
import { settledPlan } from '../../shared/engine/prescription/settled.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { SeasonPlan } from '../../shared/engine/season/problem/prescribed.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { seasonVisit } from './random-season.ts'
import { barred, boots, built, judged, on, protocol, sessions, two } from './season-plans.ts'

describe('a pair that is a danger', () => {
	// a wound, a fall, a toe at its end: whatever else is decided
	it.each([
		{ code: 'pairs.stud-sharp', params: {} },
		{ code: 'pairs.sole-separated', params: {} },
		{ code: 'owned.touches', params: { shortMm: 2, withSock: false } },
	])('$code is never worn, whatever verdict it was given', (ground) => {
		const plan = judged('a', 'keep')
		const owned = plan.owned.map((pair) => ({
			...pair,
			code: 'owned.pair',
			params: { said: [{ code: 'owned.keep', params: {} }, ground] },
		}))
		expect(barred(two, { ...plan, owned })).toEqual(sessions.map(() => 'left-off'))
		expect(built(two, { ...plan, owned }).findings.map(({ id }) => id)).toContain(
			'season.left-off-a',
		)
		// a record of before has no plan: its pairs are judged as they are today
		const { problem } = buildProblem({ visit: two, protocol, suitability, judged: owned })
		expect(problem.pairs[0]!.leftOff).toBe(true)
	})
	it('one that growth takes is worn until that day, and a day set for it stands before', () => {
		const ground = { code: 'pairs.outgrown-by', params: { leastMm: 5, on: '2027-02-28' } }
		const grown = (plan: SeasonPlan): SeasonPlan => ({
			...plan,
			owned: plan.owned.map((pair) => ({ ...pair, params: { said: [ground] } })),
		})
		const late = [undefined, undefined, undefined, 'replaced', 'replaced']
		expect(barred(two, grown(judged('a', 'keep')))).toEqual(late)
		expect(barred(two, grown(judged('a', 'replace', '2027-03-03')))[3]).toBeUndefined()
		expect(barred(two, grown(judged('a', 'replace', '2027-02-05')))[2]).toBe('replaced')
	})
	it('a pair that a toe touches the end of: answered to be kept, or set aside, it is not worn', () => {
		const foot = { heelToToeMm: 270 }
		const visit = seasonVisit(
			[boots('a', { insideLengthMm: 270 }), boots('b', { insideLengthMm: 282 })],
			sessions,
			{ feet: { stance: 'standing', sockMm: 0, left: foot, right: foot } },
		)
		const assessment = assess(visit)
		const question = assessment.prescription.questions.find(({ id }) => id === 'owned')!
		const fields = { verdicts: [{ id: 'a', verdict: 'keep' as const }] }
		for (const answer of [
			asProposed(question),
			changedTo(question, fields),
			setAside(question, 'x'),
		]) {
			const plan = settledPlan(assessment, withAnswer(noDecisions, answer))
			expect([answer.choice, barred(visit, plan)]).toEqual([
				answer.choice,
				sessions.map(() => 'left-off'),
			])
			expect(barred(visit, plan, 1)).toEqual(sessions.map(() => undefined))
		}
	})
	it('a sharp stud stays out when the question of the pairs is set aside', () => {
		const visit = seasonVisit([boots('a', { damage: ['stud-sharp'] })], sessions)
		const assessment = assess(visit)
		const question = assessment.prescription.questions.find(({ id }) => id === 'owned')!
		const plan = settledPlan(assessment, withAnswer(noDecisions, setAside(question, 'later')))
		expect(barred(visit, plan)).toEqual(sessions.map(() => 'left-off'))
	})
	it('one short of room is worn until its replace by, never after, and the plan names the day', async () => {
		const foot = { heelToToeMm: 270 }
		const all = [on('2027-01-12', 'training'), ...sessions]
		const visit = seasonVisit([boots('a', { insideLengthMm: 272 })], all, {
			feet: { stance: 'standing', sockMm: 0, left: foot, right: foot },
		})
		const by = assess(visit).prescription.owned[0]!.by!
		const plan = await planSeason(visit)
		const worn = plan.sessions.filter(({ pair }) => pair === 'a').map(({ date }) => date)
		expect(worn).toEqual(all.map(({ date }) => date).filter((date) => date <= by))
		expect([worn.length > 0, worn.length < all.length]).toEqual([true, true])
		expect(plan.pairs[0]).toMatchObject({ replaceBy: by })
		expect(plan.findings.map(({ id }) => id)).toContain('season.replace-by-a')
	})
})
