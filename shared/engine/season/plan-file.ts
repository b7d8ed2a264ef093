/** Plan file, version 1: what `plan` writes and what a later plan starts from. */
import { z } from 'zod'
import type { Finding } from '../findings/finding.ts'
import { surfaces } from '../visit/terms.ts'
import { saidSchema } from '../words/stated.ts'
import { levels } from './problem/levels.ts'

const part = z.strictObject({ pair: z.string(), minutes: z.number() })
const forecast = z.strictObject({
	date: z.iso.date(),
	toeRoomMm: z.number(),
	lowMm: z.number(),
	highMm: z.number(),
})
export const planSchema = z.strictObject({
	format: z.literal('lastwright-plan'),
	version: z.literal(1),
	status: z.enum(['optimal', 'time-limit']),
	gap: z.number().min(0),
	/** What was reached on each level, in the order of what matters; older plans have none. */
	levels: z
		.array(
			z.strictObject({
				level: z.enum(levels),
				reached: z.number(),
				proven: z.boolean(),
				/** at most so far from the best, as a share */
				gap: z.number().min(0),
			}),
		)
		.optional(),
	/** Sessions before this date are the past and stay as they were. */
	from: z.iso.date(),
	season: z.strictObject({ from: z.iso.date(), to: z.iso.date() }),
	sessions: z.array(
		z.strictObject({
			id: z.string(),
			date: z.iso.date(),
			start: z.string(),
			minutes: z.number(),
			/** what it lasts for the others, where it is shortened after a lay-off */
			fullMinutes: z.number().optional(),
			kind: z.enum(['training', 'match']),
			surface: z.enum(surfaces),
			ground: z.enum(['dry', 'damp', 'wet']),
			team: z.string().optional(),
			title: z.string().optional(),
			past: z.boolean().optional(),
			/** id of the pair to wear; absent where none may be worn */
			pair: z.string().optional(),
			/** Where more than one pair is worn: in this order. */
			parts: z.array(part).optional(),
			reasons: z.array(z.string()),
			unmet: z.array(z.string()),
			/** what the reasons and the unmet wishes say, one for one; older plans have none */
			reasonCodes: z.array(saidSchema).optional(),
			unmetCodes: z.array(saidSchema).optional(),
		}),
	),
	/** Sessions that do not take place. */
	off: z.array(
		z.strictObject({
			id: z.string(),
			date: z.iso.date(),
			start: z.string().optional(),
			kind: z.enum(['training', 'match']),
			status: z.enum(['cancelled', 'bye', 'injured']),
			team: z.string().optional(),
			title: z.string().optional(),
		}),
	),
	pairs: z.array(
		z.strictObject({
			id: z.string(),
			letter: z.string(),
			name: z.string(),
			sole: z.string(),
			minutes: z.number(),
			wearFraction: z.number(),
			/** worn to the lower end of the replacement window */
			checkBy: z.iso.date().optional(),
			/** worn out, outgrown or to be replaced, whichever comes first: never worn after it */
			replaceBy: z.iso.date().optional(),
			/** its life ends; older plans have it in `replaceBy` alone */
			wornOutBy: z.iso.date().optional(),
			brokenInBy: z.iso.date().optional(),
			/** wear at the end of each month of the season */
			wear: z.array(z.strictObject({ date: z.iso.date(), wearFraction: z.number() })),
			toeRoom: z.array(forecast).optional(),
			outgrownBy: z.iso.date().optional(),
			measureAgainBy: z.iso.date().optional(),
		}),
	),
	purchases: z.array(
		z.strictObject({
			sole: z.string(),
			buyBy: z.iso.date(),
			neededBy: z.iso.date(),
			instead: z.string().optional(),
			/** Sessions without a pair that it could be worn in; older plans have none. */
			matches: z.number().optional(),
			trainings: z.number().optional(),
			says: z.string(),
			...saidSchema.partial().shape,
		}),
	),
	findings: z.array(z.custom<Finding>()),
})
export type Plan = z.infer<typeof planSchema>
export type PlanSession = Plan['sessions'][number]
export type PlanPair = Plan['pairs'][number]
