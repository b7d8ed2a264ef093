/** The calls about screening days. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { channels } from '../outbox/item.ts'
import { purposeNames } from '../records/consent.ts'
import { call, clinicians, desk, staff } from '../workplace/call.ts'
import { filePath, id, nothing, page, pdf } from '../workplace/shapes.ts'
import { type BoardRow, presences } from './board.ts'
import { rosterAnswersSchema } from './roster-answers.ts'
import { columns } from './roster-columns.table.ts'
import type { DateReading } from './roster-dates.ts'
import { rosterPeopleSchema, sharingRoles } from './roster-sharing.ts'
import { stationIds } from './stations.ts'

/** The service says of a longer one than it reads what to do. */
const roster = z.string().max(5_000_000)
/** Why two entries may be one player. */
const likenesses = ['same-person', 'twin'] as const

/** A list with what was said of it. */
const toTakeIn = z.strictObject({
	text: roster,
	day: z.iso.date(),
	answers: rosterAnswersSchema.optional(),
	same: boundedRecord(10, id, 2000),
	people: rosterPeopleSchema.optional(),
})
/** Rows that were taken in, and those that cannot stand yet. */
const takenIn = z.strictObject({
	players: z.number(),
	taken: z.array(z.number()),
	left: z.array(z.number()),
})

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
		z.strictObject({
			text: roster,
			team: z.string().trim().max(120),
			day: z.iso.date(),
			answers: rosterAnswersSchema.optional(),
			/** the day that the rows are to join */
			squadId: id.optional(),
		}),
		z.strictObject({
			problems: z.array(
				z.strictObject({
					row: z.number(),
					column: z.string(),
					code: z.string(),
					message: z.string(),
				}),
			),
			/** rows with a problem, as they read, to be repaired */
			bad: z.array(
				z.strictObject({
					row: z.number(),
					cells: z.partialRecord(z.enum(columns), z.string()),
				}),
			),
			titleLines: z.number(),
			headings: z.array(
				z.strictObject({
					place: z.number(),
					title: z.string(),
					column: z.enum(columns).optional(),
				}),
			),
			missing: z.array(z.enum(columns)),
			dates: z.custom<DateReading>(),
			/** roles of people whom consents are given for, without saying whom */
			asksFor: z.array(z.enum(sharingRoles)),
			rows: z.array(
				z.strictObject({
					row: z.number(),
					number: z.string(),
					/** given here: the list has none */
					isNumbered: z.boolean().optional(),
					name: z.string(),
					birthDate: z.string(),
					guardian: z.string().optional(),
					consents: z.array(z.enum(purposeNames)),
					known: z.array(
						z.strictObject({
							playerId: z.string(),
							name: z.string(),
							birthDate: z.string(),
							why: z.enum(likenesses),
						}),
					),
					/** rows above that may be the same player */
					alike: z.array(
						z.strictObject({
							row: z.number(),
							name: z.string(),
							birthDate: z.string(),
							why: z.enum(likenesses),
						}),
					),
				}),
			),
		}),
		staff,
	),
	/**
	 * `same` by row number: a player on record, `new`, or `leave-out`. With `squadId` late arrivals
	 * join that day. Rows that cannot stand are `left`, and keep nobody out.
	 */
	'squad.create': call(
		toTakeIn.extend({ team: z.string().trim().min(1).max(120), squadId: id.optional() }),
		takenIn.extend({ squadId: z.string() }),
		desk,
	),
	/** The same of a list without a screening day: its players are put on record. */
	'squad.importPlayers': call(toTakeIn.extend({ team: z.string().trim().max(120) }), takenIn, desk),
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
	/**
	 * Puts into the outbox, for each signed player, the guardian's page of a minor or the report of a
	 * player of age: by mail where there is a consent, else on paper. Each is then checked by itself.
	 */
	'squad.toFamilies': call(
		z.strictObject({ squadId: id }),
		z.strictObject({
			lines: z.array(
				z.strictObject({
					name: z.string(),
					to: z.string(),
					/** absent where nothing was put there */
					itemId: id.optional(),
					channel: z.enum(channels).optional(),
					/** why nothing was put there; empty where it was */
					says: z.string(),
				}),
			),
		}),
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
