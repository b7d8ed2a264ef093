/** What the demo tells: the files of assets/demo, checked, with their dates moved to a day. */
import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { channels, pageKinds, recipientRoles } from '../../../shared/desk/outbox/item.ts'
import { newConsentSchema } from '../../../shared/desk/records/consent.ts'
import { presences } from '../../../shared/desk/squad/board.ts'
import { stationIds } from '../../../shared/desk/squad/stations.ts'
import { boundedRecord } from '../../../shared/engine/plain/bounded.ts'
import { addDays, daysBetween } from '../../../shared/engine/plain/days.ts'
import { clinicSchema } from '../../../shared/engine/report/clinic.ts'
import { type Shelf, shelfSchema } from '../../../shared/engine/visit/shelf.ts'
import { playerSchema, type Season, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { placeOf } from '../../place.ts'

const day = z.iso.date()
const words = z.string().min(1)
/** A player by full name. */
const player = words
const playersSchema = z.strictObject({
	/** The day on which the dates of the files are right as they stand. */
	toldOn: day,
	clinic: clinicSchema,
	players: z.array(
		z.strictObject({
			player: playerSchema,
			visits: z.array(visitSchema),
			/** The last visit is an open draft. */
			lastIsOpen: z.boolean().optional(),
			/** In which visit the season is planned. */
			seasonIn: day.optional(),
			/** What was done about a sign that does not wait, by the date of the visit. */
			referralDone: boundedRecord(10, words, 10).optional(),
			/** Who took each report along on its day. */
			handedTo: words.optional(),
		}),
	),
})
/** More players, each seen twice: what the audit of the clinic counts. */
const seenAgainSchema = playersSchema.pick({ players: true })
export type PlayerTold = z.infer<typeof playersSchema>['players'][number]

const stepSchema = z.strictObject({
	do: z.enum(['release', 'give', 'sent', 'delivered', 'returned', 'close']),
	note: z.string().optional(),
	/** the day of the sending where absent */
	on: day.optional(),
})
const sendingSchema = z.strictObject({
	player,
	visit: day,
	kind: z.enum(pageKinds),
	to: words,
	way: z.enum(channels),
	on: day,
	due: day,
	steps: z.array(stepSchema),
})
export type SendingTold = z.infer<typeof sendingSchema>
const onBoardSchema = z.strictObject({
	number: words,
	presence: z.enum(presences),
	at: z.enum(stationIds).optional(),
	reason: words.optional(),
	consentNoted: z.boolean().optional(),
	visit: visitSchema
		.omit({ format: true, version: true, player: true, visitDate: true })
		.optional(),
	/** Who signed the visit: the owner where it is not one of the people. */
	signedBy: words.optional(),
})
export type OnBoard = z.infer<typeof onBoardSchema>
const roomsSchema = z.strictObject({
	people: z.array(
		z.strictObject({
			name: words,
			registration: z.string(),
			role: z.enum(['student', 'reception']),
			passphrase: words,
		}),
	),
	contacts: z.array(
		z.strictObject({
			player,
			name: words,
			role: z.enum(recipientRoles).exclude(['player']),
			email: words.optional(),
			phone: words.optional(),
			on: day,
		}),
	),
	consents: z.array(
		z.strictObject({ player, consent: newConsentSchema, withdrawn: day.optional() }),
	),
	notes: z.array(z.strictObject({ player, text: words, on: day })),
	sendings: z.array(sendingSchema),
	pack: z.strictObject({
		players: z.array(player),
		history: z.enum(['none', 'last', 'all']),
		on: day,
		expires: day,
		passphrase: words,
	}),
	squad: z.strictObject({
		team: words,
		/** the lines of the team's list */
		roster: z.array(words),
		board: z.array(onBoardSchema),
	}),
})
/** A visit file with a season. */
const seasonFileSchema = visitSchema.required({ season: true })
export interface Scenario extends z.infer<typeof playersSchema> {
	today: string
	rooms: z.infer<typeof roomsSchema>
	shelf: Shelf
	/** The season that is planned. */
	season: Season
}

/** A file of assets/demo. */
const readAsset = (name: string): unknown =>
	JSON.parse(readFileSync(placeOf(`assets/demo/${name}`), 'utf8'))
const dates = /\d{4}-\d{2}-\d{2}/g
/** The same with every date of it so many days later; a date within a name moves too. */
const later = (told: unknown, days: number): unknown =>
	JSON.parse(JSON.stringify(told).replace(dates, (date) => addDays(date, days)))
const daysOfWeek = 7
const { toldOn } = playersSchema.parse(readAsset('demo.json'))

/**
 * The day on which the past is told: at most six days before today, and on the weekday on which it
 * is told in the files, so that visits, matches and training keep theirs.
 */
export const weekOf = (today: string): string =>
	addDays(toldOn, Math.floor(daysBetween(toldOn, today) / daysOfWeek) * daysOfWeek)

/** Passphrases of those who work with the owner, in words. */
export const otherPassphrases = (): string =>
	roomsSchema
		.parse(readAsset('rooms.json'))
		.people.map(({ name, role, passphrase }) => `${passphrase} (${name}, ${role})`)
		.join('; ')
/**
 * @param today ISO date on which it is told; the screening day is on it
 * @param isFull with those who were seen again
 */
export function readScenario(today: string, isFull: boolean): Scenario {
	const days = daysBetween(toldOn, weekOf(today))
	const told = playersSchema.parse(later(readAsset('demo.json'), days))
	const { players: seenAgain } = isFull
		? seenAgainSchema.parse(later(readAsset('seen-again.json'), days))
		: { players: [] }
	return {
		...told,
		players: [...told.players, ...seenAgain],
		today,
		rooms: roomsSchema.parse(later(readAsset('rooms.json'), days)),
		shelf: shelfSchema.parse(readAsset('shelf.json')),
		season: seasonFileSchema.parse(later(readAsset('season-visit.json'), days)).season,
	}
}
