/** Why this pair and not another, in words a player understands. */
import { rounded } from '../../visit/sides.ts'
import { termWords } from '../../visit/terms.ts'
import { barredWords } from '../problem/code-rules.ts'
import {
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
	points: number | string
	/** places of the other pairs that may be worn here */
	others: readonly number[]
	/** those of them that suit the session better */
	better: readonly number[]
	/** those that suit it as well */
	equal: readonly number[]
}
const nameOf = (problem: SeasonProblem, pair: number): string => pairAt(problem, pair).name
const groundWords = (slot: Slot): string =>
	`${termWords(slot.surface)}${slot.ground === 'dry' ? '' : `, ${slot.ground}`}`

function stepReason(problem: SeasonProblem, slot: Slot, step: Fixed): string {
	const name = nameOf(problem, step.pair)
	return step.minutes < slot.minutes
		? `start in ${name} for ${rounded(step.minutes, 0)} minutes to break them in, then change`
		: `${name} whole session: last steps of breaking in`
}
const easedReasons = ({ easedWeek, easedDays, minutes, fullMinutes }: Slot): string[] =>
	easedWeek === undefined
		? []
		: [`week ${easedWeek} back after ${easedDays} days off: ${minutes} of ${fullMinutes} minutes`]
const sharedReason = (problem: SeasonProblem, uses: readonly Use[]): string => {
	const parts = uses.map(
		({ pair, minutes }) => `${rounded(minutes, 0)} minutes in ${nameOf(problem, pair)}`,
	)
	return `shared: ${parts.join(', then ')}`
}
/** What keeps the pairs that would suit better out of it. */
function betterPairReasons({ outcome, index, slot, place, pair, better }: Chosen): string[] {
	const { problem } = outcome
	const hindrances = better.map((other) => ({
		name: nameOf(problem, other),
		why: hindrance(outcome, index, other),
	}))
	const hindered = hindrances.flatMap(({ why }) => why ?? [])
	const share = pair.shareMin
	const elsewhere = trainedIn(outcome, place) - wornIn(outcome, index, place)
	const forShare =
		slot.kind === 'training' && share !== undefined && elsewhere < share * trainingAhead(problem)
	if (forShare && better.length > 0)
		return [
			...hindered,
			`worn for a share of at least ${rounded(100 * share, 0)} % of the training time`,
		]
	const needed = hindrances
		.filter(({ why }) => why === undefined && slot.pin !== place)
		.map(({ name }) => `${name} suit the surface better but are needed elsewhere this week`)
	return [...hindered, ...needed]
}
/** What keeps a pair that would suit as well out of it, or that the two take turns. */
function equalPairReasons({ outcome, index, equal }: Chosen): string[] {
	const [resting] = equal.flatMap((other) => hindrance(outcome, index, other) ?? [])
	if (resting !== undefined) return [resting]
	return equal.slice(0, 1).map((other) => `shares the wear with ${nameOf(outcome.problem, other)}`)
}
/** Pairs that the code of the session forbids. */
const barredReasons = ({ outcome: { problem }, index }: Chosen): string[] =>
	problem.pairs.flatMap(({ name }, place) => {
		const why = pointsAt(problem, index, place)
		return typeof why === 'string' && why.startsWith(barredWords) ? [`${name} ${why}`] : []
	})
function bestPairReasons({ slot, points, others, better, equal }: Chosen): string[] {
	if (others.length === 0) return ['the only pair that may be worn here']
	return better.length === 0 && points !== 0 && equal.length === 0
		? [`the most suitable pair for ${groundWords(slot)}`]
		: []
}
function chosenIn(outcome: Outcome, index: number, place: number): Chosen {
	const { problem } = outcome
	const points = pointsAt(problem, index, place)
	const rated = problem.pairs.flatMap((_, other) => {
		const theirs = pointsAt(problem, index, other)
		return other !== place && typeof theirs === 'number' ? [{ other, theirs }] : []
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
		better: places(rated.filter(({ theirs }) => typeof points === 'number' && theirs < points)),
		equal: places(rated.filter(({ theirs }) => theirs === points)),
	}
}
function reasonsFor(chosen: Chosen, shared: boolean): string[] {
	const { outcome, index, slot, place, pair, points } = chosen
	return [
		...(slot.pin === place ? ['chosen by the clinician'] : []),
		...(shared ? [sharedReason(outcome.problem, usesIn(outcome.rotation, index))] : []),
		...(points === 0 ? [`${termWords(pair.sole)} sole suits ${groundWords(slot)}`] : []),
		...betterPairReasons(chosen),
		...equalPairReasons(chosen),
		...barredReasons(chosen),
		...bestPairReasons(chosen),
	]
}
/** Reasons for the pair worn longest in a session. */
export function reasonsOf(outcome: Outcome, index: number): string[] {
	const { problem, rotation } = outcome
	const slot = slotAt(problem, index)
	if (slot.past) return ['already played']
	const uses = usesIn(rotation, index)
	const steps = problem.fixed.filter((fixed) => fixed.slot === index && fixed.why === 'break-in')
	const said = [...steps.map((step) => stepReason(problem, slot, step)), ...easedReasons(slot)]
	const [main] = uses
		.filter((use) => !steps.some((step) => step.pair === use.pair))
		.sort((left, right) => right.minutes - left.minutes)
	if (!main) return said
	const shared = uses.length > 1 && steps.length === 0
	return [...new Set([...said, ...reasonsFor(chosenIn(outcome, index, main.pair), shared)])]
}
