/** Putting a document into the outbox, for the first time or again. */
import { randomInt, randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	channelWords,
	isMail,
	kindWords,
	numberOf,
	type OutboxItem,
	type Recipient,
	stateWords,
} from '../../../shared/desk/outbox/item.ts'
import type { PutRow } from '../../../shared/desk/outbox/many.ts'
import type { DocumentValue } from '../../../shared/desk/visits/kept-pages.ts'
import { dayHere, dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type MadeDocument, makeDocument, mayLeave } from '../visits/composing.ts'
import { keepDocument, storedDocument } from '../visits/documents.ts'
import { freeItem, itemOf, move, putItem } from './items.ts'
import type { OutboxNeeds } from './needs.ts'
import type { Post } from './post.ts'
import { blocked, type Delivery, recipientOf, refuseOtherBirthDate } from './recipients.ts'

/** Letters that are not taken for one another when read aloud; 4 groups of 4 give 76 bits. */
const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
const newPassword = (): string =>
	Array.from({ length: 4 }, () =>
		Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join(''),
	).join('-')

/** The sender of mail: as the mail settings say, else the letterhead. */
export function senderOf({ clinic, outbox }: Pick<Memory, 'clinic' | 'outbox'>): {
	name: string
	email: string
} {
	const { name, email } = clinic.needLetterhead()
	const from = outbox.mail.smtp?.from ?? (email ? { name, email } : undefined)
	if (!from)
		throw new Refusal(
			'outbox.clinic-without-address',
			'The clinic has no e-mail address. Add it to the letterhead or fill in the mail settings.',
		)
	return from
}
interface NewItem extends Omit<Delivery, 'playerId'> {
	visitId: string
	protection: OutboxItem['protection']
	/** ISO date */
	due: string
	resend?: { of: string; reason: string } | undefined
	/** why the same person is given the same once more, without following what was sent */
	again?: string | undefined
}
type DocumentOf = Pick<OutboxItem, 'documentId' | 'playerId' | 'version' | 'sha256'>
const documentOf = ({ document }: Pick<MadeDocument, 'document'>, playerId: string): DocumentOf => {
	const { documentId, version, sha256 } = document
	return { documentId, playerId: document.playerId ?? playerId, version, sha256 }
}

/** Puts a document that is kept into the queue, as an item to check. */
function putNew(
	memory: OutboxNeeds,
	deps: Deps,
	{ visitId, kind, recipient, channel, protection, due, resend, again: once }: NewItem,
	{ documentId, playerId, version, sha256 }: DocumentOf,
): OutboxItem {
	const at = deps.now().toISOString()
	const { personId, name } = memory.people.acts()
	const itemId = randomUUID()
	const domain =
		(isMail(channel) ? senderOf(memory).email.split('@')[1] : undefined) ?? 'local.invalid'
	const reason = resend?.reason ?? once
	const again = reason ? ` Sent again: ${reason}` : ''
	const says = `${channelWords[channel]} to ${recipient.name}, version ${version}.${again}`
	return putItem(memory, deps, {
		itemId,
		playerId,
		visitId,
		documentId,
		kind,
		version,
		sha256,
		recipient,
		channel,
		protection,
		...(protection === 'password' && { password: newPassword() }),
		state: 'to-check',
		owner: { personId, name },
		due,
		createdAt: at,
		messageId: `<${itemId}@${domain}>`,
		attempts: 0,
		...(resend && { resend }),
		history: [{ at, by: name, state: 'to-check', says }],
	})
}
/** @throws Refusal where a password is asked for what is not mailed */
function protectionFor({ channel, protection }: InputOf<'outbox.add'>): OutboxItem['protection'] {
	const way = channelWords[channel].toLowerCase()
	if (protection === 'password' && !isMail(channel))
		throw new Refusal(
			'outbox.password-without-mail',
			'A password is for copies that are mailed. Paper and hand-over go without.',
			[
				{
					path: 'protection',
					message: `given "${protection}" for ${way}, allowed: "open"`,
				},
			],
		)
	return protection ?? (isMail(channel) ? 'password' : 'open')
}
/** What is given to whom: the same document to the same person. */
interface Given extends Pick<NewItem, 'visitId' | 'kind' | 'recipient'> {
	version: number
}
/** The last sending of the same document to the same person that was not given up before it left. */
function sentBefore(
	{ outbox }: Pick<OutboxNeeds, 'outbox'>,
	{ visitId, kind, recipient, version }: Given,
): OutboxItem | undefined {
	return outbox.items
		.all()
		.filter(
			(item) =>
				item.visitId === visitId &&
				item.kind === kind &&
				item.version === version &&
				item.recipient.recipientId === recipient.recipientId &&
				item.state !== 'returned' &&
				(item.state !== 'closed' || item.sentAt !== undefined),
		)
		.at(-1)
}
/** @throws Refusal: it is asked whether the same is to go to the same person once more */
function refuseSecond({ itemId, kind, recipient, state, sentAt }: OutboxItem): never {
	const number = numberOf(itemId)
	const how = sentAt
		? `was sent on ${dayOfMoment(sentAt)}`
		: `is ${stateWords[state].toLowerCase()}`
	throw new Refusal(
		'outbox.second-sending',
		`${kindWords[kind]} for ${recipient.name} ${how} already (${number}). Say why it is to go once ` +
			'more, or leave it.',
	)
}
/** A document that may be put into the outbox, and where it was given before. */
interface MayBePut {
	playerId: string
	recipient: Recipient
	before: OutboxItem | undefined
}
/**
 * What is asked before a document is made. @throws Refusal where it must not go to this person this
 * way
 */
export function mayBePut(
	memory: OutboxNeeds,
	deps: Deps,
	{ visitId, kind, recipientId, channel }: PutRow,
): MayBePut {
	// the visit tells whose record the recipient must stand on
	const card = deps.store.cardsOf('visit', visitId).at(-1)?.card as { playerId: string } | undefined
	if (!card) throw new Refusal('visits.unknown', 'This visit is not in the records.')
	const { playerId } = card
	const recipient = recipientOf(memory, playerId, recipientId)
	const block = blocked(memory, deps, { playerId, recipient, kind, channel })
	if (block) throw new Refusal(block.code, block.says)
	const visit = mayLeave(memory.players, deps, visitId)
	refuseOtherBirthDate(memory, visit)
	const given: Given = { visitId, kind, recipient, version: visit.version ?? 1 }
	return { playerId, recipient, before: sentBefore(memory, given) }
}
export async function addItem(
	memory: OutboxNeeds,
	deps: Deps,
	input: InputOf<'outbox.add'>,
): Promise<OutputOf<'outbox.add'>> {
	const { visitId, kind, channel, due } = input
	const protection = protectionFor(input)
	const { playerId, recipient, before } = mayBePut(memory, deps, input)
	if (before && !input.again) refuseSecond(before)
	const person = memory.people.acts()
	const made = await makeDocument(memory, deps, { visitId, kind, recipient })
	if (memory.people.atWork !== person)
		throw new Refusal(
			'outbox.taken-over',
			'Another person took over while the document was being drawn. Nothing was put into the ' +
				'outbox.',
		)
	return deps.store.together(() => {
		if (!made.isKept) keepDocument(deps, made.document)
		const again = before && input.again
		const asked: NewItem = { visitId, kind, recipient, channel, protection, due, again }
		return { itemId: putNew(memory, deps, asked, documentOf(made, playerId)).itemId }
	})
}
/**
 * Puts a page that was made elsewhere into the queue, as an item to check: it goes open, since it
 * says nothing of the visit.
 */
export const addOpenPage = (
	memory: OutboxNeeds,
	deps: Deps,
	wish: Omit<Delivery, 'playerId'>,
	document: DocumentValue & { visitId: string; playerId: string },
): OutboxItem =>
	deps.store.together(() => {
		keepDocument(deps, document)
		const { visitId, playerId } = document
		const due = dayHere(deps.now())
		const asked: NewItem = { ...wish, visitId, protection: 'open', due }
		return putNew(memory, deps, asked, documentOf({ document }, playerId))
	})
/** States from which something may be sent again. */
const mayGoAgain: readonly OutboxItem['state'][] = ['sent', 'delivered', 'returned', 'closed']

/** Sends a document again: the same one, or one of the newest version of its visit. */
export async function resend(
	memory: OutboxNeeds,
	deps: Deps,
	post: Pick<Post, 'inFlight'>,
	{ itemId, version, reason }: InputOf<'outbox.resend'>,
): Promise<OutputOf<'outbox.resend'>> {
	const old = freeItem(memory, post, itemId)
	if (!mayGoAgain.includes(old.state))
		throw new Refusal(
			'outbox.not-settled',
			'This was not sent yet, or it is not certain whether it was. Settle that first.',
		)
	const { visitId, kind } = old
	const recipient = recipientOf(memory, old.playerId, old.recipient.recipientId)
	const block = blocked(memory, deps, { ...old, recipient })
	if (block) throw new Refusal(block.code, block.says)
	const due = dayHere(deps.now())
	// a reminder has no version: the same page goes again
	const made =
		version === 'newest' && kind !== 'reminder'
			? await makeDocument(memory, deps, { visitId, kind, recipient })
			: undefined
	if (!made) storedDocument(deps, old.documentId, old.sha256)
	return deps.store.together(() => {
		if (made && !made.isKept) keepDocument(deps, made.document)
		const asked: NewItem = { ...old, recipient, due, resend: { of: itemId, reason } }
		const next = putNew(memory, deps, asked, made ? documentOf(made, old.playerId) : old)
		// what came back is settled by the one that goes out in its place
		const now = itemOf(memory, itemId)
		if (now.state === 'returned')
			move(memory, deps, now, 'closed', `Sent again as ${numberOf(next.itemId)}: ${reason}`)
		return { itemId: next.itemId }
	})
}
