/**
 * Sent in error: the steps and the clocks (practice standard 1.6). What the law of the place asks
 * is for the clinic to decide.
 */
import { z } from 'zod'

/**
 * Both set by the clinic. 30 days to assess: Australia, read, practice standard 1.6 R[25]. 72 hours
 * to the authority: GDPR Art 33, from memory.
 */
export const breachClockSchema = z.strictObject({
	assessWithinDays: z.int().min(1).max(90),
	authorityWithinHours: z.int().min(1).max(720),
})
export type BreachClock = z.infer<typeof breachClockSchema>
export const defaultBreachClock: BreachClock = { assessWithinDays: 30, authorityWithinHours: 72 }

export const breachSteps = {
	contain:
		'Contain: ask the recipient to delete it unread and to confirm that in writing. Withhold ' +
		'the password if it was not given yet.',
	assess: 'Assess: what was disclosed, to whom, and whether serious harm is likely.',
	'tell-people':
		'Tell the player or guardian: who you are, what happened, what kind of information, what ' +
		'they should do.',
	'tell-authority':
		'Tell the authority where the law of the place asks for it, or write down why it does not.',
	prevent: 'Prevent: correct the address or the way of working that led to it.',
} as const
export type BreachStep = keyof typeof breachSteps
export const breachStepNames = Object.keys(breachSteps) as [BreachStep, ...BreachStep[]]
export const breachSchema = z.strictObject({
	breachId: z.string(),
	itemId: z.string(),
	playerId: z.string(),
	/** What was sent, to whom, and how it was noticed. */
	what: z.string(),
	recipient: z.string(),
	noticedAt: z.string(),
	recordedAt: z.string(),
	by: z.string(),
	done: z.partialRecord(
		z.enum(breachStepNames),
		z.strictObject({ at: z.string(), by: z.string(), note: z.string() }),
	),
})
export type Breach = z.infer<typeof breachSchema>
export interface Countdown {
	assessBy: string
	authorityBy: string
	assessDaysLeft: number
	authorityHoursLeft: number
}
const hourMs = 3_600_000
/**
 * Ends of the two clocks from the moment it was noticed; negative where they have passed. @param
 * now ISO moment
 */
export function countdown(
	{ noticedAt }: Pick<Breach, 'noticedAt'>,
	{ assessWithinDays, authorityWithinHours }: BreachClock,
	now: string,
): Countdown {
	const from = Date.parse(noticedAt)
	const assess = from + assessWithinDays * 24 * hourMs
	const authority = from + authorityWithinHours * hourMs
	return {
		assessBy: new Date(assess).toISOString(),
		authorityBy: new Date(authority).toISOString(),
		assessDaysLeft: Math.floor((assess - Date.parse(now)) / (24 * hourMs)),
		authorityHoursLeft: Math.floor((authority - Date.parse(now)) / hourMs),
	}
}
