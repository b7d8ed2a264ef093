/**
 * The referral letter, one page: urgency and request first, then summary, findings, what was done,
 * question, enclosures, copies, consent.
 */
import { ageYears } from '../visit/age.ts'
import { bothSides } from '../visit/sides.ts'
import type { Speak } from '../words/speak.ts'
import { isOpenTo } from '../words/statement.ts'
import { capital, conditionInWords, dateWords, sideWords } from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	nameOf,
	playsOf,
	raiseInWords,
	type Section,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import type { LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { measuredTable } from './measure-table.ts'
import { medicinesAsked } from './medicines.ts'
import { Notes } from './notes.ts'
import { readerOf, toldBy } from './reader.ts'

/** Reasons and conditions named on one page; the rest stand in the record. */
const mostReasons = 5
const mostConditions = 6

const urgency: Section = ({ assessment, letter }, _notes, t) => {
	const { action } = assessment.screening
	const text = t('referral.first', {
		urgency: t(`referral.urgency.${action}`),
		request: letter?.request ?? t(`referral.request.${action}`),
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
		name: nameOf(visit),
		age: ageYears(visit.player.birthDate, visit.visitDate),
		plays: playsOf(visit, t),
		date: dateWords(visit.visitDate),
	})
	return [say([seen, historyWords(visit.conditions ?? [], t), medicinesWords(input, t)].join(' '))]
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
type Conditions = NonNullable<ReportInput['visit']['conditions']>
function historyWords(conditions: Conditions, t: Speak): string {
	if (conditions.length === 0) return t('referral.noHistory')
	const named = conditions
		.slice(0, mostConditions)
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
	const unnamed = conditions.length - named.length
	const history = unnamed > 0 ? [...named, t('referral.more', { count: unnamed })] : named
	return t('referral.history', { history: history.join('; ') })
}
/**
 * Warning signs, in the doctor's words; one without them stands as the clinician reads it, so that
 * no danger is left out.
 */
const reasons: Section = (input, notes, t) => {
	const { screening } = input.assessment
	const reader = readerOf('doctor', input, input.letter?.handedTo)
	const yes = screening.items.filter((item) => item.state === 'yes' && isOpenTo(reader.told, item))
	const notAsked = screening.items.filter((item) => item.state === 'not-asked').length
	const named = yes.slice(0, mostReasons).map((item) => {
		const { side, basis, params = {} } = item
		const isNamed = side === 'none' || side === 'both' || 'side' in params
		const where = isNamed ? '' : ` (${sideWords[side]})`
		return `${toldBy(reader, item) ?? item.says}${where} ${notes.mark(basis)}`
	})
	const unnamed = yes.length - named.length
	const items = unnamed > 0 ? [...named, capital(t('referral.more', { count: unnamed }))] : named
	return [
		heading(t('referral.reasons')),
		items.length > 0 ? { kind: 'list', items } : say(t('referral.noReasons')),
		...(notAsked > 0 ? [small(t('referral.notAsked', { count: notAsked }))] : []),
	]
}
const findings: Section = ({ visit }, _notes, t) => {
	const rows = measuredTable('doctor', visit, t)
	return [
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
	]
}
const whatWasDone: Section = ({ decisions }, _notes, t) => {
	const raise = raiseInWords(decisions.heelRaiseMm, t)
	const done = [
		...(decisions.referralDone ? [withFullStop(decisions.referralDone)] : []),
		...(decisions.screeningDone ?? []).map(
			(about) => `${capital(sideWords[about.side])}: ${withFullStop(about.done)}`,
		),
		...(raise ? [t('referral.raise', { raise })] : []),
		...decisions.actions.map(({ what, when }) =>
			t('referral.action', { what, when: when || t('common.notStated') }),
		),
	]
	return [
		heading(t('referral.done')),
		say(done.length > 0 ? done.join(' ') : t('referral.doneNothing')),
	]
}
const withFullStop = (text: string): string => text.replace(/([^.!?])$/, '$1.')

const question: Section = ({ decisions, clinic, letter }, _notes, t) => {
	const follow = decisions.reviewDate
		? t('referral.follow', { clinic: clinic.name, date: dateWords(decisions.reviewDate) })
		: t('referral.followNone', { clinic: clinic.name })
	return [
		heading(t('referral.question')),
		say(`${letter?.question ?? t('referral.questionDefault')} ${follow}`),
	]
}
const enclosures: Section = ({ letter }, _notes, t) => {
	const listed = (names: readonly string[] | undefined) => names?.join(', ') || t('referral.none')
	return [
		say(
			`${t('referral.enclosures', { list: listed(letter?.enclosures) })} ` +
				`${t('referral.copies', { list: listed(letter?.copyTo) })}`,
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
	findings,
	whatWasDone,
	question,
	enclosures,
	(input, _notes, t) => signature(input, t),
]

/** One page to another clinician; what does not fit stands in the record. */
export function referralLetter(input: ReportInput): LwDocument {
	const { clinic } = input
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const blocks = sections.flatMap((section) => section(input, notes, t))
	return {
		...frame(input, t),
		title: t('referral.title'),
		kind: 'referral',
		print: 'compact',
		subject: subjectOf(input, t),
		blocks,
		notes: notes.list,
	}
}
function subjectOf(input: ReportInput, t: Speak): LwDocument['subject'] {
	const { visit, recordNumber, letter } = input
	const to = [letter?.recipient ?? t('common.notStated'), ...(letter?.address ?? [])]
	const record: LwDocument['subject'] = recordNumber ? [[t('subject.record'), recordNumber]] : []
	return [
		[t('subject.player'), nameOf(visit)],
		[t('subject.born'), dateWords(visit.player.birthDate)],
		[t('subject.sex'), visit.player.sex],
		...record,
		[t('subject.to'), to.join(', ')],
		[t('subject.status'), statusOf(input, t)],
	]
}
