/** The moments to buy, so that a new pair is broken in before it is needed. */

import { addDays } from '../../plain/days.ts'
import { need } from '../../plain/need.ts'
import { present } from '../../plain/present.ts'
import type { Suitability } from '../../protocol/norms/suitability.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { type Sole, soles } from '../../visit/terms.ts'
import type { PurchaseNeed } from '../../words/en/season/sessions.ts'
import { type Statement, state } from '../../words/statement.ts'
import type { Plan, PlanPair } from '../plan-file.ts'
import { ladderMinutes } from '../problem/ladder.ts'
import { type SeasonProblem, type Slot, slotAt } from '../problem/problem.ts'
import { suits, worthOf } from './worth.ts'

/**
 * The day to buy a pair that must be broken in by `neededBy`: the first of the last trainings whose
 * ladder reaches match minutes, and a few days for the house. Today, and late, where none is.
 */
function buyBy(
	problem: SeasonProblem,
	suitability: Suitability,
	sole: Sole,
	neededBy: string,
	today: string,
): { day: string; late?: true } {
	const trainings = problem.slots.filter(
		(slot) =>
			slot.kind === 'training' &&
			slot.date < neededBy &&
			slot.date >= today &&
			suits(suitability, sole, slot),
	)
	const first = trainings.findLast((_, place) => {
		const minutes = trainings.slice(place).map((slot) => slot.minutes)
		return (ladderMinutes(minutes, problem.breakIn).at(-1) ?? 0) >= problem.matchFromMinutes
	})
	if (!first) return { day: today, late: true }
	const day = addDays(first.date, -3)
	return { day: day < today ? today : day }
}
/** The sole that suits a session best. */
function bestSole(suitability: Suitability, { surface, ground }: Slot): Sole {
	const points = (sole: Sole): number => {
		const fit = suitability[sole][surface][ground]
		return fit === 'forbidden' ? 99 : fit
	}
	const [best] = [...soles].sort((left, right) => points(left) - points(right))
	return need(best, 'a sole')
}
/** What to buy, with its sentence. */
export type Purchase = Plan['purchases'][number] & Statement
interface Need {
	sole: Sole
	neededBy: string
	/** id of the pair it replaces */
	instead: string | undefined
	why: PurchaseNeed
}
function replacements(problem: SeasonProblem, pairs: readonly PlanPair[], from: string): Need[] {
	const soleOf = new Map(problem.pairs.map((pair) => [pair.id, pair.sole]))
	return pairs.flatMap(({ id, name, replaceBy, outgrownBy, wornOutBy }) => {
		if (replaceBy === undefined) return []
		const reasonOf = (by: string) =>
			by === outgrownBy ? 'outgrown' : by === wornOutBy ? 'worn-out' : 'judged'
		return [
			{
				sole: need(soleOf.get(id), 'the sole of a planned pair'),
				neededBy: replaceBy < from ? from : replaceBy,
				instead: id,
				why: { is: reasonOf(replaceBy), pair: name, by: replaceBy },
			},
		]
	})
}
function forSession(suitability: Suitability, slot: Slot): Need {
	return {
		sole: bestSole(suitability, slot),
		neededBy: slot.date,
		instead: undefined,
		why: { is: 'no-pair', date: slot.date, surface: slot.surface, ground: slot.ground },
	}
}
/** Whether a new pair already entered answers the need of its sole. */
const isComing = (problem: SeasonProblem, { sole, neededBy, instead }: Need): boolean =>
	problem.pairs.some(
		(pair) =>
			pair.sole === sole &&
			pair.id !== instead &&
			pair.newFrom !== undefined &&
			pair.newFrom <= neededBy,
	)
/**
 * What to buy and when, the first need of each sole only. A new pair already entered answers a need
 * of its sole.
 */
export function purchasesOf(
	problem: SeasonProblem,
	suitability: Suitability,
	pairs: readonly PlanPair[],
	noPair: readonly number[],
	from: string,
	protocol: Protocol,
): Purchase[] {
	const usual = {
		lifeMinutes: protocol.value('season.lifeMinutes'),
		dryingHours: {
			dry: protocol.value('season.dryingDryHours'),
			damp: protocol.value('season.dryingDampHours'),
			wet: protocol.value('season.dryingWetHours'),
		},
	}
	const needs = [
		...replacements(problem, pairs, from),
		...noPair.map((slot) => forSession(suitability, slotAt(problem, slot))),
	].sort((left, right) => (left.neededBy < right.neededBy ? -1 : 1))
	const seen = new Set<Sole>()
	return needs.flatMap((wanted) => {
		const { sole, neededBy, instead, why } = wanted
		if (seen.has(sole) || isComing(problem, wanted)) return []
		seen.add(sole)
		const { day, ...late } = buyBy(problem, suitability, sole, neededBy, from)
		const covers = worthOf(problem, suitability, { ...usual, sole, from: day }, noPair)
		return [
			present({
				sole,
				buyBy: day,
				neededBy,
				instead,
				...covers,
				...state('season.buy', { sole, buyBy: day, need: why, covers, ...late }),
			}),
		]
	})
}
