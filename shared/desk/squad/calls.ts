/** The calls about screening days. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { call, clinicians, desk, staff } from '../workplace/call.ts'
import { filePath, id, nothing, page, pdf } from '../workplace/shapes.ts'
import { type BoardRow, presences } from './board.ts'
import { stationIds } from './stations.ts'

/** The service says of a longer one than it reads what to do. */
const roster = z.string().max(5_000_000)

export const squadCalls = {
	'squad.list': call(
		nothing,
		z.strictObject({
			days: z.array(
				z.strictObject({
					squadId: z.string(),
					team: z.string(),
					day: z.string(),
					players: z.number(),
				}),
			),
		}),
		staff,
	),
	/** Reads a roster and changes nothing. */
	'squad.previewRoster': call(
		z.strictObject({ text: roster, team: z.string().trim().max(120), day: z.iso.date() }),
		z.strictObject({
			problems: z.array(
				z.strictObject({
					row: z.number(),
					column: z.string(),
					code: z.string(),
					message: z.string(),
				}),
			),
			rows: z.array(
				z.strictObject({
					row: z.number(),
					number: z.string(),
					name: z.string(),
					birthDate: z.string(),
					guardian: z.string().optional(),
					consents: z.array(z.string()),
					known: z.array(
						z.strictObject({
							playerId: z.string(),
							name: z.string(),
							birthDate: z.string(),
							why: z.enum(['same-person', 'twin']),
						}),
					),
				}),
			),
		}),
		staff,
	),
	/**
	 * `same` by row number: a player on record, or `new`. With `squadId` late arrivals join that day.
	 */
	'squad.create': call(
		z.strictObject({
			text: roster,
			team: z.string().trim().min(1).max(120),
			day: z.iso.date(),
			same: boundedRecord(10, id, 2000),
			squadId: id.optional(),
		}),
		z.strictObject({ squadId: z.string(), players: z.number() }),
		desk,
	),
	'squad.open': call(
		z.strictObject({ squadId: id }),
		z.strictObject({
			squadId: z.string(),
			team: z.string(),
			day: z.string(),
			rows: z.array(z.custom<BoardRow>()),
			doubled: z.array(z.strictObject({ number: z.string(), names: z.array(z.string()) })),
			stations: z.array(z.strictObject({ id: z.enum(stationIds), name: z.string() })),
		}),
		staff,
	),
	'squad.mark': call(
		z.strictObject({
			squadId: id,
			playerId: id,
			presence: z.enum(presences),
			at: z.enum(stationIds).optional(),
			reason: z.string().trim().max(300).optional(),
		}),
		nothing,
		staff,
	),
	/**
	 * Starts writing the signed reports of the day; progress is asked, and it can be cancelled
	 * between two players.
	 */
	'squad.reports': call(
		z.strictObject({ squadId: id, folder: filePath }),
		z.strictObject({ total: z.number() }),
		desk,
	),
	'squad.progress': call(
		z.strictObject({ squadId: id }),
		z.strictObject({
			running: z.boolean(),
			done: z.number(),
			total: z.number(),
			files: z.number(),
			failed: z.array(z.string()),
			said: z.string(),
		}),
		staff,
	),
	'squad.cancel': call(
		z.strictObject({ squadId: id }),
		z.strictObject({ cancelled: z.boolean() }),
		desk,
	),
	'squad.summary': call(
		z.strictObject({ squadId: id, version: z.enum(['club', 'clinician']) }),
		z.strictObject({ pdf, leftOut: z.array(z.string()) }),
		clinicians,
	),
	/** The same as one page for a screen reader. */
	'squad.summaryPage': call(
		z.strictObject({ squadId: id, version: z.enum(['club', 'clinician']) }),
		z.strictObject({ page, leftOut: z.array(z.string()) }),
		clinicians,
	),
} as const
