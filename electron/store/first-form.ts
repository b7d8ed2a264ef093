/** What records of the first versions lack, and are given when they are first opened by this one. */
import type { Parts } from './parts.ts'

/** Whether nothing was written by this version yet. */
export const isOfFirstVersions = ({ chain }: Pick<Parts, 'chain'>): boolean =>
	chain.firstKeyed === Number.POSITIVE_INFINITY

/**
 * @param now ISO 8601
 * @param isUpgrade whether nothing had been written by this version before this opening
 */
export function bringUp(parts: Parts, now: string, isUpgrade: boolean): void {
	bindFirstForm(parts, now)
	if (isUpgrade) fitFirstCards(parts)
}
/** Records of the first form bound neither time nor place: one record binds them as a whole. */
function bindFirstForm({ records }: Parts, now: string): void {
	if (records.hasUnbound() && records.anchorId() === undefined)
		records.append({ kind: 'anchor', at: now, value: { records: records.unboundDigests() } })
}
/** Records of the first form had no cards: the lists need them. Looked for once, at the upgrade. */
export function fitFirstCards({ roll, cards, records }: Parts): void {
	const without = roll.all().filter(({ form, cardForm }) => form === 1 && cardForm === 0)
	for (const row of without) {
		// a damaged one is named where it is read
		const record = records.isReadable(row.id) ? records.find(row.id) : undefined
		const card = record && cards.cardOf(record, row.form)
		if (!card) continue
		const made = cards.ofRecord(row, card)
		roll.replace(made.row, made.card)
	}
}
