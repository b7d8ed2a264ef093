/** The plain reader of a written plan sees each fault that is planted in one. */
import { expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import type { Session, Visit } from '../../shared/engine/visit/visit.ts'
import { plainCheck } from './plain-plan.ts'
import { type Prescribed, prescribedBroken } from './plain-prescribed.ts'
import { seasonVisit } from './random-season.ts'

const on = (date: string, more: Partial<Session> = {}): Session => ({
	id: date,
	date,
	start: '18:00',
	minutes: 60,
	kind: 'training',
	surface: 'natural-firm',
	...more,
})
const visit: Visit = seasonVisit(
	[
		{ id: 'firm', sole: 'firm-ground', minutesWorn: 900, shareMinPercent: 30 },
		{ id: 'turf', sole: 'turf', minutesWorn: 900, weeklyMinutesMax: 130 },
		{ id: 'new', sole: 'artificial-ground', minutesWorn: 0, newFrom: '2027-02-09' },
		{ id: 'soft', sole: 'soft-ground', minutesWorn: 7190, studHeightMm: 25 },
		{
			id: 'lent',
			sole: 'firm-ground',
			minutesWorn: 3000,
			unavailable: [{ from: '2027-02-01', to: '2027-02-28' }],
		},
	],
	[
		on('2027-02-02', { ground: 'wet' }),
		on('2027-02-03', { code: 'rugby-union' }),
		on('2027-02-06', { kind: 'match' }),
		on('2027-02-09'),
		on('2027-02-11', { pinned: 'turf' }),
		on('2027-02-13', { kind: 'match', surface: 'artificial-3g' }),
		on('2027-02-15', { surface: 'hall' }),
	],
)
const plan = await planSeason(visit)
type Tamper = (session: PlanSession, plan: Plan) => void
const worn =
	(pair: string): Tamper =>
	(session) => {
		session.pair = pair
		delete session.parts
	}
const rulesBroken = (date: string, tamper: Tamper, prescribed?: Prescribed): string[] => {
	const copy = structuredClone(plan)
	tamper(copy.sessions.find((session) => session.date === date)!, copy)
	return plainCheck(visit, copy, prescribed).map(([rule]) => rule)
}
it('the plan as it was written breaks nothing', () => expect(plainCheck(visit, plan)).toEqual([]))
it.each<[rule: string, date: string, Tamper]>([
	['surface', '2027-02-15', worn('firm')],
	['studs', '2027-02-03', worn('soft')],
	['not-bought', '2027-02-03', worn('new')],
	['not-at-hand', '2027-02-03', worn('lent')],
	['break-in', '2027-02-09', worn('new')],
	['match-too-early', '2027-02-13', worn('new')],
	['life', '2027-02-02', worn('soft')],
	['not-recorded', '2027-02-03', worn('stranger')],
	[
		'soaked',
		'2027-02-03',
		(session, { sessions }) => {
			session.pair = sessions[0]!.pair!
			delete session.parts
		},
	],
	[
		'not-aired-and-not-told',
		'2027-02-03',
		(session, { sessions }) => {
			sessions[0]!.ground = 'dry'
			session.pair = sessions[0]!.pair!
			session.start = '08:00'
			delete session.parts
		},
	],
	[
		'short-part',
		'2027-02-03',
		(session) => {
			session.parts = [
				{ pair: 'turf', minutes: 55 },
				{ pair: 'firm', minutes: 5 },
			]
		},
	],
	[
		'short-and-not-told',
		'2027-02-03',
		(session) => {
			delete session.pair
			delete session.parts
		},
	],
	['pin-missed-and-not-told', '2027-02-11', worn('firm')],
	[
		'no-reason',
		'2027-02-03',
		(session) => {
			session.reasons = []
			session.unmet = []
		},
	],
	[
		'sentences-without-codes',
		'2027-02-03',
		(session) => {
			session.reasonCodes = []
		},
	],
	[
		'past',
		'2027-02-03',
		(session) => {
			session.past = true
		},
	],
	[
		'week',
		'2027-02-03',
		(_, { sessions }) => {
			for (const session of sessions) session.pair = 'turf'
		},
	],
	[
		'share-and-not-told',
		'2027-02-03',
		(_, copy) => {
			copy.findings = []
			for (const session of copy.sessions) worn('turf')(session, copy)
		},
	],
])('%s on %s', (rule, date, tamper) => expect(rulesBroken(date, tamper)).toContain(rule))
it('more than a return allows', () => {
	const copy = structuredClone(plan)
	copy.off = [
		{ id: 'off', date: '2026-12-01', start: '18:00', kind: 'training', status: 'injured' },
	]
	expect(plainCheck(visit, copy).map(([rule]) => rule)).toContain('return')
})
const judged = (
	verdict: 'stop-wearing' | 'training-only' | 'replace',
	by?: string,
): Prescribed => ({
	owned: [{ id: 'firm', verdict, ...(by === undefined ? {} : { by }) }],
})
it.each<[rule: string, Prescribed]>([
	['left-off', judged('stop-wearing')],
	['training-only', judged('training-only')],
	['replaced', judged('replace', '2027-02-05')],
])('%s, as the pairs are judged', (rule, prescribed) =>
	expect(rulesBroken('2027-02-06', worn('firm'), prescribed)).toContain(rule),
)
it.each([
	['match', ['2027-02-06', '2027-02-13']],
	['season', plan.sessions.map(({ date }) => date)],
] as const)('%s held: its sessions are not planned', (what, dates) => {
	const holds = [
		{ what, rule: 'screening.nightPain', until: 'outcome' as const, since: '2027-01-04' },
	]
	const gate = { ...openGate, person: { ...openGate.person, state: 'held' as const, holds } }
	expect(prescribedBroken(visit, plan, { gate })).toEqual(dates.map((date) => ['held', date]))
})
it('a sharp stud is dangerous whatever was judged', () => {
	const [first, ...others] = visit.footwear!
	const sharp = { ...visit, footwear: [{ ...first!, damage: ['stud-sharp' as const] }, ...others] }
	expect(plainCheck(sharp, plan).map(([rule]) => rule)).toContain('dangerous')
})
