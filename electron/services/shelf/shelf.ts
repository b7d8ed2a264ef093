/**
 * The clinic's shelf: the whole of it is one record; a save is a new record that follows the last.
 */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { withLearned } from '../../../shared/desk/shelf/learning.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { parseShelf } from '../../../shared/engine/visit/shelf.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { readShelfCsv, writeShelfCsv } from './shelf-csv.ts'

/** The shelf and the record it was saved as; both absent where none was saved. */
export function getShelf({ shelf: kept }: Pick<Memory, 'shelf'>): OutputOf<'shelf.get'> {
	return present({ shelf: kept.shelf, savedAs: kept.recordId })
}
/** @throws Refusal where the shelf was saved elsewhere since it was opened */
export function refuseChanged(recordId: string | undefined, follows: string | undefined): void {
	if (follows === recordId) return
	throw new Refusal(
		'shelf.changed-elsewhere',
		'The shelf was changed elsewhere since you opened it. Nothing was overwritten: open the ' +
			'shelf again and repeat the change.',
	)
}
/**
 * @throws Refusal where the shelf was saved elsewhere since it was opened, or where ids or sizes
 * stand twice
 */
export function saveShelf(
	{ shelf: kept }: Pick<Memory, 'shelf'>,
	{ keep }: Deps,
	{ shelf, follows }: InputOf<'shelf.save'>,
): OutputOf<'shelf.save'> {
	refuseChanged(kept.recordId, follows)
	const read = parseShelf(shelf)
	if (!read.ok)
		throw new Refusal(
			'shelf.entries-cannot-stand',
			'Some entries of the shelf cannot stand. Nothing was changed.',
			read.problems.map(({ path, message }) => ({ path: `shelf.${path}`, message })),
		)
	return { savedAs: keep({ kind: 'shelf', follows, value: withLearned(read.value, kept.shelf) }) }
}
/** What a table would bring; nothing is saved. */
export const previewShelf = ({ text }: InputOf<'shelf.previewCsv'>): OutputOf<'shelf.previewCsv'> =>
	readShelfCsv(text)

/** With no shelf saved: the heading alone, a table to fill in. */
export function exportShelf({ shelf: kept }: Pick<Memory, 'shelf'>): OutputOf<'shelf.exportCsv'> {
	const all = kept.shelf ?? { format: 'lastwright-shelf', version: 1, models: [] }
	return { csv: writeShelfCsv(all), models: all.models.length }
}
