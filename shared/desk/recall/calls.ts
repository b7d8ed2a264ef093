/** The calls about who is due, and about referrals that nobody has heard from. */
import { z } from 'zod'
import { outboxStates, recipientRoles } from '../outbox/item.ts'
import { call, clinicians, desk, staff, treating } from '../workplace/call.ts'
import { id } from '../workplace/shapes.ts'
import { recallAnswerSchema } from './answer.ts'
import { dueSchema } from './item.ts'
import { followUpEntrySchema } from './referral.ts'
import { standings } from './standing.ts'

const name = z.string().max(160)
const itemSchema = dueSchema.extend({
	standing: z.enum(standings),
	/** the day it stands under, ISO date */
	day: z.string(),
	/** what it is about, in words; for those who treat */
	detail: z.string().optional(),
	answered: z.strictObject({ says: z.string(), by: z.string(), at: z.string() }).optional(),
})
const lineSchema = z.strictObject({
	playerId: id,
	name: z.string(),
	birthDate: z.string(),
	club: z.string().optional(),
	isMinor: z.boolean(),
	clinician: z.string(),
	visitDate: z.string(),
	day: z.string(),
	/** `overdue`, or the Monday of the week */
	week: z.string(),
	items: z.array(itemSchema),
	/** the reminder that was made last, since the newest visit */
	reminded: z.strictObject({ at: z.string(), state: z.enum(outboxStates) }).optional(),
})
export type RecallLine = z.infer<typeof lineSchema>
export type RecallItem = RecallLine['items'][number]

const phone = z.strictObject({ name: z.string(), role: z.enum(recipientRoles), phone: z.string() })
const referralSchema = z.strictObject({
	playerId: id,
	name: z.string(),
	birthDate: z.string(),
	visitIds: z.array(id),
	/** of the first visit that nobody was heard of */
	since: z.string(),
	/** what was asked for, in words */
	asked: z.string(),
	/** the signs, in words */
	signs: z.array(z.string()),
	/** what was done, whom it was put to, what was asked: in the clinician's words */
	done: z.array(z.string()),
	question: z.array(z.string()),
	/** letters of these visits: to whom, and how far they came */
	letters: z.array(z.strictObject({ to: z.string(), state: z.enum(outboxStates), at: z.string() })),
	/** when the plan sees the player again, ISO date */
	review: z.string().optional(),
	phones: z.array(phone),
	tries: z.array(
		z.strictObject({
			says: z.string(),
			again: z.string().optional(),
			by: z.string(),
			at: z.string(),
		}),
	),
})
export type NotHeardView = z.infer<typeof referralSchema>
/** An outcome that was written here, so that it can be taken back. */
const heardSchema = z.strictObject({
	followUpId: id,
	playerId: id,
	name: z.string(),
	visitIds: z.array(id),
	says: z.string(),
	by: z.string(),
	at: z.string(),
})

const remindWays = ['mail', 'letter'] as const
const remindedSchema = z.strictObject({
	playerId: id,
	name: z.string(),
	/** absent where none was made */
	itemId: id.optional(),
	/** whom it is for */
	to: z.string(),
	/** why none was made; empty where one was */
	says: z.string(),
	/** what is left where none was made */
	list: z.enum(['made', 'by-letter', 'by-telephone', 'nothing']),
	phones: z.array(phone),
})
export type Reminded = z.infer<typeof remindedSchema>

export const recallCalls = {
	/**
	 * Who is due, one line a player. Reception is told names, days and what kind of
	 * appointment it is; those who treat also what it is about.
	 */
	'recall.list': call(
		z.strictObject({
			/** absent: all that is not ended */
			show: z.enum(standings).optional(),
			club: name.optional(),
			age: z.enum(['adult', 'minor']).optional(),
			clinician: name.optional(),
			limit: z.int().min(1).max(500),
		}),
		z.strictObject({
			today: z.string(),
			total: z.number(),
			lines: z.array(lineSchema),
			counts: z.strictObject({
				overdue: z.number(),
				thisWeek: z.number(),
				booked: z.number(),
				waits: z.number(),
			}),
			clubs: z.array(z.string()),
			clinicians: z.array(z.string()),
			/** players whose referrals nobody has heard from */
			followUps: z.number(),
			/** visits and plans that cannot be read, in words: their players may be due */
			troubles: z.array(z.string()),
		}),
		staff,
	),
	/** One answer about what one player is due for; the newest counts. */
	'recall.answer': call(
		z.strictObject({
			playerId: id,
			items: z.array(dueSchema).min(1).max(60),
			answer: recallAnswerSchema,
		}),
		z.strictObject({ answered: z.number() }),
		desk,
	),
	/** Referrals that nobody has heard from, the most urgent first. */
	'recall.referrals': call(
		z.strictObject({}),
		z.strictObject({
			today: z.string(),
			referrals: z.array(referralSchema),
			/** outcomes written here last, newest first */
			heard: z.array(heardSchema),
			troubles: z.array(z.string()),
		}),
		treating,
	),
	/** What was heard of a referral, or that nothing was. */
	'recall.followUp': call(
		z.strictObject({
			playerId: id,
			visitIds: z.array(id).min(1).max(40),
			entry: followUpEntrySchema,
		}),
		z.strictObject({ followUpId: id }),
		clinicians,
	),
	/**
	 * Puts a reminder for each of these players into the outbox, to be checked. Who cannot be written
	 * to is named with what is left: a letter, or the telephone.
	 */
	'recall.remind': call(
		z.strictObject({
			playerIds: z.array(id).min(1).max(200),
			way: z.enum(remindWays),
		}),
		z.strictObject({ lines: z.array(remindedSchema) }),
		desk,
	),
} as const
