/** How the feet were taken, their measures, and the shoes that the insert goes into. */
import type { Pair } from '../../visit/recorded/pairs.ts'
import { bothSides } from '../../visit/sides.ts'
import { termWords } from '../../visit/terms.ts'
import { sizeWords } from '../../words/en/sizes.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, shown } from '../../words/words.ts'
import type { Block, BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { measuredNumbers } from '../measure-table.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'

type Row = BlockOf<'facts'>['rows'][number]
/** By hand, and what is sent along. */
function taken({ visit, decisions }: ReportInput, t: Speak): Row {
	const stance = visit.feet?.stance
	const byHand = stance ? t('order.methodHand', { stance }) : t('order.methodUnknown')
	const { sent } = decisions.order ?? {}
	const along = sent ? [t('order.sent', { sent })] : []
	return { label: t('order.capture'), text: [`${capital(byHand)}.`, ...along].join(' ') }
}
/** The pairs it goes into, as they are recorded; a pair that is still to be found by its name. */
function shoes(input: ReportInput, t: Speak): Row[] {
	const { insert } = planOf(input)
	const pairs = [...new Set(bothSides.flatMap((side) => insert[side].pairs))]
	const recorded = input.visit.footwear ?? []
	const named = pairs.map((id) => {
		const owned = recorded.find((pair) => pair.id === id)
		return [pairName(id, input.visit, t), ...(owned ? shoeWords(owned, t) : [])].join(', ')
	})
	if (named.length === 0) return []
	return [{ label: t('order.shoes'), text: `${capital(named.join('; '))}.` }]
}
/** Its sole, its label and its inside length; what was not recorded is left out. */
const shoeWords = ({ sole, size, sizeSystem, insideLengthMm }: Pair, t: Speak): string[] => [
	...(sole ? [t('order.sole', { sole: termWords(sole) })] : []),
	...(size !== undefined && sizeSystem
		? [t('order.label', { label: sizeWords({ label: size, system: sizeSystem }) })]
		: []),
	...(insideLengthMm === undefined ? [] : [t('order.inside', { length: shown(insideLengthMm) })]),
]
/** The measures of both feet, and what they are put into. */
export const feetAndShoes = (input: ReportInput, t: Speak): Block[] => [
	{ kind: 'facts', rows: [taken(input, t), ...shoes(input, t)] },
	{
		kind: 'table',
		caption: t('order.measures'),
		head: ['', t('common.left'), t('common.right')],
		widths: ['*', 110, 110],
		align: ['left', 'right', 'right'],
		rows: measuredNumbers('laboratory', input.visit, t),
	},
]
