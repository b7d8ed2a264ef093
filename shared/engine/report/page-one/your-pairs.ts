/** Each pair at hand with its verdict and until when; what to wear until a foot has been seen. */

import type { Speak } from '../../words/speak.ts'
import { capital } from '../../words/words.ts'
import { heading, say } from '../base.ts'
import type { Block } from '../document.ts'
import { fitIn, staysOff } from '../fit.ts'
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
/** Words of it, to the player and to a guardian. */
export const untils = {
	player: {
		title: 'player.untilReview',
		wear: 'player.wearUntil',
		soft: 'player.wearSoft',
		noNew: 'player.noNewYet',
		feel: 'player.skinFeel',
	},
	guardian: {
		title: 'guardian.untilReview',
		wear: 'guardian.wearUntil',
		soft: 'guardian.wearSoft',
		noNew: 'guardian.noNewYet',
		feel: 'guardian.skinFeel',
	},
} as const
type Untils = (typeof untils)[keyof typeof untils]
/** What to wear until the foot was looked at, and the care of its skin: never held. */
export function untilFootReview(input: ReportInput, t: Speak, to: Untils = untils.player): Block[] {
	const plan = planOf(input)
	if (!awaitsFootReview(plan.gate)) return []
	const worn = plan.owned
		.filter((pair) => pair.verdict === 'keep' && !staysOff(fitIn(pair, input.visit, plan)))
		.map(({ id }) => pairName(id, input.visit, t))
	return [
		heading(t(to.title)),
		say(worn.length > 0 ? t(to.wear, { pairs: capital(worn.join(', ')) }) : t(to.soft)),
		{
			kind: 'list',
			items: [t(to.noNew), t('player.skinLook'), t(to.feel), t('player.skinCall')],
		},
	]
}
export const wearUntil: Part = (input, _reader, t) => untilFootReview(input, t)
