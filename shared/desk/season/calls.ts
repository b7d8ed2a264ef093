/** The calls about a player's season. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { planSchema } from '../../engine/season/plan-file.ts'
import type { ImportPreview } from '../../engine/season/preview.ts'
import { patternSchema, seasonSchema } from '../../engine/visit/visit.ts'
import { statementSchema } from '../../engine/words/stated.ts'
import { call, treating } from '../workplace/call.ts'
import { id, page, pdf } from '../workplace/shapes.ts'
import { changesSchema } from './season-record.ts'

export const seasonCalls = {
	/**
	 * The season with its last plan. `blocked` says why no rotation may be given out; `from` is the
	 * first day that is not the past.
	 */
	'season.open': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
			name: z.string(),
			from: z.string(),
			running: z.boolean(),
			/** under the age from which feet count as grown */
			young: z.boolean(),
			season: seasonSchema.optional(),
			savedAs: id.optional(),
			/** a weekly pattern to take, made of what was entered under play; only where there is none */
			fromPlay: z
				.strictObject({ rows: z.array(patternSchema).max(30), said: statementSchema })
				.optional(),
			blocked: statementSchema.optional(),
			basis: z.strictObject({ from: z.enum(['draft', 'visit']), visitDate: z.string() }).optional(),
			pairs: z.array(
				z.strictObject({
					id: z.string(),
					letter: z.string(),
					name: z.string(),
					sole: z.string().optional(),
				}),
			),
			planned: z
				.strictObject({
					plan: planSchema,
					changes: changesSchema,
					at: z.string(),
					version: z.number(),
					/** record of the season it was made of */
					season: id,
					basisChanged: z.boolean(),
				})
				.optional(),
		}),
		treating,
	),
	/**
	 * The whole season. `follows` is the record it was changed from: refused where another one was
	 * saved meanwhile.
	 */
	'season.save': call(
		z.strictObject({ playerId: id, season: seasonSchema, follows: id.optional() }),
		z.strictObject({ savedAs: id }),
		treating,
	),
	/**
	 * Reads a fixture list and changes nothing. `answers` by the keys of the questions, and `source`,
	 * the name of the list.
	 */
	'season.previewImport': call(
		z.strictObject({
			playerId: id,
			text: z.string().max(5_000_000),
			kind: z.enum(['ics', 'csv']),
			answers: boundedRecord(400, z.string().max(200), 3000),
		}),
		z.custom<ImportPreview>(),
		treating,
	),
	/**
	 * Sessions before `from` stay as they were. The change against the last plan is told in words.
	 * With `ask` a plan that would change something is not kept until it is taken.
	 */
	'season.plan': call(
		z.strictObject({ playerId: id, from: z.iso.date().optional(), ask: z.boolean().optional() }),
		z.strictObject({
			plan: planSchema,
			changes: changesSchema,
			first: z.boolean(),
			kept: z.boolean(),
		}),
		treating,
	),
	/** Keeps the plan that was made last and not kept yet. */
	'season.take': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ changes: changesSchema }),
		treating,
	),
	/** Lets it go: the plan of before stands. */
	'season.leave': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ left: z.boolean() }),
		treating,
	),
	'season.cancel': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ cancelled: z.boolean() }),
		treating,
	),
	'season.progress': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
			running: z.boolean(),
			pass: z.number().optional(),
			seconds: z.number().optional(),
			gap: z.number().optional(),
		}),
		treating,
	),
	/** The wall chart on the clinic's own paper (A4 asks for it, whichever it is) or large, or the table. */
	'season.chart': call(
		z.strictObject({ playerId: id, paper: z.enum(['A4', 'A3', 'pocket']) }),
		pdf,
		treating,
	),
	/** The same as one page for a screen reader. */
	'season.page': call(
		z.strictObject({ playerId: id, paper: z.enum(['A4', 'A3', 'pocket']) }),
		page,
		treating,
	),
	'season.ics': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ text: z.string(), fileName: z.string() }),
		treating,
	),
} as const
