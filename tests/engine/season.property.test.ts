/**
 * Random seasons: the solver's plan passes the verifier; on small ones nothing found by trying
 * everything is better.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { greedyRotation } from '../../shared/engine/season/model/greedy.ts'
import { lpText } from '../../shared/engine/season/model/lp-text.ts'
import { buildModel } from '../../shared/engine/season/model/model.ts'
import { levels } from '../../shared/engine/season/problem/levels.ts'
import {
	fixedUses,
	openMinutes,
	type Rotation,
	type SeasonProblem,
} from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import { problemOf, season } from './drawn-season.ts'
import { bigSeason, seasonVisit } from './random-season.ts'

const highs = await loadHighs()
const solve = (problem: SeasonProblem, gap = 0.001) =>
	solveLevels(highs, problem, { timeLimitSeconds: 20, gap })
const reachedBy = (problem: SeasonProblem, rotation: Rotation): number[] => {
	const { reached } = verify(problem, rotation)
	return levels.map((level) => reached[level])
}
/** Whether one is better than another: the first level on which they differ decides. */
const isBetter = (one: readonly number[], other: readonly number[]): boolean => {
	const first = one.findIndex((value, place) => Math.abs(value - other[place]!) > 0.002)
	return first >= 0 && one[first]! < other[first]!
}
/** What the solver may be off by: its gap, and the rounding of what it keeps. */
const toleranceOf = (reached: number): number => 0.01 + 0.001 * reached
/** Every way to give each open session one of the pairs or none; the best of the sound ones. */
function bruteForce(problem: SeasonProblem): number[] {
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
	let best = levels.map(() => Number.POSITIVE_INFINITY)
	const walk = (chosen: Rotation['uses']): void => {
		const next = ways[chosen.length]
		if (next) {
			for (const way of next) walk([...chosen, way])
			return
		}
		const checked = verify(problem, { uses: chosen })
		const reached = reachedBy(problem, { uses: chosen })
		if (checked.problems.length === 0 && isBetter(reached, best)) best = reached
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
			const [reached, best] = [reachedBy(problem, solved.rotation), bruteForce(problem)]
			for (const [place, level] of levels.entries())
				expect([level, Math.abs(reached[place]! - best[place]!) < 0.01]).toEqual([level, true])
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
			for (const { level, reached } of solved.levels)
				expect([level, Math.abs(checked.reached[level] - reached) < toleranceOf(reached)]).toEqual([
					level,
					true,
				])
		}),
		{ numRuns: 30 },
	)
}, 240_000)
it('sharing a session never costs a match or a training', () => {
	fc.assert(
		fc.property(season(8, 3, 12), (visit) => {
			const shared = problemOf(visit)
			const whole = { ...shared, slots: shared.slots.map((slot) => ({ ...slot, split: false })) }
			const [apart, together] = [solve(shared, 0), solve(whole, 0)]
			expect(verify(shared, apart.rotation).problems).toEqual([])
			const [shares, wholes] = [apart, together].map(({ levels: reached }) =>
				reached.map((each) => each.reached),
			)
			expect(isBetter(wholes!.slice(0, 4), shares!.slice(0, 4))).toBe(false)
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
	expect(lpText(buildModel(reversed), 'suited')).toBe(lpText(buildModel(typed), 'suited'))
	expect(solve(reversed).rotation).toEqual(solve(typed).rotation)
}, 60_000)
it('LP text has short lines, no exponents and every name once', () => {
	fc.assert(
		fc.property(season(30, 4, 40), (visit) => {
			const text = lpText(buildModel(problemOf(visit)), 'even', new Map([['suited', 1]]))
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
