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
	 * Places a point: across is mm towards the big toe from the middle line, along is mm from the
	 * back of the heel. The right foot is the mirror of the left.
	 */
	at(across: number, along: number): Point
}
/** @param centreX @param heelY where the back of the heel lies on the sheet, mm */
export const placedAt =
	(side: Side, centreX: number, heelY: number): PlacedFoot['at'] =>
	(across, along) => ({ x: centreX + (side === 'left' ? across : -across), y: heelY - along })
/** A figure of the drawing: mm to 0.01. */
export const shown = (value: number): string => String(rounded(value, 2))
/** Path data from letters and places. */
export const path = (parts: readonly (string | Point)[]): string =>
	parts
		.map((part) => (typeof part === 'string' ? part : `${shown(part.x)} ${shown(part.y)}`))
		.join(' ')

/**
 * The outline from heel to the front edge, closed. Full length follows the foot; three-quarter ends
 * behind the heads.
 */
export function outlinePath(foot: PlacedFoot, full: boolean): string {
	const { at, lengthMm, ballLengthMm, fifthLengthMm, behindHeadsMm } = foot
	const halfHeel = foot.heelWidthMm / 2
	const halfBall = foot.widthMm / 2
	const innerEnd = full ? ballLengthMm : ballLengthMm - behindHeadsMm
	const outerEnd = full ? fifthLengthMm : fifthLengthMm - behindHeadsMm
	const innerBorder = [
		'M',
		at(0, 0),
		'C',
		at(halfHeel * 0.7, 0),
		at(halfHeel, ballLengthMm * 0.08),
		at(halfHeel, ballLengthMm * 0.2),
		'C',
		at(halfHeel, ballLengthMm * 0.5),
		at(halfBall * 0.78, ballLengthMm * 0.72),
		at(halfBall, innerEnd),
	]
	const roundTheToes = [
		'C',
		at(halfBall, lengthMm * 0.86),
		at(halfBall * 0.9, lengthMm),
		at(halfBall * 0.5, lengthMm),
		'C',
		at(halfBall * 0.1, lengthMm),
		at(-halfBall, lengthMm * 0.95),
		at(-halfBall, fifthLengthMm),
	]
	const straightAcross = ['L', at(-halfBall, outerEnd)]
	const outerBorder = [
		'C',
		at(-halfBall, fifthLengthMm * 0.7),
		at(-halfHeel, ballLengthMm * 0.5),
		at(-halfHeel, ballLengthMm * 0.2),
		'C',
		at(-halfHeel, ballLengthMm * 0.08),
		at(-halfHeel * 0.7, 0),
		at(0, 0),
		'Z',
	]
	return path([...innerBorder, ...(full ? roundTheToes : straightAcross), ...outerBorder])
}
