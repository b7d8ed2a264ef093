/**
 * Keeping and showing the items of the outbox: every change is a record that follows the one
 * before.
 */

import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import {
	ageDays,
	moved,
	numberOf,
	type OutboxItem,
	type OutboxState,
} from '../../../shared/desk/outbox/item.ts'
import type { HandedOver } from '../../../shared/desk/records/amendment.ts'
import type { AuditFunction } from '../../../shared/desk/records/audit.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { acting, type Deps, Refusal, type State } from '../records/state.ts'
import { visitsOf } from '../visits/visits.ts'
import { nameOf, rootOf } from './contacts.ts'

export function itemOf(state: State, itemId: string): OutboxItem {
	const found = state.outbox.get(itemId)
	if (!found || !state.players.has(found.item.playerId))
		throw new Refusal('This is not in the outbox any more. Open the outbox again.')
	return found.item
}
export function putItem(
	state: State,
	{ store, now }: Deps,
	item: OutboxItem,
	does?: AuditFunction,
): OutboxItem {
	const known = state.outbox.get(item.itemId)
	const recordId = store.append({
		kind: 'outbox',
		at: now().toISOString(),
		...(known ? { follows: known.recordId } : {}),
		value: item,
		about: item.playerId,
		thing: item.itemId,
		...(does ? { does } : {}),
	})
	state.outbox.set(item.itemId, { item, recordId })
	return item
}
/** Who acts, by name; what the program does by itself says so. */
export function actorName(state: State): string {
	const { personId, purpose } = acting.getStore() ?? { personId: null, purpose: '' }
	const name = (personId && state.people.get(personId)?.name) || 'Lastwright'
	return purpose === 'outbox' ? `Lastwright, released by ${name}` : name
}
/** Moves an item. @throws Refusal where the states do not allow it */
export function move(
	state: State,
	deps: Deps,
	item: OutboxItem,
	to: OutboxState,
	says: string,
	change: Partial<OutboxItem> = {},
	does?: AuditFunction,
): OutboxItem {
	let next: OutboxItem
	try {
		next = moved(item, to, { at: deps.now().toISOString(), by: actorName(state), says })
	} catch (error) {
		if (error instanceof RangeError) throw new Refusal(`${numberOf(item.itemId)}: ${error.message}`)
		throw error
	}
	return putItem(state, deps, { ...next, ...change }, does)
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
 */
export function recordSending(state: State, { store, now }: Deps, item: OutboxItem): void {
	const at = now().toISOString()
	const { channel, does } = handedBy[item.channel]
	const card: HandedOver = { recipient: item.recipient.name, channel, version: item.version, at }
	const visit = store.cardsOf('visit', item.visitId).at(-1)?.record
	store.append({
		kind: 'sending',
		at,
		...(visit ? { follows: visit } : {}),
		about: item.playerId,
		thing: item.visitId,
		card,
		does,
		value: {
			...card,
			visitId: item.visitId,
			itemId: item.itemId,
			documentKind: item.kind,
			documentSha256: item.sha256,
			recipientId: item.recipient.recipientId,
			address: item.recipient.email ?? null,
			way: item.channel,
			protection: item.protection,
			personId: acting.getStore()?.personId ?? null,
			by: actorName(state),
			messageId: item.messageId,
			consentIds: item.consentIds ?? [],
		},
	})
}
/** Marks an item as sent and writes its sending, both or neither. */
export function sent(
	state: State,
	deps: Deps,
	item: OutboxItem,
	says: string,
	to: 'sent' | 'delivered' = 'sent',
	change: Partial<OutboxItem> = {},
): OutboxItem {
	return deps.store.together(() => {
		const next = move(state, deps, item, to, says, {
			sentAt: item.sentAt ?? deps.now().toISOString(),
			handing: false,
			...change,
		})
		recordSending(state, deps, next)
		return next
	})
}
/**
 * A sending whose end is not known: the program stopped, or the records were locked, between the
 * last byte and the answer.
 */
export function recover(state: State, deps: Deps, inFlight: (itemId: string) => boolean): void {
	for (const { item } of [...state.outbox.values()])
		if (item.handing && item.state === 'ready' && !inFlight(item.itemId)) {
			move(
				state,
				deps,
				item,
				'uncertain',
				'The workstation stopped between the last byte and the answer of the mail server. It ' +
					'may have arrived, or not: ask the recipient before sending again.',
				{ handing: false },
			)
		}
}
export function refuseInFlight(item: OutboxItem, inFlight: boolean): void {
	if (inFlight)
		throw new Refusal(
			`${numberOf(item.itemId)} is being sent just now. Wait a moment and look again.`,
		)
}
export function viewsOf(
	state: State,
	deps: Deps,
	inFlight: (itemId: string) => boolean,
): OutboxView[] {
	const now = deps.now().toISOString()
	const today = dayHere(deps.now())
	const visits = new Map<string, ReturnType<typeof visitsOf>>()
	return [...state.outbox.values()]
		.filter(({ item }) => state.players.has(item.playerId))
		.map(({ item: { password: _, handing: __, ...item } }) => {
			const playerId = rootOf(state, item.playerId)
			const lines = visits.get(playerId) ?? visitsOf(state, deps, playerId)
			visits.set(playerId, lines)
			const visit = lines.find((line) => line.card.visitId === item.visitId)
			const open = item.state !== 'closed' && item.state !== 'delivered'
			return {
				...item,
				number: numberOf(item.itemId),
				playerName: nameOf(state, playerId),
				birthDate: state.entry(playerId).player.birthDate,
				visitDate: visit?.card.visitDate ?? '',
				ageDays: ageDays(item.createdAt, now),
				overdue: open && item.due < today,
				sending: inFlight(item.itemId),
				...(visit && visit.card.version > item.version ? { newerVersion: visit.card.version } : {}),
			}
		})
		.sort((a, b) => (a.createdAt < b.createdAt ? -1 : 1))
}
