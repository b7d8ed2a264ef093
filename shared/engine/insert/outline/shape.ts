/** A foot placed on the sheet, and the outline of its insert. */
import { rounded } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'

/** A place on the sheet, mm from its upper left corner. */
export interface Point {
	x: number
	y: number
}
/** The measures that an outline is drawn from, all mm. */
export interface Measured {
	lengthMm: number
	ballLengthMm: number
	widthMm: number
	heelWidthMm: number
}
/** Measures of one foot with its place; across and along are mm of the foot itself. */
export interface PlacedFoot extends Measured {
	/** Heel to the fifth metatarsal head. */
	fifthLengthMm: number
	/** How far behind the heads a dome or a short insert ends. */
	behindHeadsMm: number
	/**
	 * How far the border of the foot lies from the middle line at so many mm from the back of the
	 * heel: 0 beyond the toes.
	 */
	border(edge: 'inner' | 'outer', along: number): number
	/**
	 * Places a point: across is mm towards the big toe from the middle line, along is mm from the
	 * back of the heel. The right foot is the mirror of the left.
	 */
	at(across: number, along: number): Point
	/** The same, no further out than the border of the foot. */
	within(across: number, along: number): Point
}
/** From the middle of the back of the heel, mm of the drawing: across to the right, along upwards. */
export const placedOn =
	(side: Side): PlacedFoot['at'] =>
	(across, along) => ({ x: side === 'left' ? across : -across, y: -along })
/** A figure of the drawing: mm to 0.01. */
export const shown = (value: number): string => String(rounded(value, 2))
/** Path data from letters and places. */
export const path = (parts: readonly (string | Point)[]): string =>
	parts
		.map((part) => (typeof part === 'string' ? part : `${shown(part.x)} ${shown(part.y)}`))
		.join(' ')

/** A place on the foot, mm: towards the big toe, and from the back of the heel. */
type Place = readonly [across: number, along: number]
/** From one place to the next by a curve with two places beside it, or straight. */
type Curve = readonly [Place, Place, Place] | readonly [Place]
type Outlined = Measured & Pick<PlacedFoot, 'fifthLengthMm' | 'behindHeadsMm'>

/** Words at a place; they hold no sign that a drawing would read as its own. */
export const textAt = (
	{ x, y }: Point,
	words: string,
	{ sizeMm, anchor = 'middle' }: { sizeMm: number; anchor?: 'start' | 'middle' },
): string =>
	`<text x="${shown(x)}" y="${shown(y)}" font-family="Noto" font-size="${sizeMm}" ` +
	`text-anchor="${anchor}" fill="#1d2726">${words}</text>`
/**
 * The outline from the back of the heel round the big toe, closed. Full length follows the foot;
 * three-quarter ends behind the heads.
 */
function curves(foot: Outlined, full: boolean): Curve[] {
	const { lengthMm, ballLengthMm, fifthLengthMm, behindHeadsMm } = foot
	const halfHeel = foot.heelWidthMm / 2
	const halfBall = foot.widthMm / 2
	const innerEnd = full ? ballLengthMm : ballLengthMm - behindHeadsMm
	const outerEnd = full ? fifthLengthMm : fifthLengthMm - behindHeadsMm
	const roundTheToes: Curve[] = [
		[
			[halfBall, lengthMm * 0.86],
			[halfBall * 0.9, lengthMm],
			[halfBall * 0.5, lengthMm],
		],
		[
			[halfBall * 0.1, lengthMm],
			[-halfBall, lengthMm * 0.95],
			[-halfBall, fifthLengthMm],
		],
	]
	return [
		[
			[halfHeel * 0.7, 0],
			[halfHeel, ballLengthMm * 0.08],
			[halfHeel, ballLengthMm * 0.2],
		],
		[
			[halfHeel, ballLengthMm * 0.5],
			[halfBall * 0.78, ballLengthMm * 0.72],
			[halfBall, innerEnd],
		],
		...(full ? roundTheToes : [[[-halfBall, outerEnd]] satisfies Curve]),
		[
			[-halfBall, fifthLengthMm * 0.7],
			[-halfHeel, ballLengthMm * 0.5],
			[-halfHeel, ballLengthMm * 0.2],
		],
		[
			[-halfHeel, ballLengthMm * 0.08],
			[-halfHeel * 0.7, 0],
			[0, 0],
		],
	]
}
/** The outline as path data. */
export function outlinePath(foot: PlacedFoot, full: boolean): string {
	const drawn = curves(foot, full).flatMap((places) => [
		places.length === 1 ? 'L' : 'C',
		...places.map(([across, along]) => foot.at(across, along)),
	])
	return path(['M', foot.at(0, 0), ...drawn, 'Z'])
}
/** Of a curve, so that its points lie some 2 mm apart. */
const stepsOfCurve = 48
const cubic = (from: number, first: number, second: number, to: number, share: number): number => {
	const rest = 1 - share
	return (
		rest ** 3 * from +
		3 * rest ** 2 * share * first +
		3 * rest * share ** 2 * second +
		share ** 3 * to
	)
}
/** The outline as places close to one another, from the back of the heel round the big toe. */
export function outlinePlaces(foot: Outlined, full: boolean): Place[] {
	let from: Place = [0, 0]
	const places: Place[] = [from]
	for (const curve of curves(foot, full)) {
		const [first, second, to] = curve.length === 1 ? [from, curve[0], curve[0]] : curve
		for (let step = 1; step <= stepsOfCurve; step++) {
			const on = (axis: 0 | 1) =>
				cubic(from[axis], first[axis], second[axis], to[axis], step / stepsOfCurve)
			places.push([on(0), on(1)])
		}
		from = to
	}
	return places
}
/** The border of a foot by its outline, as `PlacedFoot` has it. */
export function borderOf(foot: Outlined): PlacedFoot['border'] {
	const places = outlinePlaces(foot, true)
	return (edge, along) => {
		const sign = edge === 'inner' ? 1 : -1
		let furthest = 0
		for (const [index, [across, at]] of places.entries()) {
			const [before, beforeAt] = places[index - 1] ?? [across, at]
			if (Math.min(at, beforeAt) > along || Math.max(at, beforeAt) < along) continue
			const share = at === beforeAt ? 0 : (along - beforeAt) / (at - beforeAt)
			furthest = Math.max(furthest, sign * (before + (across - before) * share))
		}
		return furthest
	}
}
