/**
 * Keeping the items of the outbox: every change is a record that follows the one before, and a
 * sending is a record of its own.
 */
import {
	moved,
	numberOf,
	type OutboxItem,
	type OutboxState,
} from '../../../shared/desk/outbox/item.ts'
import type { HandedOver } from '../../../shared/desk/records/amendment.ts'
import type { AuditFunction } from '../../../shared/desk/records/audit.ts'
import { acting } from '../records/acting.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { Post } from './post.ts'

/** What changing an item looks at. */
type Needs = Pick<Memory, 'outbox' | 'people'>

/** @throws Refusal where it is not there, or its player's records were destroyed */
export function itemOf(
	{ outbox, players }: Pick<Memory, 'outbox' | 'players'>,
	itemId: string,
): OutboxItem {
	const item = outbox.items.get(itemId)
	if (!item || !players.byId.has(item.playerId))
		throw new Refusal(
			'outbox.item-is-gone',
			'This is not in the outbox any more. Open the outbox again.',
		)
	return item
}
/** An item that may be changed by hand. @throws Refusal while it is being sent */
export function freeItem(
	memory: Pick<Memory, 'outbox' | 'players'>,
	post: Pick<Post, 'inFlight'>,
	itemId: string,
): OutboxItem {
	const item = itemOf(memory, itemId)
	if (post.inFlight(itemId) || item.handing)
		throw new Refusal(
			'outbox.being-sent',
			`${numberOf(itemId)} is being sent just now. Wait a moment and look again.`,
		)
	return item
}
/** Keeps an item as it now is. */
export function putItem(
	{ outbox }: Pick<Memory, 'outbox'>,
	{ keep }: Deps,
	item: OutboxItem,
	does?: AuditFunction,
): OutboxItem {
	keep({
		kind: 'outbox',
		follows: outbox.items.recordOf(item.itemId),
		value: item,
		about: item.playerId,
		thing: item.itemId,
		does,
	})
	return item
}
/** Who acts, by name; what the program does by itself says so. */
function actorName({ people }: Pick<Memory, 'people'>): string {
	const { personId, purpose } = acting.getStore() ?? { personId: null, purpose: '' }
	const name = people.nameOf(personId) || 'Lastwright'
	return purpose === 'outbox' ? `Lastwright, released by ${name}` : name
}
/** An item with a line added to its history; its state stays. */
export const noted = (item: OutboxItem, at: string, by: string, says: string): OutboxItem => ({
	...item,
	history: [...item.history, { at, by, state: item.state, says }],
})
/** Moves an item. @throws Refusal where the states do not allow it */
export function move(
	memory: Needs,
	deps: Deps,
	item: OutboxItem,
	to: OutboxState,
	says: string,
	change: Partial<OutboxItem> = {},
): OutboxItem {
	const happening = { at: deps.now().toISOString(), by: actorName(memory), says }
	return putItem(memory, deps, { ...movedOrRefused(item, to, happening), ...change })
}
function movedOrRefused(
	item: OutboxItem,
	to: OutboxState,
	happening: Parameters<typeof moved>[2],
): OutboxItem {
	try {
		return moved(item, to, happening)
	} catch (error) {
		if (error instanceof RangeError)
			throw new Refusal('outbox.state-forbids', `${numberOf(item.itemId)}: ${error.message}`)
		throw error
	}
}
const handedBy: Record<OutboxItem['channel'], { channel: string; does: AuditFunction }> = {
	smtp: { channel: 'send', does: 'send' },
	eml: { channel: 'send', does: 'send' },
	print: { channel: 'print', does: 'print' },
	'hand-over': { channel: 'by-hand', does: 'export' },
}
/**
 * The record of a sending: what, to whom, which way, who, when, message id, consent. The visit's
 * own list of who holds what reads it too.
 * @param isFurtherCopy a copy of what has left already: it has no message of its own, by which the
 * list of a player tells it from the sending of the item
 */
export function recordSending(
	memory: Pick<Memory, 'people'>,
	{ store, now, keep }: Deps,
	item: OutboxItem,
	isFurtherCopy = false,
): void {
	const at = now().toISOString()
	const { channel, does } = handedBy[item.channel]
	const given: HandedOver = { recipient: item.recipient.name, channel, version: item.version, at }
	const card = item.kind === 'reminder' ? { ...given, documentKind: item.kind } : given
	keep({
		kind: 'sending',
		at,
		follows: store.cardsOf('visit', item.visitId).at(-1)?.record,
		about: item.playerId,
		thing: item.visitId,
		card,
		does,
		value: {
			...given,
			visitId: item.visitId,
			itemId: item.itemId,
			documentKind: item.kind,
			documentSha256: item.sha256,
			recipientId: item.recipient.recipientId,
			address: item.recipient.email ?? null,
			way: item.channel,
			protection: item.protection,
			personId: acting.getStore()?.personId ?? null,
			by: actorName(memory),
			...(!isFurtherCopy && { messageId: item.messageId }),
			consentIds: item.consentIds ?? [],
		},
	})
}
/** Marks an item as sent and writes its sending, both or neither. */
export function sent(
	memory: Needs,
	deps: Deps,
	item: OutboxItem,
	says: string,
	to: 'sent' | 'delivered' = 'sent',
	change: Partial<OutboxItem> = {},
): OutboxItem {
	return deps.store.together(() => {
		const next = move(memory, deps, item, to, says, {
			sentAt: item.sentAt ?? deps.now().toISOString(),
			handing: false,
			...change,
		})
		recordSending(memory, deps, next)
		return next
	})
}
/**
 * A sending whose end is not known: the program stopped, or the records were locked, between the
 * last byte and the answer.
 */
export function recover(memory: Needs, deps: Deps, inFlight: (itemId: string) => boolean): void {
	for (const item of memory.outbox.items.all())
		if (item.handing && item.state === 'ready' && !inFlight(item.itemId)) {
			move(
				memory,
				deps,
				item,
				'uncertain',
				'The workstation stopped between the last byte and the answer of the mail server. It ' +
					'may have arrived, or not: ask the recipient before sending again.',
				{ handing: false },
			)
		}
}
