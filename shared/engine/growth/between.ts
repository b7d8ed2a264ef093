/** Reading a table between its rows. */

/** The rows below and above a place in a table, and how far the place lies from the lower one. */
export interface Between<Row> {
	low: Row
	high: Row
	/** 0 at the lower row, 1 at the upper. */
	part: number
}
/**
 * Where a place lies among rows that rise by their first column; undefined outside them.
 * @param at in the unit of the first column
 */
export function rowsAround<Row extends readonly [number, ...number[]]>(
	rows: readonly Row[],
	at: number,
): Between<Row> | undefined {
	const index = rows.findIndex(([first]) => first >= at)
	const high = rows[index]
	const low = rows[index - 1] ?? high
	if (high === undefined || low === undefined) return undefined
	if (low === high) return high[0] === at ? { low, high, part: 0 } : undefined
	return { low, high, part: (at - low[0]) / (high[0] - low[0]) }
}
