/**
 * The referral letter, one page: urgency and request first, then summary, findings, what was done,
 * question, enclosures, copies, consent.
 */
import { ageYears } from '../visit/age.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import { sideWords } from '../words/en.table.ts'
import type { Key, Speak } from '../words/speak.ts'
import { capital, dateWords, shown } from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	Notes,
	nameOf,
	playsOf,
	type ReportInput,
	raiseInWords,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import type { Block, LwDocument } from './document.ts'

/** Reasons and conditions named on one page; the rest stand in the record. */
const mostReasons = 5
const mostConditions = 6
type Measured = [Key, (side: 'left' | 'right') => string | undefined]
function measuresOf({ visit, assessment }: ReportInput, none: string): [Key, string, string][] {
	const unit = (value: number | undefined, name: string) =>
		value === undefined ? undefined : `${shown(value)} ${name}`.trim()
	const ankle = (side: 'left' | 'right') => visit.ankles?.[side]
	const posture = (side: 'left' | 'right') => visit.posture?.[side]
	const rows: Measured[] = [
		['referral.length', (side) => unit(assessment.sizing[side].lengthMm, 'mm')],
		['referral.lunge', (side) => unit(meanOf(ankle(side)?.lungeCm), 'cm')],
		['referral.lungeDeg', (side) => unit(meanOf(ankle(side)?.lungeDeg), 'degrees')],
		['referral.straight', (side) => unit(meanOf(ankle(side)?.kneeStraightDeg), 'degrees')],
		['referral.bent', (side) => unit(meanOf(ankle(side)?.kneeBentDeg), 'degrees')],
		['referral.fpi', (side) => unit(assessment.posture[side].fpi, '')],
		['referral.drop', (side) => unit(meanOf(posture(side)?.navicularDropMm), 'mm')],
		['referral.firstRay', (side) => posture(side)?.firstRay],
		['referral.mtp', (side) => unit(meanOf(posture(side)?.firstMtpDegNonWeightBearing), 'degrees')],
		['referral.jack', (side) => unit(meanOf(posture(side)?.jackTestDeg), 'degrees')],
		['referral.rises', (side) => unit(posture(side)?.heelRises, '')],
	]
	return rows
		.map(([key, of]): [Key, string, string] => [key, of('left') ?? none, of('right') ?? none])
		.filter(([, left, right]) => left !== none || right !== none)
}
function historyOf({ visit }: ReportInput, t: Speak): string {
	const all = visit.conditions ?? []
	if (all.length === 0) return t('referral.noHistory')
	const named = all
		.slice(0, mostConditions)
		.map((one) =>
			[
				termWords(one.condition),
				sideWords[one.side],
				one.status,
				one.painWorst === undefined ? '' : t('referral.pain', { pain: one.painWorst }),
			]
				.filter(Boolean)
				.join(', '),
		)
	return t('referral.history', {
		history: [
			...named,
			...(all.length > named.length
				? [t('referral.more', { count: all.length - named.length })]
				: []),
		].join('; '),
	})
}
function reasonsOf({ assessment: { screening } }: ReportInput, notes: Notes, t: Speak): Block[] {
	const yes = screening.items.filter((item) => item.state === 'yes')
	const notAsked = screening.items.filter((item) => item.state === 'not-asked').length
	const named = yes
		.slice(0, mostReasons)
		.map(
			(item) =>
				`${item.says}${item.side === 'left' || item.side === 'right' ? ` (${sideWords[item.side]})` : ''} ` +
				`${notes.mark(item.basis)}`,
		)
	return [
		heading(t('referral.reasons')),
		named.length > 0
			? {
					kind: 'list',
					items: [
						...named,
						...(yes.length > named.length
							? [capital(t('referral.more', { count: yes.length - named.length }))]
							: []),
					],
				}
			: say(t('referral.noReasons')),
		...(notAsked > 0 ? [small(t('referral.notAsked', { count: notAsked }))] : []),
	]
}
export function referralLetter(input: ReportInput): LwDocument {
	const { visit, assessment, decisions, clinic, letter = {}, recordNumber } = input
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const { action } = assessment.screening
	const none = t('common.notMeasured')
	const rows = measuresOf(input, none).map(([key, left, right]) => [
		(t as (key: Key) => string)(key),
		left,
		right,
	])
	const raise = raiseInWords(decisions.heelRaiseMm, t)
	const done = [
		...(decisions.referralDone ? [decisions.referralDone.replace(/([^.!?])$/, '$1.')] : []),
		...(decisions.screeningDone ?? []).map(
			(one) => `${capital(sideWords[one.side])}: ${one.done.replace(/([^.!?])$/, '$1.')}`,
		),
		...(raise ? [t('referral.raise', { raise })] : []),
		...decisions.actions.map(({ what, when }) =>
			t('referral.action', { what, when: when || t('common.notStated') }),
		),
	]
	return {
		...frame(input, t),
		title: t('referral.title'),
		kind: 'referral',
		print: 'compact',
		subject: [
			[t('subject.player'), nameOf(visit)],
			[t('subject.born'), dateWords(visit.player.birthDate)],
			[t('subject.sex'), visit.player.sex],
			...(recordNumber ? [[t('subject.record'), recordNumber] as [string, string]] : []),
			[
				t('subject.to'),
				[letter.recipient ?? t('common.notStated'), ...(letter.address ?? [])].join(', '),
			],
			[t('subject.status'), statusOf(input, t)],
		],
		blocks: [
			{
				kind: 'text',
				tone: 'lead',
				text: t('referral.first', {
					urgency: t(`referral.urgency.${action}`),
					request: letter.request ?? t(`referral.request.${action}`),
				}),
			},
			...amended(input, t),
			say(
				letter.recipient
					? t('referral.dearNamed', { recipient: letter.recipient })
					: t('referral.dear'),
			),
			say(
				[
					t('referral.summary', {
						name: nameOf(visit),
						age: ageYears(visit.player.birthDate, visit.visitDate),
						plays: playsOf(visit, t),
						date: dateWords(visit.visitDate),
					}),
					historyOf(input, t),
					t('referral.medicines'),
				].join(' '),
			),
			...reasonsOf(input, notes, t),
			heading(t('referral.findings')),
			rows.length > 0
				? {
						kind: 'table',
						caption: t('referral.findingsCaption', { date: dateWords(visit.visitDate) }),
						head: [t('referral.measure'), ...bothSides.map((side) => t(`common.${side}`))],
						rows,
						widths: ['*', 90, 90],
					}
				: say(t('referral.noMeasures')),
			heading(t('referral.done')),
			say(done.length > 0 ? done.join(' ') : t('referral.doneNothing')),
			heading(t('referral.question')),
			say(
				`${letter.question ?? t('referral.questionDefault')} ` +
					`${decisions.reviewDate ? t('referral.follow', { clinic: clinic.name, date: dateWords(decisions.reviewDate) }) : t('referral.followNone', { clinic: clinic.name })}`,
			),
			say(
				`${t('referral.enclosures', { list: letter.enclosures?.join(', ') || t('referral.none') })} ` +
					`${t('referral.copies', { list: letter.copyTo?.join(', ') || t('referral.none') })}`,
			),
			say(
				letter.consent
					? t('referral.consent', { consent: letter.consent })
					: t('referral.consentMissing'),
			),
			...signature(input, t),
		],
		notes: notes.list,
	}
}
