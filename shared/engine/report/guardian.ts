/**
 * The guardian summary, one page: purpose, actions, what to buy, wearing in, warning signs, growth,
 * what the club was told.
 */
import type { Speak } from '../words/speak.ts'
import {
	capital,
	dateWords,
	defaultWarningSigns,
	featureInWords,
	shown,
	sizeShown,
} from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	nameOf,
	raiseInWords,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import { standingWishes } from './decided.ts'
import type { Block, LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { actionsOf, alertFor } from './player/actions.ts'
import { labelsOf } from './player/size.ts'
import { isUrgent, newBootsWait } from './player/waits.ts'
import { readerOf } from './reader.ts'

type Part = (input: ReportInput, t: Speak) => Block[]
/** Features named in one line of one page; the player report has them all. */
const mostFeatures = 5
const mostSigns = 6

/** What is urgent, over everything else; the sources stand in the player's report. */
const stop: Part = (input, t) => alertFor(readerOf('guardian', input), input, t)
const purpose: Part = ({ visit }, t) => [
	say(t('guardian.purpose', { name: visit.player.givenName, date: dateWords(visit.visitDate) })),
]
const doNow: Part = (input, t) => {
	const { items } = actionsOf(readerOf('guardian', input), input, t)
	return [
		heading(t('player.doNow')),
		items.length > 0 ? { kind: 'actions', items } : say(t('player.nothingDecided')),
	]
}
const buy: Part = (input, t) => {
	if (input.withheld?.includes('footwear') || newBootsWait(input.assessment)) return []
	return [heading(t('guardian.buy')), sizeToBuy(input, t), ...featuresToBuy(input, t)]
}
function sizeToBuy({ visit, assessment: { sizing } }: ReportInput, t: Speak): Block {
	const inside = sizing.insideLengthMm
	if (!inside) return say(t('guardian.noSize'))
	const labels = labelsOf(visit, sizing).map(([system, size]) =>
		t('guardian.label', { system, size: sizeShown(size.label) }),
	)
	return say(
		t('guardian.inside', {
			min: shown(inside.min),
			max: shown(inside.max),
			labels: labels.join(', '),
		}),
	)
}
function featuresToBuy({ assessment: { footwear }, decisions }: ReportInput, t: Speak): Block[] {
	const named = (kind: 'seek' | 'avoid') =>
		standingWishes(footwear.target[kind], kind, decisions)
			.slice(0, mostFeatures)
			.map(({ feature }) => featureInWords(feature))
			.join('; ')
	const [seek, avoid] = [named('seek'), named('avoid')]
	const sentences = [
		...(seek ? [t('guardian.look', { features: seek })] : []),
		...(avoid ? [t('guardian.avoid', { features: avoid })] : []),
	]
	return sentences.length > 0 ? [say(sentences.join(' '))] : []
}
const wearing: Part = (input, t) => {
	const { assessment, decisions, withheld = [] } = input
	if (isUrgent(assessment.screening.action)) return []
	const raise = withheld.includes('insert') ? undefined : raiseInWords(decisions.heelRaiseMm, t)
	const sentences = [
		...(newBootsWait(assessment) ? [] : [t('guardian.wearBoots')]),
		...(raise ? [t('guardian.raise', { raise })] : []),
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
const again: Part = ({ decisions, assessment, withheld = [] }, t) => {
	const byGrowth = withheld.includes('growth') ? undefined : assessment.growth?.measureAgainBy
	const date = decisions.reviewDate ?? byGrowth
	return [
		heading(t('guardian.again')),
		say(date ? t('guardian.againBy', { date: dateWords(date) }) : t('guardian.againNone')),
	]
}
const shared: Part = ({ decisions, sharedWithClub = [] }, t) => [
	heading(t('guardian.shared')),
	say(
		sharedWithClub.length > 0
			? t('guardian.sharedWhat', { what: sharedWithClub.join(', ') })
			: t('guardian.sharedNothing'),
	),
	...(decisions.consentNoted
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
	buy,
	wearing,
	signs,
	again,
	shared,
	contact,
	signature,
]

/**
 * What the guardian may read: what a competent minor asked not to be shown (`withheld`) is left
 * out.
 */
export function guardianSummary(input: ReportInput): LwDocument {
	const { visit, clinic } = input
	const t = speakOf(clinic)
	return {
		...frame(input, t),
		title: t('guardian.title'),
		kind: 'guardian',
		print: 'compact',
		subject: [
			[t('subject.player'), nameOf(visit)],
			[t('subject.guardian'), visit.player.guardian?.name ?? t('common.notStated')],
			[t('subject.assessed'), dateWords(visit.visitDate)],
			[t('subject.status'), statusOf(input, t)],
		],
		blocks: parts.flatMap((part) => part(input, t)),
		notes: [],
	}
}
