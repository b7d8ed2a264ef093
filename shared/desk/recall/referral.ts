/**
 * Referrals that nobody has heard from. A visit that asked for imaging, same-day or emergency care
 * stands before the clinician from the next working day on, until what came of it is written: being
 * rung, booked or asked to wait ends nothing (design: a hold ends by a recorded outcome alone).
 */
import { z } from 'zod'
import type { Action } from '../../engine/findings/assessment.ts'
import { addWorkingDays } from '../../engine/prescription/review.ts'
import { mostUrgent } from '../../engine/prescription/urgency.ts'
import { isUrgent } from '../../engine/report/gate-before.ts'
import type { Outcome } from '../../engine/visit/visit.ts'
import { signInWords } from '../../engine/words/en/gate.ts'
import { capital, sideWords } from '../../engine/words/words.ts'
import type { SignedPlan } from '../players/plan-in-few.ts'

const day = z.iso.date()
/** The entries with texts of one length or another: a record reads any, a call has limits. */
const entriesOf = <Text extends z.ZodType<string>>(words: Text, short: Text) =>
	z.discriminatedUnion('what', [
		/** What became of it: as the outcome of a visit says it, without what it lifts. */
		z.strictObject({
			what: z.literal('outcome'),
			result: z.enum(['excluded', 'confirmed', 'recovered']),
			/** what was found or excluded */
			found: words,
			how: short,
			/** by whom it was found */
			from: short,
			on: day,
		}),
		/** Somebody rang and heard nothing yet: the referral stands. */
		z.strictObject({
			what: z.literal('try'),
			says: words,
			/** when somebody will ring again */
			again: day.optional(),
		}),
		/** An outcome that was written in error: the referral stands again. */
		z.strictObject({ what: z.literal('taken-back'), of: z.string().max(80), why: words }),
	])
export const followUpEntrySchema = entriesOf(
	z.string().trim().min(3).max(500),
	z.string().trim().min(1).max(160),
)
const keptEntrySchema = entriesOf(z.string(), z.string())
/** The value of a record of the kind `follow-up`. */
export const followUpSchema = z.strictObject({
	followUpId: z.string(),
	playerId: z.string(),
	/** the visits whose referrals it is about */
	visitIds: z.array(z.string()),
	entry: keptEntrySchema,
	/** who wrote it, by name */
	by: z.string(),
	/** ISO moment */
	at: z.string(),
})
export type FollowUp = z.infer<typeof followUpSchema>

/** A sign that asked for somebody's care, by the rule that outcomes name. */
interface Sign {
	rule: string
	side: 'left' | 'right' | 'both' | 'none'
	/** its name and side, for those who treat; empty of a letter */
	says: string
}
/** As much of a signed visit as following up asks for. */
export interface Referred {
	visitId: string
	visitDate: string
	/** the most urgent care that it asked for; undefined where none above a letter */
	asked?: Action
	signs: Sign[]
	outcomes: Outcome[]
	/** what was done about it, and what the doctor was asked, in the clinician's words */
	done?: string
	question?: string
}
/** A letter that asks for more than its signs: nothing in a later visit speaks of it. */
const ofLetter = 'letter'

/** What of a visit is followed up. @param visitId of it */
export function referredIn(
	visitId: string,
	{ visit, assessment, decisions }: SignedPlan,
): Referred {
	const { screening } = assessment
	const letter = decisions.letter?.urgency ?? 'proceed'
	const asked = mostUrgent([screening.action, letter])
	const signs = screening.items
		.filter(({ state, action }) => state === 'yes' && isUrgent(action))
		.map(({ code, id, side }): Sign => {
			const rule = code ?? id
			const name = capital(signInWords(rule.replace(/^screening\./, '')))
			return { rule, side, says: side === 'none' ? name : `${name}, ${sideWords[side]}` }
		})
	const isByLetter = isUrgent(letter) && (signs.length === 0 || asked !== screening.action)
	const done = decisions.referralDone?.trim()
	const question = decisions.letter?.question?.trim()
	return {
		visitId,
		visitDate: visit.visitDate,
		...(isUrgent(asked) && { asked }),
		signs: [...signs, ...(isByLetter ? [{ rule: ofLetter, side: 'none' as const, says: '' }] : [])],
		outcomes: visit.outcomes ?? [],
		...(done && { done }),
		...(question && { question }),
	}
}
/** A sign of both limbs is answered once each of them is; one of the whole player by any outcome. */
function isAnswered({ rule, side }: Sign, outcomes: readonly Outcome[]): boolean {
	const about = outcomes.filter((outcome) => outcome.rule === rule)
	if (side === 'none') return about.length > 0
	const limbs = side === 'both' ? (['left', 'right'] as const) : [side]
	return limbs.every((limb) =>
		about.some((outcome) => outcome.side === limb || outcome.side === 'both'),
	)
}
/** Whether an outcome was written about every sign, at the visit itself or after it. */
function isHeardInVisits({ signs, visitDate }: Referred, from: readonly Referred[]): boolean {
	const since = from.flatMap(({ outcomes }) => outcomes.filter(({ on }) => on >= visitDate))
	return signs.length > 0 && signs.every((sign) => isAnswered(sign, since))
}
/** The outcome that stands for a visit, of those written by itself. */
export function heardOf(visitId: string, written: readonly FollowUp[]): FollowUp | undefined {
	const back = new Set(
		written.flatMap(({ entry }) => (entry.what === 'taken-back' ? entry.of : [])),
	)
	return written.findLast(
		({ entry, visitIds, followUpId }) =>
			entry.what === 'outcome' && visitIds.includes(visitId) && !back.has(followUpId),
	)
}
/** One player's referrals that nobody has heard from. */
export interface NotHeard {
	/** the visits, oldest first; at least one */
	visits: Referred[]
	/** the most urgent care that any of them asked for */
	asked: Action
	/** tries to hear, oldest first */
	tries: FollowUp[]
}
/**
 * @param visits all signed visits of one player, oldest first
 * @param written what was written about its referrals, in order of writing
 * @returns undefined where nothing is to be followed up yet or any more
 */
export function notHeard(
	visits: readonly Referred[],
	written: readonly FollowUp[],
	today: string,
): NotHeard | undefined {
	const open = visits.filter(
		(visit, at) =>
			visit.asked !== undefined &&
			addWorkingDays(visit.visitDate, 1) <= today &&
			!isHeardInVisits(visit, visits.slice(at)) &&
			heardOf(visit.visitId, written) === undefined,
	)
	if (open.length === 0) return undefined
	const ids = open.map(({ visitId }) => visitId)
	return {
		visits: open,
		asked: mostUrgent(open.flatMap(({ asked }) => asked ?? [])),
		tries: written.filter(
			({ entry, visitIds }) => entry.what === 'try' && visitIds.some((one) => ids.includes(one)),
		),
	}
}
