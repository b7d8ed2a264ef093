/** Signed visits as they stand in the records: which there are, and the versions of each. */
import { z } from 'zod'
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import type { PlayerIds } from '../players/memory.ts'
import { readCards, type VisitCard, visitCardSchema } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

type WithStore = Pick<Deps, 'store' | 'openRecord'>

/** A visit as lists show it, by the card of its latest version. */
export interface VisitLine {
	card: VisitCard
	/** the record of that version */
	record: string
	inError: boolean
	/** whether a student signed it and nobody has countersigned this version */
	awaits: boolean
}
const noteCardSchema = z.object({ visitId: z.string(), what: z.string(), version: z.number() })
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
/** A version of a visit: its record and its card. */
export interface VisitVersion {
	record: string
	card: VisitCard
}
/** The versions of a visit in their order, at least one. @throws Refusal where there is none */
export function versionsOf({ store }: WithStore, visitId: string): VisitVersion[] {
	const versions = readCards(visitCardSchema, store.cardsOf('visit', visitId))
	if (versions.length === 0) throw new Refusal('This visit is not in the records.')
	return versions.sort((left, right) => left.card.version - right.card.version)
}
export const readVisit = ({ openRecord }: WithStore, record: string): SignedVisit =>
	openRecord('visit', record).value

/** The latest version of a visit. @throws Refusal where the visit is not in the records */
export function latest(deps: WithStore, visitId: string): { record: string; visit: SignedVisit } {
	const { record } = need(versionsOf(deps, visitId).at(-1), 'the latest version of the visit')
	return { record, visit: readVisit(deps, record) }
}
/**
 * Earlier visits that count: latest versions, none entered in error, not the one that is being
 * amended.
 */
export function earlierVisits(
	players: PlayerIds,
	deps: WithStore,
	playerId: string,
	butNot?: string,
): Visit[] {
	return visitsOf(players, deps, playerId)
		.filter((line) => !line.inError && line.card.visitId !== butNot)
		.reverse()
		.map((line) => readVisit(deps, line.record).visit)
}
export const openVisit = (
	deps: WithStore,
	{ visitId }: InputOf<'visits.open'>,
): OutputOf<'visits.open'> => latest(deps, visitId).visit
