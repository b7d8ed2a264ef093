/**
 * A sound plan made in one walk through the season: where the solver starts from, so that even the
 * shortest time limit has an answer.
 */
import type { Model } from './model.ts'
import { fixedUses, openMinutes, type Rotation, type SeasonProblem, stillWet } from './problem.ts'
import { verify } from './verify.ts'

/**
 * Session by session the pinned or most suitable pair that breaks no hard rule; none where there is
 * none.
 */
export function greedyRotation(problem: SeasonProblem): Rotation {
	const fixed = fixedUses(problem)
	const uses = fixed.map((list) => [...list])
	const minutes = problem.pairs.map(
		(pair, p) =>
			pair.startMinutes +
			problem.fixed
				.filter((one) => one.pair === p && problem.slots[one.slot]!.counts)
				.reduce((sum, one) => sum + one.minutes, 0),
	)
	const soaked = (k: number, p: number): boolean =>
		uses.some(
			(list, s) =>
				s !== k &&
				list.some((use) => use.pair === p) &&
				(s < k
					? problem.slots[s]!.ground === 'wet' && stillWet(problem, p, s, k)
					: problem.slots[k]!.ground === 'wet' && stillWet(problem, p, k, s)),
		)
	const dry = (k: number, p: number): boolean =>
		!uses.some(
			(list, s) => s < k && list.some((use) => use.pair === p) && stillWet(problem, p, s, k),
		)
	const within = (k: number, p: number, open: number): boolean =>
		problem.caps.every(
			(cap) =>
				!cap.pairs.includes(p) ||
				cap.weeks.every(
					(week) =>
						!week.slots.includes(k) ||
						week.slots.reduce(
							(sum, s) =>
								sum +
								uses[s]!.filter((use) => cap.pairs.includes(use.pair)).reduce(
									(one, use) => one + use.minutes,
									0,
								),
							open,
						) <= week.minutes,
				),
		)
	for (const [k, slot] of problem.slots.entries()) {
		const open = openMinutes(problem, k, fixed[k]!)
		if (open <= 0) continue
		const points = (p: number): number =>
			(slot.pin === p ? -problem.weights.pin : 0) +
			(problem.cost[k]![p] as number) +
			(dry(k, p) ? 0 : problem.weights.notDry)
		const able = [...problem.pairs.keys()].filter(
			(p) =>
				typeof problem.cost[k]![p] === 'number' &&
				!fixed[k]!.some((use) => use.pair === p) &&
				minutes[p]! + open <= problem.pairs[p]!.lifeMinutes &&
				!soaked(k, p) &&
				within(k, p, open),
		)
		const best = able.sort((a, b) => points(a) - points(b) || a - b)[0]
		if (best === undefined) continue
		uses[k]!.push({ pair: best, minutes: open })
		minutes[best]! += open
	}
	return { uses }
}
/** The values of every variable of the model that a rotation of whole sessions means. */
export function valuesOf(
	problem: SeasonProblem,
	model: Model,
	rotation: Rotation,
): Map<string, number> {
	const checked = verify(problem, rotation)
	const values = new Map<string, number>([
		['z', 1],
		['q', 1],
	])
	// what only allows is switched on; it costs nothing in the first pass
	for (const bound of model.bounds) {
		const name = bound.split(' ')[2]!
		if (/^[kv]/.test(name)) values.set(name, 1)
	}
	for (const use of model.uses) {
		const worn = rotation.uses[use.slot]!.find(
			(one) => one.pair === use.pair && !model.fixed[use.slot]!.includes(one),
		)
		values.set(use.name, worn ? 1 : 0)
		if (use.part !== undefined) values.set(use.part, worn ? worn.minutes : 0)
	}
	for (const s of checked.noPair) values.set(`u${s}`, 1)
	for (const s of checked.pinMissed) values.set(`m${s}`, 1)
	for (const { slot, pair } of checked.notDry) values.set(`v${slot}_${pair}`, 1)
	for (const { slot, pair } of checked.unfamiliar) values.set(`f${slot}_${pair}`, 1)
	for (const { pair, minutes } of checked.share)
		values.set(`${minutes > 0 ? 'o' : 'r'}${pair}`, Math.abs(minutes))
	return values
}
