/** The heel raise, one figure for each foot in each pair, in the same words on every page. */
import type { SettledPlan } from '../prescription/settled.ts'
import type { Visit } from '../visit/visit.ts'
import type { Speak } from '../words/speak.ts'
import { shown } from '../words/words.ts'
import { pairName } from './pair-names.ts'

/** A heel raise in words: '4 mm in both shoes'; undefined where there is none. Heights mm. */
function raiseInWords(
	{ left, right }: { left: number; right: number },
	t: Speak,
): string | undefined {
	if (left === 0 && right === 0) return undefined
	return left === right
		? t('player.raiseBoth', { mm: shown(left) })
		: t('player.raiseSides', { left: shown(left), right: shown(right) })
}
/** Whether anything is added under a heel in any pair. */
export const isRaised = ({ raise }: Pick<SettledPlan, 'raise'>): boolean =>
	raise.pairs.some(({ left, right }) => left.addMm > 0 || right.addMm > 0)
/**
 * A line for the pairs that share a figure, in the order of the plan. A record of before knew one
 * figure for all pairs: its line names none.
 */
export function raiseLines(
	{ raise, questions }: Pick<SettledPlan, 'raise' | 'questions'>,
	visit: Pick<Visit, 'footwear'>,
	t: Speak,
): string[] {
	const lines = Map.groupBy(raise.pairs, ({ left, right }) =>
		raiseInWords({ left: left.addMm, right: right.addMm }, t),
	)
	return [...lines].flatMap(([says, pairs]) => {
		if (says === undefined) return []
		if (questions.length === 0) return [says]
		const names = [...new Set(pairs.map(({ pair }) => pairName(pair, visit, t)))]
		return [t('raise.inPairs', { pairs: names.join(', '), raise: says })]
	})
}
