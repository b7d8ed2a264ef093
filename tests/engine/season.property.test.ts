/**
 * Random seasons: the solver's plan passes the verifier; on small ones nothing found by trying
 * everything is better.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { loadHighs, solvePasses } from '../../electron/solver/passes.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { greedyRotation } from '../../shared/engine/season/model/greedy.ts'
import { lpText } from '../../shared/engine/season/model/lp-text.ts'
import { buildModel } from '../../shared/engine/season/model/model.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import {
	fixedUses,
	openMinutes,
	type Rotation,
	type SeasonProblem,
} from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import { soles } from '../../shared/engine/visit/terms.ts'
import type { Pair, Session, Visit } from '../../shared/engine/visit/visit.ts'
import { bigSeason, seasonVisit } from './random-season.ts'

const protocol = openProtocol()
const highs = await loadHighs()
const solve = (problem: SeasonProblem, gap = 0.001) =>
	solvePasses(highs, problem, { timeLimitSeconds: 20, gap })
const session = (days: number) =>
	fc.record(
		{
			date: fc.integer({ min: 0, max: days }).map((day) => addDays('2027-01-04', day)),
			start: fc.constantFrom('09:00', '14:00', '18:00'),
			minutes: fc.constantFrom(45, 60, 75, 90, 110),
			kind: fc.constantFrom('training' as const, 'training' as const, 'match' as const),
			surface: fc.constantFrom(
				'natural-soft' as const,
				'natural-firm' as const,
				'artificial-3g' as const,
				'hall' as const,
			),
			ground: fc.constantFrom('dry' as const, 'damp' as const, 'wet' as const),
			pinned: fc.constantFrom('p1', 'p2'),
			worn: fc.constantFrom('p1', 'p3'),
			code: fc.constantFrom('rugby-union' as const, 'association' as const),
			status: fc.constantFrom('injured' as const),
		},
		{ requiredKeys: ['date', 'start', 'minutes', 'kind', 'surface'] },
	)
const pair = fc.record(
	{
		sole: fc.constantFrom(...soles.slice(0, 5)),
		minutesWorn: fc.constantFrom(0, 100, 3000, 6900, 7300),
		heelToForefootOffsetMm: fc.constantFrom(0, 8),
		weeklyMinutesMax: fc.constantFrom(80, 150),
		shareMinPercent: fc.constantFrom(20, 40),
		shareMaxPercent: fc.constantFrom(30, 60),
		studHeightMm: fc.constantFrom(12, 23),
		dryingHours: fc.constantFrom(0, 30),
		newFrom: fc.constantFrom('2027-01-05', '2027-01-20'),
	},
	{ requiredKeys: ['sole'] },
)
const season = (sessions: number, pairs: number, days: number): fc.Arbitrary<Visit> =>
	fc
		.record({
			sessions: fc.uniqueArray(session(days), {
				minLength: 1,
				maxLength: sessions,
				selector: ({ date, start }) => `${date}${start}`,
			}),
			pairs: fc.array(pair, { minLength: 1, maxLength: pairs }),
			condition: fc.option(
				fc.constantFrom('calcaneal-apophysitis' as const, 'navicular-stress-fracture' as const),
			),
		})
		.map((drawn) =>
			seasonVisit(
				drawn.pairs.map((shoes, index) => ({ ...shoes, id: `p${index + 1}` }) as Pair),
				drawn.sessions as Session[],
				drawn.condition
					? { conditions: [{ condition: drawn.condition, side: 'left', status: 'recovering' }] }
					: {},
			),
		)
const problemOf = (visit: Visit, from?: string): SeasonProblem =>
	buildProblem({ visit, protocol, suitability, ...(from === undefined ? {} : { from }) }).problem

/**
 * Every way to give each open session one of the pairs or none; the least cost of the sound ones.
 */
function bruteForce(problem: SeasonProblem): number {
	const ways = fixedUses(problem).map((settled, session) => {
		const minutes = openMinutes(problem.slots[session]!, settled)
		const able = [...problem.pairs.keys()].filter(
			(pair) =>
				minutes > 0 &&
				typeof problem.cost[session]![pair] === 'number' &&
				!settled.some((use) => use.pair === pair),
		)
		return [...able.map((pair) => [...settled, { pair, minutes }]), [...settled]]
	})
	let best = Number.POSITIVE_INFINITY
	const walk = (chosen: Rotation['uses']): void => {
		const next = ways[chosen.length]
		if (next) {
			for (const way of next) walk([...chosen, way])
			return
		}
		const checked = verify(problem, { uses: chosen })
		if (checked.problems.length === 0 && checked.cost < best) best = checked.cost
	}
	walk([])
	return best
}

it('small seasons: the solver reaches what trying everything finds', () => {
	fc.assert(
		fc.property(season(6, 3, 9), (visit) => {
			const problem = problemOf(visit, '2027-01-06')
			for (const slot of problem.slots) slot.split = false
			const solved = solve(problem, 0)
			const checked = verify(problem, solved.rotation)
			expect(checked.problems).toEqual([])
			expect(checked.cost).toBeCloseTo(bruteForce(problem), 2)
		}),
		{ numRuns: 40 },
	)
}, 120_000)
it('any season: the plan keeps every hard rule and costs what the solver says', () => {
	fc.assert(
		fc.property(season(40, 4, 60), fc.constantFrom(undefined, '2027-01-15'), (visit, from) => {
			const problem = problemOf(visit, from)
			const solved = solve(problem)
			const checked = verify(problem, solved.rotation)
			expect(checked.problems).toEqual([])
			expect(Math.abs(checked.cost - solved.objective)).toBeLessThanOrEqual(0.05)
		}),
		{ numRuns: 30 },
	)
}, 240_000)
it('sharing a session only ever helps', () => {
	fc.assert(
		fc.property(season(8, 3, 12), (visit) => {
			const shared = problemOf(visit)
			const whole = { ...shared, slots: shared.slots.map((slot) => ({ ...slot, split: false })) }
			const [apart, together] = [solve(shared, 0), solve(whole, 0)]
			expect(verify(shared, apart.rotation).problems).toEqual([])
			expect(apart.objective).toBeLessThanOrEqual(together.objective + 0.01)
		}),
		{ numRuns: 12 },
	)
}, 120_000)
it('the same season gives the same plan, in whatever order it was typed', () => {
	const visit = bigSeason(7, 10)
	const turned = {
		...visit,
		footwear: [...visit.footwear!].reverse(),
		season: { ...visit.season!, sessions: [...visit.season!.sessions!].reverse() },
	}
	const [typed, reversed] = [problemOf(visit), problemOf(turned)]
	expect(lpText(buildModel(reversed))).toBe(lpText(buildModel(typed)))
	expect(solve(reversed).rotation).toEqual(solve(typed).rotation)
}, 60_000)
it('LP text has short lines, no exponents and every name once', () => {
	fc.assert(
		fc.property(season(30, 4, 40), (visit) => {
			const text = lpText(buildModel(problemOf(visit)))
			expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThan(250)
			expect(text).not.toMatch(/\de[+-]?\d+ [a-z]/)
			const rows = [...text.matchAll(/^ (\w+):/gm)].map(([, name]) => name)
			expect(new Set(rows).size).toBe(rows.length)
		}),
		{ numRuns: 60 },
	)
})
it('the start given to the solver is sound', () => {
	fc.assert(
		fc.property(season(40, 4, 60), (visit) => {
			const problem = problemOf(visit)
			expect(verify(problem, greedyRotation(problem)).problems).toEqual([])
		}),
		{ numRuns: 100 },
	)
})
it('the verifier sees each broken rule', () => {
	const visit = seasonVisit(
		[
			{ id: 'p1', sole: 'firm-ground', minutesWorn: 7150, weeklyMinutesMax: 40 },
			{ id: 'p2', sole: 'indoor' },
			{ id: 'p3', sole: 'turf', newFrom: '2027-01-04' },
		],
		[
			{
				date: '2027-01-05',
				start: '18:00',
				minutes: 60,
				kind: 'training',
				surface: 'natural-firm',
				ground: 'wet',
			},
			{ date: '2027-01-06', start: '18:00', minutes: 60, kind: 'match', surface: 'natural-firm' },
		],
	)
	const problem = problemOf(visit)
	const broken = (...pairs: number[]) =>
		verify({ ...problem, fixed: [] }, { uses: pairs.map((p) => [{ pair: p, minutes: 60 }]) })
			.problems
	expect(broken(0, 0)).toEqual(
		expect.arrayContaining([
			expect.objectContaining({ is: 'soaked', pair: 'p1', date: '2027-01-06' }),
			expect.objectContaining({ is: 'life', pair: 'p1' }),
			expect.objectContaining({ is: 'week', limit: { limit: 'pair', mostMinutes: 40 } }),
		]),
	)
	expect(broken(1, 1)).toContainEqual(
		expect.objectContaining({
			is: 'barred',
			pair: 'p2',
			barred: { why: 'sole', sole: 'indoor', surface: 'natural-firm' },
		}),
	)
	expect(broken(2, 2)).toEqual(
		expect.arrayContaining([
			expect.objectContaining({ is: 'break-in', pair: 'p3', mostMinutes: 20 }),
			expect.objectContaining({ is: 'match-too-early', minutes: 60, fromMinutes: 150 }),
		]),
	)
	expect(verify({ ...problem, fixed: [] }, { uses: [[], []] }).noPair).toEqual([0, 1])
})
