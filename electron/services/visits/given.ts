/** Pages that are kept when they are given out: of a season, of a squad. */
import { randomUUID } from 'node:crypto'
import type { DocumentValue, GivenKind } from '../../../shared/desk/visits/kept-pages.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import type { KeptDocument } from '../../../shared/engine/report/kept/form.ts'
import { keptForm } from '../../../shared/engine/report/kept/keep.ts'
import type { PlayerIds } from '../players/memory.ts'
import { readCards } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { documentCardSchema, keepDocument, readStored, type StoredDocument } from './documents.ts'
import { sha256Of } from './drawing.ts'
import { reportCardSchema } from './freezing.ts'

/** What is asked for: a kind of page, and what it is made from. */
interface Wanted {
	kind: GivenKind
	from: string
}
/** A page as it was given out, or kept at signing. */
export interface Given {
	bytes: Uint8Array
	/** what it was drawn from, as it was kept */
	document: KeptDocument | undefined
	/** ISO moment of its making */
	at: string
}
type OpenCard = ReturnType<Deps['store']['cardsOf']>[number]

/** The last whole document among these cards that was made from the same. */
function lastOf(deps: Deps, cards: readonly OpenCard[], { kind, from }: Wanted) {
	for (const { record, card } of readCards(documentCardSchema, [...cards]).reverse()) {
		if (card.kind !== kind || card.from !== from) continue
		const stored = readStored(deps, record)
		if (stored) return stored
	}
	return undefined
}
const givenOf = (stored: StoredDocument | undefined): Given | undefined =>
	stored && { bytes: stored.bytes, document: stored.value.document, at: stored.value.at }

function lastAbout(players: PlayerIds, deps: Deps, playerId: string, wanted: Wanted) {
	const cards = players.idsOf(playerId).flatMap((id) => deps.store.cardsAbout('document', id))
	return lastOf(deps, cards, wanted)
}
/** A document about a player that was made before, from the same. */
export const documentBefore = (
	players: PlayerIds,
	deps: Deps,
	playerId: string,
	wanted: Wanted,
): DocumentValue | undefined => lastAbout(players, deps, playerId, wanted)?.value

/** A page about a player that was given out before, made from the same. */
export const givenBefore = (
	players: PlayerIds,
	deps: Deps,
	playerId: string,
	wanted: Wanted,
): Given | undefined => givenOf(lastAbout(players, deps, playerId, wanted))

/** A page about a screening day that was given out before, made from the same. */
export const givenOfSquad = (deps: Deps, squadId: string, wanted: Wanted): Given | undefined =>
	givenOf(lastOf(deps, deps.store.cardsOf('document', squadId), wanted))

/** A page that was kept when a visit of the player was signed, made from the same. */
export function signedPageFrom(
	players: PlayerIds,
	deps: Deps,
	playerId: string,
	{ kind, from }: Wanted,
): Given | undefined {
	const cards = players.idsOf(playerId).flatMap((id) => deps.store.cardsAbout('report', id))
	const found = readCards(reportCardSchema, cards).filter(({ card }) => card.from === from)
	for (const { record } of found.reverse()) {
		const page = readPage(deps, record, kind)
		if (page) return page
	}
	return undefined
}
/** Undefined where it cannot be read: it is then made again. */
function readPage({ openRecord }: Deps, record: string, kind: GivenKind): Given | undefined {
	try {
		const { at, value } = openRecord('report', record)
		const page = value.further?.find((one) => one.kind === kind)
		const bytes = Buffer.from(page?.base64 ?? '', 'base64')
		return page && sha256Of(bytes) === page.sha256
			? { bytes, document: page.document, at }
			: undefined
	} catch (error) {
		if (error instanceof Refusal) return undefined
		throw error
	}
}
/** Keeps a page as it is given out: bytes and document. */
export function keepGiven(
	{ people }: Pick<Memory, 'people'>,
	deps: Deps,
	{
		document,
		bytes,
		...page
	}: Wanted & {
		playerId?: string
		squadId?: string
		version: number
		document: LwDocument
		bytes: Uint8Array
	},
): void {
	keepDocument(deps, {
		documentId: randomUUID(),
		...page,
		sha256: sha256Of(bytes),
		base64: Buffer.from(bytes).toString('base64'),
		document: keptForm(document),
		recipientId: '',
		at: deps.now().toISOString(),
		by: people.acts().name,
	})
}
/** Records of pages that name a player beside others: they end with the player. */
export function pagesNaming(
	{ store, openAbout }: Pick<Deps, 'openAbout' | 'store'>,
	playerIds: readonly string[],
): string[] {
	const squads = playerIds.flatMap((id) =>
		openAbout('squad', id).records.map(({ value }) => value.squadId),
	)
	return [...new Set(squads)].flatMap((squadId) =>
		store.cardsOf('document', squadId).map(({ record }) => record),
	)
}
