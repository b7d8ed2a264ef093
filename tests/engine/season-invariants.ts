/**
 * What must hold of every planned season, whatever was typed: each fault in words, none where the
 * plan is sound. For the unit run and, with many more seasons, for the long one.
 */
import fc from 'fast-check'
import { solveLevels } from '../../electron/solver/levels.ts'
import { prepareSeason } from '../../electron/solver/plan.ts'
import { assess } from '../../shared/engine/assess.ts'
import { type Plan, planSchema } from '../../shared/engine/season/plan-file.ts'
import { levels } from '../../shared/engine/season/problem/levels.ts'
import type { Rotation, SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { season } from './drawn-season.ts'
import { plainCheck } from './plain-plan.ts'

type Highs = Parameters<typeof solveLevels>[0]
/** A foot that the boots of a drawn season have room for, or have not. */
const feet = {
	stance: 'standing' as const,
	left: { heelToToeMm: [264, 264] },
	right: { heelToToeMm: [263, 263] },
}
/** Seasons that follow from a seed. */
export const seasonsOf = (seed: number, count: number): Visit[] =>
	fc.sample(season(40, 4, 60), { seed, numRuns: count }).map((visit) => ({ ...visit, feet }))

interface Planned {
	problem: SeasonProblem
	rotation: Rotation
	reached: Record<string, number>
	plan: Plan
}
function planned(highs: Highs, visit: Visit, earlier?: Plan): Planned | Plan {
	const prepared = prepareSeason(visit, earlier ? { earlier } : {})
	if (prepared.held) return prepared.held
	const { problem } = prepared.built
	const solved = solveLevels(highs, problem, { timeLimitSeconds: 30, gap: 0.0001 })
	return {
		problem,
		rotation: solved.rotation,
		reached: Object.fromEntries(solved.levels.map(({ level, reached }) => [level, reached])),
		plan: planSchema.parse(JSON.parse(JSON.stringify(prepared.planOf(solved)))),
	}
}
const tolerance = (value: number): number => 0.01 + 0.001 * value
function levelFaults({ problem, rotation, reached }: Planned): string[] {
	const counted = verify(problem, rotation).reached
	return levels
		.filter((level) => Math.abs(counted[level] - reached[level]!) > tolerance(reached[level]!))
		.map((level) => `${level}: reached ${reached[level]}, counted ${counted[level]}`)
}
/** A match without a pair that the pair of a training could serve, the training given up for it. */
function matchFaults({ problem, rotation }: Planned): string[] {
	const before = verify(problem, rotation)
	const bare = before.noPair.filter((place) => problem.slots[place]!.kind === 'match')
	return bare.flatMap((match) =>
		problem.slots.flatMap((training, place) => {
			const [use] = rotation.uses[place]!
			if (training.kind !== 'training' || training.past || !use) return []
			const settled = problem.fixed.filter(({ slot }) => slot === place)
			const uses = rotation.uses.map((worn, slot) => {
				if (slot === place) return settled
				return slot === match ? [{ ...use, minutes: problem.slots[match]!.minutes }] : worn
			})
			const after = verify(problem, { uses })
			return after.problems.length === 0 && after.reached.pins <= before.reached.pins
				? [`match ${problem.slots[match]!.id} could be worn in the pair of ${training.id}`]
				: []
		}),
	)
}
/** Planned again as it was: nothing that was told becomes otherwise. */
function againFaults(highs: Highs, visit: Visit, { plan }: Planned): string[] {
	const again = planned(highs, visit, plan)
	if (!('problem' in again)) return ['held when planned again']
	const changed = verify(again.problem, again.rotation).toldMissed
	return changed.map((place) => `${again.problem.slots[place]!.id} told otherwise for no reason`)
}
/** What was told is given up only for something that matters more. */
function droppedFaults(highs: Highs, visit: Visit, { plan }: Planned): string[] {
	const sessions = visit.season!.sessions!.slice(1)
	if (sessions.length === 0) return []
	const after = planned(highs, { ...visit, season: { ...visit.season!, sessions } }, plan)
	if (!('problem' in after)) return []
	const { problem, rotation } = after
	const told: Rotation = {
		uses: problem.slots.map(({ id, minutes }) => {
			const was = plan.sessions.find((session) => session.id === id)
			const parts = was?.parts ?? (was?.pair ? [{ pair: was.pair, minutes }] : [])
			return parts.map((part) => ({
				pair: problem.pairs.findIndex((pair) => pair.id === part.pair),
				minutes: part.minutes,
			}))
		}),
	}
	const [kept, found] = [verify(problem, told), verify(problem, rotation)]
	if (kept.problems.length > 0 || found.toldMissed.length === 0) return []
	const above = levels.slice(0, levels.indexOf('told'))
	const gains = above.filter((level) => found.reached[level] < kept.reached[level] - 1e-6)
	return gains.length > 0 ? [] : [`${found.toldMissed.length} told otherwise for no gain`]
}
const turned = (visit: Visit): Visit => ({
	...visit,
	footwear: [...visit.footwear!].reverse(),
	season: { ...visit.season!, sessions: [...visit.season!.sessions!].reverse() },
})
function orderFaults(visit: Visit, { problem }: Planned): string[] {
	const other = prepareSeason(turned(visit))
	return !other.held && JSON.stringify(other.built.problem) === JSON.stringify(problem)
		? []
		: ['another order of typing makes another season']
}
/** Everything that is wrong with the plan of a visit. */
export function seasonFaults(highs: Highs, visit: Visit): string[] {
	const { prescription } = assess(visit)
	const found = planned(highs, visit)
	if (!('problem' in found))
		return plainCheck(visit, found, prescription).map((broken) => broken.join(' '))
	return [
		...verify(found.problem, found.rotation).problems.map(({ is }) => is),
		...plainCheck(visit, found.plan, prescription).map((broken) => broken.join(' ')),
		...levelFaults(found),
		...matchFaults(found),
		...againFaults(highs, visit, found),
		...droppedFaults(highs, visit, found),
		...orderFaults(visit, found),
	]
}
