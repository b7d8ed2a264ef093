/** Where each line and figure of both feet stands, at one scale, from the measures alone. Pure. */
import {
	type FootMeasures,
	type FootPlace,
	footPath,
	outlined,
	pointOn,
} from '../../../../shared/engine/report/foot-outline.ts'
import type { Part } from '../../../../shared/engine/visit/measures/measure.ts'
import { bothSides, perSide } from '../../../../shared/engine/visit/sides.ts'
import type { Side } from '../../../../shared/engine/visit/visit.ts'

/** What can be drawn of a foot from above, mm; without a length it cannot be drawn. */
export interface FootSeen extends Omit<FootMeasures, 'lengthMm'> {
	lengthMm?: number | undefined
	girthMm?: number | undefined
	toeDepthMm?: number | undefined
	instepHeightMm?: number | undefined
}
type Point = readonly [x: number, y: number]
/** A dimension of the drawing: its line, and its figure where it was measured. */
export interface Dimension {
	part: Part
	/** The hand is at this measure, on this side. */
	lit: boolean
	/** The line, then its ends. */
	lines: readonly (readonly [Point, Point])[]
	figure: string
	at: Point
	/** Where nothing was measured yet, the line shows where it will stand. */
	measured: boolean
}
export interface DrawnFoot {
	side: Side
	path: string
	/** Middle of the foot, for its name. */
	middle: Point
	dimensions: Dimension[]
}
export interface FeetDrawn {
	unitsPerMm: number
	/** Where the heels stand. */
	bottom: number
	feet: DrawnFoot[]
}
interface Room {
	/** All in the units of the drawing: px. */
	width: number
	height: number
	/** Size of a letter. */
	letter: number
}
export interface AtHand {
	side: Side | undefined
	part: Part | undefined
}
/**
 * Room round a foot in letters: its length above, its name and the difference below, the line of the
 * length outside, that of the ball inside.
 */
const margin = { above: 1.9, below: 3.2, outside: 1.2, inside: 2.4 } as const
const tickLetters = 0.3
const figures = (value: number): string => String(Math.round(value * 10) / 10)

/** The scale at which both feet fit, px for each mm; the same for both. */
function scaleOf(feet: readonly FootMeasures[], { width, height, letter }: Room): number {
	const longest = Math.max(...feet.map(({ lengthMm }) => lengthMm))
	const widest = Math.max(...feet.map((foot) => outlined(foot).width))
	const tall = height - (margin.above + margin.below) * letter
	const wide = width / 2 - (margin.outside + margin.inside) * letter
	return Math.max(0, Math.min(tall / longest, wide / widest))
}
/** @returns undefined where no foot has a length, or no room is left */
export function drawFeet(
	seen: Readonly<Record<Side, FootSeen>>,
	room: Room,
	atHand: AtHand,
): FeetDrawn | undefined {
	const feet = perSide((side): FootMeasures | undefined => {
		const { lengthMm, ...rest } = seen[side]
		return lengthMm === undefined ? undefined : { ...rest, lengthMm }
	})
	const known = bothSides.flatMap((side) => feet[side] ?? [])
	if (known.length === 0) return undefined
	const unitsPerMm = scaleOf(known, room)
	const longestMm = Math.max(...known.map(({ lengthMm }) => lengthMm))
	if (unitsPerMm <= 0) return undefined
	return {
		unitsPerMm,
		bottom: margin.above * room.letter + longestMm * unitsPerMm,
		feet: bothSides.flatMap((side) => {
			const measures = feet[side]
			if (!measures) return []
			const place = placeOf(side, measures, room, { unitsPerMm, longestMm })
			const part = atHand.side === undefined || atHand.side === side ? atHand.part : undefined
			return [
				{
					side,
					path: footPath(side, measures, place),
					middle: [place.x, place.bottom] as const,
					dimensions: dimensionsOf({ side, measures, seen: seen[side], place, room, part }),
				},
			]
		}),
	}
}
/** Both heels stand on one line, as high as there is room; each foot keeps to the middle. */
function placeOf(
	side: Side,
	measures: FootMeasures,
	room: Room,
	{ unitsPerMm, longestMm }: { unitsPerMm: number; longestMm: number },
): FootPlace {
	const half = (outlined(measures).width / 2) * unitsPerMm
	const fromMiddle = margin.inside * room.letter + half
	return {
		x: room.width / 2 + (side === 'left' ? -fromMiddle : fromMiddle),
		bottom: margin.above * room.letter + longestMm * unitsPerMm,
		unitsPerMm,
	}
}
interface Drawing {
	side: Side
	measures: FootMeasures
	seen: FootSeen
	place: FootPlace
	room: Room
	part: Part | undefined
}
function dimensionsOf(drawing: Drawing): Dimension[] {
	const { seen, part } = drawing
	const { length, ball, width, heel } = outlined(drawing.measures)
	return [
		upright(drawing, 'length', seen.lengthMm, { alongMm: length, on: 'outside' }),
		upright(drawing, 'ball-length', seen.ballLengthMm, { alongMm: ball, on: 'inside' }),
		across(drawing, 'width', seen.widthMm, { alongMm: ball * 0.94, acrossMm: width }),
		across(drawing, 'heel-width', seen.heelWidthMm, { alongMm: length * 0.14, acrossMm: heel }),
		// what is not seen from above is shown while the hand is at it
		...(part === 'girth'
			? [across(drawing, part, seen.girthMm, { alongMm: ball * 0.8, acrossMm: width * 0.94 })]
			: []),
		...(part === 'toe-depth'
			? [across(drawing, part, seen.toeDepthMm, { alongMm: length * 0.92, acrossMm: width * 0.4 })]
			: []),
		...(part === 'instep'
			? [
					across(drawing, part, seen.instepHeightMm, {
						alongMm: length * 0.5,
						acrossMm: width * 0.5,
					}),
				]
			: []),
	].filter(({ measured, lit }) => measured || lit)
}
const dimension = (
	{ part }: Drawing,
	of: Part,
	valueMm: number | undefined,
	lines: Dimension['lines'],
	at: Point,
): Dimension => ({
	part: of,
	lit: part === of,
	lines,
	figure: valueMm === undefined ? '' : figures(valueMm),
	at,
	measured: valueMm !== undefined,
})
/** Along the foot, beside it: from the heel to the toes outside, to the ball inside. */
function upright(
	drawing: Drawing,
	part: Part,
	valueMm: number | undefined,
	{ alongMm, on }: { alongMm: number; on: 'outside' | 'inside' },
): Dimension {
	const { side, measures, place, room } = drawing
	const { letter } = room
	const halfMm = outlined(measures).width / 2
	const awayMm = ((on === 'outside' ? 0.8 : 1.3) * letter) / place.unitsPerMm
	const acrossMm = on === 'outside' ? -halfMm - awayMm : halfMm + awayMm
	const [heel, end] = [0, alongMm].map((mm) => pointOn(side, place, acrossMm, mm)) as [Point, Point]
	const [top] = [pointOn(side, place, 0, outlined(measures).length)]
	const middle: Point = [heel[0], (heel[1] + end[1]) / 2 + letter * 0.35]
	return dimension(
		drawing,
		part,
		valueMm,
		[[heel, end], ...[heel, end].map((point) => tick(point, letter, 'level'))],
		on === 'outside' ? [top[0], top[1] - letter * 0.55] : middle,
	)
}
/** Across the foot; its figure stands below the line. */
function across(
	drawing: Drawing,
	part: Part,
	valueMm: number | undefined,
	{ alongMm, acrossMm }: { alongMm: number; acrossMm: number },
): Dimension {
	const { side, place, room } = drawing
	const [from, to] = [-acrossMm / 2, acrossMm / 2].map((mm) =>
		pointOn(side, place, mm, alongMm),
	) as [Point, Point]
	return dimension(
		drawing,
		part,
		valueMm,
		[[from, to], ...[from, to].map((point) => tick(point, room.letter, 'upright'))],
		[(from[0] + to[0]) / 2, from[1] + room.letter * 1.15],
	)
}
function tick([x, y]: Point, letter: number, way: 'level' | 'upright'): readonly [Point, Point] {
	const half = tickLetters * letter
	return way === 'level'
		? [
				[x - half, y],
				[x + half, y],
			]
		: [
				[x, y - half],
				[x, y + half],
			]
}
