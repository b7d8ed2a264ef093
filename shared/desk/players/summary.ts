/** What stands first on a player's page: the last prescription, what is due, what was sent. */
import { z } from 'zod'
import { ownedVerdicts } from '../../engine/visit/terms.ts'
import { channels, outboxKinds, outboxStates, recipientRoles } from '../outbox/item.ts'
import { id } from '../workplace/shapes.ts'

/** What the lines of a prescription are about, in their order. */
const planLineKinds = ['size', 'raise', 'stop-wearing', 'replace', 'insert'] as const
const planLineSchema = z.strictObject({ what: z.enum(planLineKinds), says: z.string() })
export type PlanLine = z.infer<typeof planLineSchema>

const dueSchema = z.strictObject({
	date: z.string(),
	isOverdue: z.boolean(),
	/** what asks for it, in words; for those who treat */
	why: z.string().optional(),
})
const pairSchema = z.strictObject({
	name: z.string(),
	hoursWorn: z.number().optional(),
	/** as it was measured at the visit, mm */
	toeRoomMm: z.number().optional(),
	/** absent where nothing was settled about it */
	verdict: z.enum(ownedVerdicts).optional(),
	/** its last day: to be replaced by, or with room until */
	until: z.string().optional(),
})
export type SummaryPair = z.infer<typeof pairSchema>
const sizesSchema = z.strictObject({
	visitDate: z.string(),
	/** length to fit by foot, mm */
	leftMm: z.number().optional(),
	rightMm: z.number().optional(),
	insideMm: z.strictObject({ min: z.number(), max: z.number() }).optional(),
	/** a foot was measured swollen or hurt: not to be bought by */
	isSwollen: z.boolean(),
})
export type SummarySizes = z.infer<typeof sizesSchema>
/** Of what the outbox knows, and of what was given out without it; nothing clinical in it. */
const sentSchema = z.strictObject({
	/** absent where it was handed over without the outbox: the player's report */
	itemId: id.optional(),
	kind: z.enum(outboxKinds),
	to: z.string(),
	/** what kind of reader that is; not known of what went without the outbox */
	role: z.enum(recipientRoles).optional(),
	/** the visit that it is made of; absent where that cannot be read */
	visitDate: z.string().optional(),
	/** who let it go: released it, or handed it over; absent where nobody did yet */
	by: z.string().optional(),
	/** when it left, ISO moment; absent where it did not */
	leftAt: z.string().optional(),
	/** when it last changed, ISO moment */
	at: z.string(),
	/** given up before it left: not sent; a copy on paper: handed over */
	state: z.enum([...outboxStates, 'handed-over', 'not-sent']),
	way: z.enum([...channels, 'export']),
	isInError: z.boolean(),
})
export type SummarySent = z.infer<typeof sentSchema>

export const playerSummarySchema = z.strictObject({
	/** for those who treat; absent where no visit is signed */
	plan: z
		.strictObject({
			visitId: id,
			visitDate: z.string(),
			/** what danger holds back, in words, first of all */
			held: z.array(z.string()),
			lines: z.array(planLineSchema),
			pairs: z.array(pairSchema),
		})
		.optional(),
	due: dueSchema.optional(),
	/** newest first */
	sent: z.array(sentSchema),
	/** newest first; for those who treat */
	sizes: z.array(sizesSchema),
	/** visits that cannot be read, in words */
	troubles: z.array(z.string()),
})
export type PlayerSummary = z.infer<typeof playerSummarySchema>
