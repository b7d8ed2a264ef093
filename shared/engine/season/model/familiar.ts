/** A match is played in a pair that was worn in training shortly before. */
import type { SeasonProblem } from '../problem/problem.ts'
import { type Cell, isChoosable } from './choices.ts'
import { settledIn, wornIn } from './drying.ts'
import type { Model, Term } from './programme.ts'
import { declare } from './variables.ts'

/**
 * The wish of a pair for each match.
 * @param touched the sessions in which it may be or is worn, in order of time
 */
export function wishFamiliar(
	model: Model,
	touched: readonly Cell[],
	place: number,
	{ slots, weights }: SeasonProblem,
): void {
	const beginning = slots[0]?.startHour ?? 0
	for (const match of touched) {
		if (match.slot.kind !== 'match' || !isChoosable(match)) continue
		const since = match.slot.startHour - 24 * weights.familiarDays
		// before the season's first fortnight is over, what was worn last year is not known: nothing
		// is asked
		if (since < beginning) continue
		const trainings = touched.filter(
			({ session, slot }) =>
				slot.kind === 'training' && session < match.session && slot.startHour >= since,
		)
		if (settledIn(trainings) > 0) continue
		const unfamiliar = declare(model, { is: 'unfamiliar', slot: match.session, pair: place })
		model.bounds.push(unfamiliar)
		model.goals.familiar.push([1, unfamiliar])
		model.rows.push({
			name: `g${match.session}_${place}`,
			terms: [
				[1, match.worn],
				...wornIn(trainings).map(([, variable]): Term => [-1, variable]),
				[-1, unfamiliar],
			],
			sense: '<=',
			right: 0,
		})
	}
}
