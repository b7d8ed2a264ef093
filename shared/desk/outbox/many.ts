/** What is done with several documents in one step: acts on items, and what could go to whom. */
import { z } from 'zod'
import { id } from '../workplace/shapes.ts'
import {
	channels,
	type OutboxState,
	type PageKind,
	pageKinds,
	type Recipient,
	type RecipientRole,
	recipientSchema,
} from './item.ts'
import { kindsFor } from './recipients.ts'

export const manyActs = ['release', 'back', 'close'] as const
export type ManyAct = (typeof manyActs)[number]
/** Items or rows of one step: a choice of this program. */
export const mostAtOnce = 500

/** Visits that are listed at once: a choice of this program. */
export const mostListed = 100
/** Days of signing that are looked back to: a choice of this program. */
export const unsentDays = 30

/** A document to be put into the outbox. */
export const putRowSchema = z.strictObject({
	visitId: id,
	kind: z.enum(pageKinds),
	recipientId: id,
	channel: z.enum(channels),
})
export type PutRow = z.infer<typeof putRowSchema>
/** What could go to whom, and what stands in the way of each way. */
const offerSchema = z.strictObject({
	kind: z.enum(pageKinds),
	recipient: recipientSchema.omit({ phone: true }),
	/** the way that is proposed: by mail where address and consent allow it, else on paper */
	channel: z.enum(channels),
	/** proposed by age, consent and what the visit holds; else it can be chosen */
	isProposed: z.boolean(),
	/** why it cannot go, by way; a way that is not named can be gone */
	cannot: z.partialRecord(z.enum(channels), z.string()),
})
export type Offer = z.infer<typeof offerSchema>
export const unsentVisitSchema = z.strictObject({
	visitId: id,
	playerId: id,
	playerName: z.string(),
	birthDate: z.string(),
	isMinor: z.boolean(),
	visitDate: z.string(),
	/** the day it was signed, here */
	signedOn: z.string(),
	version: z.number(),
	/** nothing of why: its pages go before all others */
	goesFirst: z.boolean(),
	/** why nothing of it may leave; its offers are then none */
	cannot: z.string().optional(),
	offers: z.array(offerSchema),
})
export type UnsentVisit = z.infer<typeof unsentVisitSchema>

/** What is known of somebody to whom a page of a visit could go. */
export interface Candidate {
	recipient: Recipient
	isMinor: boolean
	/** the consents to share with this recipient are in force */
	mayShare: boolean
	/** kinds of pages that were kept when the visit was signed */
	kept: readonly string[]
}
/**
 * Whose page is made for everybody: the guardian's for a minor, the player's own for one of age.
 * The others are proposed where a consent to share stands, and the visit holds what they are about.
 */
const meantFor: Record<RecipientRole, PageKind> = {
	player: 'player',
	guardian: 'guardian',
	doctor: 'referral',
	coach: 'coach',
	laboratory: 'insert-order',
}
/** Made for its recipient from what the visit holds, and not kept at signing. */
const notKept: readonly PageKind[] = ['coach']
/** The page that is proposed for somebody; undefined where none is. */
export function proposedFor({
	recipient,
	isMinor,
	mayShare,
	kept,
}: Candidate): PageKind | undefined {
	const { role } = recipient
	const kind = meantFor[role]
	if (role === 'player' || role === 'guardian')
		return (role === 'guardian') === isMinor ? kind : undefined
	return mayShare && (notKept.includes(kind) || kept.includes(kind)) ? kind : undefined
}
/** Every page that somebody may be given. */
export const pagesFor = (role: RecipientRole): PageKind[] =>
	kindsFor[role].flatMap((kind) => (kind === 'reminder' ? [] : [kind]))

/** What an act looks at of an item. */
interface ActedOn {
	state: OutboxState
	sending: boolean
	compared: boolean
	breachId?: string | undefined
}
const sendingNow = 'being sent just now'
const notFrom: Record<ManyAct, (item: ActedOn) => string | undefined> = {
	release: ({ state, compared }) => {
		if (state !== 'to-check') return 'not waiting to be checked'
		return compared ? undefined : 'not looked at yet'
	},
	back: ({ state }) => (state === 'ready' ? undefined : 'not ready to leave'),
	close: ({ state, breachId }) => {
		if (state === 'closed') return 'closed already'
		if (state === 'uncertain') return 'uncertain: the recipient is asked first'
		return breachId === undefined ? undefined : 'sent in error, with its own steps'
	},
}
/** Why an act is not possible on an item as it stands, in a few words; undefined where it is. */
const cannotBe = (act: ManyAct, item: ActedOn): string | undefined =>
	item.sending ? sendingNow : notFrom[act](item)

/** What an act does with those that are chosen. */
export interface Possible<Item> {
	can: Item[]
	/** each reason once, with how many it is about */
	because: { says: string; count: number }[]
}
export function possible<Item extends ActedOn>(
	act: ManyAct,
	items: readonly Item[],
): Possible<Item> {
	const counts = new Map<string, number>()
	const can = items.filter((item) => {
		const says = cannotBe(act, item)
		if (says !== undefined) counts.set(says, (counts.get(says) ?? 0) + 1)
		return says === undefined
	})
	return { can, because: [...counts].map(([says, count]) => ({ says, count })) }
}
