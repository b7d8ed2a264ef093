/** What records hold of packs: each that went out, each that came home, what clashed, answers. */
import { z } from 'zod'
import { playerChangesSchema } from './changes.ts'
import { asideWhys, mergeCountsSchema } from './merge-counts.ts'

const outValue = z.strictObject({
	what: z.literal('out'),
	/** of the pack's file; absent where program 0.1.0 made it, whose packs were of form 1 */
	form: z.number().optional(),
	packId: z.string(),
	madeAt: z.string(),
	by: z.string(),
	expires: z.string(),
	file: z.string(),
	players: z.array(
		z.strictObject({
			playerId: z.string(),
			name: z.string(),
			birthDate: z.string().optional(),
			visits: z.number().optional(),
		}),
	),
	counts: z.record(z.string(), z.number()),
	/** as they stood when the pack went out; absent in packs of the first versions */
	drafts: z
		.array(z.strictObject({ id: z.string(), at: z.string(), value: z.unknown() }))
		.optional(),
})
export type OutValue = z.infer<typeof outValue>

/** Two players who may be one person, of whom one came home. */
const duplicateSchema = z.strictObject({
	playerId: z.string(),
	name: z.string(),
	like: z.string(),
	likeName: z.string(),
	why: z.enum(['same-person', 'twin']),
})
export type Duplicate = z.infer<typeof duplicateSchema>
/** What came and was put aside: its id, and why, in words. */
const clashSchema = z.strictObject({
	record: z.string(),
	kind: z.string(),
	says: z.string(),
	/** absent in merges of program 0.1.0, which put aside only what clashed */
	why: z.enum(asideWhys).optional(),
})
export type Clash = z.infer<typeof clashSchema>

const mergedValue = z.strictObject({
	what: z.literal('merged'),
	/** rows of the laptop's audit trail that came with it; absent before they did */
	trailRows: z.number().optional(),
	packId: z.string(),
	/** the laptop's installation, when the file was made, its number among those of the laptop */
	origin: z.string().optional(),
	madeAt: z.string().optional(),
	turn: z.number().optional(),
	answers: z.string().optional(),
	at: z.string(),
	by: z.string(),
	counts: mergeCountsSchema,
	receipt: z.string(),
	players: z.array(z.string()),
	/** id and digest of each draft that came, so that it is not taken twice */
	taken: z.array(z.string()),
	draftsBoth: z.array(
		z.strictObject({ playerId: z.string(), name: z.string(), drafts: z.array(z.string()) }),
	),
	duplicates: z.array(duplicateSchema),
	quarantined: z.array(clashSchema),
	/** kinds of the records that were destroyed here meanwhile and stay so */
	heldBack: z.array(z.string()),
	/** what it changed, player by player, in words; absent in merges of program 0.1.0 */
	changes: z.array(playerChangesSchema).optional(),
})
export type MergedValue = z.infer<typeof mergedValue>
export const packRecordSchema = z.discriminatedUnion('what', [outValue, mergedValue])

/** What a person answered after an outreach day, and the records that it puts to rest. */
export const answerRecordSchema = z.strictObject({
	what: z.enum(['details', 'consent', 'version']),
	of: z.string(),
	joins: z.array(z.string()),
	chosen: z.array(z.strictObject({ field: z.string(), record: z.string() })),
	by: z.string(),
})

/** What came with a pack and does not count, kept as it came. */
export const quarantineRecordSchema = z.strictObject({
	packId: z.string(),
	/** its id, or which entry of the file it was */
	of: z.string(),
	says: z.string(),
	/** absent in records of program 0.1.0, which put aside only what clashed */
	why: z.enum(asideWhys).optional(),
	/** a record or a draft; text where it is not even that */
	record: z.unknown(),
})
