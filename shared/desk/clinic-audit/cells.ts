/**
 * Counts of players, and which of them may be shown. A count from one to under the least number is
 * hidden, and as many others with it as it takes that nobody finds it by subtraction: from what is
 * shown, each small cell could as well be at least the least number. None (0) is no player, and shows.
 */

/** A count, and the counts that it is the sum of. Each count stands in one sum as a part at most. */
export type Sum = readonly [whole: string, parts: readonly string[]]
type Counts = ReadonlyMap<string, number>
/** What a reader of the shown cells can tell of each. */
type Bounds = Map<string, { low: number; high: number }>

const nonZero = 1
/** What is known at first: a cell that shows is its count, a hidden one is somebody. */
const atFirst = (counts: Counts, hidden: ReadonlySet<string>): Bounds =>
	new Map(
		[...counts].map(([name, count]) => [
			name,
			hidden.has(name)
				? { low: nonZero, high: Number.POSITIVE_INFINITY }
				: { low: count, high: count },
		]),
	)
const add = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
/** Narrows one cell; returns whether that told more. */
function narrow(bounds: Bounds, name: string, low: number, high: number): boolean {
	const known = bounds.get(name)
	if (!known || (low <= known.low && high >= known.high)) return false
	bounds.set(name, { low: Math.max(low, known.low), high: Math.min(high, known.high) })
	return true
}
function narrowBy(bounds: Bounds, [whole, parts]: Sum): boolean {
	const of = (name: string) => bounds.get(name) ?? { low: 0, high: 0 }
	const low = add(parts.map((part) => of(part).low))
	const high = add(parts.map((part) => of(part).high))
	let told = narrow(bounds, whole, low, high)
	for (const part of parts) {
		const others = parts.filter((other) => other !== part)
		const least = of(whole).low - add(others.map((other) => of(other).high))
		const most = of(whole).high - add(others.map((other) => of(other).low))
		told = narrow(bounds, part, least, most) || told
	}
	return told
}
/** All that can be told of each cell from those that show. */
function toldOf(counts: Counts, sums: readonly Sum[], hidden: ReadonlySet<string>): Bounds {
	const bounds = atFirst(counts, hidden)
	while (sums.some((sum) => narrowBy(bounds, sum))) {
		// until nothing more is told: each turn narrows a whole number
	}
	return bounds
}
/** What of a row is told to whom: its sums, the least number of a cell that shows, what is to show. */
export interface Showing {
	sums: readonly Sum[]
	least: number
	/** cells that are hidden last */
	keep?: readonly string[]
}
/** Cells that stand in a sum with this one, wholes before parts. */
function beside(sums: readonly Sum[], name: string): string[] {
	const near = sums.filter(([whole, parts]) => whole === name || parts.includes(name))
	return [...near.map(([whole]) => whole), ...near.flatMap(([, parts]) => parts)]
}
/**
 * The next cell to hide for one that is told: a whole, which loses least; else the smallest part beside
 * it; else any that shows.
 */
function nextFor(
	told: string,
	counts: Counts,
	{ sums, keep = [] }: Showing,
	hidden: ReadonlySet<string>,
): string | undefined {
	const isWhole = (name: string) => sums.some(([whole]) => whole === name)
	const canHide = (name: string) => !hidden.has(name) && (counts.get(name) ?? 0) > 0
	const smallest = (names: readonly string[]) =>
		names
			.filter((name) => canHide(name) && !keep.includes(name))
			.toSorted((one, other) => (counts.get(one) ?? 0) - (counts.get(other) ?? 0))[0]
	const near = beside(sums, told)
	return (
		smallest(near.filter(isWhole)) ??
		smallest(near) ??
		smallest(near.flatMap((name) => beside(sums, name))) ??
		smallest([...counts.keys()]) ??
		keep.find(canHide)
	)
}
/** A small cell that is told by what shows. */
function toldCell(
	counts: Counts,
	{ sums, least }: Showing,
	small: readonly string[],
	hidden: ReadonlySet<string>,
): string | undefined {
	const bounds = toldOf(counts, sums, hidden)
	return small.find((name) => (bounds.get(name)?.high ?? 0) < least)
}
/** The cells that do not show: the small ones, and no more with them than it takes. */
export function hiddenCells(counts: Counts, showing: Showing): Set<string> {
	const { least } = showing
	const small = [...counts].filter(([, count]) => count > 0 && count < least).map(([name]) => name)
	const hidden = new Set(small)
	const besides: string[] = []
	for (;;) {
		const told = toldCell(counts, showing, small, hidden)
		const next = told === undefined ? undefined : nextFor(told, counts, showing, hidden)
		if (next === undefined) break
		hidden.add(next)
		besides.push(next)
	}
	for (const name of besides) {
		hidden.delete(name)
		if (toldCell(counts, showing, small, hidden) !== undefined) hidden.add(name)
	}
	return hidden
}
