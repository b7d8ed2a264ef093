/** Signed visits of which nobody was given anything, and what of each could go to whom. */
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { channels, type PageKind, type Recipient } from '../../../shared/desk/outbox/item.ts'
import {
	type Offer,
	pagesFor,
	proposedFor,
	type UnsentVisit,
} from '../../../shared/desk/outbox/many.ts'
import { goesFirst } from '../../../shared/desk/players/plan-in-few.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { mayLeave } from '../visits/composing.ts'
import { tryVisit } from '../visits/reading.ts'
import { type VisitLine, visitsOf } from '../visits/visits.ts'
import type { OutboxNeeds } from './needs.ts'
import {
	consentsFor,
	inTheWay,
	isMinor,
	mailWay,
	recipientsOf,
	refuseOtherBirthDate,
	wayFor,
} from './recipients.ts'

/** Visits of which something waits in the outbox, or left from there: looked through once. */
const visitsInOutbox = ({ outbox }: Pick<OutboxNeeds, 'outbox'>): ReadonlySet<string> =>
	new Set(
		outbox.items
			.all()
			.filter(
				({ kind, state, sentAt }) =>
					kind !== 'reminder' && (state !== 'closed' || sentAt !== undefined),
			)
			.map(({ visitId }) => visitId),
	)
const isHandedOver = ({ store }: Deps, visitId: string): boolean =>
	store.cardsOf('sending', visitId).some(({ card }) => !isReminder(card))
const isReminder = (card: unknown): boolean =>
	typeof card === 'object' && card !== null && 'documentKind' in card

export function listUnsent(
	memory: OutboxNeeds,
	deps: Deps,
	{ from, limit }: InputOf<'outbox.unsent'>,
): OutputOf<'outbox.unsent'> {
	const { players } = memory
	const inOutbox = visitsInOutbox(memory)
	const lines = [...players.byId.keys()]
		.filter((playerId) => !players.mergedAway(playerId))
		.flatMap((playerId) => visitsOf(players, deps, playerId).map((line) => ({ playerId, line })))
		.filter(
			({ line: { card, inError } }) =>
				!inError &&
				dayHere(new Date(card.signedAt)) >= from &&
				!inOutbox.has(card.visitId) &&
				!isHandedOver(deps, card.visitId),
		)
		.sort((left, right) => (left.line.card.signedAt < right.line.card.signedAt ? 1 : -1))
	return {
		visits: lines
			.slice(0, limit)
			.map(({ playerId, line }) => unsentOf(memory, deps, playerId, line)),
		more: Math.max(0, lines.length - limit),
	}
}
function unsentOf(memory: OutboxNeeds, deps: Deps, playerId: string, line: VisitLine): UnsentVisit {
	const { players } = memory
	const { visitId, visitDate, signedAt, version } = line.card
	const visit = {
		visitId,
		playerId,
		playerName: players.nameOf(playerId),
		birthDate: players.entry(playerId).player.birthDate,
		isMinor: isMinor(memory, deps, playerId),
		visitDate,
		signedOn: dayHere(new Date(signedAt)),
		version,
		goesFirst: isFirst(deps, line),
	}
	try {
		const signed = mayLeave(players, deps, visitId)
		refuseOtherBirthDate(memory, signed)
		return { ...visit, offers: offersOf(memory, deps, visit, signed) }
	} catch (error) {
		if (!(error instanceof Refusal)) throw error
		return { ...visit, cannot: error.message, offers: [] }
	}
}
/** A visit that cannot be read says nothing of it; its own line says why nothing of it leaves. */
function isFirst(deps: Deps, line: VisitLine): boolean {
	const read = tryVisit(deps, line)
	if ('trouble' in read) return false
	const { visit, decisions } = read.visit
	try {
		return goesFirst({ visit, decisions, assessment: assessmentOf(read.visit) })
	} catch (error) {
		if (!(error instanceof Refusal)) throw error
		return false
	}
}
const noServer = 'No mail server is set. Choose the draft for the mail program, print or hand over.'

/** What each person on the record may be given of a visit. */
function offersOf(
	memory: OutboxNeeds,
	deps: Deps,
	{ playerId, isMinor: minor }: Pick<UnsentVisit, 'isMinor' | 'playerId'>,
	signed: SignedVisit,
): Offer[] {
	const kept = (signed.pages ?? []).map(({ kind }) => kind)
	return recipientsOf(memory, playerId).flatMap((recipient) => {
		const ask = { playerId, recipient, channel: 'print' } as const
		const mayShare = consentsFor(memory, deps, ask).every(({ inForce }) => inForce)
		const proposed = proposedFor({ recipient, isMinor: minor, mayShare, kept })
		return pagesFor(recipient.role).map(
			(kind): Offer => ({
				...offerOf(memory, deps, { playerId, recipient, kind }),
				isProposed: kind === proposed,
			}),
		)
	})
}
function offerOf(
	memory: OutboxNeeds,
	deps: Deps,
	{ playerId, recipient, kind }: { playerId: string; recipient: Recipient; kind: PageKind },
): Omit<Offer, 'isProposed'> {
	const delivery = { playerId, recipient, kind }
	const cannot: Offer['cannot'] = {}
	for (const channel of channels) {
		const says =
			channel === 'smtp' && mailWay(memory) !== 'smtp'
				? noServer
				: inTheWay(memory, deps, { ...delivery, channel })
		if (says !== undefined) cannot[channel] = says
	}
	const { phone: _, ...shown } = recipient
	return { kind, recipient: shown, channel: wayFor(memory, deps, delivery), cannot }
}
