/**
 * Signed visits read from their records: one that is damaged, or that this version cannot read, is
 * named in words and harms no other.
 */
import { type SignedVisit, signedVisitSchema } from '../../../shared/contract.ts'
import { dateWords } from '../../../shared/engine/words/words.ts'
import type { VisitCard } from '../records/cards.ts'
import { isDamage } from '../records/damage.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

type WithStore = Pick<Deps, 'store'>
/** A version of a visit: its record and its card. */
export interface VisitVersion {
	record: string
	card: VisitCard
}
/** A visit, or why it cannot be read. */
export type ReadVisit = { visit: SignedVisit } | { trouble: string }

const nameOf = ({ visitDate, version }: VisitCard): string =>
	`The visit of ${dateWords(visitDate)}${version > 1 ? ` (version ${version})` : ''}`

export function tryVisit({ store }: WithStore, { record, card }: VisitVersion): ReadVisit {
	try {
		const read = signedVisitSchema.safeParse(store.read(record).value)
		if (read.success) return { visit: read.data }
	} catch (error) {
		if (!isDamage(error)) throw error
		return {
			trouble:
				`${nameOf(card)} is damaged and cannot be read. All other records are unaffected; ` +
				'restore it from a backup.',
		}
	}
	return {
		trouble:
			`${nameOf(card)} was written in a form that this version of the program cannot read. ` +
			'It is kept as it is: open it with the newer version.',
	}
}
/** @throws Refusal naming the visit and why it cannot be read */
export function readVisit(deps: WithStore, version: VisitVersion): SignedVisit {
	const read = tryVisit(deps, version)
	if ('trouble' in read) throw new Refusal(read.trouble)
	return read.visit
}
