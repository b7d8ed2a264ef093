/**
 * Signed visits read from their records: one that is damaged, or that this version cannot read, is
 * named in words and harms no other.
 */
import type { SignedVisit } from '../../../shared/contract.ts'
import { dateWords } from '../../../shared/engine/words/words.ts'
import type { VisitCard } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

type Opens = Pick<Deps, 'openRecord'>
/** A version of a visit: its record and its card. */
export interface VisitVersion {
	record: string
	card: VisitCard
}
/** A visit, or why it cannot be read. */
export type ReadVisit = { visit: SignedVisit } | { trouble: string }

const nameOf = ({ visitDate, version }: VisitCard): string =>
	`The visit of ${dateWords(visitDate)}${version > 1 ? ` (version ${version})` : ''}`

export function tryVisit({ openRecord }: Opens, { record, card }: VisitVersion): ReadVisit {
	try {
		return { visit: openRecord('visit', record).value }
	} catch (error) {
		if (!(error instanceof Refusal)) throw error
		return { trouble: `${nameOf(card)} cannot be read. ${error.message}` }
	}
}
/** @throws Refusal naming the visit and why it cannot be read */
export function readVisit(deps: Opens, version: VisitVersion): SignedVisit {
	const read = tryVisit(deps, version)
	if ('trouble' in read) throw new Refusal('visits.unreadable', read.trouble)
	return read.visit
}
