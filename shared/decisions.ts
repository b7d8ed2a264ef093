/** What the clinician decided about what the engine proposed. */
import { z } from 'zod'

export const decisionSchema = z.strictObject({
	findingId: z.string().min(1).max(120),
	/** 'add' is the clinician's own line, with an id of its own. */
	choice: z.enum(['accept', 'change', 'drop', 'add']),
	/** The words that stand, where changed or added. */
	says: z.string().max(1000).optional(),
	why: z.string().max(500).optional(),
})
export const decisionsSchema = z.strictObject({
	lines: z.array(decisionSchema).max(300),
	heelRaiseMm: z.strictObject({ left: z.number().min(0).max(25), right: z.number().min(0).max(25) }).optional(),
	heelRaiseWhy: z.string().max(500).optional(),
	/** What to do now: at most three. */
	actions: z.array(z.strictObject({ what: z.string().min(1).max(300), when: z.string().max(80), who: z.string().max(80) })).max(3),
	warningSigns: z.array(z.string().max(200)).max(12).optional(),
	reviewDate: z.iso.date().optional(),
	/** What was done about a stop-and-refer result. */
	referralDone: z.string().max(1000).optional(),
	consentNoted: z.boolean().optional(),
})
export type Decision = z.infer<typeof decisionSchema>
export type Decisions = z.infer<typeof decisionsSchema>
export const noDecisions: Decisions = { lines: [], actions: [] }
