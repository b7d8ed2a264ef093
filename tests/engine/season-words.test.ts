/**
 * What the season says, read: every sentence of a planned season in the words of each reader. The
 * one place where its sentences are looked at; everything else looks at codes.
 */
import { describe, expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { assess } from '../../shared/engine/assess.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { composePlan } from '../../shared/engine/season/plan/plan.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { Session, Visit } from '../../shared/engine/visit/visit.ts'
import { seasonSentences } from '../../shared/engine/words/en/season.ts'
import { readingInWords } from '../../shared/engine/words/reading.ts'
import { spokenTo, state } from '../../shared/engine/words/statement.ts'
import { seasonVisit } from './random-season.ts'

const protocol = openProtocol()
const highs = await loadHighs()
/** The plan of a visit, solved here. */
function planOf(visit: Visit) {
	const built = buildProblem({ visit, protocol, suitability })
	const { rotation, status, gap } = solveLevels(highs, built.problem, {
		timeLimitSeconds: 10,
		gap: 0.001,
	})
	const assessment = assess(visit)
	const from = visit.visitDate
	return composePlan({
		visit,
		assessment,
		protocol,
		suitability,
		built,
		rotation,
		status,
		gap,
		from,
	})
}
const session = (date: string, more: Partial<Session> = {}): Session => ({
	id: date,
	date,
	start: '18:00',
	minutes: 75,
	kind: 'training',
	surface: 'natural-firm',
	...more,
})
const days = Array.from({ length: 20 }, (_, day) => `2027-01-${String(day + 5).padStart(2, '0')}`)
const pairs: Visit['footwear'] = [
	{
		id: 'old',
		name: 'old boots',
		sole: 'firm-ground',
		minutesWorn: 6900,
		heelToForefootOffsetMm: 2,
		studHeightMm: 25,
	},
	{ id: 'new', name: 'new boots', sole: 'artificial-ground', newFrom: '2027-01-06' },
	{ id: 'turf', name: 'turf shoes', sole: 'turf', minutesWorn: 900, shareMaxPercent: 10 },
	{ id: 'bare', name: 'bare pair' },
]
const visit = seasonVisit(
	pairs ?? [],
	[
		...days.map((date, place) =>
			session(date, {
				ground: (['wet', 'damp', 'dry'] as const)[place % 3]!,
				surface: place % 5 === 4 ? 'hall' : 'natural-firm',
				kind: place % 4 === 3 ? 'match' : 'training',
				code: place % 8 === 3 ? 'rugby-union' : 'association',
			}),
		),
		session('2027-01-05', { id: 'twice', start: '18:30', pinned: 'gone' }),
	],
	{
		conditions: [
			{ condition: 'calcaneal-apophysitis', side: 'none', status: 'recovering' },
			{ condition: 'fifth-metatarsal-stress-fracture', side: 'left', status: 'recovering' },
		],
	},
)
const plan = planOf(visit)
const audiences = ['clinician', 'player', 'guardian', 'coach'] as const
const said = [
	...plan.sessions.flatMap(({ reasonCodes = [], unmetCodes = [] }) => [
		...reasonCodes,
		...unmetCodes,
	]),
	...plan.findings.map(({ code = '', params = {} }) => ({ code, params })),
]
/** A statement read back from a file, in the words of one reader. */
const spoken = (audience: (typeof audiences)[number], { code, params }: (typeof said)[number]) =>
	spokenTo(audience, {
		...state(code as never, params as never),
		params,
	})

describe('what a planned season says', () => {
	it('has many a code to say', () => {
		const codes = new Set(said.map(({ code }) => code))
		expect(codes.size).toBeGreaterThan(15)
		expect([...codes].filter((code) => !Object.hasOwn(seasonSentences, code))).toEqual([])
	})
	it('the file holds the sentences of its codes', () => {
		for (const { reasons, reasonCodes, unmet, unmetCodes } of plan.sessions) {
			expect(reasonCodes?.map((each) => spoken('clinician', each))).toEqual(reasons)
			expect(unmetCodes?.map((each) => spoken('clinician', each))).toEqual(unmet)
		}
	})
	it.each(audiences)('no ISO date, code or missing value reaches the %s', (audience) => {
		const bad = /\d{4}-\d\d|undefined|NaN|\[object|null|: *$|\(\)| {2}/
		const words = said.flatMap((each) => spoken(audience, each) ?? [])
		expect(words.length).toBeGreaterThan(0)
		expect(words.filter((text) => bad.test(text))).toEqual([])
	})
	it('readings name their numbers', () => {
		const read = plan.findings.flatMap(({ because }) => because.map(readingInWords))
		expect(read.length).toBeGreaterThan(10)
		expect(read.filter((text) => /\d{4}-\d\d|undefined|[a-z][A-Z]/.test(text))).toEqual([])
	})
	it('nothing clinical reaches the coach, nothing but plain words the player', () => {
		const clinical = /stress|fracture|apophys|diagnos|pain|heel|bone|injur|warning|neuropath/i
		const coach = said.flatMap((each) => spoken('coach', each) ?? [])
		expect(coach.filter((text) => clinical.test(text))).toEqual([])
		const jargon = /offset|metatars|apophys|impact|rotation|counter|newton/i
		const player = said.flatMap((each) => spoken('player', each) ?? [])
		expect(player.filter((text) => jargon.test(text))).toEqual([])
	})
	it('a player reads sentences, each with its end', () => {
		const player = said.flatMap((each) => spoken('player', each) ?? [])
		expect(player.filter((text) => !/^[A-Z].*\.$/.test(text))).toEqual([])
	})
})
