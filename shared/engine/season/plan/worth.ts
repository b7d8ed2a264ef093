/** What a pair that is bought is worth: the sessions without a pair that it could be worn in. */
import type { Suitability } from '../../protocol/norms/suitability.ts'
import type { Sole } from '../../visit/terms.ts'
import { ladderMinutes } from '../problem/ladder.ts'
import { endHour, type SeasonProblem, type Slot, slotAt } from '../problem/problem.ts'

export interface Worth {
	matches: number
	trainings: number
}
/** A pair that is not owned yet. */
export interface NewPair {
	sole: Sole
	/** ISO date from which it is worn */
	from: string
	lifeMinutes: number
	/** hours to dry, by the ground it was worn on */
	dryingHours: Readonly<Record<Slot['ground'], number>>
}
export const suits = (suitability: Suitability, sole: Sole, { surface, ground }: Slot): boolean =>
	suitability[sole][surface][ground] !== 'forbidden'
const restsBetween = ({ dryingHours }: NewPair, one: Slot, other: Slot): boolean => {
	const [first, second] = one.startHour <= other.startHour ? [one, other] : [other, one]
	return second.startHour - endHour(first) >= dryingHours[first.ground]
}
/** The first session for which its breaking in is over, by its place; undefined: not this season. */
function freeFrom(
	{ slots, breakIn, matchFromMinutes }: SeasonProblem,
	able: readonly number[],
): number | undefined {
	const trainings = able.filter((place) => slots[place]?.kind === 'training')
	const minutes = ladderMinutes(
		trainings.flatMap((place) => slots[place]?.minutes ?? []),
		breakIn,
	)
	const last = minutes.findIndex((total) => total >= matchFromMinutes)
	const place = trainings[last]
	return place === undefined ? undefined : place + 1
}
/**
 * How many of the sessions without a pair a new one could be worn in, matches first: broken in,
 * suited to the ground, within its life, and dry between them.
 * @param noPair places of the sessions without a pair
 */
export function worthOf(
	problem: SeasonProblem,
	suitability: Suitability,
	pair: NewPair,
	noPair: readonly number[],
): Worth {
	const able = [...problem.slots.keys()].filter((place) => {
		const slot = slotAt(problem, place)
		return !slot.past && slot.date >= pair.from && suits(suitability, pair.sole, slot)
	})
	const free = freeFrom(problem, able)
	if (free === undefined) return { matches: 0, trainings: 0 }
	const worn: Slot[] = []
	let left = pair.lifeMinutes - problem.matchFromMinutes
	const worth = { matches: 0, trainings: 0 }
	const open = noPair.filter((place) => place >= free && able.includes(place))
	for (const kind of ['match', 'training'] as const)
		for (const place of open) {
			const slot = slotAt(problem, place)
			if (slot.kind !== kind || slot.minutes > left) continue
			if (!worn.every((other) => restsBetween(pair, slot, other))) continue
			worn.push(slot)
			left -= slot.minutes
			worth[kind === 'match' ? 'matches' : 'trainings'] += 1
		}
	return worth
}
