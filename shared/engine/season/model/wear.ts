/** The last levels: lives of the pairs, even wear, even sharing, few switches between sessions. */
import { type Owned, type SeasonProblem, settledMinutes } from '../problem/problem.ts'
import { cellOf, type ModelSession } from './choices.ts'
import type { Model, Term } from './programme.ts'
import { declare, nameOf } from './variables.ts'

const scaled = (terms: readonly Term[], by: (factor: number) => number): Term[] =>
	terms.map(([factor, variable]): Term => [by(factor), variable])

const mostWorn = nameOf({ is: 'most-worn' })
const mostMinutes = nameOf({ is: 'most-minutes' })
/** No pair is worn past its life; the most worn pair, and the one with the most minutes, are kept low. */
function wearOfPair(
	model: Model,
	minutes: readonly Term[],
	{
		pair,
		place,
		start,
		allMinutes,
	}: {
		pair: Owned
		place: number
		/** minutes in it before anything is chosen */
		start: number
		/** open minutes of the whole season */
		allMinutes: number
	},
): void {
	const { lifeMinutes } = pair
	model.rows.push({
		name: `l${place}`,
		terms: minutes,
		sense: '<=',
		right: Math.max(0, lifeMinutes - start),
	})
	model.rows.push({
		name: `z${place}`,
		terms: [...scaled(minutes, (factor) => factor / lifeMinutes), [-1, mostWorn]],
		sense: '<=',
		right: -Math.min(1, start / lifeMinutes),
	})
	model.rows.push({
		name: `s${place}`,
		terms: [...scaled(minutes, (factor) => factor / allMinutes), [-1, mostMinutes]],
		sense: '<=',
		right: 0,
	})
}
/** Rows and points of the wear of every pair that may still be chosen somewhere. */
export function evenOutWear(
	model: Model,
	sessions: readonly ModelSession[],
	problem: SeasonProblem,
): void {
	const { weights } = problem
	const allMinutes = sessions.reduce((sum, session) => sum + session.openMinutes, 0)
	for (const [place, pair] of problem.pairs.entries()) {
		const minutes = sessions.flatMap((session) => cellOf(session, place).minutes)
		if (minutes.length === 0) continue
		const start = pair.startMinutes + settledMinutes(problem, place)
		wearOfPair(model, minutes, { pair, place, start, allMinutes })
		// a trace of points by place, so that equal pairs are always chosen in the same order
		model.goals.even.push(
			...scaled(
				minutes,
				(factor) =>
					(weights.price * pair.relativePrice * factor) / 60 + (0.0001 * (place + 1) * factor) / 60,
			),
		)
	}
	// what cannot be covered lies late, so that there is time to buy
	for (const { index, openMinutes } of sessions)
		if (openMinutes > 0)
			model.goals.even.push([
				weights.gap * (1 - index / sessions.length),
				nameOf({ is: 'without', slot: index }),
			])
	model.goals.even.push(
		[weights.wear, declare(model, { is: 'most-worn' })],
		[weights.share, declare(model, { is: 'most-minutes' })],
	)
}
function avoidSwitch(
	model: Model,
	before: ModelSession,
	after: ModelSession,
	points: number,
): void {
	const both = before.able.flatMap((earlier) => {
		const later = after.able.find((cell) => cell.pair === earlier.pair)
		return later ? [{ pair: earlier.pair, earlier, later }] : []
	})
	if (both.length < 2) return
	const switched = declare(model, { is: 'switch', slot: before.index })
	model.bounds.push(switched)
	model.goals.changes.push([points, switched])
	for (const { pair, earlier, later } of both)
		model.rows.push({
			name: `${switched}_${pair}`,
			terms: [
				[1, earlier.worn],
				[-1, later.worn],
				[-1, switched],
			],
			sense: '<=',
			right: 0,
		})
}
/** Sessions close together are worn in the same pair where nothing speaks against it. */
export function avoidSwitches(
	model: Model,
	sessions: readonly ModelSession[],
	{ weights }: SeasonProblem,
): void {
	let before: ModelSession | undefined
	for (const session of sessions) {
		if (
			before &&
			before.openMinutes > 0 &&
			session.openMinutes > 0 &&
			session.slot.startHour - before.slot.startHour < weights.switchHours
		)
			avoidSwitch(model, before, session, weights.switchOver)
		before = session
	}
}
