/**
 * The referral letter: urgency and request first, then summary, reasons, what is held, findings,
 * what was done, question, enclosures, copies, consent.
 */
import { type RecordedCondition, saidConditions } from '../conditions/query.ts'
import { isHeld } from '../facts/held.ts'
import type { Action, Gate } from '../findings/assessment.ts'
import { ageYears } from '../visit/age.ts'
import { isPlanDeclined, needsInterpreter } from '../visit/agreement.ts'
import type { Urgency } from '../visit/letters.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { asPart } from '../words/en/format.ts'
import type { Speak } from '../words/speak.ts'
import { capital, conditionInWords, dateWords, sideWords } from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	nameOf,
	playedBy,
	type Section,
	say,
	signature,
	speakOf,
	statusOf,
} from './base.ts'
import type { Block, LwDocument } from './document.ts'
import { doneTold } from './done-told.ts'
import type { ReportInput } from './inputs.ts'
import { languageForDoctor } from './language-told.ts'
import { measuredNumbers } from './measure-table.ts'
import { medicinesAsked } from './medicines.ts'
import { Notes } from './notes.ts'
import { planOf } from './plan-of.ts'
import { raiseLines } from './raise-lines.ts'
import { readerOf } from './reader.ts'
import { holds } from './referral/holds.ts'
import { actionIn, reasons } from './referral/reasons.ts'
import { buyingWaits, waits } from './waits.ts'

/** What the clinician chose, else what the signs ask for. */
const urgencyOf = (input: ReportInput): Action => input.decisions.letter?.urgency ?? actionIn(input)
const urgency: Section = (input, _notes, t) => {
	const action = urgencyOf(input)
	const text = t('referral.first', {
		urgency: t(`referral.urgency.${action}`),
		request: t(`referral.request.${action}`),
	})
	return [{ kind: 'text', tone: 'lead', text }]
}
const salutation: Section = ({ letter }, _notes, t) => [
	say(
		letter?.recipient
			? t('referral.dearNamed', { recipient: letter.recipient })
			: t('referral.dear'),
	),
]
const summary: Section = (input, _notes, t) => {
	const { visit } = input
	const seen = t('referral.summary', {
		who: [
			nameOf(visit),
			t('common.years', { age: ageYears(visit.player.birthDate, visit.visitDate) }),
			...playedBy(visit),
		].join(', '),
		date: dateWords(visit.visitDate),
	})
	return [
		say(
			[
				seen,
				historyWords(saidConditions(visit), t),
				medicinesWords(input, t),
				...interpreterWords(input, t),
				...languageForDoctor(input, t),
			].join(' '),
		),
	]
}
/** Who sees the player next has to book one. */
function interpreterWords({ decisions }: ReportInput, t: Speak): string[] {
	if (!needsInterpreter(decisions)) return []
	const language = decisions.agreement?.interpreter?.language?.trim()
	return [language ? t('referral.interpreterFor', { language }) : t('referral.interpreter')]
}
/** What was answered of medicines, in the order of the questions; nothing in other hands. */
function medicinesWords(input: ReportInput, t: Speak): string {
	const reader = readerOf('doctor', input, input.letter?.handedTo)
	if (!reader.told.includes('medication')) return t('referral.medicinesKept')
	const answers = medicinesAsked(input.visit)
	if (answers.length === 0) return t('referral.medicinesNotAsked')
	return t('referral.medicinesAsked', {
		answers: answers
			.map(({ name, taken }) => `${name}: ${t(taken ? 'common.yes' : 'common.no')}`)
			.join('; '),
	})
}
const byStatus = { current: 0, recovering: 1, past: 2 } as const
/** All that is recorded, what is there now first. */
function historyWords(conditions: readonly RecordedCondition[], t: Speak): string {
	if (conditions.length === 0) return t('referral.noHistory')
	const history = conditions
		.toSorted((one, other) => byStatus[one.status] - byStatus[other.status])
		.map((recorded) =>
			[
				conditionInWords(recorded, 'doctor'),
				sideWords[recorded.side],
				recorded.status,
				recorded.painWorst === undefined ? '' : t('referral.pain', { pain: recorded.painWorst }),
			]
				.filter(Boolean)
				.join(', '),
		)
	return t('referral.history', { history: history.join('; ') })
}
const findings: Section = ({ visit }, _notes, t) => {
	const rows = measuredNumbers('doctor', visit, t)
	return [
		heading(t('referral.findings')),
		rows.length > 0
			? {
					kind: 'table',
					caption: t('referral.findingsCaption', { date: dateWords(visit.visitDate) }),
					head: [t('referral.measure'), ...bothSides.map((side) => t(`common.${side}`))],
					rows,
					widths: ['*', 90, 90],
					align: ['left', 'right', 'right'],
				}
			: say(t('referral.noMeasures')),
	]
}
/** No footwear to be bought, and no action that waits, is a doctor's to read. */
const whatWasDone: Section = (input, _notes, t) => {
	const { decisions, visit } = input
	const plan = planOf(input)
	const declined = isPlanDeclined(decisions)
	const raises = declined || waits(plan.gate, 'raise') ? [] : raiseLines(plan, visit, t)
	const actionsTold = declined || buyingWaits(plan.gate) ? [] : decisions.actions
	const reader = readerOf('doctor', input, input.letter?.handedTo)
	const { referralDone, screeningDone } = doneTold(reader.told, input)
	const done = [
		...(referralDone ? [withFullStop(referralDone)] : []),
		...screeningDone.map(
			(about) => `${capital(sideWords[about.side])}: ${withFullStop(about.done)}`,
		),
		...raises.map((raise) => t('referral.raise', { raise })),
		...actionsTold.map(({ what, when }) =>
			t('referral.action', { what, when: when || t('common.notStated') }),
		),
		...notAgreedWords(decisions, t),
	]
	return [
		heading(t('referral.done')),
		say(done.length > 0 ? done.join(' ') : t('referral.doneNothing')),
	]
}
/** What was advised and not agreed to is not among what was done. */
function notAgreedWords({ agreement }: ReportInput['decisions'], t: Speak): string[] {
	const what = agreement?.notAgreed?.trim()
	if (!agreement?.answer || agreement.answer === 'agreed' || !what) return []
	return [
		t(agreement.answer === 'declined' ? 'referral.declined' : 'referral.declinedInPart', {
			what: asPart(what),
		}),
	]
}
const withFullStop = (text: string): string => text.replace(/([^.!?])$/, '$1.')

const usualQuestion = (gate: Gate, t: Speak): string =>
	isHeld(gate, 'sport') ? t('referral.questionHeld') : t('referral.questionDefault')
/** What a letter says where the clinician writes nothing else; without a sign it is routine. */
export function usualLetter(input: ReportInput): { urgency: Urgency; question: string } {
	const action = actionIn(input)
	return {
		urgency: action === 'proceed' ? 'letter' : action,
		question: usualQuestion(planOf(input).gate, speakOf(input.clinic)),
	}
}
/** What nobody can tell to be private goes through no other hands than the player's. */
function ownWords({ decisions, letter }: ReportInput, t: Speak): Block[] {
	const { words } = decisions.letter ?? {}
	if (words === undefined) return []
	return [say(letter?.handedTo === 'guardian' ? t('referral.wordsKept') : words)]
}
const question: Section = (input, _notes, t) => {
	const { clinic, decisions } = input
	const { question: asked } = decisions.letter ?? {}
	const { gate, review } = planOf(input)
	const follow = review
		? t('referral.follow', { clinic: clinic.name, date: dateWords(review.date) })
		: t('referral.followNone', { clinic: clinic.name })
	const reach = clinic.phone ? ` ${t('referral.reach', { phone: clinic.phone })}` : ''
	return [
		...ownWords(input, t),
		heading(t('referral.question')),
		say(`${asked ?? usualQuestion(gate, t)} ${follow}${reach}`),
	]
}
const enclosures: Section = ({ letter, decisions }, _notes, t) => {
	const { enclosures: sent, copyTo } = decisions.letter ?? {}
	return [
		say(
			`${t('referral.enclosures', { list: sent ?? t('referral.none') })} ` +
				`${t('referral.copies', { list: copyTo ?? t('referral.none') })}`,
		),
		say(
			letter?.consent
				? t('referral.consent', { consent: letter.consent })
				: t('referral.consentMissing'),
		),
	]
}
const sections: readonly Section[] = [
	urgency,
	(input, _notes, t) => amended(input, t),
	salutation,
	summary,
	reasons,
	holds,
	findings,
	whatWasDone,
	question,
	enclosures,
	(input, _notes, t) => signature(input, t),
]

const titles = {
	emergency: 'referral.titleEmergency',
	'same-day': 'referral.titleSameDay',
	imaging: 'referral.title',
	letter: 'referral.title',
	proceed: 'referral.title',
} as const satisfies Record<Action, string>
/** To another clinician, most urgent first; one page where that holds it. */
export function referralLetter(input: ReportInput): LwDocument {
	const { clinic } = input
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const blocks = sections.flatMap((section) => section(input, notes, t))
	return {
		...frame(input, t),
		title: t(titles[urgencyOf(input)]),
		kind: 'referral',
		print: 'compact',
		subject: subjectOf(input, t),
		blocks,
		notes: notes.list,
	}
}
function subjectOf(input: ReportInput, t: Speak): LwDocument['subject'] {
	const { visit, recordNumber, letter, signedOn, signedTime } = input
	const { guardian } = visit.player
	const to = [letter?.recipient ?? t('common.notStated'), ...(letter?.address ?? [])]
	return [
		[t('subject.player'), nameOf(visit)],
		[t('subject.born'), dateWords(visit.player.birthDate)],
		[t('subject.sex'), visit.player.sex],
		...optional(t('subject.guardian'), guardian && guardianWords(guardian)),
		...optional(t('subject.record'), recordNumber),
		[t('subject.to'), to.join(', ')],
		...optional(
			t('subject.date'),
			signedOn && [dateWords(signedOn), signedTime].filter(Boolean).join(', '),
		),
		[t('subject.status'), statusOf(input, t)],
	]
}
const optional = (label: string, value: string | undefined): LwDocument['subject'] =>
	value ? [[label, value]] : []
const guardianWords = ({ name, phone }: NonNullable<Visit['player']['guardian']>): string =>
	[name, phone].filter(Boolean).join(', ')
