/** Each pair at hand with its verdict and until when; what to wear until a foot has been seen. */

import type { Speak } from '../../words/speak.ts'
import { capital } from '../../words/words.ts'
import { heading, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { pairRows } from '../player/pairs.ts'
import { awaitsFootReview, waits } from '../waits.ts'
import { mostPairs } from './most-pairs.ts'
import type { Part } from './part.ts'

/** The pairs in a table; none in the form of a held page, which names what is not worn. */
export const yourPairs: Part = (input, reader, t) => {
	if (waits(planOf(input).gate, 'sport')) return []
	const rows = pairRows(reader, input, t).slice(0, mostPairs)
	if (rows.length === 0) return []
	return [
		heading(t('pageOne.pairs')),
		{
			kind: 'table',
			caption: t('player.pairsCaption'),
			head: [t('player.pair'), t('player.verdict'), t('pageOne.untilWhen')],
			rows: rows.map(({ name, verdict, first }) => [name, verdict, first]),
			widths: [105, 108, '*'],
		},
	]
}
/** What to wear until the foot was looked at, and the care of its skin: never held. */
export function untilFootReview(input: ReportInput, t: Speak): Block[] {
	const { gate, owned } = planOf(input)
	if (!awaitsFootReview(gate)) return []
	const worn = owned
		.filter(({ verdict }) => verdict === 'keep')
		.map(({ id }) => pairName(id, input.visit, t))
	return [
		heading(t('player.untilReview')),
		say(
			worn.length > 0
				? t('player.wearUntil', { pairs: capital(worn.join(', ')) })
				: t('player.wearSoft'),
		),
		{
			kind: 'list',
			items: [
				t('player.noNewYet'),
				t('player.skinLook'),
				t('player.skinFeel'),
				t('player.skinCall'),
			],
		},
	]
}
export const wearUntil: Part = (input, _reader, t) => untilFootReview(input, t)
