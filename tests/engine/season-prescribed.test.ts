/** The season reads the settled plan: what is held, which pairs are worn where, what lies inside. */
import { describe, expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Hold, Holdable, OwnedVerdict } from '../../shared/engine/findings/assessment.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import {
	heldSeason,
	type SeasonPlan,
	startsInsert,
} from '../../shared/engine/season/problem/prescribed.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Pair, Session, Visit } from '../../shared/engine/visit/visit.ts'
import { seasonVisit } from './random-season.ts'

const protocol = openProtocol()
const boots = (id: string, more: Partial<Pair> = {}): Pair => ({
	id,
	name: id,
	sole: 'firm-ground',
	minutesWorn: 3000,
	heelToForefootOffsetMm: 0,
	...more,
})
const on = (date: string, kind: Session['kind']): Session => ({
	date,
	start: '18:00',
	minutes: 60,
	kind,
	surface: 'natural-firm',
})
const sessions = [
	on('2027-02-02', 'training'),
	on('2027-02-04', 'training'),
	on('2027-02-06', 'match'),
	on('2027-03-02', 'training'),
	on('2027-03-06', 'match'),
]
const hold = (what: Holdable, until: Hold['until'] = 'outcome'): Hold => ({
	what,
	rule: 'screening.nightPain',
	until,
	since: '2027-01-04',
})
const nothing = { state: 'not-needed', elements: [], pairs: [] } as const
const planWith = (more: Partial<SeasonPlan> = {}): SeasonPlan => ({
	gate: openGate,
	owned: [],
	insert: {
		left: { ...nothing, elements: [], pairs: [] },
		right: { ...nothing, elements: [], pairs: [] },
	},
	raise: { aim: { kind: 'none', because: [] }, pairs: [], steps: [] },
	open: [],
	...more,
})
const holding = (...holds: Hold[]) =>
	planWith({ gate: { ...openGate, person: { ...openGate.person, state: 'held', holds } } })
const judged = (id: string, verdict: OwnedVerdict, by?: string) =>
	planWith({
		owned: [{ id, verdict, because: [], work: [], says: '', ...(by ? { by } : {}) }],
	})
const built = (visit: Visit, plan: SeasonPlan | undefined) =>
	buildProblem({ visit, protocol, suitability, ...(plan ? { plan } : {}) })
/** What keeps a pair out of each session: a reason, or nothing where it may be worn. */
const barred = (visit: Visit, plan: SeasonPlan | undefined, pair = 0) =>
	built(visit, plan).problem.cost.map((row) => {
		const cost = row[pair]!
		return typeof cost === 'number' ? undefined : cost.why
	})
const two = seasonVisit([boots('a'), boots('b')], sessions)

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
	// a wound, and a fall: whatever else is decided, and for older records too
	it.each(['stud-sharp', 'sole-separated'] as const)('%s is never worn', (damage) => {
		const visit = seasonVisit([boots('a', { damage: [damage] }), boots('b')], sessions)
		for (const plan of [planWith(), undefined])
			expect(barred(visit, plan)).toEqual(sessions.map(() => 'left-off'))
		expect(built(visit, planWith()).findings.map(({ id }) => id)).toContain('season.left-off-a')
	})
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
