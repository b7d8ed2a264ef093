/** Counting: what each player adds to the rows, in whatever order they come. */
import { type Spread, spreadOf } from '../../engine/plain/middle.ts'
import { hiddenCells, type Sum } from './cells.ts'
import type { Mark, TableId } from './seen.ts'
import { shapes } from './tables.table.ts'

/** A count that does not show. */
export const hidden = 'hidden'
export type Cell = number | typeof hidden
/** A row as it may be shown. */
export interface AuditRow {
	row: string
	cells: Readonly<Record<string, Cell>>
	/** values of the players of a cell; absent where nobody told any */
	spreads: Readonly<Record<string, Spread | typeof hidden>>
}
export type AuditTables = Readonly<Record<TableId, readonly AuditRow[]>>
/** A row before anything is hidden. */
export interface Counted {
	cells: ReadonlyMap<string, number>
	values: ReadonlyMap<string, readonly number[]>
}
/** Between a row and its part by what was done besides. */
export const within = '|'

/** Each cell with all the wholes that it adds to. */
function wholesOf(sums: readonly Sum[], cell: string): string[] {
	const whole = sums.find(([, parts]) => parts.includes(cell))?.[0]
	return whole === undefined ? [cell] : [cell, ...wholesOf(sums, whole)]
}
export class Tally {
	readonly #rows = new Map<TableId, Map<string, Map<string, number>>>()
	readonly #values = new Map<string, number[]>()

	/** @param marks of one player, one for each row */
	add(marks: readonly Mark[]): void {
		for (const mark of marks) this.#addOne(mark)
	}
	#addOne({ table, row, cells, values = {} }: Mark): void {
		const { sums } = shapes[table]
		const counts = this.#rowOf(table, row)
		// a player of several cells is one of their common whole
		for (const cell of new Set(cells.flatMap((each) => wholesOf(sums, each))))
			counts.set(cell, (counts.get(cell) ?? 0) + 1)
		for (const [name, value] of Object.entries(values)) {
			const key = JSON.stringify([table, row, name])
			const known = this.#values.get(key)
			if (known) known.push(value)
			else this.#values.set(key, [value])
		}
	}
	#rowOf(table: TableId, row: string): Map<string, number> {
		const rows = this.#rows.get(table) ?? new Map<string, Map<string, number>>()
		this.#rows.set(table, rows)
		const known = rows.get(row)
		if (known) return known
		const made = new Map(
			shapes[table].sums.flatMap(([whole, parts]) => [whole, ...parts]).map((cell) => [cell, 0]),
		)
		rows.set(row, made)
		return made
	}
	/** A row as it was counted: never given out. */
	counted(table: TableId, row: string): Counted | undefined {
		const cells = this.#rows.get(table)?.get(row)
		if (!cells) return undefined
		const names = Object.keys(shapes[table].values)
		return {
			cells,
			values: new Map(
				names.map((name) => [name, this.#values.get(JSON.stringify([table, row, name])) ?? []]),
			),
		}
	}
	#shown(table: TableId, row: string, least: number): AuditRow {
		const { values, ...shape } = shapes[table]
		const { cells, values: told } = this.counted(table, row) ?? {
			cells: new Map(),
			values: new Map(),
		}
		const kept = hiddenCells(cells, { ...shape, least })
		const spreads = Object.entries(values).flatMap(([name, of]) => {
			const spread = spreadOf(told.get(name) ?? [])
			if (!spread) return []
			return [[name, kept.has(of) || spread.n < least ? hidden : spread] as const]
		})
		return {
			row,
			cells: Object.fromEntries(
				[...cells].map(([cell, count]) => [cell, kept.has(cell) ? hidden : count]),
			),
			spreads: Object.fromEntries(spreads),
		}
	}
	/**
	 * The rows by name: their order tells nothing of their size. The parts of a row show only where none
	 * of their cells is small: else the row less its parts would tell one.
	 */
	tables(least: number): AuditTables {
		const of = (table: TableId): AuditRow[] => {
			const all = [...(this.#rows.get(table) ?? new Map()).keys()].sort()
			const isWhole = (row: string) => !row.includes(within)
			const isSmall = (row: string) =>
				[...(this.counted(table, row)?.cells.values() ?? [])].some(
					(count) => count > 0 && count < least,
				)
			const partsOf = (row: string) => all.filter((part) => part.startsWith(`${row}${within}`))
			return all.filter(isWhole).flatMap((row) => {
				const parts = partsOf(row)
				const areShown = parts.length > 1 && !parts.some(isSmall)
				return [row, ...(areShown ? parts : [])].map((each) => this.#shown(table, each, least))
			})
		}
		return {
			condition: of('condition'),
			measure: of('measure'),
			advice: of('advice'),
			reason: of('reason'),
			referral: of('referral'),
			label: of('label'),
			forecast: of('forecast'),
			stage: of('stage'),
			size: of('size'),
		}
	}
}
