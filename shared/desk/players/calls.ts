/** The calls about players. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { playerSchema } from '../../engine/visit/visit.ts'
import { call, clinicians, staff, treating } from '../workplace/call.ts'
import { id, nothing, reason } from '../workplace/shapes.ts'
import { playerCourseSchema } from './course.ts'
import { playerSummarySchema } from './summary.ts'

/** A player as lists show it. */
export const cardSchema = z.strictObject({
	playerId: id,
	givenName: z.string(),
	familyName: z.string(),
	/** for paper; the search and the warning of twins know it too */
	latinName: z.strictObject({ givenName: z.string(), familyName: z.string() }).optional(),
	birthDate: z.string(),
	sex: z.string(),
	club: z.string().optional(),
	lastVisit: z.string().optional(),
	openDraft: z.boolean(),
})
export type Card = z.infer<typeof cardSchema>

/** What was typed, by the path of its field; it need not be right. */
const typedSchema = boundedRecord(80, z.string().max(20_000), 40)

export const playerCalls = {
	'players.search': call(
		z.strictObject({ query: z.string().max(200), limit: z.int().min(1).max(500) }),
		z.strictObject({ total: z.number(), cards: z.array(cardSchema) }),
		staff,
	),
	/** Without playerId a new player; possible duplicates are returned, never merged. */
	'players.save': call(
		z.strictObject({ playerId: id.optional(), player: playerSchema }),
		z.strictObject({ playerId: id, similar: z.array(cardSchema) }),
		staff,
	),
	'players.open': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
			player: playerSchema,
			visits: z.array(
				z.strictObject({
					visitId: id,
					visitDate: z.string(),
					signedAt: z.string(),
					version: z.number().optional(),
					inError: z.boolean().optional(),
					awaitsCountersign: z.boolean().optional(),
				}),
			),
			merged: z.array(z.strictObject({ mergeId: id, playerId: id, name: z.string() })).optional(),
			drafts: z.array(
				z.strictObject({
					draftId: id,
					visitDate: z.string(),
					savedAt: z.string(),
					/** the signed visit it will be the next version of */
					amends: z
						.strictObject({ visitId: id, visitDate: z.string(), version: z.number() })
						.optional(),
				}),
			),
		}),
		staff,
	),
	/**
	 * What stands first on the page of a player: the last prescription, what is due, what was sent.
	 * Reception is answered days and sendings, nothing of why.
	 */
	'players.summary': call(z.strictObject({ playerId: id }), playerSummarySchema, staff),
	/** Pain, sessions missed and what was changed when, over the signed visits. */
	'players.course': call(z.strictObject({ playerId: id }), playerCourseSchema, treating),
	/** What who works here typed into the details and did not save; without playerId of a new player. */
	'players.typed': call(
		z.strictObject({ playerId: id.optional() }),
		z.strictObject({ typed: typedSchema.optional(), at: z.string().optional() }),
		staff,
	),
	/** Keeps it sealed until it is saved; with nothing typed it is discarded. */
	'players.keepTyped': call(
		z.strictObject({ playerId: id.optional(), typed: typedSchema }),
		z.strictObject({ at: z.string().optional() }),
		staff,
	),
	'players.merge': call(
		z.strictObject({ from: id, into: id, reason }),
		z.strictObject({ mergeId: id }),
		clinicians,
	),
	'players.unmerge': call(z.strictObject({ mergeId: id, reason }), nothing, clinicians),
} as const
