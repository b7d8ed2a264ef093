/**
 * Where feet and the control bar stand on a sheet, so that nothing lies on anything else. A foot may
 * be turned; it is never scaled.
 */
import { controlBarSize } from './bar.ts'
import type { Room } from './paper.ts'
import type { Point } from './shape.ts'

/** The edge of a foot about the middle of the back of its heel, mm: x to the right, y downwards. */
export type Edge = readonly Point[]
/** Where the back of a heel stands on the sheet, and how the foot is turned, degrees clockwise. */
interface Placed extends Point {
	turnDeg: number
}
export interface Arranged {
	feet: Placed[]
	/** Its upper left corner; `upright` where it is turned by a quarter. */
	bar: Point & { isUpright: boolean }
}
/** Between two feet, and between a foot and the bar, mm. */
const betweenMm = 4
/** Between the edge of the sheet and a foot, mm: half a line. */
const edgeMm = 0.5
/** A foot is turned no further than this, in such steps, degrees. */
const turns = { mostDeg: 40, stepDeg: 2 } as const
const turnsTried = Array.from({ length: turns.mostDeg / turns.stepDeg + 1 }, (_, step) => [
	step * turns.stepDeg,
	-step * turns.stepDeg,
]).flat()
/** The bar is tried every so many mm. */
const barStepMm = 3

function turned(edge: Edge, turnDeg: number): Point[] {
	const angle = (turnDeg * Math.PI) / 180
	const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
	return edge.map(({ x, y }) => ({ x: x * cosine - y * sine, y: x * sine + y * cosine }))
}
const moved = (edge: Edge, { x, y }: Point): Point[] =>
	edge.map((point) => ({ x: point.x + x, y: point.y + y }))
export function boundsOf(edge: Edge) {
	const xs = edge.map(({ x }) => x)
	const ys = edge.map(({ y }) => y)
	const [left, right] = [Math.min(...xs), Math.max(...xs)]
	const [top, bottom] = [Math.min(...ys), Math.max(...ys)]
	return { left, right, top, bottom, width: right - left, height: bottom - top }
}
/** Feet that go into the room, and their edges there; the bar has no place yet. */
interface Layout {
	feet: Placed[]
	edges: Point[][]
}
/** In the middle of what is spare, or to a side where that leaves room for the bar. */
const sharesOfSpare = [0.5, 0, 1]

/** One foot, upright where it can be, else turned as little as lets it in; the toes at the head. */
function* alone(edge: Edge, room: Room): Generator<Layout> {
	for (const turnDeg of turnsTried) {
		const shape = turned(edge, turnDeg)
		const { left, top, width, height } = boundsOf(shape)
		if (width > room.widthMm - 2 * edgeMm || height > room.heightMm - 2 * edgeMm) continue
		for (const share of sharesOfSpare) {
			const x = edgeMm + share * (room.widthMm - 2 * edgeMm - width) - left
			const at = { x, y: edgeMm - top }
			yield { feet: [{ ...at, turnDeg }], edges: [moved(shape, at)] }
		}
	}
}
/** Rows of so many mm, in which the edges of two feet are held against each other. */
const rowMm = 2
const rowOf = (y: number): number => Math.round(y / rowMm)
/** How far the second must stand to the right of the first so that they are apart, mm. */
function apart(first: Edge, second: Edge): number {
	const furthest = new Map<number, number>()
	for (const { x, y } of first)
		for (const row of [rowOf(y) - 1, rowOf(y), rowOf(y) + 1])
			furthest.set(row, Math.max(furthest.get(row) ?? x, x))
	return second.reduce(
		(most, { x, y }) => Math.max(most, (furthest.get(rowOf(y)) ?? x - 1000) - x),
		-1000,
	)
}
/** Two feet side by side: both with the toes at the head, or the second turned by half. */
function* together([first, second]: readonly [Edge, Edge], room: Room): Generator<Layout> {
	const one = boundsOf(first)
	for (const turnDeg of [0, 180]) {
		const shape = turned(second, turnDeg)
		const two = boundsOf(shape)
		const bottom = edgeMm + Math.max(one.height, two.height)
		if (bottom > room.heightMm - edgeMm) continue
		const left = { x: edgeMm - one.left, y: bottom - one.bottom, turnDeg: 0 }
		for (const y of [bottom - two.bottom, edgeMm - two.top]) {
			const x = apart(moved(first, left), moved(shape, { x: 0, y })) + betweenMm
			yield* pairs({ first, shape }, [left, { x, y, turnDeg }], room)
		}
	}
}
function* pairs(
	{ first, shape }: { first: Edge; shape: Edge },
	[left, right]: readonly [Placed, Placed],
	room: Room,
): Generator<Layout> {
	const spare = room.widthMm - edgeMm - (right.x + boundsOf(shape).right)
	if (spare < 0) return
	for (const share of sharesOfSpare) {
		const feet = [left, right].map((placed) => ({ ...placed, x: placed.x + share * spare }))
		yield {
			feet,
			edges: feet.map((placed, index) => moved(index === 0 ? first : shape, placed)),
		}
	}
}
/** Whether a place lies within an edge that is closed. */
function isWithin({ x, y }: Point, edge: Edge): boolean {
	let isInside = false
	for (const [index, to] of edge.entries()) {
		const from = edge.at(index - 1) ?? to
		if (from.y > y === to.y > y) continue
		if (x < from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)) isInside = !isInside
	}
	return isInside
}
function isFree(corner: Point, { widthMm, heightMm }: Room, edges: readonly Edge[]): boolean {
	const middle = { x: corner.x + widthMm / 2, y: corner.y + heightMm / 2 }
	const reach = { x: widthMm / 2 + betweenMm / 2, y: heightMm / 2 + betweenMm / 2 }
	return edges.every(
		(edge) =>
			!isWithin(middle, edge) &&
			edge.every(
				({ x, y }) => Math.abs(x - middle.x) > reach.x || Math.abs(y - middle.y) > reach.y,
			),
	)
}
/** From the far end back to the near one, in steps of the bar. */
const backwards = (far: number): number[] =>
	Array.from({ length: Math.floor(far / barStepMm) + 1 }, (_, step) => far - step * barStepMm)
/** A free place for the bar, from the foot of the sheet upwards; lying where it can be. */
function barIn(room: Room, edges: readonly Edge[]): Arranged['bar'] | undefined {
	const { widthMm, heightMm } = controlBarSize
	for (const isUpright of [false, true]) {
		const size = isUpright ? { widthMm: heightMm, heightMm: widthMm } : { widthMm, heightMm }
		for (const y of backwards(room.heightMm - size.heightMm)) {
			const farX = room.widthMm - size.widthMm
			const x = [0, ...backwards(farX).toReversed()].find((x) => isFree({ x, y }, size, edges))
			if (x !== undefined) return { x, y, isUpright }
		}
	}
	return undefined
}
/** Where one foot or two stand with the bar; undefined where the room does not hold them. */
export function arranged(edges: readonly Edge[], room: Room): Arranged | undefined {
	const [first, second] = edges
	if (!first) return undefined
	const layouts = second ? together([first, second], room) : alone(first, room)
	for (const { feet, edges: placed } of layouts) {
		const bar = barIn(room, placed)
		if (bar) return { feet, bar }
	}
	return undefined
}
