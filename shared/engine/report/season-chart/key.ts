/** The key over the wall chart: every pair with its pattern and name, then the other signs. */
import { present } from '../../plain/present.ts'
import { termWords } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords } from '../../words/words.ts'
import type { BlockOf, ChartCell } from '../document.ts'
import type { PlanView } from '../inputs.ts'
import type { ChartInput, Lettering } from './chart-input.ts'

/** Pairs side by side. */
const pairsAcross = 4

/** The pairs in order of letters. */
export function pairKey(input: ChartInput, lettering: Lettering, t: Speak): BlockOf<'chart'> {
	const { letterOf } = lettering
	const cells = [...input.plan.pairs]
		.sort((a, b) => (letterOf(a.id) < letterOf(b.id) ? -1 : 1))
		.map((pair) => pairCell(pair, input, lettering, t))
	const columns = Math.max(1, Math.min(pairsAcross, cells.length))
	const rows = Array.from({ length: Math.ceil(cells.length / columns) }, (_, row) =>
		Array.from(
			{ length: columns },
			(_, column): ChartCell => cells[row * columns + column] ?? { text: '' },
		),
	)
	return {
		kind: 'chart',
		caption: t('chart.legendCaption'),
		head: Array.from({ length: columns }, () => ''),
		rows,
		widths: Array.from({ length: columns }, () => '*' as const),
	}
}
/** One line of the signs that the grid uses. */
export function signs({ plan }: ChartInput, { insert }: Lettering, t: Speak): string {
	const withoutPair = plan.sessions.some((session) => session.pair === undefined)
	return [
		t('chart.legendMatch'),
		t('chart.legendUnusual'),
		...(insert ? [t('chart.legendInsert')] : []),
		...(withoutPair ? [t('chart.legendNone')] : []),
	].join(' ')
}
function pairCell(
	{ id, name: planned, sole: plannedSole, replaceBy }: PlanView['pairs'][number],
	{ visit, buying }: ChartInput,
	{ letterOf, patternOf }: Lettering,
	t: Speak,
): ChartCell {
	const own = visit.footwear?.find((pair) => pair.id === id)
	const sole = plannedSole ?? own?.sole
	const name = planned ?? own?.name ?? ''
	const words = [name, sole ? termWords(sole) : ''].filter(Boolean).join(', ') || id
	return {
		text: letterOf(id),
		pattern: patternOf(id),
		beside: words,
		...present({
			below:
				buying && replaceBy ? t('chart.legendReplace', { date: dateWords(replaceBy) }) : undefined,
		}),
	}
}
