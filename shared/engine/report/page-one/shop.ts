/** What to take to the shop: the pair to find, its inside length, sizes, what to look for. */
import type { Kept, RolePair } from '../../findings/assessment.ts'
import type { Feature } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, sizeShown } from '../../words/words.ts'
import type { BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { planOf } from '../plan-of.ts'
import { featuresInWords, type PairsAlike, pairsAlike, pairsToFind } from '../player/pairs-alike.ts'
import { labelsOf, labelWords, nextUp } from '../player/size-labels.ts'
import { buyingWaits } from '../waits.ts'
import { wholeInside } from './inside.ts'
import type { Part } from './part.ts'

/** What can be kept in mind in a shop; the rest stands on the next page. */
const mostSought = 5
const mostLeft = 3

/** The pairs of the card: those to be bought, else those of which something is looked for. */
function pairsOf(input: ReportInput): readonly Kept<RolePair>[] {
	const plan = planOf(input)
	if (buyingWaits(plan.gate)) return []
	const bought = plan.pairs.filter(({ means }) => means === 'buy')
	return bought.length > 0 ? bought : pairsToFind(plan)
}
/** The pairs of the card that are alike in all that is asked; undefined where there is no card. */
export function shopPairs(input: ReportInput, t: Speak): PairsAlike | undefined {
	const [first] = pairsAlike(pairsOf(input), planOf(input), t)
	return first
}
/** Its inside length in whole mm; undefined where none is known, or it was set aside. */
export function shopInside(input: ReportInput): { min: string; max: string } | undefined {
	const [first] = pairsOf(input)
	const { boots } = planOf(input).size
	const inside = boots && (first?.insideLengthMm ?? boots)
	return first && inside ? wholeInside(inside) : undefined
}
/** Features that the card leaves for the next page. */
export const beyondCard = ({ seek, avoid }: Pick<PairsAlike, 'seek' | 'avoid'>) => ({
	seek: seek.slice(mostSought),
	avoid: avoid.slice(mostLeft),
})
/** Features that stand on the card. */
export const onCard = ({ seek, avoid }: Pick<PairsAlike, 'seek' | 'avoid'>) => ({
	seek: seek.slice(0, mostSought),
	avoid: avoid.slice(0, mostLeft),
})
/** Whether the card says the sizes; else they stand with the details. */
export const saysSizes = (input: ReportInput): boolean => shopInside(input) !== undefined

type Row = BlockOf<'facts'>['rows'][number]
const featuresRow = (label: string, features: readonly Feature[], most: number): Row[] =>
	features.length === 0 ? [] : [{ label, text: capital(featuresInWords(features.slice(0, most))) }]
/** The labels of the size, and those to try next. */
export function sizeRows({ visit, assessment }: ReportInput, t: Speak): Row[] {
	const labels = labelsOf(visit, assessment.sizing)
	if (labels.length === 0) return []
	// the name of a child's scale says already whose sizes they are
	const said = (of: (label: (typeof labels)[number][1]) => number) =>
		labels
			.map(([name, label, system]) => {
				const size = of(label)
				return `${name} ${system === 'usChild' ? sizeShown(size) : labelWords(label, size, t)}`
			})
			.join(', ')
	return [
		{ label: t('player.nearest'), text: said(({ label }) => label) },
		{ label: t('player.between'), text: said(nextUp) },
	]
}
/** Only where something is to be bought, or the next pair matters. */
export const shop: Part = (input, _reader, t) => {
	const pairs = shopPairs(input, t)
	if (!pairs) return []
	const inside = shopInside(input)
	const { seek, avoid, names } = pairs
	const rows: Row[] = [
		...(inside ? [{ label: t('pageOne.inside'), text: t('pageOne.insideMm', inside) }] : []),
		...(inside ? sizeRows(input, t) : []),
		{ label: t('pageOne.for'), text: names },
		...featuresRow(t('player.seek'), seek, mostSought),
		...featuresRow(t('player.avoid'), avoid, mostLeft),
	]
	return [{ kind: 'facts', title: t('pageOne.shop'), boxed: true, rows }]
}
