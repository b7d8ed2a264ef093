/** Weekly limits of groups of pairs, and the share of the training time asked for a pair. */
import { need } from '../../plain/need.ts'
import {
	isTrainingAhead,
	type Owned,
	type SeasonProblem,
	trainingAhead,
} from '../problem/problem.ts'
import { type Cell, cellOf, type ModelSession } from './choices.ts'
import type { Model } from './programme.ts'
import { declare } from './variables.ts'

const settledMinutesOf = (cells: readonly Cell[]): number =>
	cells.reduce((sum, cell) => sum + cell.settledMinutes, 0)
const minutesOf = (cells: readonly Cell[]) => cells.flatMap((cell) => cell.minutes)

/** Hard: at most so many minutes a week. */
export function limitWeeks(
	model: Model,
	sessions: readonly ModelSession[],
	{ caps }: SeasonProblem,
): void {
	for (const [number, cap] of caps.entries())
		for (const [weekNumber, week] of cap.weeks.entries()) {
			const cells = week.slots
				.map((slot) => need(sessions[slot], 'a session of a week'))
				.flatMap((session) => cap.pairs.map((pair) => cellOf(session, pair)))
			const terms = minutesOf(cells)
			if (terms.length > 0)
				model.rows.push({
					name: `c${number}_${weekNumber}`,
					terms,
					sense: '<=',
					right: Math.max(0, week.minutes - settledMinutesOf(cells)),
				})
		}
}
function wishShare(
	model: Model,
	trainings: readonly Cell[],
	{ shareMin, shareMax }: Owned,
	place: number,
	problem: SeasonProblem,
): void {
	const terms = minutesOf(trainings)
	const settled = settledMinutesOf(trainings)
	const ahead = trainingAhead(problem)
	if (shareMax !== undefined) {
		const over = declare(model, { is: 'share-over', pair: place })
		model.rows.push({
			name: `so${place}`,
			terms: [...terms, [-1, over]],
			sense: '<=',
			right: shareMax * ahead - settled,
		})
		model.goals.shares.push([1 / 60, over])
	}
	if (shareMin !== undefined) {
		const under = declare(model, { is: 'share-under', pair: place })
		model.rows.push({
			name: `sr${place}`,
			terms: [...terms, [1, under]],
			sense: '>=',
			right: shareMin * ahead - settled,
		})
		model.goals.shares.push([1 / 60, under])
	}
}
/** A wish: the least and the largest share of the training time ahead; what is outside counts by the hour. */
export function wishShares(
	model: Model,
	sessions: readonly ModelSession[],
	problem: SeasonProblem,
): void {
	const trainings = sessions.filter(({ slot }) => isTrainingAhead(slot))
	for (const [place, pair] of problem.pairs.entries())
		wishShare(
			model,
			trainings.map((session) => cellOf(session, place)),
			pair,
			place,
			problem,
		)
}
