/** What the clinician decided about what the engine proposed. */
import { z } from 'zod'
import { digestOf } from '../plain/canonical.ts'
import { present } from '../plain/present.ts'
import { agreementSchema } from './agreement.ts'
import { answerSchema } from './answers.ts'
import { letterSchema, orderSchema } from './letters.ts'

/** What a decision was about by its content, whatever its wording: see `aboutOf`. */
const contentDigest = z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits')

const decisionSchema = z.strictObject({
	findingId: z.string().min(1).max(120),
	/** 'add' is the clinician's own line, with an id of its own. */
	choice: z.enum(['accept', 'change', 'drop', 'add']),
	/** The words that stand, where changed or added. */
	says: z.string().max(1000).optional(),
	why: z.string().max(500).optional(),
	/** The suggestion as it read when this was decided: for people. */
	about: z.string().max(4000).optional(),
	/** Its content then: where that is another now, the decision is asked for again. */
	of: contentDigest.optional(),
})
/**
 * What the clinician made of one element of an insert; a change, a drop or an addition keeps its
 * reason.
 */
const insertDecisionSchema = z
	.strictObject({
		element: z.string().min(1).max(60),
		choice: z.enum(['accept', 'change', 'drop', 'add']),
		value: z.number().min(0).max(400).optional(),
		option: z.string().max(80).optional(),
		says: z.string().max(500).optional(),
		why: z.string().max(500).optional(),
		/** The proposal as it read when this was decided: for people. */
		about: z.string().max(500).optional(),
		/** Its content then: where that is another now, the decision is asked for again. */
		of: contentDigest.optional(),
	})
	.refine(({ choice, why }) => choice === 'accept' || !!why?.trim(), {
		path: ['why'],
		message: 'a reason is needed to change, drop or add an element',
	})
/** What was done about the warning signs of one limb: it releases only the items named. */
const screeningDoneSchema = z.strictObject({
	side: z.enum(['left', 'right']),
	done: z.string().trim().min(1).max(1000),
	items: z.array(z.string().min(1).max(120)).min(1).max(100),
	on: z.iso.date().optional(),
})
/** A private topic that one reader may be told of: none is, until it is written here. */
const releaseSchema = z.strictObject({
	topic: z.enum(['pregnancy', 'periods', 'medication', 'weight']),
	to: z.enum(['guardian']),
})
export const decisionsSchema = z.strictObject({
	lines: z.array(decisionSchema).max(300),
	heelRaiseMm: z
		.strictObject({ left: z.number().min(0).max(25), right: z.number().min(0).max(25) })
		.optional(),
	heelRaiseWhy: z.string().max(500).optional(),
	/** What to do now: at most three. */
	actions: z
		.array(
			z.strictObject({
				what: z.string().min(1).max(300),
				when: z.string().max(80),
				who: z.string().max(80),
			}),
		)
		.max(3),
	warningSigns: z.array(z.string().max(200)).max(12).optional(),
	reviewDate: z.iso.date().optional(),
	/** What was done about a stop-and-refer result. */
	referralDone: z.string().max(1000).optional(),
	/**
	 * Consent to assessment and record, ticked: at the check-in of a squad day, and at signing before
	 * 0.5. Since then a signature needs the agreement.
	 */
	consentNoted: z.boolean().optional(),
	agreement: agreementSchema.optional(),
	letter: letterSchema.optional(),
	order: orderSchema.optional(),
	released: z.array(releaseSchema).max(4).optional(),
	screeningDone: z.array(screeningDoneSchema).max(40).optional(),
	/** Answers to the questions of the prescription; records before 0.4 have none. */
	answers: z.array(answerSchema).max(40).optional(),
	insert: z
		.strictObject({
			left: z.array(insertDecisionSchema).max(40).optional(),
			right: z.array(insertDecisionSchema).max(40).optional(),
		})
		.optional(),
})
export type InsertDecision = z.infer<typeof insertDecisionSchema>
export type Release = z.infer<typeof releaseSchema>
export type Decision = z.infer<typeof decisionSchema>
export type Decisions = z.infer<typeof decisionsSchema>
/** Choices as what was done. */
export const choiceWords = {
	accept: 'accepted',
	change: 'changed',
	drop: 'dropped',
	add: 'added',
} as const
/** What is decided about: its sentence, and its code and parameters where it has any. */
export interface DecidedOn {
	says: string
	code?: string
	params?: Readonly<Record<string, unknown>>
}
interface About {
	about?: string | undefined
	of?: string | undefined
}
/** What a decision keeps of what it is about: the words for people, the content for the program. */
export const aboutOf = ({ says, code, params }: DecidedOn): { about?: string; of?: string } =>
	present({
		about: says === '' ? undefined : says,
		of: code === undefined ? undefined : digestOf({ code, params: params ?? {} }),
	})
/** A content, and the words for it. */
interface Kept {
	of?: string | undefined
	says?: string | undefined
}
/**
 * Whether a line keeps another content than stands now. One from before contents were kept tells
 * only its words, and no other place goes by words: there others are asked about again, since they
 * may say something else. One that tells neither stands.
 */
export function isOtherContent(kept: Kept, now: Kept): boolean {
	if (kept.of !== undefined && now.of !== undefined) return kept.of !== now.of
	return kept.says !== undefined && now.says !== undefined && kept.says !== now.says
}
/** Whether something was decided about other content than stands now. */
export function isAboutOther(decision: About, now: DecidedOn): boolean {
	const { about, of } = aboutOf(now)
	return isOtherContent({ of: decision.of, says: decision.about }, { of, says: about })
}
/** Whether a line holds words of the clinician's own: not blank, and not the suggestion again. */
export function hasOwnWords({ says, about }: Pick<Decision, 'says' | 'about'>): boolean {
	const own = says?.trim() ?? ''
	return own !== '' && own !== about?.trim()
}
const lineAbout = ({ lines }: Decisions, id: string): Decision | undefined =>
	lines.find((line) => line.findingId === id)
/**
 * The line about a finding whose content is another now than when it was decided. @param now the
 * finding; without it nothing is overtaken
 */
export function overtakenLine(
	decisions: Decisions,
	id: string,
	now?: DecidedOn,
): Decision | undefined {
	const line = lineAbout(decisions, id)
	return line && now && isAboutOther(line, now) ? line : undefined
}
/** The line about a finding that still holds; undefined where there is none or it is overtaken. */
export const standingLine = (
	decisions: Decisions,
	id: string,
	now?: DecidedOn,
): Decision | undefined =>
	overtakenLine(decisions, id, now) ? undefined : lineAbout(decisions, id)
export const noDecisions: Decisions = { lines: [], actions: [] }
