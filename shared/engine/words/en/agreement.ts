/** What was explained and agreed to, in words for the clinician: of the form, and for reading. */
import type {
	Agreement,
	agreementAnswers,
	chaperoneAnswers,
	companions,
	competences,
	Explainable,
	InterpreterRelation,
	interpreterNeeds,
	interpreterWays,
	Party,
} from '../../visit/agreement.ts'
import { capital, listed } from './format.ts'

type Words<Terms extends readonly string[]> = Readonly<Record<Terms[number], string>>
export const explainableWords: Readonly<Record<Explainable, string>> = {
	plan: 'the plan',
	otherOptions: 'other options',
	doingNothing: 'doing nothing',
	risks: 'risks and what to expect',
}
export const agreementAnswerWords: Words<typeof agreementAnswers> = {
	agreed: 'agreed',
	'agreed-in-part': 'agreed in part',
	declined: 'declined the plan',
}
export const competenceWords: Words<typeof competences> = {
	competent: 'competent for this decision',
	'not-competent': 'not competent for this decision',
}
export const interpreterNeedWords: Words<typeof interpreterNeeds> = {
	'not-needed': 'not needed',
	present: 'present',
	'needed-but-none': 'needed, none to be had',
}
export const interpreterWayWords: Words<typeof interpreterWays> = {
	'in-person': 'in person',
	'by-telephone': 'by telephone',
	'by-video': 'by video',
}
export const interpreterRelationWords: Readonly<Record<InterpreterRelation, string>> = {
	professional: 'professional interpreter',
	'member-of-staff': 'member of staff',
	'adult-relative-or-friend': 'adult relative or friend',
	'person-under-18': 'person under 18',
	'child-brother-or-sister-of-the-player': 'child, brother or sister of the player',
}
export const chaperoneWords: Words<typeof chaperoneAnswers> = {
	accepted: 'offered, accepted',
	declined: 'offered, declined',
	'not-offered': 'not offered',
}
export const companionWords: Words<typeof companions> = {
	guardian: 'the guardian',
	other: 'someone else',
	nobody: 'nobody',
}

/** A line of the agreement for reading. */
interface AgreementRow {
	key: string
	title: string
	says: string
}
const joined = (...parts: readonly (string | undefined)[]): string =>
	parts.filter((part) => part !== undefined && part !== '').join(', ')
/** Parties with their names. @param names of guardian and others, where known */
function partiesInWords(
	ticked: Readonly<Partial<Record<Party, boolean | undefined>>>,
	names: { guardian?: string | undefined; other: string },
): string {
	const words: Readonly<Record<Party, string>> = {
		player: 'the player',
		guardian: joined('the guardian', names.guardian),
		other: names.other === '' ? 'someone else' : names.other,
	}
	const named = (['player', 'guardian', 'other'] as const).filter((party) => ticked[party])
	return listed(named.map((party) => words[party]))
}
type Part = (agreement: Agreement) => string
const toldWords: Part = ({ explainedTo = {}, guardianName }) =>
	partiesInWords(explainedTo, { guardian: guardianName, other: explainedTo.otherName ?? '' })
const explainedWords: Part = ({ explained = {} }) =>
	listed(
		(Object.keys(explainableWords) as Explainable[])
			.filter((what) => explained[what])
			.map((what) => explainableWords[what]),
	)
/** Only where something was: what was left out is then said too. */
const notExplainedWords: Part = ({ explained }) =>
	explained === undefined
		? ''
		: listed(
				(Object.keys(explainableWords) as Explainable[])
					.filter((what) => !explained[what])
					.map((what) => explainableWords[what]),
			)
const answerWords: Part = ({ answer }) => (answer ? agreementAnswerWords[answer] : '')
const byWords: Part = ({ by = {}, guardianName }) =>
	partiesInWords(by, { guardian: guardianName, other: joined(by.otherName, by.otherRight) })
const disagreesWords: Part = ({ playerDisagrees }) => (playerDisagrees ? 'yes' : '')
const competenceSaid: Part = ({ competence: { judged, grounds } = {} }) =>
	joined(judged && competenceWords[judged], grounds)
const interpreterSaid: Part = ({ interpreter = {} }) => {
	const { need, language, who, way, relation, why, how } = interpreter
	return joined(
		need && interpreterNeedWords[need],
		language,
		need === 'present' ? who : undefined,
		need === 'present' && relation ? interpreterRelationWords[relation] : undefined,
		need === 'present' && way ? interpreterWayWords[way] : undefined,
		need === 'needed-but-none' ? why : undefined,
		need === 'not-needed' ? how : undefined,
	)
}
const chaperoneSaid: Part = ({ chaperone: { offer, name, why } = {} }) =>
	joined(
		offer && chaperoneWords[offer],
		offer === 'accepted' ? name : undefined,
		offer === 'not-offered' ? why : undefined,
	)
const cameWithWords: Part = ({ cameWith, cameWithName, guardianName }) => {
	if (cameWith === undefined) return ''
	const name = { guardian: guardianName, other: cameWithName, nobody: undefined }[cameWith]
	return joined(companionWords[cameWith], name)
}
const rows: readonly (readonly [key: string, title: string, says: Part])[] = [
	['explainedTo', 'Explained to', toldWords],
	['explained', 'Explained', explainedWords],
	['notExplained', 'Not explained', notExplainedWords],
	['answer', 'Answer', answerWords],
	['notAgreed', 'Not agreed to', ({ notAgreed }) => notAgreed ?? ''],
	['by', 'Answered by', byWords],
	['playerDisagrees', 'Player disagrees with the guardian', disagreesWords],
	['competence', 'Competence', competenceSaid],
	['interpreter', 'Interpreter', interpreterSaid],
	['chaperone', 'Chaperone', chaperoneSaid],
	['cameWith', 'Came with', cameWithWords],
	['note', 'Note', ({ note }) => note ?? ''],
]
/** The agreement as lines for the clinician; what was not noted has none. */
export const agreementInWords = (agreement: Agreement): AgreementRow[] =>
	rows
		.map(([key, title, says]) => ({ key, title, says: capital(says(agreement)) }))
		.filter(({ says }) => says !== '')
