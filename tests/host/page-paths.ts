/** Places, boxes and paths of a page as its operators give them. */
/** Points of the page from its upper left corner. */
export type Spot = readonly [x: number, y: number]
export interface Box {
	left: number
	top: number
	right: number
	bottom: number
}
export type Matrix = readonly [number, number, number, number, number, number]
export const times = (m: Matrix, n: Matrix): Matrix => [
	m[0] * n[0] + m[2] * n[1],
	m[1] * n[0] + m[3] * n[1],
	m[0] * n[2] + m[2] * n[3],
	m[1] * n[2] + m[3] * n[3],
	m[0] * n[4] + m[2] * n[5] + m[4],
	m[1] * n[4] + m[3] * n[5] + m[5],
]
export const at = (m: Matrix, x: number, y: number): Spot => [
	m[0] * x + m[2] * y + m[4],
	m[1] * x + m[3] * y + m[5],
]
export function boxOf(spots: readonly Spot[]): Box {
	const xs = spots.map(([x]) => x)
	const ys = spots.map(([, y]) => y)
	return {
		left: Math.min(...xs),
		right: Math.max(...xs),
		top: Math.min(...ys),
		bottom: Math.max(...ys),
	}
}
export const shared = (a: Box, b: Box): Box => ({
	left: Math.max(a.left, b.left),
	right: Math.min(a.right, b.right),
	top: Math.max(a.top, b.top),
	bottom: Math.min(a.bottom, b.bottom),
})
/** Steps of a curve. */
const curveSteps = 12
/** How many places follow each code of path data: move, line, cubic, quadratic, close. */
const placesAfter = [1, 1, 3, 2, 0]
/** The outlines of path data: a code, then its places. */
export function outlinesOf(data: ArrayLike<number>, matrix: Matrix): Spot[][] {
	const outlines: Spot[][] = []
	let from: Spot = [0, 0]
	let index = 0
	while (index < data.length) {
		const code = data[index++] ?? -1
		const count = placesAfter[code]
		if (count === undefined) throw new Error(`a path of an unknown code ${code}`)
		const places = Array.from(
			{ length: count },
			(): Spot => [data[index++] ?? 0, data[index++] ?? 0],
		)
		if (code === 0) outlines.push([])
		const outline = outlines.at(-1) ?? []
		const reached = count === 0 ? outline.slice(0, 1) : throughPlaces(places, from)
		outline.push(...(count === 0 ? reached : reached.map(([x, y]) => at(matrix, x, y))))
		from = places.at(-1) ?? from
	}
	return outlines
}
/** Spots of a line, or of a curve with its places beside it. */
function throughPlaces(places: readonly Spot[], from: Spot): Spot[] {
	const [first = from, second, third] = places
	if (!second) return [first]
	const [one, two, to] = third ? [first, second, third] : doubled(first, second, from)
	const on = (axis: 0 | 1, share: number) => {
		const rest = 1 - share
		return (
			rest ** 3 * from[axis] +
			3 * rest ** 2 * share * one[axis] +
			3 * rest * share ** 2 * two[axis] +
			share ** 3 * to[axis]
		)
	}
	return Array.from({ length: curveSteps }, (_, step): Spot => {
		const share = (step + 1) / curveSteps
		return [on(0, share), on(1, share)]
	})
}
const doubled = (middle: Spot, to: Spot, from: Spot): [Spot, Spot, Spot] => {
	const towards = (end: Spot): Spot => [
		end[0] + (2 / 3) * (middle[0] - end[0]),
		end[1] + (2 / 3) * (middle[1] - end[1]),
	]
	return [towards(from), towards(to), to]
}
export const scaleOf = (m: Matrix): number => Math.sqrt(Math.abs(m[0] * m[3] - m[1] * m[2]))
