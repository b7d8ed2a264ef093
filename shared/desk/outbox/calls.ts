/** The calls about the outbox, its mail settings, and what follows a sending in error. */
import { z } from 'zod'
import { purposeNames } from '../records/consent.ts'
import { call, desk, owners } from '../workplace/call.ts'
import { id, nothing, reason } from '../workplace/shapes.ts'
import { breachClockSchema, breachSchema, breachStepNames } from './breach.ts'
import { channels, outboxItemSchema, pageKinds, recipientRoles, recipientSchema } from './item.ts'
import { smtpSchema, smtpShownSchema } from './mail-settings.ts'
import { manyCalls } from './many-calls.ts'
import { sendingNoteSchema } from './sending-note.ts'

const item = z.strictObject({ itemId: id })
/** An item as the screens see it: without the password. */
const outboxViewSchema = outboxItemSchema.omit({ password: true, handing: true }).extend({
	number: z.string(),
	playerName: z.string(),
	birthDate: z.string(),
	visitDate: z.string(),
	ageDays: z.number(),
	overdue: z.boolean(),
	sending: z.boolean(),
	/** Who is at work found it right beside its page in this session: several go in one step. */
	compared: z.boolean(),
	/** A version signed after the one of this item. */
	newerVersion: z.number().optional(),
})
export type OutboxView = z.infer<typeof outboxViewSchema>
const file = z.strictObject({ base64: z.string(), fileName: z.string(), mediaType: z.string() })

export const outboxCalls = {
	...manyCalls,
	'outbox.recipients': call(
		z.strictObject({ visitId: id }),
		z.strictObject({
			playerId: id,
			playerName: z.string(),
			birthDate: z.string(),
			minor: z.boolean(),
			visitDate: z.string(),
			version: z.number(),
			recipients: z.array(
				z.strictObject({
					recipient: recipientSchema,
					kinds: z.array(z.enum(pageKinds)),
					warnings: z.array(z.string()),
					consents: z.array(z.strictObject({ purpose: z.enum(purposeNames), says: z.string() })),
				}),
			),
		}),
		desk,
	),
	/** A typed address is put on record: twice, and with its warnings read. */
	'outbox.addContact': call(
		z.strictObject({
			playerId: id,
			name: z.string().trim().min(1).max(160),
			role: z.enum(recipientRoles).exclude(['player']),
			email: z.string().trim().max(254),
			emailAgain: z.string().trim().max(254),
			phone: z.string().trim().max(40).optional(),
			/** the warnings were read */
			warningsRead: z.boolean(),
		}),
		z.strictObject({ contactId: id.optional(), warnings: z.array(z.string()) }),
		desk,
	),
	'outbox.removeContact': call(z.strictObject({ playerId: id, contactId: id }), nothing, desk),
	/**
	 * Composes a document of a signed visit for one recipient and puts it into the queue, to be
	 * checked.
	 */
	'outbox.add': call(
		z.strictObject({
			visitId: id,
			kind: z.enum(pageKinds),
			recipientId: id,
			channel: z.enum(channels),
			protection: z.enum(['password', 'open']).optional(),
			due: z.iso.date(),
			/** why the same person is given the same document once more */
			again: reason.optional(),
		}),
		item,
		desk,
	),
	'outbox.list': call(
		nothing,
		z.strictObject({
			items: z.array(outboxViewSchema),
			queue: z.strictObject({
				waiting: z.number(),
				busy: z.boolean(),
				says: z.string(),
				retryAt: z.string().optional(),
			}),
			mailSet: z.boolean(),
		}),
		desk,
	),
	/** The stored bytes with what must be compared; nothing is released without it. */
	'outbox.look': call(
		item,
		z.strictObject({
			base64: z.string(),
			sha256: z.string(),
			fileName: z.string(),
			warnings: z.array(z.string()),
			consents: z.array(z.string()),
			/** rights the recipient lacks now */
			missing: z.array(z.string()),
			blocked: z.string().optional(),
		}),
		desk,
	),
	'outbox.release': call(
		z.strictObject({
			itemId: id,
			sha256: z.string().max(64),
			/** first page, name, birth date and address were compared */
			compared: z.literal(
				true,
				'given no, allowed: yes once page, name, birth date and address were compared',
			),
			warningsRead: z.boolean(),
		}),
		nothing,
		desk,
	),
	'outbox.back': call(z.strictObject({ itemId: id, reason }), nothing, desk),
	/** The bytes for the printer, the hand or the mail program. */
	'outbox.take': call(
		z.strictObject({
			itemId: id,
			/** one page for a screen reader in place of the PDF; of what is printed or handed over */
			asPage: z.boolean().optional(),
		}),
		file,
		desk,
	),
	'outbox.confirm': call(
		z.strictObject({
			itemId: id,
			what: z.enum(['sent', 'delivered', 'returned', 'again']),
			note: z.string().trim().max(500),
		}),
		nothing,
		desk,
	),
	'outbox.close': call(
		z.strictObject({ itemId: id, note: z.string().trim().max(500) }),
		nothing,
		desk,
	),
	'outbox.mine': call(z.strictObject({ itemId: id, due: z.iso.date() }), nothing, desk),
	'outbox.password': call(
		item,
		z.strictObject({
			password: z.string(),
			phone: z.string().optional(),
			recipient: z.string(),
		}),
		desk,
	),
	/** What must be read before anything of a player leaves. */
	'outbox.notes': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ notes: z.array(sendingNoteSchema) }),
		desk,
	),
	'outbox.addNote': call(
		z.strictObject({ playerId: id, text: reason }),
		z.strictObject({ noteId: id }),
		desk,
	),
	'outbox.removeNote': call(z.strictObject({ playerId: id, noteId: id, reason }), nothing, desk),
	/** Who still holds an earlier version. */
	'outbox.tell': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
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
		desk,
	),
	/** A cover page and proof of sending, without clinical words. */
	'outbox.sheet': call(
		item,
		z.strictObject({ base64: z.string(), sha256: z.string(), fileName: z.string() }),
		desk,
	),
	'outbox.resend': call(
		z.strictObject({ itemId: id, version: z.enum(['same', 'newest']), reason }),
		item,
		desk,
	),
	'outbox.sentInError': call(
		z.strictObject({ itemId: id, what: reason, noticedAt: z.iso.datetime().max(40) }),
		z.strictObject({ breachId: id }),
		desk,
	),
	/** A delivery report of the mail system (RFC 3464), pasted. */
	'outbox.readReport': call(
		z.strictObject({ text: z.string().max(2_000_000) }),
		z.strictObject({
			read: z.array(
				z.strictObject({ itemId: id.optional(), address: z.string(), says: z.string() }),
			),
		}),
		desk,
	),
	'outbox.sendNow': call(nothing, nothing, desk),
	'mail.get': call(
		nothing,
		z.strictObject({ smtp: smtpShownSchema.optional(), clock: breachClockSchema }),
		desk,
	),
	'mail.save': call(
		z.strictObject({ smtp: smtpSchema.optional(), clock: breachClockSchema }),
		nothing,
		owners,
	),
	'mail.test': call(nothing, z.strictObject({ says: z.string() }), owners),
	'breaches.list': call(
		nothing,
		z.strictObject({
			breaches: z.array(
				breachSchema.extend({
					playerName: z.string(),
					number: z.string(),
					assessBy: z.string(),
					authorityBy: z.string(),
					assessDaysLeft: z.number(),
					authorityHoursLeft: z.number(),
					/** who looked at or sent anything of this player */
					access: z.array(z.string()),
				}),
			),
		}),
		desk,
	),
	'breaches.step': call(
		z.strictObject({ breachId: id, step: z.enum(breachStepNames), note: reason }),
		nothing,
		desk,
	),
} as const
