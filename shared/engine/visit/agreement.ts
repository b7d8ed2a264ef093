/**
 * What was explained and agreed to before a visit is signed: to whom, with which options, the answer
 * and whose it is, interpreter and chaperone. All optional here: what a signature needs of it is said
 * by `report/agreement-blocks.ts`.
 *
 * That consent is noted at each visit, is valid, voluntary and informed, and that a minor may be
 * competent for one decision: read (HCPC standards 2024, 1.4; Ahpra shared code 8.4; podiatry guidance
 * of a royal college). From what age, and by what test, differs from place to place: no law is cited
 * here. That an interpreter is no child and no child or sibling of the player, what is asked of a
 * chaperone, and the list of what is explained: common practice, no source.
 */
import { z } from 'zod'
import { choice, note, text, yesNo } from './fields.ts'

/** Whom one can explain to, and who can answer. */
export const parties = ['player', 'guardian', 'other'] as const
export type Party = (typeof parties)[number]
/** What is explained, doing nothing among it. */
const explainables = ['plan', 'otherOptions', 'doingNothing', 'risks'] as const
export type Explainable = (typeof explainables)[number]
export const agreementAnswers = ['agreed', 'agreed-in-part', 'declined'] as const
export const competences = ['competent', 'not-competent'] as const
export const interpreterNeeds = ['not-needed', 'present', 'needed-but-none'] as const
export const interpreterWays = ['in-person', 'by-telephone', 'by-video'] as const
/**
 * The last two never interpret: they can be noted, and keep the visit from being signed.
 * @internal
 */
export const interpreterRelations = [
	'professional',
	'member-of-staff',
	'adult-relative-or-friend',
	'person-under-18',
	'child-brother-or-sister-of-the-player',
] as const
export type InterpreterRelation = (typeof interpreterRelations)[number]
export const chaperoneAnswers = ['accepted', 'declined', 'not-offered'] as const
/** Who came with a minor. */
export const companions = ['guardian', 'other', 'nobody'] as const

export const agreementSchema = z.strictObject({
	explainedTo: z
		.strictObject({
			player: yesNo('Explained to the player'),
			guardian: yesNo('Explained to the guardian'),
			other: yesNo('Explained to someone else'),
			otherName: text('Name of someone else who was told', 120).optional(),
		})
		.optional(),
	/** Of the guardian who was there, as the record had it then or as it was typed. */
	guardianName: text('Name of the guardian spoken to', 120).optional(),
	explained: z
		.strictObject({
			plan: yesNo('Explained: the plan'),
			otherOptions: yesNo('Explained: other options'),
			doingNothing: yesNo('Explained: doing nothing'),
			risks: yesNo('Explained: risks and what to expect'),
		})
		.optional(),
	answer: choice('Answer to the plan', agreementAnswers).optional(),
	/** What of the plan was not agreed to. */
	notAgreed: text('Not agreed to', 500).optional(),
	by: z
		.strictObject({
			player: yesNo('Answered by the player'),
			guardian: yesNo('Answered by the guardian'),
			other: yesNo('Answered by someone else with the right to consent'),
			otherName: text('Name of who else answered', 120).optional(),
			otherRight: text('Right to consent of who else answered', 120).optional(),
		})
		.optional(),
	playerDisagrees: yesNo('Player disagrees with the guardian'),
	/** Of a minor, for this decision. */
	competence: z
		.strictObject({
			judged: choice('Competence for this decision', competences).optional(),
			grounds: text('Grounds of the judgement of competence', 500).optional(),
		})
		.optional(),
	interpreter: z
		.strictObject({
			need: choice('Interpreter', interpreterNeeds).optional(),
			language: text('Language of the interpreter', 60).optional(),
			who: text('Name or number of the interpreter', 120).optional(),
			way: choice('Interpreter took part', interpreterWays).optional(),
			relation: choice('Who the interpreter is', interpreterRelations).optional(),
			why: text('Why there was no interpreter', 300).optional(),
			/** Asked where the preferred language is another than that of the papers. Printed. */
			how: text('How it was explained without an interpreter', 300).optional(),
		})
		.optional(),
	chaperone: z
		.strictObject({
			offer: choice('Chaperone', chaperoneAnswers).optional(),
			name: text('Name of the chaperone', 120).optional(),
			why: text('Why no chaperone was offered', 300).optional(),
		})
		.optional(),
	cameWith: choice('Came with', companions).optional(),
	cameWithName: text('Name of who came with the player', 120).optional(),
	note: note('Note on the agreement', 1000).optional(),
})
export type Agreement = z.infer<typeof agreementSchema>

interface Agreed {
	agreement?: Agreement | undefined
	consentNoted?: boolean | undefined
}
/** The plan was declined as a whole: it is advice, and nothing is ordered or done by it. */
export const isPlanDeclined = ({ agreement }: Agreed): boolean => agreement?.answer === 'declined'
/**
 * Whether consent to assessment and record is noted: with the answer to the plan; by the tick in
 * records of before 0.5, and at the check-in of a squad day.
 */
export const isConsentNoted = ({ agreement, consentNoted }: Agreed): boolean =>
	agreement?.answer !== undefined || consentNoted === true
/** Whether the player, or who speaks for the player, is not reached without an interpreter. */
export const needsInterpreter = ({ agreement }: Agreed): boolean =>
	['present', 'needed-but-none'].includes(agreement?.interpreter?.need ?? '')
/** Whether someone may never interpret. */
export const mayNeverInterpret = (relation: InterpreterRelation | undefined): boolean =>
	relation === 'person-under-18' || relation === 'child-brother-or-sister-of-the-player'

/** Whose agreement is noted, as far as the usual answers need it. */
interface AgreeingPlayer {
	guardian?: { name: string } | undefined
}
/**
 * The usual answers in one act, which the clinician gives on purpose: explained with every option,
 * agreed; an adult alone, a minor together with the guardian. What was noted of interpreter,
 * chaperone and company stays. @returns undefined for a minor whose guardian is not in the record
 */
export function usualAgreement(
	{ guardian }: AgreeingPlayer,
	minor: boolean,
	noted: Agreement = {},
): Agreement | undefined {
	if (minor && !guardian) return undefined
	const { notAgreed: _, playerDisagrees: __, competence: ___, ...kept } = noted
	const together = minor ? { player: true, guardian: true } : { player: true }
	return {
		...kept,
		explainedTo: together,
		explained: { plan: true, otherOptions: true, doingNothing: true, risks: true },
		answer: 'agreed',
		by: together,
		...(minor && guardian && { guardianName: guardian.name }),
	}
}
