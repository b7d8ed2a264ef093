/** The key under the wall chart: every pair with its pattern, then the other signs. */
import { termWords } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords } from '../../words/words.ts'
import { heading } from '../base.ts'
import type { Block, ChartCell } from '../document.ts'
import type { PlanView } from '../inputs.ts'
import type { ChartInput, Lettering } from './chart-input.ts'

/** A row a pair in order of letters; signs that the chart does not use are left out. */
export function chartKey(input: ChartInput, lettering: Lettering, t: Speak): Block[] {
	const { plan } = input
	const { letterOf, insert } = lettering
	const withoutPair = plan.sessions.some((session) => session.pair === undefined)
	return [
		heading(t('chart.legend')),
		{
			kind: 'chart',
			caption: t('chart.legendCaption'),
			head: [t('chart.legendPattern'), t('chart.legendWords')],
			rows: [...plan.pairs]
				.sort((a, b) => (letterOf(a.id) < letterOf(b.id) ? -1 : 1))
				.map((pair) => pairRow(pair, input, lettering, t)),
			widths: [96, '*'],
		},
		{
			kind: 'list',
			items: [
				...(insert ? [t('chart.legendInsert')] : []),
				t('chart.legendMatch'),
				...(withoutPair ? [t('chart.legendNone')] : []),
			],
		},
	]
}
function pairRow(
	planned: PlanView['pairs'][number],
	{ visit, buying }: ChartInput,
	{ letterOf, patternOf }: Lettering,
	t: Speak,
): ChartCell[] {
	const { id } = planned
	const replaceBy = buying ? planned.replaceBy : undefined
	const letter = letterOf(id)
	const own = visit.footwear?.find((pair) => pair.id === id)
	const sole = planned.sole ?? own?.sole
	const name = planned.name ?? own?.name ?? ''
	const pair = [name, sole ? termWords(sole) : ''].filter(Boolean).join(', ') || id
	const below = replaceBy
		? t('chart.legendReplace', { letter, pair, date: dateWords(replaceBy) })
		: t('chart.legendPair', { letter, pair })
	return [
		{ text: letter, pattern: patternOf(id) },
		{ text: '', below },
	]
}
