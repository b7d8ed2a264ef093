/** A shelf as a table. Pure: what becomes of the cells is the host's work. */
import type { Shelf } from '../../engine/visit/shelf.ts'
import { writeCell } from './shelf-cell.ts'
import { modelColumns, shelfColumns, sizeColumns } from './shelf-columns.ts'

/**
 * The shelf as cells, heading first; model properties on the first line of each model only, but its
 * id on every line.
 */
export function shelfToCells(shelf: Shelf): string[][] {
	const lines = shelf.models.flatMap((model) =>
		model.sizes.map((size, index) => [
			...modelColumns.map(([column, kind]) =>
				index === 0 || column === 'id' ? writeCell(kind, model[column]) : '',
			),
			...sizeColumns.map(([column, kind]) => writeCell(kind, size[column])),
		]),
	)
	return [[...shelfColumns], ...lines]
}
