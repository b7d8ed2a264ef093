/** What records hold of packs: each that went out, each that came home, what clashed, answers. */
import { z } from 'zod'
import { carriedDraftSchema } from './carried.ts'
import { mergeCountsSchema } from './merge-counts.ts'

const outValue = z.strictObject({
	what: z.literal('out'),
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
	drafts: z.array(carriedDraftSchema).optional(),
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
/** A record that came with other content than the one under its id here. */
const clashSchema = z.strictObject({ record: z.string(), kind: z.string(), says: z.string() })
export type Clash = z.infer<typeof clashSchema>

const mergedValue = z.strictObject({
	what: z.literal('merged'),
	/** rows of the laptop's audit trail that came with it; absent before they did */
	trailRows: z.number().optional(),
	packId: z.string(),
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

/** What came with other content than the record of its id here, kept beside it as it came. */
export const quarantineRecordSchema = z.strictObject({
	packId: z.string(),
	of: z.string(),
	says: z.string(),
	record: z.looseObject({ id: z.string(), kind: z.string() }),
})
