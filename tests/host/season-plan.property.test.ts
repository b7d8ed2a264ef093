/**
 * Random seasons that change under way: the written plan keeps every rule as a plain reader works
 * it out, and the past stays.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { assess } from '../../shared/engine/assess.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { planDifference } from '../../shared/engine/season/difference.ts'
import { keepPast } from '../../shared/engine/season/past.ts'
import { seasonSessions } from '../../shared/engine/season/pattern.ts'
import { composePlan } from '../../shared/engine/season/plan/plan.ts'
import { type Plan, planSchema } from '../../shared/engine/season/plan-file.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { Pair, PatternException, Visit } from '../../shared/engine/visit/visit.ts'
import { plainCheck } from '../engine/plain-plan.ts'
import { seasonVisit } from '../engine/random-season.ts'

const protocol = openProtocol()
const highs = await loadHighs()
function planOf(visit: Visit, from: string, earlier?: Plan): Plan {
	const built = buildProblem({
		visit,
		protocol,
		suitability,
		from,
		earlier,
	})
	const solved = solveLevels(highs, built.problem, { timeLimitSeconds: 20, gap: 0.001 })
	return planSchema.parse(
		composePlan({
			visit,
			assessment: assess(visit, []),
			protocol,
			suitability,
			built,
			rotation: solved.rotation,
			status: solved.status,
			gap: solved.gap,
			from,
		}),
	)
}
const start = '2027-01-04'
const day = (most: number) => fc.integer({ min: 0, max: most }).map((days) => addDays(start, days))
const surface = fc.constantFrom(
	'natural-soft' as const,
	'natural-firm' as const,
	'artificial-3g' as const,
	'hybrid' as const,
)
const row = fc.record(
	{
		weekday: fc.constantFrom(
			'monday' as const,
			'tuesday' as const,
			'thursday' as const,
			'friday' as const,
			'saturday' as const,
		),
		minutes: fc.constantFrom(60, 75, 90),
		kind: fc.constantFrom('training' as const, 'training' as const, 'match' as const),
		surface,
		start: fc.constantFrom('10:30', '18:00'),
		code: fc.constantFrom('rugby-union' as const, 'association' as const),
	},
	{ requiredKeys: ['weekday', 'minutes', 'kind', 'surface', 'start'] },
)
const pair = fc.record(
	{
		sole: fc.constantFrom(
			'firm-ground' as const,
			'soft-ground' as const,
			'artificial-ground' as const,
			'turf' as const,
		),
		minutesWorn: fc.constantFrom(0, 90, 2000, 6500),
		weeklyMinutesMax: fc.constantFrom(90, 150),
		shareMinPercent: fc.constantFrom(10, 30),
		shareMaxPercent: fc.constantFrom(35, 60),
		studHeightMm: fc.constantFrom(9, 21, 22),
		dryingHours: fc.constantFrom(12, 30),
		newFrom: day(30),
	},
	{ requiredKeys: ['sole'] },
)
/** What may happen under way. */
type Change = (visit: Visit, from: string) => Visit
const except =
	(exception: (from: string) => PatternException): Change =>
	(visit, from) => ({
		...visit,
		season: {
			...visit.season!,
			exceptions: [...(visit.season!.exceptions ?? []), exception(from)],
		},
	})
const changes: Record<string, Change> = {
	'ground wet for a week': except((from) => ({ from, to: addDays(from, 6), ground: 'wet' })),
	'injured two weeks': except((from) => ({ from, to: addDays(from, 13), status: 'injured' })),
	'injured five weeks': except((from) => ({ from, to: addDays(from, 34), status: 'injured' })),
	'sessions called off': except((from) => ({
		from: addDays(from, 3),
		to: addDays(from, 9),
		status: 'cancelled',
	})),
	'another surface': except((from) => ({ from, to: addDays(from, 20), surface: 'artificial-3g' })),
	'a new pair': (visit, from) => ({
		...visit,
		footwear: [
			...visit.footwear!,
			{ id: 'new', sole: 'artificial-ground', newFrom: from, minutesWorn: 0 },
		],
	}),
	'a pin': (visit, from) => {
		const next = seasonSessions(visit.season!).find(
			({ date, status }) => date >= from && status === undefined,
		)
		return next
			? {
					...visit,
					season: {
						...visit.season!,
						sessions: [...(visit.season!.sessions ?? []), { ...next, pinned: 'p1' }],
					},
				}
			: visit
	},
	'the weekly pattern loses a day': (visit) => ({
		...visit,
		season: { ...visit.season!, pattern: visit.season!.pattern!.slice(1) },
	}),
}
const season = fc.record({
	/* a player is not at two sessions at once */ rows: fc.uniqueArray(row, {
		minLength: 2,
		maxLength: 4,
		selector: ({ weekday }) => weekday,
	}),
	pairs: fc.array(pair, { minLength: 1, maxLength: 3 }),
	change: fc.constantFrom(...Object.keys(changes)),
	second: fc.constantFrom(...Object.keys(changes)),
	from: day(60),
})
const visitOf = (rows: readonly object[], pairs: readonly object[]): Visit => {
	const visit = seasonVisit(
		pairs.map((shoes, index) => ({ ...shoes, id: `p${index + 1}` }) as Pair),
		[],
	)
	return {
		...visit,
		season: {
			from: start,
			to: addDays(start, 7 * 16),
			pattern: rows.map((weekly, index) => ({ ...weekly, id: `row${index}` })) as never,
		},
	}
}
const played = (plan: Plan, before: string) =>
	plan.sessions
		.filter(({ date }) => date < before)
		.map(({ id, date, minutes, pair: worn, parts }) => ({ id, date, minutes, worn, parts }))

/** Changes of a pair, which are dated by the plan and not by a session. */
const ofPairs = ['season.change-pair-new', 'season.change-pair-date', 'season.change-pair-gone']
it('a written plan keeps every rule when the season changes; what was played stays', () => {
	fc.assert(
		fc.property(season, ({ rows, pairs, change, second, from }) => {
			const visit = visitOf(rows, pairs)
			const first = planOf(visit, start)
			expect(plainCheck(visit, first)).toEqual([])
			const later = addDays(from, 14)
			let [plan, now] = [first, visit]
			for (const [name, at] of [
				[change, from],
				[second, later],
			] as const) {
				const changed = changes[name]!(now, at)
				now = { ...changed, season: keepPast(changed.season!, plan, at) }
				const next = planOf(now, at, plan)
				expect([name, plainCheck(now, next)]).toEqual([name, []])
				expect(played(next, at)).toEqual(played(plan, at))
				// a change is told for a day ahead, never for one that was played
				expect(
					planDifference(plan, next).filter(
						({ date, code }) => date < at && !ofPairs.includes(code),
					),
				).toEqual([])
				plan = next
			}
		}),
		{ numRuns: 40 },
	)
}, 240_000)
it('the plain reader sees a plan that was tampered with', () => {
	const visit = visitOf(
		[
			{
				weekday: 'tuesday',
				minutes: 60,
				kind: 'training',
				surface: 'natural-firm',
				start: '18:00',
			},
			{ weekday: 'saturday', minutes: 90, kind: 'match', surface: 'natural-firm', start: '14:00' },
		],
		[
			{ sole: 'firm-ground', minutesWorn: 900, shareMaxPercent: 50 },
			{ sole: 'turf', minutesWorn: 900, weeklyMinutesMax: 150 },
			{ sole: 'indoor' },
		],
	)
	const plan = planOf(visit, start)
	const broken = (change: (session: Plan['sessions'][number]) => void) => {
		const copy = structuredClone(plan)
		for (const session of copy.sessions) change(session)
		copy.findings = []
		return plainCheck(visit, copy).map(([rule, ...about]) => [rule, ...about.slice(0, 2)])
	}
	expect(plainCheck(visit, plan)).toEqual([])
	expect(
		broken((session) => {
			session.pair = 'p3'
		}),
	).toContainEqual(['surface', 'p3', 'natural-firm'])
	expect(
		broken((session) => {
			session.pair = 'p1'
			delete session.parts
		}).map(([rule]) => rule),
	).toContain('share-and-not-told')
	expect(
		broken((session) => {
			session.ground = 'wet'
			session.pair = 'p1'
			session.date = plan.sessions[0]!.date
		}).map(([rule]) => rule),
	).toContain('soaked')
	expect(
		broken((session) => {
			session.minutes = 160
			session.pair = 'p2'
		}),
	).toContainEqual(['week', 'p2', 320])
})
