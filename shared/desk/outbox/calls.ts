/** The calls of the outbox: their shapes. Who may stands in the contract. */
import { z } from 'zod'
import { breachClockSchema, breachSchema, breachStepNames } from './breach.ts'
import { channels, outboxItemSchema, outboxKinds, recipientRoles, recipientSchema } from './item.ts'
import { smtpSchema, smtpShownSchema } from './mail-settings.ts'

const id = z.string().min(1).max(80)
const nothing = z.strictObject({})
const reason = z.string().trim().min(3).max(500)
const item = z.strictObject({ itemId: id })
/** An item as the screens see it: without the password. */
export const outboxViewSchema = outboxItemSchema.omit({ password: true, handing: true }).extend({
	number: z.string(),
	playerName: z.string(),
	birthDate: z.string(),
	visitDate: z.string(),
	ageDays: z.number(),
	overdue: z.boolean(),
	sending: z.boolean(),
	/** A version signed after the one of this item. */
	newerVersion: z.number().optional(),
})
export type OutboxView = z.infer<typeof outboxViewSchema>
/**
 * Something to know before anything of this player is sent: a court order, an address that must not
 * be told (practice standard 1.4, common practice, no source).
 */
export const sendingNoteSchema = z.strictObject({
	noteId: z.string(),
	playerId: z.string(),
	text: z.string(),
	by: z.string(),
	at: z.string(),
	removed: z.strictObject({ by: z.string(), at: z.string(), reason: z.string() }).optional(),
})
export type SendingNote = z.infer<typeof sendingNoteSchema>
const file = z.strictObject({ base64: z.string(), fileName: z.string(), mediaType: z.string() })
export const shapes = {
	recipients: {
		in: z.strictObject({ visitId: id }),
		out: z.strictObject({
			playerId: id,
			playerName: z.string(),
			birthDate: z.string(),
			minor: z.boolean(),
			visitDate: z.string(),
			version: z.number(),
			recipients: z.array(
				z.strictObject({
					recipient: recipientSchema,
					kinds: z.array(z.enum(outboxKinds)),
					warnings: z.array(z.string()),
					consents: z.array(z.string()),
				}),
			),
		}),
	},
	addContact: {
		in: z.strictObject({
			playerId: id,
			name: z.string().trim().min(1).max(160),
			role: z.enum(recipientRoles).exclude(['player']),
			email: z.string().trim().max(254),
			emailAgain: z.string().trim().max(254),
			phone: z.string().trim().max(40).optional(),
			/** the warnings were read */ warningsRead: z.boolean(),
		}),
		out: z.strictObject({ contactId: id.optional(), warnings: z.array(z.string()) }),
	},
	removeContact: { in: z.strictObject({ playerId: id, contactId: id }), out: nothing },
	add: {
		in: z.strictObject({
			visitId: id,
			kind: z.enum(outboxKinds),
			recipientId: id,
			channel: z.enum(channels),
			protection: z.enum(['password', 'open']).optional(),
			due: z.iso.date(),
		}),
		out: item,
	},
	list: {
		in: nothing,
		out: z.strictObject({
			items: z.array(outboxViewSchema),
			queue: z.strictObject({
				waiting: z.number(),
				busy: z.boolean(),
				says: z.string(),
				retryAt: z.string().optional(),
			}),
			mailSet: z.boolean(),
		}),
	},
	look: {
		in: item,
		out: z.strictObject({
			base64: z.string(),
			sha256: z.string(),
			fileName: z.string(),
			warnings: z.array(z.string()),
			consents: z.array(z.string()),
			/** rights the recipient lacks now */ missing: z.array(z.string()),
			blocked: z.string().optional(),
		}),
	},
	release: {
		in: z.strictObject({
			itemId: id,
			sha256: z.string(),
			/** first page, name, birth date and address were compared */ compared: z.literal(
				true,
				'given no, allowed: yes once page, name, birth date and address were compared',
			),
			warningsRead: z.boolean(),
		}),
		out: nothing,
	},
	back: { in: z.strictObject({ itemId: id, reason }), out: nothing },
	take: { in: item, out: file },
	confirm: {
		in: z.strictObject({
			itemId: id,
			what: z.enum(['sent', 'delivered', 'returned', 'again']),
			note: z.string().trim().max(500),
		}),
		out: nothing,
	},
	close: { in: z.strictObject({ itemId: id, note: z.string().trim().max(500) }), out: nothing },
	mine: { in: z.strictObject({ itemId: id, due: z.iso.date() }), out: nothing },
	password: {
		in: item,
		out: z.strictObject({
			password: z.string(),
			phone: z.string().optional(),
			recipient: z.string(),
		}),
	},
	notes: {
		in: z.strictObject({ playerId: id }),
		out: z.strictObject({ notes: z.array(sendingNoteSchema) }),
	},
	addNote: {
		in: z.strictObject({ playerId: id, text: reason }),
		out: z.strictObject({ noteId: id }),
	},
	removeNote: { in: z.strictObject({ playerId: id, noteId: id, reason }), out: nothing },
	tell: {
		in: z.strictObject({ playerId: id }),
		out: z.strictObject({
			tell: z.array(
				z.strictObject({
					recipient: z.string(),
					channel: z.string(),
					version: z.number(),
					at: z.string(),
					visitId: z.string(),
					visitDate: z.string(),
					latest: z.number(),
				}),
			),
		}),
	},
	sheet: {
		in: item,
		out: z.strictObject({ base64: z.string(), sha256: z.string(), fileName: z.string() }),
	},
	resend: {
		in: z.strictObject({ itemId: id, version: z.enum(['same', 'newest']), reason }),
		out: item,
	},
	sentInError: {
		in: z.strictObject({ itemId: id, what: reason, noticedAt: z.iso.datetime() }),
		out: z.strictObject({ breachId: id }),
	},
	readReport: {
		in: z.strictObject({ text: z.string().max(2_000_000) }),
		out: z.strictObject({
			read: z.array(
				z.strictObject({ itemId: id.optional(), address: z.string(), says: z.string() }),
			),
		}),
	},
	mailGet: {
		in: nothing,
		out: z.strictObject({ smtp: smtpShownSchema.optional(), clock: breachClockSchema }),
	},
	mailSave: {
		in: z.strictObject({ smtp: smtpSchema.optional(), clock: breachClockSchema }),
		out: nothing,
	},
	mailTest: { in: nothing, out: z.strictObject({ says: z.string() }) },
	breaches: {
		in: nothing,
		out: z.strictObject({
			breaches: z.array(
				breachSchema.extend({
					playerName: z.string(),
					number: z.string(),
					assessBy: z.string(),
					authorityBy: z.string(),
					assessDaysLeft: z.number(),
					authorityHoursLeft: z.number(),
					/** who looked at or sent anything of this player */ access: z.array(z.string()),
				}),
			),
		}),
	},
	breachStep: {
		in: z.strictObject({ breachId: id, step: z.enum(breachStepNames), note: reason }),
		out: nothing,
	},
	nothing: { in: nothing, out: nothing },
} as const
