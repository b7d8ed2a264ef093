/** Signed visits as they stand in the records: which there are, and the versions of each. */
import { z } from 'zod'
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import type { PlayerIds } from '../players/memory.ts'
import { readCards, type VisitCard, visitCardSchema } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { readVisit, tryVisit, type VisitVersion } from './reading.ts'

type WithStore = Pick<Deps, 'store'>
type Opens = Pick<Deps, 'openRecord' | 'store'>

/** A visit as lists show it, by the card of its latest version. */
export interface VisitLine {
	card: VisitCard
	/** the record of that version */
	record: string
	inError: boolean
	/** whether a student signed it and nobody has countersigned this version */
	awaits: boolean
}
export const noteCardSchema = z.object({
	visitId: z.string(),
	what: z.string(),
	version: z.number(),
})
type NoteCard = z.infer<typeof noteCardSchema>
/** The latest version of each visit of a player, newest visit first. */
export function visitsOf(players: PlayerIds, { store }: WithStore, playerId: string): VisitLine[] {
	const lines = new Map<string, VisitLine>()
	for (const id of players.idsOf(playerId)) {
		const notes = readCards(noteCardSchema, store.cardsAbout('visit-note', id))
		for (const { record, card: visit } of readCards(
			visitCardSchema,
			store.cardsAbout('visit', id),
		)) {
			const known = lines.get(visit.visitId)
			if (known && known.card.version > visit.version) continue
			lines.set(visit.visitId, lineOf(visit, record, notes))
		}
	}
	return [...lines.values()].sort(newestFirst)
}
function lineOf(card: VisitCard, record: string, notes: readonly { card: NoteCard }[]): VisitLine {
	const own = notes.map((note) => note.card).filter((note) => note.visitId === card.visitId)
	const countersigned = own.some(
		(note) => note.what === 'countersign' && note.version === card.version,
	)
	return {
		card,
		record,
		inError: own.some((note) => note.what === 'in-error'),
		awaits: card.student && !countersigned,
	}
}
function newestFirst({ card: left }: VisitLine, { card: right }: VisitLine): number {
	if (left.visitDate !== right.visitDate) return left.visitDate < right.visitDate ? 1 : -1
	return left.signedAt < right.signedAt ? 1 : -1
}
/** The versions of a visit in their order, at least one. @throws Refusal where there is none */
export function versionsOf({ store }: WithStore, visitId: string): VisitVersion[] {
	const versions = readCards(visitCardSchema, store.cardsOf('visit', visitId))
	if (versions.length === 0)
		throw new Refusal('visits.unknown', 'This visit is not in the records.')
	return versions.sort((left, right) => left.card.version - right.card.version)
}

/** The latest version of a visit. @throws Refusal where it is not there, or cannot be read */
export function latest(deps: Opens, visitId: string): { record: string; visit: SignedVisit } {
	const version = need(versionsOf(deps, visitId).at(-1), 'the latest version of the visit')
	return { record: version.record, visit: readVisit(deps, version) }
}
/** Earlier visits, and those that cannot be read, in words. */
export interface Earlier {
	visits: Visit[]
	/** a sentence for each that the comparison lacks */
	lacking: string[]
}
/**
 * Earlier visits that count: latest versions, none entered in error, not the one that is being
 * amended. One that cannot be read is left out and named.
 */
export function earlierVisits(
	players: PlayerIds,
	deps: Opens,
	playerId: string,
	butNot?: string,
): Earlier {
	const earlier: Earlier = { visits: [], lacking: [] }
	for (const line of visitsOf(players, deps, playerId).reverse()) {
		if (line.inError || line.card.visitId === butNot) continue
		const read = tryVisit(deps, line)
		if ('visit' in read) earlier.visits.push(read.visit.visit)
		else earlier.lacking.push(`${read.trouble} Comparisons and charts lack it.`)
	}
	return earlier
}
export const openVisit = (
	deps: Opens,
	{ visitId }: InputOf<'visits.open'>,
): OutputOf<'visits.open'> => latest(deps, visitId).visit
