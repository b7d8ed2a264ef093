/** The heel raise, one figure for each foot in each pair, in the same words on every page. */
import type { SettledPlan } from '../prescription/settled.ts'
import type { Visit } from '../visit/visit.ts'
import type { Speak } from '../words/speak.ts'
import { shown } from '../words/words.ts'
import { pairName } from './pair-names.ts'

type Foot = Pick<SettledPlan['raise']['pairs'][number]['left'], 'addMm' | 'madeBy' | 'outsoleMm'>
/** What is built on the sole is told from what goes inside. */
function footWords({ addMm, madeBy, outsoleMm = addMm }: Foot, t: Speak): string {
	if (madeBy !== 'outsole') return t('raise.inside', { mm: shown(addMm) })
	const insideMm = addMm - outsoleMm
	return insideMm > 0
		? t('raise.insideAndOutsole', { mm: shown(insideMm), outsole: shown(outsoleMm) })
		: t('raise.onOutsole', { mm: shown(outsoleMm) })
}
/** A heel raise in words: '4 mm in both shoes'; undefined where there is none. Heights mm. */
function raiseInWords({ left, right }: { left: Foot; right: Foot }, t: Speak): string | undefined {
	if (left.addMm === 0 && right.addMm === 0) return undefined
	return left.addMm === right.addMm && left.madeBy === right.madeBy
		? t('player.raiseBoth', { mm: shown(left.addMm) })
		: t('player.raiseSides', { left: footWords(left, t), right: footWords(right, t) })
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
	const lines = Map.groupBy(raise.pairs, (pair) => raiseInWords(pair, t))
	return [...lines].flatMap(([says, pairs]) => {
		if (says === undefined) return []
		if (questions.length === 0) return [says]
		const names = [...new Set(pairs.map(({ pair }) => pairName(pair, visit, t)))]
		return [t('raise.inPairs', { pairs: names.join(', '), raise: says })]
	})
}
