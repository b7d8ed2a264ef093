/** What is added to a signed visit afterwards: notes, errors, countersignatures; its history. */
import type { InputOf, OutputOf, SignedVisit, VisitNote } from '../../../shared/contract.ts'
import { differences, type HandedOver, mustBeTold } from '../../../shared/desk/records/amendment.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { latest, readVisit, versionsOf } from './visits.ts'

type Needs = Pick<Memory, 'people' | 'players'>

const notesOf = ({ store }: Deps, visitId: string): VisitNote[] =>
	store.cardsOf('visit-note', visitId).map(({ record }) => {
		const { what, text, by, at, occurredOn, version } = store.read(record).value as VisitNote
		return { what, text, by, at, version, occurredOn }
	})
/** Whether a visit has such a note. @param version of this version; of any where undefined */
export const hasNote = (
	deps: Deps,
	visitId: string,
	what: VisitNote['what'],
	version?: number,
): boolean =>
	notesOf(deps, visitId).some(
		(note) => note.what === what && (version === undefined || note.version === version),
	)

export function visitHistory(
	deps: Deps,
	{ visitId }: InputOf<'visits.history'>,
): OutputOf<'visits.history'> {
	const versions = versionsOf(deps, visitId).map(({ record }) => readVisit(deps, record))
	const handedOver = deps.store.cardsOf('sending', visitId).map((card) => card.card as HandedOver)
	return {
		versions: versions.map((version, index) => ({
			version: version.version ?? 1,
			signedAt: version.signedAt,
			by: `${version.signedBy.name}, ${version.signedBy.registration}`,
			reason: version.amends?.reason,
			differences: changedSince(versions[index - 1], version),
		})),
		notes: notesOf(deps, visitId),
		handedOver,
		tell: mustBeTold(handedOver, versions.at(-1)?.version ?? 1),
	}
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
		throw new Refusal('This visit is marked as entered in error already.')
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
		throw new Refusal('The day it happened lies in the future.', [
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
		throw new Refusal('This visit was not signed by a student: it needs no countersignature.')
	if (hasNote(deps, visitId, 'countersign', visit.version ?? 1))
		throw new Refusal('This version is countersigned already.')
	keepNote(memory, deps, visitId, { what: 'countersign', text })
	return {}
}
