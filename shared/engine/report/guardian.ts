/**
 * The guardian summary, one page: what stops, purpose, actions, the pairs at hand, what to buy,
 * wearing in, warning signs, growth, what the club was told.
 */
import { isConsentNoted } from '../visit/agreement.ts'
import type { Feature, PairRole } from '../visit/terms.ts'
import { guardianPaperName, paperName } from '../words/names.ts'
import type { Speak } from '../words/speak.ts'
import { capital, dateWords, defaultWarningSigns, sizeShown } from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	nameOf,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import type { Block, LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { insertOf } from './insert-of.ts'
import { languageLines } from './language-told.ts'
import { head } from './page-one/head.ts'
import { held } from './page-one/held.ts'
import { wholeInside } from './page-one/inside.ts'
import { proposed, toDo } from './page-one/to-do.ts'
import { untilFootReview } from './page-one/your-pairs.ts'
import { planOf } from './plan-of.ts'
import { loadBlocks } from './player/load.ts'
import { pairRows } from './player/pairs.ts'
import { featuresInWords, pairsAlike, pairsToFind } from './player/pairs-alike.ts'
import { labelsOf } from './player/size-labels.ts'
import { raiseLines } from './raise-lines.ts'
import { readerOf } from './reader.ts'
import { buyingWaits, waits } from './waits.ts'

type Part = (input: ReportInput, t: Speak) => Block[]
/** Pairs and their features that stand on one page; the player report has them all. */
const mostFeatures = 4
const mostPairs = 2
const mostSigns = 6
/** Roles whose pairs have the length of boots. */
const ofBoots: readonly PairRole[] = ['match', 'training']

/** What is urgent, over everything else; the sources stand in the player's report. */
const stop: Part = (input, t) => {
	const reader = readerOf('guardian', input)
	return [...head(input, reader, t), ...held(input, reader, t)]
}
const purpose: Part = ({ visit }, t) => [
	say(
		t('guardian.seen', {
			name: paperName(visit.player).givenName,
			date: dateWords(visit.visitDate),
		}),
	),
]
const doNow: Part = (input, t) => {
	const reader = readerOf('guardian', input)
	return [...proposed(input, reader, t), ...toDo(input, reader, t)]
}
const play: Part = (input, t) => loadBlocks(planOf(input), t)
const keepsFootwear = ({ withheld = [] }: ReportInput): boolean => withheld.includes('footwear')
/** Pairs with which something is to be done. */
const pairs: Part = (input, t) => {
	if (keepsFootwear(input)) return []
	const reader = readerOf('guardian', input)
	const rows = pairRows(reader, input, t, ({ verdict }) => verdict !== 'keep')
	if (rows.length === 0) return []
	const items = rows.map(({ name, verdict, whole }) =>
		[t('guardian.pair', { name, verdict }), whole].filter(Boolean).join(' '),
	)
	return [heading(t('guardian.pairs')), { kind: 'list', items }]
}
const untilReview: Part = (input, t) => (keepsFootwear(input) ? [] : untilFootReview(input, t))
const buy: Part = (input, t) => {
	const plan = planOf(input)
	if (keepsFootwear(input) || buyingWaits(plan.gate)) return []
	const blocks = [...sizeToBuy(input, t), ...featuresToBuy(input, t)]
	if (blocks.length === 0) return []
	const isNow = plan.questions.length === 0 || plan.pairs.some(({ means }) => means === 'buy')
	return [heading(isNow ? t('guardian.buy') : t('guardian.buyNext')), ...blocks]
}
/** The length of boots: where boots are bought, or nothing is for now. */
function sizeToBuy(input: ReportInput, t: Speak): Block[] {
	const { visit, assessment } = input
	const { sizing } = assessment
	const { size, pairs } = planOf(input)
	if (sizing.fitLengthMm === undefined) return [say(t('guardian.noSize'))]
	if (sizing.usableForBuying === false && !size.boots) return [say(t('guardian.sizeLater'))]
	const bought = pairs.filter(({ means }) => means === 'buy')
	const isOfBoots = bought.length === 0 || bought.some(({ role }) => ofBoots.includes(role))
	const inside = size.boots
	if (!inside || !isOfBoots) return []
	const labels = labelsOf(visit, sizing).map(([system, size]) =>
		t('guardian.label', { system, size: sizeShown(size.label) }),
	)
	return [
		say(
			t('guardian.inside', {
				...wholeInside(inside),
				labels: labels.join(', '),
			}),
		),
	]
}
function featuresToBuy(input: ReportInput, t: Speak): Block[] {
	const plan = planOf(input)
	const pairs = pairsToFind(plan)
	const toBuy = pairs.filter(({ means }) => means === 'buy')
	const alike = pairsAlike(toBuy.length > 0 ? toBuy : pairs, plan, t)
	return alike
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
/** New boots, raise and insert, each unless it waits or was not to be shown. */
const wearing: Part = (input, t) => {
	const { withheld = [], visit } = input
	const plan = planOf(input)
	const showsInsert = !withheld.includes('insert')
	const raises =
		showsInsert && !waits(plan.gate, 'raise')
			? raiseLines(plan, visit, t).map((raise) => t('guardian.raise', { raise }))
			: []
	const { left, right } = insertOf(input)
	const isWorn = showsInsert && left.length + right.length > 0 && !waits(plan.gate, 'sport')
	const isBought =
		!buyingWaits(plan.gate) &&
		(plan.questions.length === 0 || plan.pairs.some(({ means }) => means === 'buy'))
	const isPlayHeld = waits(plan.gate, 'match') || waits(plan.gate, 'impact')
	const sentences = [
		...(isBought && !isPlayHeld ? [t('guardian.wearBoots')] : []),
		...raises,
		...(isWorn ? [t('guardian.wearInsert', { name: paperName(visit.player).givenName })] : []),
	]
	if (sentences.length === 0) return []
	return [heading(t('guardian.wear')), say(sentences.join(' '))]
}
const signs: Part = ({ decisions }, t) => [
	heading(t('guardian.signs')),
	{
		kind: 'list',
		items: (decisions.warningSigns ?? defaultWarningSigns).slice(0, mostSigns).map(capital),
	},
	say(t('player.emergency')),
]
/** The day of the plan; one that rests on growth alone is not told where growth is not shown. */
const again: Part = (input, t) => {
	const { withheld = [], assessment } = input
	const { review, gate } = planOf(input)
	const isBuying = !buyingWaits(gate)
	const topics = new Map(assessment.findings.map(({ id, topic }) => [id, topic]))
	const byGrowthAlone =
		!!review?.because.length && review.because.every((id) => topics.get(id) === 'growth')
	const isTold = review && !(byGrowthAlone && withheld.includes('growth'))
	return [
		heading(t('guardian.again')),
		say(
			[
				isTold
					? t(isBuying ? 'guardian.againOn' : 'guardian.againHeld', {
							date: dateWords(review.date),
						})
					: t(isBuying ? 'guardian.againNone' : 'guardian.againNoneHeld'),
				...(isBuying && assessment.growth ? [t('guardian.growFast')] : []),
			].join(' '),
		),
	]
}
const shared: Part = ({ decisions, sharedWithClub = [] }, t) => [
	heading(t('guardian.shared')),
	say(
		sharedWithClub.length > 0
			? t('guardian.sharedWhat', { what: sharedWithClub.join(', ') })
			: t('guardian.sharedNothing'),
	),
	...(isConsentNoted(decisions)
		? []
		: [say(t('guardian.outstanding', { what: t('guardian.consentOpen') }))]),
]
const contact: Part = ({ clinic }, t) => [
	small(
		t('guardian.contact', {
			contact: [clinic.name, clinic.phone, clinic.email].filter(Boolean).join(', '),
		}),
	),
]
const parts: readonly Part[] = [
	amended,
	stop,
	purpose,
	doNow,
	play,
	untilReview,
	pairs,
	buy,
	wearing,
	signs,
	again,
	shared,
	(input, t) => languageLines(input, 'guardian', t),
	contact,
	signature,
]

/**
 * What the guardian may read: what a competent minor asked not to be shown (`withheld`) is left
 * out.
 */
export function guardianSummary(input: ReportInput): LwDocument {
	const { visit, clinic } = input
	const { guardian } = visit.player
	const t = speakOf(clinic)
	return {
		...frame(input, t),
		title: t('guardian.title'),
		kind: 'guardian',
		print: 'compact',
		subject: [
			[t('subject.player'), nameOf(visit)],
			[t('subject.guardian'), guardian ? guardianPaperName(guardian) : t('common.notStated')],
			[t('subject.assessed'), dateWords(visit.visitDate)],
			[t('subject.status'), statusOf(input, t)],
		],
		blocks: parts.flatMap((part) => part(input, t)),
		notes: [],
	}
}
