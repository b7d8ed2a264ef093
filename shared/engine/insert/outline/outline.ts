/**
 * The insert at true size, seen from above: outline, cut-out, dome, posts, apertures and raise on a
 * page printed at 1:1, with a 100 mm bar.
 * Pure: one millimetre of the drawing is one unit of the SVG, and the right foot is the mirror of
 * the left.
 */
import type { InsertElement } from '../../findings/assessment.ts'
import { need } from '../../plain/need.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { arranged, boundsOf } from './arrange.ts'
import { controlBar, controlBarMm, controlBarSize } from './bar.ts'
import { marks } from './marks.ts'
import { type Room, roomOn, type SheetPaper, sheetPapers } from './paper.ts'
import {
	borderOf,
	type Measured,
	outlinePath,
	outlinePlaces,
	type PlacedFoot,
	type Point,
	placedOn,
	shown,
	textAt,
} from './shape.ts'

/**
 * Measures of one foot, mm. All four are needed: a true-size page is not drawn from guesses.
 * @internal
 */
export interface InsertMeasures {
	lengthMm?: number | undefined
	ballLengthMm?: number | undefined
	widthMm?: number | undefined
	heelWidthMm?: number | undefined
}
interface InsertFoot {
	measures: InsertMeasures
	elements: readonly InsertElement[]
}
/** A sheet, in mm of the drawing. */
interface InsertFigure {
	sides: Side[]
	svg: string
	widthMm: number
	heightMm: number
	alternative: string
}
interface InsertSheets {
	sheets: InsertFigure[]
	/** Feet that are not drawn, with the measures that are wanted. */
	missing: { side: Side; measures: string[] }[]
}
/** A foot that can be drawn. */
interface ReadyFoot {
	side: Side
	measures: Measured
	elements: readonly InsertElement[]
}

const names = [
	['lengthMm', 'heel to toe'],
	['ballLengthMm', 'heel to ball'],
	['widthMm', 'ball width'],
	['heelWidthMm', 'heel width'],
] as const satisfies readonly (readonly [keyof InsertMeasures, string])[]

/** The measures, or the names of those that are missing or were misread. */
function measuredOrMissing(measures: InsertMeasures): Measured | string[] {
	const missing = names
		.filter(([measure]) => !((measures[measure] ?? 0) > 0))
		.map(([, name]) => name)
	if (missing.length > 0) return missing
	const { lengthMm = 0, ballLengthMm = 0, widthMm = 0, heelWidthMm = 0 } = measures
	// one of the two was misread
	if (ballLengthMm >= lengthMm) return ['a heel to ball length shorter than heel to toe']
	return { lengthMm, ballLengthMm, widthMm, heelWidthMm }
}
const isThreeQuarter = (elements: readonly InsertElement[]): boolean =>
	elements.find(({ element }) => element === 'length')?.choice === 'three-quarter'

function guideLine(from: Point, to: Point): string {
	return (
		`<line x1="${shown(from.x)}" y1="${shown(from.y)}" x2="${shown(to.x)}" ` +
		`y2="${shown(to.y)}" stroke="#6b7a78" stroke-width="0.2" stroke-dasharray="2 1.5"/>`
	)
}
/** Size of the labels on a foot and of its name, mm. */
const labelMm = { mark: 2.8, name: 3.6 } as const
const insole = '#f4f7f6'
/** A letter is about as wide, against its size; the ground of a label is as wide as its letters. */
const letterWide = 0.56
/** What a mark is, on the ground of the insert: lines of the drawing do not cross it. */
function labelAt(place: Point, words: string): string {
	const { mark: sizeMm } = labelMm
	const widthMm = words.length * letterWide * sizeMm + 1
	return (
		`<rect x="${shown(place.x - widthMm / 2)}" y="${shown(place.y - 0.85 * sizeMm)}" ` +
		`width="${shown(widthMm)}" height="${shown(1.15 * sizeMm)}" fill="${insole}"/>` +
		textAt(place, words, { sizeMm })
	)
}
/** Beyond the front edge of a short insert: room of its name, mm. */
const nameRoom = { halfMm: 14, highMm: 12 } as const

/** A foot that can be drawn, with what its marks are placed by. */
interface DrawnFoot extends PlacedFoot {
	side: Side
	isFull: boolean
	elements: readonly InsertElement[]
}
function drawnFoot({ side, measures, elements }: ReadyFoot, protocol: Protocol): DrawnFoot {
	const outlined = {
		...measures,
		fifthLengthMm: measures.ballLengthMm * protocol.value('insert.fifthHeadPerBall'),
		behindHeadsMm: protocol.value('insert.domeBehindHeadsMm'),
	}
	const border = borderOf(outlined)
	const at = placedOn(side)
	const within: PlacedFoot['within'] = (across, along) => {
		const most = border(across < 0 ? 'outer' : 'inner', along)
		return at(Math.sign(across) * Math.min(Math.abs(across), most), along)
	}
	return { ...outlined, border, at, within, side, isFull: !isThreeQuarter(elements), elements }
}
/** What a foot and its name take of a sheet. */
function edgeOf(foot: DrawnFoot): Point[] {
	const { at, ballLengthMm, isFull } = foot
	const places = outlinePlaces(foot, isFull)
	if (isFull) return places.map(([across, along]) => at(across, along))
	const { halfMm, highMm } = nameRoom
	const front = places.findIndex(([across, along]) => across < 0 && along > ballLengthMm / 2)
	const inner = places.findLastIndex(([across], index) => across > 0 && index < front)
	const top = ballLengthMm + highMm
	return [
		...places.slice(0, inner + 1),
		[halfMm, top] as const,
		[-halfMm, top] as const,
		...places.slice(inner + 1),
	].map(([across, along]) => at(across, along))
}
function drawFoot(foot: DrawnFoot): string {
	const { at, side, isFull, elements, lengthMm, ballLengthMm, fifthLengthMm, widthMm } = foot
	const drawn = marks.flatMap((mark) =>
		elements
			.filter(({ element }) => element === mark.element)
			.map(({ value }) => {
				const { shape, label, across, along } = mark.draw(foot, value)
				return `${shape}${labelAt(at(across, along), label)}`
			}),
	)
	const name = [side === 'left' ? 'Left insert' : 'Right insert', 'from above']
	const head = isFull ? lengthMm * 0.94 : ballLengthMm + nameRoom.highMm - 3
	return [
		`<path d="${outlinePath(foot, isFull)}" fill="${insole}" stroke="#1d2726" stroke-width="0.5"/>`,
		guideLine(at(widthMm * 0.5, ballLengthMm), at(-widthMm * 0.5, fifthLengthMm)),
		guideLine(at(0, 0), at(0, isFull ? head - 7 : ballLengthMm)),
		...drawn,
		...name.map((words, line) => textAt(at(0, head - 4.6 * line), words, { sizeMm: labelMm.name })),
	].join('')
}
const inWords = ({ side, lengthMm, widthMm, heelWidthMm }: DrawnFoot): string =>
	`${side} ${shown(lengthMm)} mm long, ${shown(widthMm)} mm wide at the ball and ` +
	`${shown(heelWidthMm)} mm at the heel`

/**
 * The sheets: both feet on one where the clinic's paper holds them, else one each; on larger paper,
 * both on one again if they can be, only where a foot is longer than the paper lets in. A foot
 * without elements is not drawn; one without its measures is named in `missing`.
 * Right is the mirror image of left for equal measures.
 */
export function insertSheets(
	feet: Readonly<Record<Side, InsertFoot>>,
	protocol: Protocol,
	paper: SheetPaper = 'A4',
): InsertSheets {
	const missing: InsertSheets['missing'] = []
	const ready: DrawnFoot[] = []
	for (const side of bothSides) {
		const { elements, measures } = feet[side]
		if (elements.length === 0) continue
		const measured = measuredOrMissing(measures)
		if (Array.isArray(measured)) missing.push({ side, measures: measured })
		else ready.push(drawnFoot({ side, measures: measured, elements }, protocol))
	}
	return { sheets: sheetsOf(ready, paper), missing }
}
function sheetsOf(feet: readonly DrawnFoot[], paper: SheetPaper): InsertFigure[] {
	if (feet.length === 0) return []
	const { own, larger } = sheetPapers[paper]
	for (const room of [roomOn(own), roomOn(larger)])
		for (const groups of [[feet], feet.map((foot) => [foot])]) {
			const sheets = groups.flatMap((group) => sheetIn(group, room) ?? [])
			if (sheets.length === groups.length) return sheets
		}
	// no measure that the form takes comes here: a foot as long as this is drawn whole all the same
	return feet.flatMap((foot) => {
		const { width, height } = boundsOf(edgeOf(foot))
		const room = { widthMm: width + 2 * controlBarSize.widthMm, heightMm: height + 40 }
		return sheetIn([foot], room) ?? []
	})
}
function sheetIn(feet: readonly DrawnFoot[], room: Room): InsertFigure | undefined {
	const places = arranged(feet.map(edgeOf), room)
	if (!places) return undefined
	const { widthMm, heightMm } = room
	const { x, y, isUpright } = places.bar
	const drawn = feet.map((foot, index) => {
		const at = need(places.feet[index], 'the place of a foot')
		return grouped(at, at.turnDeg, drawFoot(foot))
	})
	// turned by a quarter it stands on its upper left corner
	const bar = grouped(
		{ x, y: isUpright ? y + controlBarSize.widthMm : y },
		isUpright ? -90 : 0,
		controlBar(),
	)
	return {
		sides: feet.map(({ side }) => side),
		svg:
			`<svg xmlns="http://www.w3.org/2000/svg" width="${shown(widthMm)}mm" ` +
			`height="${shown(heightMm)}mm" viewBox="0 0 ${shown(widthMm)} ` +
			`${shown(heightMm)}">${drawn.join('')}${bar}</svg>`,
		widthMm,
		heightMm,
		alternative:
			`True-size insert outline, ${feet.map(inWords).join('; ')}, ` +
			`with a ${controlBarMm} mm control bar.`,
	}
}
const grouped = ({ x, y }: Point, turnDeg: number, drawn: string): string =>
	`<g transform="translate(${shown(x)} ${shown(y)})${turnDeg === 0 ? '' : ` rotate(${turnDeg})`}">` +
	`${drawn}</g>`
