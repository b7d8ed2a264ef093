/** Why this pair and not another. */
import { rounded } from '../../visit/sides.ts'
import type { Barred } from '../../words/en/season/wearing.ts'
import { onceEach, type Statement, state } from '../../words/statement.ts'
import {
	barredAt,
	type Fixed,
	type Owned,
	pairAt,
	pointsAt,
	type SeasonProblem,
	type Slot,
	slotAt,
	trainingAhead,
	type Use,
	usesIn,
} from '../problem/problem.ts'
import { hindrance, type Outcome, trainedIn, wornIn } from './hindrance.ts'

/** The pair worn longest in a session, beside the others that could be worn there. */
interface Chosen {
	outcome: Outcome
	index: number
	slot: Slot
	place: number
	pair: Owned
	/** an hour; undefined where it was worn before it was barred */
	points: number | undefined
	/** places of the other pairs that may be worn here */
	others: readonly number[]
	/** those of them that suit the session better */
	better: readonly number[]
	/** those that suit it as well */
	equal: readonly number[]
}
const nameOf = (problem: SeasonProblem, pair: number): string => pairAt(problem, pair).name

function stepReason(problem: SeasonProblem, slot: Slot, step: Fixed): Statement {
	const pair = nameOf(problem, step.pair)
	return step.minutes < slot.minutes
		? state('season.step', { pair, minutes: rounded(step.minutes, 0) })
		: state('season.last-step', { pair })
}
function easedReasons({ easedWeek, easedDays, minutes, fullMinutes }: Slot): Statement[] {
	if (easedWeek === undefined || easedDays === undefined || fullMinutes === undefined) return []
	return [state('season.eased', { week: easedWeek, days: easedDays, minutes, fullMinutes })]
}
const sharedReason = (problem: SeasonProblem, uses: readonly Use[]): Statement =>
	state('season.shared', {
		parts: uses.map(({ pair, minutes }) => ({
			pair: nameOf(problem, pair),
			minutes: rounded(minutes, 0),
		})),
	})
/** What keeps the pairs that would suit better out of it. */
function betterPairReasons({ outcome, index, slot, place, pair, better }: Chosen): Statement[] {
	const { problem } = outcome
	const hindrances = better.map((other) => ({
		name: nameOf(problem, other),
		why: hindrance(outcome, index, other),
	}))
	const hindered = hindrances.flatMap(({ why }) =>
		why ? [state('season.hindered', { hindrance: why })] : [],
	)
	const share = pair.shareMin
	const elsewhere = trainedIn(outcome, place) - wornIn(outcome, index, place)
	const forShare =
		slot.kind === 'training' && share !== undefined && elsewhere < share * trainingAhead(problem)
	if (forShare && better.length > 0)
		return [...hindered, state('season.worn-for-share', { leastPercent: rounded(100 * share, 0) })]
	const needed = hindrances
		.filter(({ why }) => why === undefined && slot.pin !== place)
		.map(({ name }) => state('season.better-elsewhere', { pair: name }))
	return [...hindered, ...needed]
}
/** What keeps a pair that would suit as well out of it, or that the two take turns. */
function equalPairReasons({ outcome, index, equal }: Chosen): Statement[] {
	const [resting] = equal.flatMap((other) => hindrance(outcome, index, other) ?? [])
	if (resting) return [state('season.hindered', { hindrance: resting })]
	return equal
		.slice(0, 1)
		.map((other) => state('season.shares-wear', { pair: nameOf(outcome.problem, other) }))
}
/** Why a player would ask after a pair that lies there: what a sole is not for needs no word. */
const askedAfter: readonly Barred['why'][] = [
	'code',
	'not-at-hand',
	'breaking-in',
	'left-off',
	'training-only',
	'replaced',
	'worn-out',
]
const barredReasons = ({ outcome, outcome: { problem }, index }: Chosen): Statement[] =>
	problem.pairs.flatMap(({ name }, place) => {
		const barred = barredAt(problem, index, place)
		return barred && wornIn(outcome, index, place) === 0 && askedAfter.includes(barred.why)
			? [state('season.hindered', { hindrance: { is: 'barred', pair: name, barred } })]
			: []
	})
function bestPairReasons({ slot, points, others, better, equal }: Chosen): Statement[] {
	if (others.length === 0) return [state('season.only-pair')]
	return better.length === 0 && points !== 0 && equal.length === 0
		? [state('season.most-suitable', { surface: slot.surface, ground: slot.ground })]
		: []
}
function chosenIn(outcome: Outcome, index: number, place: number): Chosen {
	const { problem } = outcome
	const points = pointsAt(problem, index, place)
	const rated = problem.pairs.flatMap((_, other) => {
		const theirs = pointsAt(problem, index, other)
		return other !== place && theirs !== undefined ? [{ other, theirs }] : []
	})
	const places = (list: typeof rated): number[] => list.map(({ other }) => other)
	return {
		outcome,
		index,
		slot: slotAt(problem, index),
		place,
		pair: pairAt(problem, place),
		points,
		others: places(rated),
		better: places(rated.filter(({ theirs }) => points !== undefined && theirs < points)),
		equal: places(rated.filter(({ theirs }) => theirs === points)),
	}
}
function reasonsFor(chosen: Chosen, shared: boolean): Statement[] {
	const { outcome, index, slot, place, pair, points } = chosen
	const { surface, ground } = slot
	return [
		...(slot.pin === place ? [state('season.chosen')] : []),
		...(shared ? [sharedReason(outcome.problem, usesIn(outcome.rotation, index))] : []),
		...(points === 0 ? [state('season.sole-suits', { sole: pair.sole, surface, ground })] : []),
		...betterPairReasons(chosen),
		...equalPairReasons(chosen),
		...barredReasons(chosen),
		...bestPairReasons(chosen),
	]
}
/** Reasons for the pair worn longest in a session. */
export function reasonsOf(outcome: Outcome, index: number): Statement[] {
	const { problem, rotation } = outcome
	const slot = slotAt(problem, index)
	if (slot.past) return [state('season.already-played')]
	const uses = usesIn(rotation, index)
	const steps = problem.fixed.filter((fixed) => fixed.slot === index && fixed.why === 'break-in')
	const said = [...steps.map((step) => stepReason(problem, slot, step)), ...easedReasons(slot)]
	const [main] = uses
		.filter((use) => !steps.some((step) => step.pair === use.pair))
		.sort((left, right) => right.minutes - left.minutes)
	if (!main) return said
	const shared = uses.length > 1 && steps.length === 0
	return onceEach([...said, ...reasonsFor(chosenIn(outcome, index, main.pair), shared)])
}
