/** Pages that are kept when they are given out: of a season, of a squad. */
import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import {
	type DocumentValue,
	type GivenKind,
	reportValueSchema,
} from '../../../shared/desk/visits/kept-pages.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { keptForm } from '../../../shared/engine/report/kept/keep.ts'
import type { PlayerIds } from '../players/memory.ts'
import { isDamage } from '../records/damage.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { type DocumentCard, keepDocument, readStored, type StoredDocument } from './documents.ts'
import { sha256Of } from './drawing.ts'
import type { PageCard } from './signed-pages.ts'

const squadEntrySchema = z.object({ squadId: z.string() })

/** What is asked for: a kind of page, and what it is made from. */
interface Wanted {
	kind: GivenKind
	from: string
}
/** A page as it was given out, or kept at signing. */
export interface Given {
	bytes: Uint8Array
	/** ISO moment of its making */
	at: string
}
type OpenCard = ReturnType<Deps['store']['cardsOf']>[number]

/** The last whole document among these cards that was made from the same. */
function lastOf(deps: Deps, cards: readonly OpenCard[], { kind, from }: Wanted) {
	for (const { record, card } of cards.toReversed()) {
		const made = card as DocumentCard
		if (made.kind !== kind || made.from !== from) continue
		const stored = readStored(deps, record)
		if (stored) return stored
	}
	return undefined
}
const givenOf = (stored: StoredDocument | undefined): Given | undefined =>
	stored && { bytes: stored.bytes, at: stored.value.at }

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
	{ store }: Deps,
	playerId: string,
	{ kind, from }: Wanted,
): Given | undefined {
	for (const { record, card } of players
		.idsOf(playerId)
		.flatMap((id) => store.cardsAbout('report', id))) {
		const page = card as PageCard | undefined
		if (page?.kind !== kind || page.from !== from) continue
		try {
			const { at, value } = store.read(record)
			const { base64, sha256 } = reportValueSchema.parse(value)
			const bytes = Buffer.from(base64, 'base64')
			if (sha256Of(bytes) === sha256) return { bytes, at }
		} catch (error) {
			if (!isDamage(error)) throw error
		}
	}
	return undefined
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
export function pagesNaming({ store }: Deps, playerIds: readonly string[]): string[] {
	const squads = playerIds
		.flatMap((id) => store.cardsAbout('squad', id))
		.flatMap(({ record }) => squadOf(store, record))
	return [...new Set(squads)].flatMap((squadId) =>
		store.cardsOf('document', squadId).map(({ record }) => record),
	)
}
/** Of a damaged entry nothing can be told. */
function squadOf(store: Deps['store'], record: string): string[] {
	try {
		const { squadId } = squadEntrySchema.parse(store.read(record).value)
		return [squadId]
	} catch (error) {
		if (isDamage(error)) return []
		throw error
	}
}
