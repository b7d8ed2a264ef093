/**
 * One document on its way to one recipient: what is kept of it, its states, and the moves between
 * them.
 */
import { z } from 'zod'
import type { KindName } from '../../engine/report/kinds.ts'

/** Pages that are made of what a visit found. */
export const pageKinds = [
	'player',
	'guardian',
	'referral',
	'coach',
	'insert-order',
] as const satisfies readonly KindName[]
export type PageKind = (typeof pageKinds)[number]
/** A reminder says nothing of the visit: it asks to make an appointment. */
export const outboxKinds = [...pageKinds, 'reminder'] as const
export type OutboxKind = (typeof outboxKinds)[number]
export const kindWords: Record<OutboxKind, string> = {
	player: 'Player report',
	guardian: 'Guardian summary',
	referral: 'Referral letter',
	coach: 'Letter for the club',
	'insert-order': 'Insert order',
	reminder: 'Reminder',
}

export const channels = ['smtp', 'eml', 'print', 'hand-over'] as const
export type Channel = (typeof channels)[number]
export const channelWords: Record<Channel, string> = {
	smtp: 'E-mail',
	eml: 'Draft for the mail program',
	print: 'Print and post',
	'hand-over': 'Hand over',
}
export const isMail = (channel: Channel): boolean => channel === 'smtp' || channel === 'eml'

export const recipientRoles = ['player', 'guardian', 'doctor', 'coach', 'laboratory'] as const
export type RecipientRole = (typeof recipientRoles)[number]
export const roleWords: Record<RecipientRole, string> = {
	player: 'player',
	guardian: 'guardian',
	doctor: 'doctor or physiotherapist',
	coach: 'coach or club',
	laboratory: 'laboratory',
}

export const outboxStates = [
	'to-check',
	'ready',
	'sent',
	'uncertain',
	'delivered',
	'returned',
	'closed',
] as const
export type OutboxState = (typeof outboxStates)[number]
export const stateWords: Record<OutboxState, string> = {
	'to-check': 'To check',
	ready: 'Ready',
	sent: 'Sent',
	uncertain: 'Uncertain',
	delivered: 'Delivered',
	returned: 'Returned',
	closed: 'Closed',
}
/**
 * Where each state may go. Nothing leaves 'closed' but a late return; nothing comes to 'sent'
 * without having been ready.
 */
const moves: Record<OutboxState, readonly OutboxState[]> = {
	'to-check': ['ready', 'closed'],
	ready: ['sent', 'uncertain', 'returned', 'to-check', 'closed'],
	uncertain: ['sent', 'delivered', 'returned', 'to-check', 'closed'],
	sent: ['delivered', 'returned', 'closed'],
	delivered: ['returned', 'closed'],
	returned: ['closed'],
	closed: ['returned'],
}
/** Whether a sending may go from one state to another. @internal */
export const mayMove = (from: OutboxState, to: OutboxState): boolean => moves[from].includes(to)

const who = z.strictObject({ personId: z.string(), name: z.string() })
export const recipientSchema = z.strictObject({
	recipientId: z.string().min(1).max(80),
	name: z.string().min(1).max(160),
	role: z.enum(recipientRoles),
	email: z.string().max(254).optional(),
	phone: z.string().max(40).optional(),
})
export type Recipient = z.infer<typeof recipientSchema>
const happeningSchema = z.strictObject({
	at: z.string(),
	by: z.string(),
	state: z.enum(outboxStates),
	says: z.string(),
})
export const outboxItemSchema = z.strictObject({
	itemId: z.string(),
	playerId: z.string(),
	visitId: z.string(),
	documentId: z.string(),
	kind: z.enum(outboxKinds),
	version: z.int().min(1),
	/** SHA-256 of the document as it was composed or signed. */
	sha256: z.string(),
	recipient: recipientSchema,
	channel: z.enum(channels),
	/** `password`: only a copy that opens by it leaves the PC. */
	protection: z.enum(['password', 'open']),
	password: z.string().optional(),
	state: z.enum(outboxStates),
	owner: who,
	due: z.iso.date(),
	createdAt: z.string(),
	/** The same at every try, so that a second copy can be told. */
	messageId: z.string(),
	released: who.extend({ at: z.string() }).optional(),
	/** Written before the last byte leaves: where no outcome follows, the outcome is not known. */
	handing: z.boolean().optional(),
	/** The bytes were given out for the mail program, the printer or the hand. */
	taken: z.string().optional(),
	attempts: z.int().min(0),
	firstTriedAt: z.string().optional(),
	notBefore: z.string().optional(),
	sentAt: z.string().optional(),
	consentIds: z.array(z.string()).optional(),
	statusCode: z.string().optional(),
	resend: z.strictObject({ of: z.string(), reason: z.string() }).optional(),
	breachId: z.string().optional(),
	history: z.array(happeningSchema),
})
export type OutboxItem = z.infer<typeof outboxItemSchema>
/** An address on record for one player: typed twice, and its warnings seen. */
export const contactSchema = z.strictObject({
	contactId: z.string(),
	playerId: z.string(),
	name: z.string(),
	role: z.enum(recipientRoles),
	email: z.string().optional(),
	phone: z.string().optional(),
	by: z.string(),
	at: z.string(),
	removed: z.boolean().optional(),
})
export type Contact = z.infer<typeof contactSchema>

/** The number that stands in subject and file name: no name, no clinical word. */
export const numberOf = (itemId: string): string =>
	`LW-${itemId.replaceAll('-', '').slice(0, 8).toUpperCase()}`
const dayMs = 86_400_000
/** Whole days between two ISO moments. */
export const ageDays = (from: string, now: string): number =>
	Math.max(0, Math.floor((Date.parse(now) - Date.parse(from)) / dayMs))
/** The item after a move. @throws RangeError where the states do not allow it */
export function moved(
	item: OutboxItem,
	to: OutboxState,
	{ at, by, says }: { at: string; by: string; says: string },
): OutboxItem {
	if (item.state !== to && !mayMove(item.state, to))
		throw new RangeError(`From "${stateWords[item.state]}" this cannot become "${stateWords[to]}".`)
	return { ...item, state: to, history: [...item.history, { at, by, state: to, says }] }
}
