/** What is added to a signed visit afterwards: notes, errors, countersignatures; its history. */
import type { InputOf, OutputOf, SignedVisit, VisitNote } from '../../../shared/contract.ts'
import {
	differences,
	handedOverSchema,
	mustBeTold,
} from '../../../shared/desk/records/amendment.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { readCards, type VisitCard } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type ReadVisit, tryVisit } from './reading.ts'
import { latest, noteCardSchema, versionsOf } from './visits.ts'

type Needs = Pick<Memory, 'people' | 'players'>

/** The notes beside a visit; of one that cannot be read a sentence says so. */
function notesOf(deps: Deps, visitId: string): { notes: VisitNote[]; troubles: string[] } {
	const found = { notes: [] as VisitNote[], troubles: [] as string[] }
	for (const { record } of deps.store.cardsOf('visit-note', visitId)) {
		try {
			const { visitId: _, ...note } = deps.openRecord('visit-note', record).value
			found.notes.push(note)
		} catch (error) {
			if (!(error instanceof Refusal)) throw error
			found.troubles.push(`A note on this visit cannot be read. ${error.message}`)
		}
	}
	return found
}
/**
 * Whether a visit has such a note, by its card: it counts also where its words are damaged.
 * @param version of this version; of any where undefined
 */
export const hasNote = (
	{ store }: Pick<Deps, 'store'>,
	visitId: string,
	what: VisitNote['what'],
	version?: number,
): boolean =>
	readCards(noteCardSchema, store.cardsOf('visit-note', visitId)).some(
		({ card }) => card.what === what && (version === undefined || card.version === version),
	)

export function visitHistory(
	deps: Deps,
	{ visitId }: InputOf<'visits.history'>,
): OutputOf<'visits.history'> {
	const versions = versionsOf(deps, visitId)
	const read = versions.map((version) => tryVisit(deps, version))
	const sendings = readCards(handedOverSchema, deps.store.cardsOf('sending', visitId))
	const handedOver = sendings.map(({ card }) => card)
	const { notes, troubles } = notesOf(deps, visitId)
	return {
		versions: versions.map(({ card }, index) => lineOf(card, read[index], read[index - 1])),
		notes,
		...(troubles.length > 0 && { troubles }),
		handedOver,
		tell: mustBeTold(handedOver, versions.at(-1)?.card.version ?? 1),
	}
}
type VersionLine = OutputOf<'visits.history'>['versions'][number]

/** A version as the history shows it; of one that cannot be read what its card says. */
function lineOf(
	{ version, signedAt }: VisitCard,
	read: ReadVisit | undefined,
	before: ReadVisit | undefined,
): VersionLine {
	if (!read || 'trouble' in read)
		return { version, signedAt, by: '', differences: [], ...(read && { trouble: read.trouble }) }
	const { visit } = read
	const line = {
		version,
		signedAt: visit.signedAt,
		by: `${visit.signedBy.name}, ${visit.signedBy.registration}`,
		reason: visit.amends?.reason,
	}
	if (before && 'trouble' in before)
		return {
			...line,
			differences: [],
			trouble: `What it changed cannot be told: ${before.trouble}`,
		}
	return { ...line, differences: changedSince(before?.visit, visit) }
}
/** What a version says otherwise than the one before it; nothing of a first version. */
function changedSince(before: SignedVisit | undefined, version: SignedVisit) {
	const clinical = ({ visit, assessment, decisions }: SignedVisit) => ({
		visit,
		assessment,
		decisions,
	})
	return before ? differences(clinical(before), clinical(version)) : []
}
function keepNote(
	{ people, players }: Needs,
	deps: Deps,
	visitId: string,
	{ what, text, occurredOn }: Pick<VisitNote, 'what' | 'text' | 'occurredOn'>,
): void {
	const { record, visit } = latest(deps, visitId)
	const at = deps.now().toISOString()
	const version = visit.version ?? 1
	const { name, registration } = people.acts()
	const by = [name, registration].filter(Boolean).join(', ')
	deps.keep({
		kind: 'visit-note',
		at,
		follows: record,
		value: { visitId, what, text, by, at, version, occurredOn },
		about: visit.playerId,
		thing: visitId,
		card: { visitId, what, version },
		does: what === 'countersign' ? 'sign' : 'amend',
	})
	players.visitsChanged(visit.playerId)
}
export function markInError(
	memory: Needs,
	deps: Deps,
	{ visitId, reason }: InputOf<'visits.markInError'>,
): OutputOf<'visits.markInError'> {
	if (hasNote(deps, visitId, 'in-error'))
		throw new Refusal(
			'visits.in-error-already',
			'This visit is marked as entered in error already.',
		)
	keepNote(memory, deps, visitId, { what: 'in-error', text: reason })
	return {}
}
/**
 * Words added afterwards stand beside the visit with their own time; dating them into the future is
 * refused.
 */
export function addNote(
	memory: Needs,
	deps: Deps,
	{ visitId, what, text, occurredOn }: InputOf<'visits.addNote'>,
): OutputOf<'visits.addNote'> {
	const today = dayHere(deps.now())
	if (occurredOn > today)
		throw new Refusal('visits.occurred-in-future', 'The day it happened lies in the future.', [
			{
				path: 'occurredOn',
				message: `in the future, given ${occurredOn}, allowed: ${today} or earlier`,
			},
		])
	keepNote(memory, deps, visitId, { what, text, occurredOn })
	return {}
}
/** @throws Refusal where no student signed the version, or it is countersigned */
export function countersign(
	memory: Needs,
	deps: Deps,
	{ visitId, text }: InputOf<'visits.countersign'>,
): OutputOf<'visits.countersign'> {
	const { visit } = latest(deps, visitId)
	if (visit.signer?.role !== 'student')
		throw new Refusal(
			'visits.no-student',
			'This visit was not signed by a student: it needs no countersignature.',
		)
	if (hasNote(deps, visitId, 'countersign', visit.version ?? 1))
		throw new Refusal('visits.countersigned-already', 'This version is countersigned already.')
	keepNote(memory, deps, visitId, { what: 'countersign', text })
	return {}
}
