/**
 * The guardian summary, one page: purpose, actions, what to buy, wearing in, warning signs, growth,
 * what the club was told.
 */

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
	type ReportInput,
	raiseInWords,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import { standingWishes } from './decided.ts'
import type { Block, LwDocument } from './document.ts'
import { actionsOf, labelsOf } from './player.ts'

/** Features named in one line of one page; the player report has them all. */
const mostFeatures = 5
/**
 * What the guardian may read: what a competent minor asked not to be shown (`withheld`) is left
 * out.
 */
export function guardianSummary(input: ReportInput): LwDocument {
	const { visit, assessment, decisions, clinic, withheld = [], sharedWithClub = [] } = input
	const t = speakOf(clinic)
	const { sizing, growth, footwear, screening } = assessment
	const inside = sizing.insideLengthMm
	const features = (kind: 'seek' | 'avoid') =>
		standingWishes(footwear.target[kind], kind, decisions)
			.slice(0, mostFeatures)
			.map(({ feature }) => featureInWords(feature))
			.join(', ')
	const [seek, avoid] = [features('seek'), features('avoid')]
	const raise = withheld.includes('insert') ? undefined : raiseInWords(decisions.heelRaiseMm, t)
	const again =
		decisions.reviewDate ?? (withheld.includes('growth') ? undefined : growth?.measureAgainBy)
	const { items } = actionsOf(input, t)
	const contact = [clinic.name, clinic.phone, clinic.email].filter(Boolean).join(', ')
	const buy: Block[] = withheld.includes('footwear')
		? []
		: [
				heading(t('guardian.buy')),
				say(
					inside
						? t('guardian.inside', {
								min: shown(inside.min),
								max: shown(inside.max),
								labels: labelsOf(visit, sizing)
									.map(([system, one]) =>
										t('guardian.label', { system, size: sizeShown(one.label) }),
									)
									.join(', '),
							})
						: t('guardian.noSize'),
				),
				...(seek || avoid
					? [
							say(
								[
									seek ? t('guardian.look', { features: seek }) : '',
									avoid ? t('guardian.avoid', { features: avoid }) : '',
								]
									.filter(Boolean)
									.join(' '),
							),
						]
					: []),
			]
	const stop: Block[] =
		screening.action === 'same-day' || screening.action === 'emergency'
			? [
					{
						kind: 'alert',
						title: t('player.first', { action: items[0]?.what ?? '' }),
						text: decisions.referralDone
							? t('player.doneSoFar', { done: decisions.referralDone })
							: t('player.waits'),
					},
				]
			: []
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
		blocks: [
			...amended(input, t),
			...stop,
			say(
				t('guardian.purpose', { name: visit.player.givenName, date: dateWords(visit.visitDate) }),
			),
			heading(t('player.doNow')),
			...(items.length > 0
				? [{ kind: 'actions', items } satisfies Block]
				: [say(t('player.nothingDecided'))]),
			...buy,
			heading(t('guardian.wear')),
			say([t('guardian.wearBoots'), ...(raise ? [t('guardian.raise', { raise })] : [])].join(' ')),
			heading(t('guardian.signs')),
			{
				kind: 'list',
				items: (decisions.warningSigns ?? defaultWarningSigns).slice(0, 6).map(capital),
			},
			say(t('player.emergency')),
			heading(t('guardian.again')),
			say(again ? t('guardian.againBy', { date: dateWords(again) }) : t('guardian.againNone')),
			heading(t('guardian.shared')),
			say(
				sharedWithClub.length > 0
					? t('guardian.sharedWhat', { what: sharedWithClub.join(', ') })
					: t('guardian.sharedNothing'),
			),
			...(decisions.consentNoted
				? []
				: [say(t('guardian.outstanding', { what: t('guardian.consentOpen') }))]),
			small(t('guardian.contact', { contact })),
			...signature(input, t),
		],
		notes: [],
	}
}
