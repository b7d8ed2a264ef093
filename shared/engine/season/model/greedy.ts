/**
 * A sound plan made in two walks through the season, matches before trainings: where the solver
 * starts from, so that even the shortest time limit has an answer.
 */
import { MinutesWorn } from '../problem/minutes-worn.ts'
import {
	fixedUses,
	limitsOn,
	openMinutes,
	pairAt,
	pointsAt,
	type Rotation,
	type SeasonProblem,
	settledMinutes,
	slotAt,
	stillWet,
	totalMinutes,
	type Use,
	usesIn,
} from '../problem/problem.ts'

/** Compares what matters in order: the first difference decides. */
const inOrder = (one: readonly number[], other: readonly number[]): number =>
	one.map((value, place) => value - (other[place] ?? 0)).find((gap) => gap !== 0) ?? 0
const isWorn = (uses: readonly Use[], pair: number): boolean =>
	uses.some((use) => use.pair === pair)

/** Whether a pair would be worn soaked in this session, or soaked by it before the next wear. */
function soaked(problem: SeasonProblem, rotation: Rotation, slot: number, pair: number): boolean {
	const owned = pairAt(problem, pair)
	const here = slotAt(problem, slot)
	return problem.slots.some((other, place) => {
		if (place === slot || !isWorn(usesIn(rotation, place), pair)) return false
		const [first, second] = place < slot ? [other, here] : [here, other]
		return first.ground === 'wet' && stillWet(owned, first, second)
	})
}
/** Whether a pair has dried from every session before, and leaves time to dry to the next. */
const isDry = (problem: SeasonProblem, rotation: Rotation, slot: number, pair: number): boolean =>
	!problem.slots.some((other, place) => {
		if (place === slot || !isWorn(usesIn(rotation, place), pair)) return false
		const here = slotAt(problem, slot)
		const [first, second] = place < slot ? [other, here] : [here, other]
		return stillWet(pairAt(problem, pair), first, second)
	})
/** Whether so many minutes more keep every weekly limit of a pair. */
const withinLimits = (
	problem: SeasonProblem,
	rotation: Rotation,
	{ slot, pair, minutes }: { slot: number; pair: number; minutes: number },
): boolean =>
	limitsOn(problem, slot, pair).every(({ cap, week }) => {
		const used = week.slots.map((other) =>
			totalMinutes(usesIn(rotation, other).filter((use) => cap.pairs.includes(use.pair))),
		)
		return used.reduce((sum, more) => sum + more, minutes) <= week.minutes
	})
/**
 * The pinned or most suitable pair that breaks no hard rule in a session; undefined where there is
 * none.
 */
function bestPair(
	problem: SeasonProblem,
	rotation: Rotation,
	worn: MinutesWorn,
	slot: number,
	open: number,
): number | undefined {
	const { pin, told } = slotAt(problem, slot)
	const able = problem.pairs.flatMap((owned, pair) => {
		const points = pointsAt(problem, slot, pair)
		const allowed =
			points !== undefined &&
			!isWorn(usesIn(rotation, slot), pair) &&
			worn.in(pair) + open <= owned.lifeMinutes &&
			!soaked(problem, rotation, slot, pair) &&
			withinLimits(problem, rotation, { slot, pair, minutes: open })
		if (!allowed) return []
		const moist = isDry(problem, rotation, slot, pair) ? 0 : 1
		return [{ pair, order: [pin === pair ? 0 : 1, points, moist, told === pair ? 0 : 1, pair] }]
	})
	const [best] = able.sort((one, other) => inOrder(one.order, other.order))
	return best?.pair
}

/**
 * Session by session the pinned or most suitable pair that breaks no hard rule; none where there is
 * none.
 */
export function greedyRotation(problem: SeasonProblem): Rotation {
	const rotation: Rotation = { uses: fixedUses(problem) }
	const worn = new MinutesWorn(
		problem.pairs.map((owned, pair) => owned.startMinutes + settledMinutes(problem, pair)),
	)
	// matches first, so that no training takes the life or the dry boots of a match
	for (const kind of ['match', 'training'] as const)
		for (const [index, slot] of problem.slots.entries()) {
			const uses = usesIn(rotation, index)
			const open = slot.kind === kind ? openMinutes(slot, uses) : 0
			if (open <= 0) continue
			const pair = bestPair(problem, rotation, worn, index, open)
			if (pair === undefined) continue
			uses.push({ pair, minutes: open })
			worn.add({ pair, minutes: open })
		}
	return rotation
}
