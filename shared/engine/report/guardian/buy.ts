/** What to buy: the card of the player's page one, and pairs that are not alike with it. */
import type { Feature } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { heading, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { shop, shopPairs } from '../page-one/shop.ts'
import { planOf } from '../plan-of.ts'
import { featuresInWords, pairsAlike, pairsToFind } from '../player/pairs-alike.ts'
import { isKeptFrom } from '../reader.ts'
import { buyingWaits } from '../waits.ts'
import type { Part } from './part.ts'

/** Pairs and features beyond the card that stand on one page; the player's report has them all. */
const mostPairs = 1
const mostFeatures = 4

/** Nothing while buying waits, or where it is not to be shown. */
export const buy: Part = (input, reader, t) => {
	const plan = planOf(input)
	if (isKeptFrom(reader, input, 'footwear') || buyingWaits(plan.gate)) return []
	const blocks = [...withoutSize(input, t), ...shop(input, reader, t), ...besideCard(input, t)]
	if (blocks.length === 0) return []
	const isNow = plan.questions.length === 0 || plan.pairs.some(({ means }) => means === 'buy')
	return [heading(t(isNow ? 'guardian.buy' : 'guardian.buyNext')), ...blocks]
}
/** Why there is no size to buy by. */
function withoutSize({ assessment, ...input }: ReportInput, t: Speak): Block[] {
	const { fitLengthMm, usableForBuying } = assessment.sizing
	if (fitLengthMm === undefined) return [say(t('guardian.noSize'))]
	const { boots } = planOf({ ...input, assessment }).size
	return usableForBuying === false && !boots ? [say(t('guardian.sizeLater'))] : []
}
function besideCard(input: ReportInput, t: Speak): Block[] {
	const plan = planOf(input)
	const card = shopPairs(input, t)
	if (!card) return []
	const toBuy = pairsToFind(plan).filter(({ means }) => means === 'buy')
	return pairsAlike(toBuy, plan, t)
		.filter(({ ids }) => !ids.some((id) => card.ids.includes(id)))
		.slice(0, mostPairs)
		.map(({ title, seek, avoid }) =>
			say(
				[
					`${title}.`,
					...sentenceOf(seek, (features) => t('guardian.look', { features })),
					...sentenceOf(avoid, (features) => t('guardian.avoid', { features })),
				].join(' '),
			),
		)
}
const sentenceOf = (features: readonly Feature[], says: (features: string) => string): string[] =>
	features.length === 0 ? [] : [says(featuresInWords(features.slice(0, mostFeatures)))]
