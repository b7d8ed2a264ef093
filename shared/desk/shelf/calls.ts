/** The calls about the shelf. */
import { z } from 'zod'
import { shelfSchema } from '../../engine/visit/shelf.ts'
import { call, desk, staff } from '../workplace/call.ts'
import { id, nothing } from '../workplace/shapes.ts'
import { learnings, toLearnSchema } from './learning.ts'

export const shelfCalls = {
	/** Without `shelf` none was ever saved. `savedAs` names the record it stands in. */
	'shelf.get': call(
		nothing,
		z.strictObject({ shelf: shelfSchema.optional(), savedAs: id.optional() }),
		staff,
	),
	/**
	 * The whole shelf. `follows` is the record it was changed from: refused where another one was
	 * saved meanwhile.
	 */
	'shelf.save': call(
		z.strictObject({ shelf: shelfSchema, follows: id.optional() }),
		z.strictObject({ savedAs: id }),
		desk,
	),
	/**
	 * Reads a table and changes nothing: the models that can be taken in, and each bad cell by line
	 * and column.
	 */
	'shelf.previewCsv': call(
		z.strictObject({ text: z.string().max(5_000_000) }),
		z.strictObject({
			shelf: shelfSchema,
			good: z.number(),
			problems: z.array(
				z.strictObject({ row: z.number(), column: z.string(), message: z.string() }),
			),
		}),
		desk,
	),
	/** Pairs measured on the foot that nobody has answered about: of a visit, or of all. */
	'shelf.toLearn': call(
		z.strictObject({ visitId: id.optional() }),
		z.strictObject({ pairs: z.array(toLearnSchema).max(500), savedAs: id.optional() }),
		desk,
	),
	/** The answer about one of them; `follows` as for a save. */
	'shelf.learn': call(
		z.strictObject({
			of: z.string().max(64),
			answer: z.enum(learnings),
			follows: id.optional(),
		}),
		z.strictObject({ savedAs: id }),
		desk,
	),
	'shelf.exportCsv': call(nothing, z.strictObject({ csv: z.string(), models: z.number() }), staff),
} as const
