/** The calls about several documents in one step, what goes before them, and printing. */
import { z } from 'zod'
import { call, desk } from '../workplace/call.ts'
import { id, nothing } from '../workplace/shapes.ts'
import { manyActs, mostAtOnce, mostListed, putRowSchema, unsentVisitSchema } from './many.ts'

export const manyCalls = {
	/** Found right beside its page, and not released yet. */
	'outbox.compared': call(
		z.strictObject({ itemId: id, sha256: z.string().max(64), warningsRead: z.boolean() }),
		nothing,
		desk,
	),
	/** One act on several items, each under the rules of one; only what was compared is released. */
	'outbox.many': call(
		z.strictObject({
			act: z.enum(manyActs),
			itemIds: z.array(id).min(1).max(mostAtOnce),
			note: z.string().trim().max(500),
		}),
		z.strictObject({
			lines: z.array(
				z.strictObject({
					itemId: id,
					number: z.string(),
					done: z.boolean(),
					/** why it was not done; empty where it was */
					says: z.string(),
				}),
			),
		}),
		desk,
	),
	/** Signed visits of which nobody was given anything yet, with what could go to whom. */
	'outbox.unsent': call(
		z.strictObject({
			from: z.iso.date(),
			/** visits that are listed; 0 only counts them */
			limit: z.int().min(0).max(mostListed),
		}),
		z.strictObject({
			/** newest signing first */
			visits: z.array(unsentVisitSchema),
			/** visits beyond those listed */
			more: z.number(),
		}),
		desk,
	),
	/** Puts documents of several visits into the outbox, each under the rules of one. */
	'outbox.putMany': call(
		z.strictObject({ rows: z.array(putRowSchema).min(1).max(mostAtOnce), due: z.iso.date() }),
		z.strictObject({
			/** in the order of the rows */
			lines: z.array(
				z.strictObject({
					/** absent where nothing was put there */
					itemId: id.optional(),
					/** why nothing was put there; empty where it was */
					says: z.string(),
				}),
			),
		}),
		desk,
	),
	/**
	 * The pages for the printer. What waits goes on paper from then on; what has left counts as
	 * handed over once more.
	 */
	'outbox.print': call(
		z.strictObject({ itemId: id }),
		z.strictObject({
			base64: z.string(),
			fileName: z.string(),
			/** it is still to be noted that it was handed over or posted */
			toBeNoted: z.boolean(),
		}),
		desk,
	),
} as const
