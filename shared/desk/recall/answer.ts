/** What the desk answered about one thing that is due: the value of a record of the kind `recall`. */
import { z } from 'zod'
import { dayInWords } from '../../engine/plain/days.ts'
import type { StaffRole } from '../records/people.ts'
import { type Due, dueSchema } from './item.ts'

const day = z.iso.date()
/** Each answer stands until a later one about the same item. */
export const recallAnswerSchema = z.discriminatedUnion('what', [
	/** somebody saw the player without a visit that was signed */
	z.strictObject({ what: z.literal('seen'), on: day }),
	z.strictObject({ what: z.literal('booked'), on: day }),
	z.strictObject({ what: z.literal('wait'), until: day }),
	z.strictObject({ what: z.literal('not-needed') }),
	/** takes back what was answered before */
	z.strictObject({ what: z.literal('due') }),
])
export type RecallAnswer = z.infer<typeof recallAnswerSchema>
export const recallRecordSchema = z.strictObject({
	playerId: z.string(),
	item: dueSchema,
	answer: recallAnswerSchema,
	/** who, by name */
	by: z.string(),
	/** ISO moment */
	at: z.string(),
})
export type RecallRecord = z.infer<typeof recallRecordSchema>

/** What an answer says, without who and when. */
export function answerWords(answer: RecallAnswer): string {
	switch (answer.what) {
		case 'seen':
			return `seen on ${dayInWords(answer.on)}`
		case 'booked':
			return `booked for ${dayInWords(answer.on)}`
		case 'wait':
			return `asked to wait until ${dayInWords(answer.until)}`
		case 'not-needed':
			return 'not needed'
		case 'due':
			return 'due after all'
	}
}
/** Answers that end an item, so that nobody is asked any more. */
const ends: readonly RecallAnswer['what'][] = ['seen', 'not-needed']
export const isEnding = ({ what }: RecallAnswer): boolean => ends.includes(what)
/**
 * Whether a role may give an answer. The clinician set the review, and danger may stand behind it:
 * the desk books it or lets it wait, and only who treats ends it without a visit.
 */
export const mayAnswer = (role: StaffRole, { kind }: Due, answer: RecallAnswer): boolean =>
	role === 'clinician' ||
	role === 'owner' ||
	(role === 'reception' && !(kind === 'review' && isEnding(answer)))

/** The last day that may be booked or waited for, counted from today: a choice of this program. */
const mostDaysAhead = 730
/** Why the day of an answer cannot stand; undefined where it can. @param today ISO date */
export function dayProblem(
	answer: RecallAnswer,
	today: string,
	latest: (today: string, days: number) => string,
): { path: string; message: string } | undefined {
	const last = latest(today, mostDaysAhead)
	if (answer.what === 'seen' && answer.on > today)
		return {
			path: 'answer.on',
			message: `given ${answer.on}, allowed: a day up to today, ${today}`,
		}
	if (answer.what === 'booked' && (answer.on < today || answer.on > last))
		return { path: 'answer.on', message: `given ${answer.on}, allowed: ${today} to ${last}` }
	if (answer.what === 'wait' && (answer.until <= today || answer.until > last))
		return {
			path: 'answer.until',
			message: `given ${answer.until}, allowed: a day after today, ${today}, up to ${last}`,
		}
	return undefined
}
