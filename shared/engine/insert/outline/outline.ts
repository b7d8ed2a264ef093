/**
 * The insert at true size, seen from above: outline, cut-out, dome, posts, apertures and raise on a
 * page printed at 1:1, with a 100 mm bar.
 * Pure: one millimetre of the drawing is one unit of the SVG, and the right foot is the mirror of
 * the left.
 */
import type { InsertElement } from '../../findings/assessment.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { marks } from './marks.ts'
import {
	type Measured,
	outlinePath,
	type PlacedFoot,
	type Point,
	placedAt,
	shown,
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
/** A page, in mm of the drawing and in points of the paper. */
interface InsertFigure {
	sides: Side[]
	svg: string
	widthMm: number
	heightMm: number
	widthPt: number
	heightPt: number
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

/** Points per millimetre, for a page set in points. */
const ptPerMm = 72 / 25.4
/** What a printed page holds, mm: A4 less its margins. @internal */
export const sheet = { widthMm: 190, heightMm: 277 } as const
/** The bar that shows whether the page was printed at 1:1, mm. @internal */
export const controlBarMm = 100
const marginMm = 6
const barRoomMm = 16
const captionRoomMm = 10
const gapMm = 8
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

function text({ x, y }: Point, words: string, size: number): string {
	return (
		`<text x="${shown(x)}" y="${shown(y)}" font-family="Noto" font-size="${size}" ` +
		`text-anchor="middle" fill="#1d2726">${words}</text>`
	)
}
function guideLine(from: Point, to: Point): string {
	return (
		`<line x1="${shown(from.x)}" y1="${shown(from.y)}" x2="${shown(to.x)}" ` +
		`y2="${shown(to.y)}" stroke="#6b7a78" stroke-width="0.2" stroke-dasharray="2 1.5"/>`
	)
}
function drawFoot(
	{ side, measures, elements }: ReadyFoot,
	centreX: number,
	heelY: number,
	protocol: Protocol,
): string {
	const { lengthMm, ballLengthMm, widthMm } = measures
	const fifthLengthMm = ballLengthMm * protocol.value('insert.fifthHeadPerBall')
	const at = placedAt(side, centreX, heelY)
	const behindHeadsMm = protocol.value('insert.domeBehindHeadsMm')
	const foot: PlacedFoot = { ...measures, fifthLengthMm, behindHeadsMm, at }
	const full = !isThreeQuarter(elements)
	const drawn = marks.flatMap((mark) =>
		elements
			.filter(({ element }) => element === mark.element)
			.map(({ value }) => {
				const { shape, label, across, along } = mark.draw(foot, value)
				return `${shape}${text(at(across, along), label, 2.8)}`
			}),
	)
	const caption = `${side === 'left' ? 'Left' : 'Right'} insert, from above`
	return [
		`<path d="${outlinePath(foot, full)}" fill="#f4f7f6" stroke="#1d2726" stroke-width="0.5"/>`,
		guideLine(at(widthMm * 0.5, ballLengthMm), at(-widthMm * 0.5, fifthLengthMm)),
		guideLine(at(0, 0), at(0, full ? lengthMm : ballLengthMm)),
		...drawn,
		text(at(0, -7), caption, 3.6),
	].join('')
}
const controlBar = (y: number): string =>
	`<path d="M ${marginMm} ${shown(y - 2)} V ${shown(y + 2)} M ${marginMm} ${shown(y)} H ` +
	`${marginMm + controlBarMm} M ${marginMm + controlBarMm} ${shown(y - 2)} V ${shown(y + 2)}" ` +
	'fill="none" stroke="#1d2726" stroke-width="0.4"/>' +
	`<text x="${marginMm}" y="${shown(y + 6)}" font-family="Noto" font-size="3" fill="#1d2726">` +
	`This bar must measure ${controlBarMm} mm. If not, print again at 100 % (no fitting to the ` +
	'page).</text>'

const wider = ({ widthMm, heelWidthMm }: Measured): number => Math.max(widthMm, heelWidthMm)
/** Feet side by side with their margins. */
const widthOf = (feet: readonly ReadyFoot[]): number =>
	feet.reduce((sumMm, { measures }) => sumMm + wider(measures), 0) +
	gapMm * (feet.length - 1) +
	2 * marginMm
const lengthOf = ({ measures, elements }: ReadyFoot): number =>
	isThreeQuarter(elements) ? measures.ballLengthMm : measures.lengthMm
const inWords = ({ side, measures: { lengthMm, widthMm, heelWidthMm } }: ReadyFoot): string =>
	`${side} ${shown(lengthMm)} mm long, ${shown(widthMm)} mm wide at the ball and ` +
	`${shown(heelWidthMm)} mm at the heel`

/**
 * The sheets: both feet on one where they fit the page, else one each. A foot without elements is
 * not drawn; one without its measures is named in `missing`.
 * Right is the mirror image of left for equal measures.
 */
export function insertSheets(
	feet: Readonly<Record<Side, InsertFoot>>,
	protocol: Protocol,
): InsertSheets {
	const missing: InsertSheets['missing'] = []
	const ready: ReadyFoot[] = []
	for (const side of bothSides) {
		const { elements, measures } = feet[side]
		if (elements.length === 0) continue
		const measured = measuredOrMissing(measures)
		if (Array.isArray(measured)) missing.push({ side, measures: measured })
		else ready.push({ side, measures: measured, elements })
	}
	const together = ready.length === 2 && widthOf(ready) <= sheet.widthMm
	const groups = together ? [ready] : ready.map((foot) => [foot])
	return { sheets: groups.map((group) => sheetOf(group, protocol)), missing }
}
function sheetOf(group: readonly ReadyFoot[], protocol: Protocol): InsertFigure {
	const widthMm = Math.max(widthOf(group), controlBarMm + 2 * marginMm)
	const heelY = marginMm + Math.max(...group.map(lengthOf))
	const heightMm = heelY + captionRoomMm + barRoomMm
	const spareMm = (widthMm - widthOf(group)) / 2
	let leftX = marginMm + spareMm
	const drawn = group.map((foot) => {
		const wide = wider(foot.measures)
		const svg = drawFoot(foot, leftX + wide / 2, heelY, protocol)
		leftX += wide + gapMm
		return svg
	})
	const bar = controlBar(heelY + captionRoomMm + 2)
	return {
		sides: group.map(({ side }) => side),
		svg:
			`<svg xmlns="http://www.w3.org/2000/svg" width="${shown(widthMm)}mm" ` +
			`height="${shown(heightMm)}mm" viewBox="0 0 ${shown(widthMm)} ` +
			`${shown(heightMm)}">${drawn.join('')}${bar}</svg>`,
		widthMm,
		heightMm,
		widthPt: widthMm * ptPerMm,
		heightPt: heightMm * ptPerMm,
		alternative:
			`True-size insert outline, ${group.map(inWords).join('; ')}, ` +
			`with a ${controlBarMm} mm control bar.`,
	}
}
/**
 * True where a sheet is larger than a page holds: it must be printed on larger paper, never shrunk.
 * @internal
 */
export const tooLarge = (figure: InsertFigure): boolean =>
	figure.widthMm > sheet.widthMm || figure.heightMm > sheet.heightMm
