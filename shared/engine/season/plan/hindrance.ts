/** What speaks against wearing a pair in a session, asked one question after another. */
import { rounded } from '../../visit/sides.ts'
import type { Hindrance, Seen } from '../../words/en/season/wearing.ts'
import {
	barredAt,
	isTrainingAhead,
	limitsOn,
	minutesIn,
	pairAt,
	type Rotation,
	type SeasonProblem,
	slotAt,
	stillWet,
	trainingAhead,
	usesIn,
} from '../problem/problem.ts'

/** A solved season as its reasons are read from it. */
export interface Outcome {
	problem: SeasonProblem
	rotation: Rotation
	/** of each pair, recorded ones included */
	minutesAtEnd: readonly number[]
}

/** Minutes of a pair in a session. */
export const wornIn = ({ rotation }: Outcome, slot: number, pair: number): number =>
	minutesIn(usesIn(rotation, slot), pair)
/** The day of a session as it is spoken of in another. */
export const seenFrom = ({ problem }: Outcome, slot: number, from: number): Seen => ({
	date: slotAt(problem, slot).date,
	from: slotAt(problem, from).date,
})
/** Training minutes ahead in a pair. */
export const trainedIn = (outcome: Outcome, pair: number): number =>
	outcome.problem.slots.reduce(
		(sum, slot, place) => sum + (isTrainingAhead(slot) ? wornIn(outcome, place, pair) : 0),
		0,
	)
/** The last session before this one from which the pair has not dried when it begins. */
export const lastMoist = (outcome: Outcome, slot: number, pair: number): number | undefined => {
	const { problem } = outcome
	const here = slotAt(problem, slot)
	const moist = problem.slots
		.slice(0, slot)
		.findLastIndex(
			(earlier, place) =>
				wornIn(outcome, place, pair) > 0 && stillWet(pairAt(problem, pair), earlier, here),
		)
	return moist < 0 ? undefined : moist
}

type Question = (outcome: Outcome, slot: number, pair: number) => Hindrance | undefined
const mayNotBeWorn: Question = ({ problem }, slot, pair) => {
	const barred = barredAt(problem, slot, pair)
	return barred && { is: 'barred', pair: pairAt(problem, pair).name, barred }
}
const notDry: Question = (outcome, slot, pair) => {
	const { problem } = outcome
	const moist = lastMoist(outcome, slot, pair)
	if (moist === undefined) return undefined
	const { ground } = slotAt(problem, moist)
	const worn = seenFrom(outcome, moist, slot)
	return { is: 'moist', pair: pairAt(problem, pair).name, ground, worn }
}
/** What is worn in this session itself would make room. */
const weekIsFull: Question = (outcome, slot, pair) => {
	const { problem } = outcome
	for (const { cap, week } of limitsOn(problem, slot, pair)) {
		const used = week.slots
			.filter((other) => other !== slot)
			.flatMap((other) => cap.pairs.map((member) => wornIn(outcome, other, member)))
			.reduce((sum, minutes) => sum + minutes, 0)
		if (used + slotAt(problem, slot).minutes > week.minutes + 1e-6)
			return {
				is: 'week-full',
				pair: pairAt(problem, pair).name,
				limit: cap.limit,
				usedMinutes: rounded(used, 0),
				mostMinutes: week.minutes,
			}
	}
	return undefined
}
/** Minutes of the session that the pair would be worn more. */
const moreMinutes = (outcome: Outcome, slot: number, pair: number): number =>
	slotAt(outcome.problem, slot).minutes - wornIn(outcome, slot, pair)
const shareIsReached: Question = (outcome, slot, pair) => {
	const { problem } = outcome
	const { name, shareMax } = pairAt(problem, pair)
	if (slotAt(problem, slot).kind !== 'training' || shareMax === undefined) return undefined
	const minutes = trainedIn(outcome, pair) + moreMinutes(outcome, slot, pair)
	return minutes > shareMax * trainingAhead(problem) + 1e-6
		? { is: 'share-reached', pair: name, mostPercent: rounded(100 * shareMax, 0) }
		: undefined
}
/** Minutes that the pair is still worn after a session. */
const wornAfter = (outcome: Outcome, slot: number, pair: number): number =>
	outcome.problem.slots.reduce(
		(sum, { counts }, place) => sum + (place > slot && counts ? wornIn(outcome, place, pair) : 0),
		0,
	)
/** What is left of its life does not last this session, or is kept for a later one. */
const lifeIsNeededElsewhere: Question = (outcome, slot, pair) => {
	const { name, lifeMinutes } = pairAt(outcome.problem, pair)
	const minutes = (outcome.minutesAtEnd[pair] ?? 0) + moreMinutes(outcome, slot, pair)
	if (minutes <= lifeMinutes) return undefined
	return minutes - wornAfter(outcome, slot, pair) > lifeMinutes
		? { is: 'barred', pair: name, barred: { why: 'worn-out' } }
		: { is: 'life-elsewhere', pair: name }
}
/** It would not be dry in time for a session of the next seven days. */
const keptForLater: Question = (outcome, slot, pair) => {
	const owned = pairAt(outcome.problem, pair)
	const here = slotAt(outcome.problem, slot)
	for (const [place, next] of outcome.problem.slots.entries()) {
		if (place <= slot) continue
		if (next.startHour - here.startHour >= 24 * 7) return undefined
		if (wornIn(outcome, place, pair) === 0 || !stillWet(owned, here, next)) continue
		const later = seenFrom(outcome, place, slot)
		return { is: 'kept', pair: owned.name, ground: here.ground, next: later }
	}
	return undefined
}
const questions: readonly Question[] = [
	mayNotBeWorn,
	notDry,
	weekIsFull,
	shareIsReached,
	lifeIsNeededElsewhere,
	keptForLater,
]
/** The hindrance to wearing a pair in a session, or undefined where there is none. */
export function hindrance(outcome: Outcome, slot: number, pair: number): Hindrance | undefined {
	for (const question of questions) {
		const answer = question(outcome, slot, pair)
		if (answer !== undefined) return answer
	}
	return undefined
}
