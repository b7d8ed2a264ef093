/** Where things stand in the picture of a season: days across, pairs one below the other. Pure. */

import { dayNumber } from '../../../shared/engine/plain/days.ts'
import type { Plan, PlanPair } from '../../../shared/engine/season/plan-file.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'

/** Of the drawing, in its own units. */
export const size = {
	left: 200,
	right: 20,
	width: 900,
	top: 26,
	wear: 66,
	room: 56,
	gap: 36,
	purchase: 22,
}
/** Ink on white paper in the dark too, as in the reports. */
export const ink = {
	line: '#17292b',
	soft: '#46585a',
	rule: '#b9c0bd',
	band: '#f0d9b8',
	warn: '#8f4a00',
	teal: '#17524f',
	range: '#cfe3e0',
}
/** Right end of what is drawn over time. */
export const rightEnd = size.width - size.right
/** Toe room (mm) drawn from below none up to this. */
const roomMm = { least: -4, most: 24 }
/** Highest wear drawn, as a share of a pair's life. */
const wearMost = 1.1

export interface DaysAcross {
	/** Where a day (ISO date) stands; days outside the season stand at its ends. */
	x: (date: string) => number
	isInside: (date: string) => boolean
	from: string
	to: string
}
export function daysAcross({ season: { from, to } }: Plan): DaysAcross {
	const first = dayNumber(from)
	const last = Math.max(dayNumber(to), first + 1)
	const x = (date: string) => {
		const share = (dayNumber(date) - first) / (last - first)
		return size.left + (rightEnd - size.left) * Math.min(1, Math.max(0, share))
	}
	return { x, isInside: (date) => date >= from && date <= to, from, to }
}

const laneHeight = ({ toeRoom }: PlanPair): number =>
	size.wear + (toeRoom ? size.room + 10 : 0) + size.gap
/** Tops of the pairs by letter, then of the purchases under them, and the height of the whole. */
export function lanesOf({ pairs, purchases }: Plan) {
	let top = size.top
	const byLetter = pairs.toSorted((left, right) => (left.letter < right.letter ? -1 : 1))
	const lanes = byLetter.map((pair) => {
		const lane = { pair, top }
		top += laneHeight(pair)
		return lane
	})
	const height = top + purchases.length * size.purchase + 24
	return { lanes, buyTop: height - purchases.length * size.purchase - 10, height }
}

/** Height of a wear (share of a pair's life) in the lane that begins at `top`. */
export const wearAt = (top: number, fraction: number): number =>
	top + size.wear - (size.wear * Math.min(wearMost, fraction)) / wearMost
/** Top of the toe room in the lane that begins at `top`. */
export const roomTopOf = (top: number): number => top + size.wear + 14
/** Height of a toe room (mm) under its own top. */
export function roomAt(roomTop: number, mm: number): number {
	const above = Math.min(roomMm.most, Math.max(roomMm.least, mm) - roomMm.least)
	return roomTop + size.room - (size.room * above) / (roomMm.most - roomMm.least)
}
/** Points of a line as SVG has them. */
export const pointsOf = (points: readonly (readonly [x: number, y: number])[]): string =>
	points.map(([x, y]) => `${rounded(x, 1)},${rounded(y, 1)}`).join(' ')
