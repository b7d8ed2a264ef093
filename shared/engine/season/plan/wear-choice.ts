/**
 * Matches that no pair may be worn in because a life has ended: the clinician's choice is to wear
 * that pair longer, or to buy.
 */
import { type Finding, findingOf } from '../../findings/finding.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { state } from '../../words/statement.ts'
import { momentOf, pairAt, pointsAt, slotAt } from '../problem/problem.ts'
import { hindrance, type Outcome } from './hindrance.ts'

/** Whether its life, and nothing else, keeps a pair out of a session. */
function isSpent(outcome: Outcome, slot: number, pair: number): boolean {
	const why = hindrance(outcome, slot, pair)
	return why?.is === 'life-elsewhere' || (why?.is === 'barred' && why.barred.why === 'worn-out')
}
/** The pair that would suit a match best if its life were longer; undefined where there is none. */
function pairToWearOn(outcome: Outcome, slot: number): number | undefined {
	const { problem } = outcome
	const points = (pair: number): number => pointsAt(problem, slot, pair) ?? 0
	const [best] = [...problem.pairs.keys()]
		.filter((pair) => isSpent(outcome, slot, pair))
		.sort((one, other) => points(one) - points(other))
	return best
}
/**
 * One finding for each pair that would have to be worn past its life: minutes beyond it, matches
 * without a pair.
 * @param noPair places of the sessions without a pair
 */
export function wearChoices(
	outcome: Outcome,
	noPair: readonly number[],
	protocol: Protocol,
): Finding[] {
	const { problem, minutesAtEnd } = outcome
	const bare = noPair.filter((slot) => slotAt(problem, slot).kind === 'match')
	const byPair = Map.groupBy(bare, (slot) => pairToWearOn(outcome, slot))
	return [...byPair].flatMap(([place, slots]) => {
		if (place === undefined) return []
		const { id, letter, name, lifeMinutes } = pairAt(problem, place)
		const needed = slots.reduce((sum, slot) => sum + slotAt(problem, slot).minutes, 0)
		const minutes = Math.ceil((minutesAtEnd[place] ?? 0) + needed - lifeMinutes)
		if (minutes <= 0) return []
		return [
			findingOf(state('season.wear-or-buy', { letter, name, matches: slots.length, minutes }), {
				id: `season.wear-or-buy-${id}`,
				side: 'none',
				level: 'advise',
				because: slots.map((slot) => ({
					measure: 'matchWithoutPair',
					at: momentOf(slotAt(problem, slot)),
					value: slotAt(problem, slot).surface,
				})),
				basis: protocol.basis('wear to the end of life', 'season.lifeMinutes'),
			}),
		]
	})
}
