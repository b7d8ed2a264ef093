/** The order of what matters in a season, as a coach would try it. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { problemOf, season } from './drawn-season.ts'
import { bigSeason, seasonVisit } from './random-season.ts'

const protocol = openProtocol()
const highs = await loadHighs()
const solve = (problem: SeasonProblem) =>
	solveLevels(highs, problem, { timeLimitSeconds: 20, gap: 0.001 })
const weekly = (minutes: number, kind: Session['kind'], day: number): Session[] =>
	Array.from({ length: 30 }, (_, week) => ({
		id: `${kind}-${day}-${week}`,
		date: addDays('2027-02-01', 7 * week + day),
		start: '18:00',
		minutes,
		kind,
		surface: 'natural-firm',
	}))
it('one boot, long matches and shorter trainings: matches are played, trainings give way', () => {
	const visit = seasonVisit(
		[{ id: 'p1', sole: 'firm-ground', minutesWorn: 1000, lifeMinutes: 7200 }],
		[...weekly(90, 'training', 1), ...weekly(90, 'training', 3), ...weekly(110, 'match', 5)],
	)
	const { levels: reached } = solve(problemOf(visit))
	const at = (level: string) => reached.find((each) => each.level === level)
	expect(at('matches')).toMatchObject({ reached: 0, proven: true })
	// 6,200 minutes are left: 30 matches take 3,300, and 32 trainings of 90 the rest
	expect(at('trainings')).toMatchObject({ reached: 60 - 32, proven: true })
})
it('what a level reached can be kept however many hours it counts', () => {
	const shared = (id: string) => ({
		id,
		sole: 'firm-ground' as const,
		lifeMinutes: 20_000,
		shareMaxPercent: 10,
	})
	const visit = seasonVisit(
		[shared('p1'), shared('p2')],
		[...weekly(90, 'training', 1), ...weekly(90, 'training', 3), ...weekly(90, 'training', 5)],
	)
	const { levels: reached } = solve(problemOf(visit))
	// 8,100 minutes are trained, and each of the two pairs may have a tenth of them
	const shares = reached.find(({ level }) => level === 'shares')
	expect(shares?.proven).toBe(true)
	expect(shares?.reached).toBeCloseTo((0.8 * 8100) / 60, 1)
})
it('no match is without a pair while a training wears one that could have served it', () => {
	fc.assert(
		fc.property(season(20, 2, 40), (visit) => {
			const problem = problemOf(visit)
			const { rotation } = solve(problem)
			const bare = verify(problem, rotation).noPair.filter(
				(place) => problem.slots[place]!.kind === 'match',
			)
			for (const match of bare)
				for (const [training, slot] of problem.slots.entries()) {
					if (slot.kind !== 'training') continue
					const uses = rotation.uses.map((worn, place) => {
						if (place === training) return problem.fixed.filter((fixed) => fixed.slot === place)
						return place === match ? [...worn, ...(rotation.uses[training] ?? [])] : worn
					})
					const [use] = uses[match]!
					if (use && uses[match]!.length === 1) use.minutes = problem.slots[match]!.minutes
					const better = verify(problem, { uses })
					expect(better.problems.length > 0 || better.noPair.includes(match)).toBe(true)
				}
		}),
		{ numRuns: 40 },
	)
}, 120_000)
it('what is far outside a share is kept by the levels after it', () => {
	// 4,860 minutes over, each a sixtieth of an hour: rounded to six decimals it was not kept
	const trainings = [...weekly(90, 'training', 1), ...weekly(90, 'training', 3)]
	const sole = 'firm-ground' as const
	const visit = seasonVisit([{ id: 'p1', sole, shareMaxPercent: 10 }], trainings)
	const { levels: reached } = solve(problemOf(visit))
	expect(reached.find(({ level }) => level === 'shares')!.reached).toBeCloseTo(0.9 * 90, 3)
	expect(reached.every(({ proven }) => proven)).toBe(true)
})
it('a change under way changes no more than it must', () => {
	const visit = bigSeason(5, 12)
	const first = solve(problemOf(visit))
	const earlier = {
		sessions: problemOf(visit).slots.map(({ id, date, minutes }, place) => {
			const [use] = first.rotation.uses[place]!
			return { id, date, minutes, pair: use && problemOf(visit).pairs[use.pair]!.id }
		}),
	}
	const dropped = visit.season!.sessions!.slice(0, -1)
	const later = { ...visit, season: { ...visit.season!, sessions: dropped } }
	const { problem } = buildProblem({ visit: later, protocol, suitability, earlier })
	const again = solve(problem)
	expect(verify(problem, again.rotation).toldMissed).toEqual([])
})
it('a level that the solver cannot answer leaves a sound plan, and says that it is not proven', () => {
	const problem = problemOf(bigSeason(3, 8))
	const noAnswer = 'Minimize\n obj: + 1 a\nSubject To\n b: + 1 a >= 2\nBounds\n 0 <= a <= 1\nEnd\n'
	const failing: typeof highs = Object.assign(Object.create(highs), {
		withModel: (_given: unknown, use: Parameters<typeof highs.withModel>[1]) =>
			highs.withModel({ format: 'lp', data: noAnswer }, use),
	})
	const {
		rotation,
		status,
		levels: reached,
	} = solveLevels(failing, problem, {
		timeLimitSeconds: 20,
		gap: 0.001,
	})
	expect(verify(problem, rotation).problems).toEqual([])
	expect(status).toBe('time-limit')
	expect(reached.some(({ proven }) => !proven)).toBe(true)
})
