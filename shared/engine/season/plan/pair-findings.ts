/** Findings of each pair of a planned season: worn out, outgrown, broken in. */
import type { Finding } from '../../findings/finding.ts'
import type { Because } from '../../protocol/basis.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import { seasonFinding } from '../finding.ts'
import { fullDay } from '../pattern.ts'
import type { PlanPair } from '../plan-file.ts'
import { type Fixed, type Owned, pointsAt, type SeasonProblem, slotAt } from '../problem/problem.ts'

const called = (pair: Pick<PlanPair, 'letter' | 'name'>): string =>
	`pair ${pair.letter} (${pair.name})`
const minutesAtEnd = (pair: PlanPair): Because => ({
	measure: 'minutes at the end of the plan',
	value: rounded(pair.minutes, 0),
	unit: 'min',
})
/** The end of its life, else the day to look at studs, counter and sole. */
function wearFindings(pair: PlanPair, protocol: Protocol): Finding[] {
	const { id, replaceBy, outgrownBy, checkBy } = pair
	if (replaceBy !== undefined && replaceBy !== outgrownBy)
		return [
			seasonFinding(
				`season.worn-out-${id}`,
				'advise',
				`Pair ${pair.letter} (${pair.name}) reaches the end of its expected life by ` +
					`${fullDay(replaceBy)}.`,
				[minutesAtEnd(pair)],
				protocol.basis('wear to the end of life', 'season.lifeMinutes'),
			),
		]
	if (checkBy === undefined) return []
	return [
		seasonFinding(
			`season.wear-check-${id}`,
			'note',
			`Check studs, counter and sole of ${called(pair)} by ${fullDay(checkBy)}.`,
			[minutesAtEnd(pair)],
			protocol.basis('wear to the window of replacement', 'season.checkShare'),
		),
	]
}
function outgrownFindings(pair: PlanPair, protocol: Protocol): Finding[] {
	const { id, outgrownBy, measureAgainBy, toeRoom } = pair
	if (outgrownBy === undefined) return []
	return [
		seasonFinding(
			`season.outgrown-${id}`,
			'advise',
			`At the usual rate of growth ${called(pair)} is too short by ` +
				`${fullDay(outgrownBy)}; measure the feet again by ` +
				`${fullDay(measureAgainBy ?? outgrownBy)}.`,
			[
				{
					measure: 'toe room forecast',
					value: toeRoom?.find(({ date }) => date === outgrownBy)?.toeRoomMm ?? '',
					unit: 'mm',
				},
			],
			protocol.basis('toe room against the forecast of foot growth', 'footwear.youthReplaceMm'),
		),
	]
}
/** What a pair's forecast asks for. */
export const pairFindings = (pair: PlanPair, protocol: Protocol): Finding[] => [
	...wearFindings(pair, protocol),
	...outgrownFindings(pair, protocol),
]

/** Each step of a ladder, by its day. */
const stepDays = (problem: SeasonProblem, steps: readonly Fixed[]): Because[] =>
	steps.map((step) => ({
		measure: fullDay(slotAt(problem, step.slot).date),
		value: rounded(step.minutes, 0),
		unit: 'min',
	}))
const notBrokenIn = (
	problem: SeasonProblem,
	pair: Owned,
	steps: readonly Fixed[],
	protocol: Protocol,
): Finding =>
	seasonFinding(
		`season.break-in-${pair.id}`,
		'caution',
		`Pair ${pair.letter} (${pair.name}) is not broken in before the season ends: too few ` +
			'trainings suit it.',
		stepDays(problem, steps),
		protocol.basis('break-in ladder', 'season.breakInFirstMinutes'),
	)
function howToBreakIn(
	problem: SeasonProblem,
	pair: Owned,
	steps: readonly Fixed[],
	last: Fixed,
	protocol: Protocol,
): Finding {
	const { firstMinutes } = problem.breakIn
	const usual = protocol.value('season.breakInFirstMinutes')
	const shorter =
		firstMinutes < usual
			? ` Steps are ${rounded((100 * firstMinutes) / usual, 0)} % of the ` +
				'usual ones, as an insert is new too.'
			: ''
	return seasonFinding(
		`season.break-in-${pair.id}`,
		'note',
		`Break in ${called(pair)}: twice at home for ` +
			`${rounded(firstMinutes, 0)} minutes, then in ${steps.length} trainings ` +
			`until ${fullDay(slotAt(problem, last.slot).date)}, and only then in a match, with no hot ` +
			`spot left. With a blister or bone pain go back one step.${shorter}`,
		stepDays(problem, steps),
		protocol.basis('break-in ladder', 'season.breakInFirstMinutes'),
	)
}
/** How each new pair is broken in, or that the season is too short for it. */
export function breakInFindings(problem: SeasonProblem, protocol: Protocol): Finding[] {
	return problem.pairs.flatMap((pair, place) => {
		if (!pair.isNew) return []
		const steps = problem.fixed.filter((fixed) => fixed.pair === place && fixed.why === 'break-in')
		const isFree = problem.slots.some(
			(slot, session) =>
				!slot.past &&
				typeof pointsAt(problem, session, place) === 'number' &&
				!steps.some((step) => step.slot === session),
		)
		if (!isFree) return [notBrokenIn(problem, pair, steps, protocol)]
		const last = steps.at(-1)
		return last ? [howToBreakIn(problem, pair, steps, last, protocol)] : []
	})
}
