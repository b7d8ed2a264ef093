/**
 * The insert at true size, seen from above: outline, cut-out, dome, posts, apertures and raise on a
 * page printed at 1:1, with a 100 mm bar.
 * Pure: one millimetre of the drawing is one unit of the SVG, and the right foot is the mirror of
 * the left.
 */
import type { InsertElement } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { domeEdgeMm, postHeightMm } from './dose.ts'

/** Measures of one foot, mm. All four are needed: a true-size page is not drawn from guesses. */
export interface InsertMeasures {
	lengthMm?: number | undefined
	ballLengthMm?: number | undefined
	widthMm?: number | undefined
	heelWidthMm?: number | undefined
}
export interface InsertFoot {
	measures: InsertMeasures
	elements: readonly InsertElement[]
}
export interface InsertFigure {
	sides: Side[]
	svg: string
	widthMm: number
	heightMm: number
	widthPt: number
	heightPt: number
	alternative: string
}
export interface InsertSheets {
	sheets: InsertFigure[]
	missing: { side: Side; measures: string[] }[]
}
type Measured = { length: number; ball: number; width: number; heel: number }

/** Points per millimetre, for a page set in points. */
const ptPerMm = 72 / 25.4
/** What a printed page holds, mm: A4 less its margins. */
export const sheet = { widthMm: 190, heightMm: 277 } as const
/** The bar that shows whether the page was printed at 1:1, mm. */
export const controlBarMm = 100
const margin = 6,
	barRoom = 16,
	captionRoom = 10,
	gap = 8
const names: Record<keyof InsertMeasures, string> = {
	lengthMm: 'heel to toe',
	ballLengthMm: 'heel to ball',
	widthMm: 'ball width',
	heelWidthMm: 'heel width',
}
const n = (value: number) => String(rounded(value, 2))

function measured(measures: InsertMeasures): Measured | string[] {
	const missing = (Object.keys(names) as (keyof InsertMeasures)[])
		.filter((key) => !((measures[key] ?? 0) > 0))
		.map((key) => names[key])
	if (missing.length === 0 && measures.ballLengthMm! >= measures.lengthMm!)
		return ['a heel to ball length shorter than heel to toe'] // one of the two was misread
	return missing.length > 0
		? missing
		: {
				length: measures.lengthMm!,
				ball: measures.ballLengthMm!,
				width: measures.widthMm!,
				heel: measures.heelWidthMm!,
			}
}
/**
 * Places a point: across is mm towards the big toe from the middle line, along is mm from the back
 * of the heel.
 */
type Place = (across: number, along: number) => { x: number; y: number }
const placer =
	(side: Side, centreX: number, heelY: number): Place =>
	(across, along) => ({ x: centreX + (side === 'left' ? across : -across), y: heelY - along })
const path = (points: readonly (string | { x: number; y: number })[]) =>
	points
		.map((point) => (typeof point === 'string' ? point : `${n(point.x)} ${n(point.y)}`))
		.join(' ')

/**
 * The outline from heel to the front edge, closed. Full length follows the foot; three-quarter ends
 * behind the heads.
 */
export function outlinePath(
	at: Place,
	m: Measured,
	full: boolean,
	fifth: number,
	behind: number,
): string {
	const h = m.heel / 2,
		w = m.width / 2,
		{ ball, length } = m
	const end = full ? ball : ball - behind,
		outerEnd = full ? fifth : fifth - behind
	const back = [
		'M',
		at(0, 0),
		'C',
		at(h * 0.7, 0),
		at(h, ball * 0.08),
		at(h, ball * 0.2),
		'C',
		at(h, ball * 0.5),
		at(w * 0.78, ball * 0.72),
		at(w, end),
	]
	const front = full
		? [
				'C',
				at(w, length * 0.86),
				at(w * 0.9, length),
				at(w * 0.5, length),
				'C',
				at(w * 0.1, length),
				at(-w, length * 0.95),
				at(-w, fifth),
			]
		: ['L', at(-w, outerEnd)]
	return path([
		...back,
		...front,
		'C',
		at(-w, fifth * 0.7),
		at(-h, ball * 0.5),
		at(-h, ball * 0.2),
		'C',
		at(-h, ball * 0.08),
		at(-h * 0.7, 0),
		at(0, 0),
		'Z',
	])
}

interface Mark {
	element: string
	svg(
		at: Place,
		m: Measured,
		one: InsertElement,
		fifth: number,
		protocol: Protocol,
	): { shape: string; label: string; across: number; along: number }
}
const ellipse = (
	at: Place,
	across: number,
	along: number,
	rx: number,
	ry: number,
	style: string,
) => {
	const c = at(across, along)
	return `<ellipse cx="${n(c.x)}" cy="${n(c.y)}" rx="${n(rx)}" ry="${n(ry)}" ${style}/>`
}
const area = (points: { x: number; y: number }[], style: string) =>
	`<path d="${path(['M', points[0]!, ...points.slice(1).flatMap((point) => ['L', point]), 'Z'])}" ` +
	`${style}/>`
const wedge = 'fill="#b9c6c4" fill-opacity="0.6" stroke="#1d2726" stroke-width="0.25"',
	cut = 'fill="#ffffff" stroke="#1d2726" stroke-width="0.4" stroke-dasharray="1.6 1"',
	pad = 'fill="#8aa6a1" fill-opacity="0.6" stroke="#1d2726" stroke-width="0.25"',
	ring = 'fill="none" stroke="#1d2726" stroke-width="0.3" stroke-dasharray="0.8 0.8"'
const postArea = (at: Place, m: Measured, inner: boolean) => {
	const s = inner ? 1 : -1,
		h = (m.heel / 2) * s
	return area(
		[at(0, m.ball * 0.04), at(h * 0.92, m.ball * 0.12), at(h, m.ball * 0.34), at(0, m.ball * 0.34)],
		wedge,
	)
}
const postLabel = (m: Measured, one: InsertElement) =>
	`${n(one.value ?? 0)} deg, ${n(postHeightMm(m.heel, one.value ?? 0))} mm`
/** How each element is drawn; places are proportions of the player's own measures. */
const marks: readonly Mark[] = [
	{
		element: 'heel-raise',
		svg: (at, m, one) => ({
			shape: area(
				[
					at(-m.heel * 0.46, m.ball * 0.12),
					at(m.heel * 0.46, m.ball * 0.12),
					at(m.heel * 0.46, m.ball * 0.4),
					at(-m.heel * 0.46, m.ball * 0.4),
				],
				ring,
			),
			label: `raise ${n(one.value ?? 0)} mm`,
			across: 0,
			along: m.ball * 0.42,
		}),
	},
	{
		element: 'leg-length-raise',
		svg: (at, m, one) => ({
			shape: area(
				[
					at(-m.heel * 0.42, m.ball * 0.14),
					at(m.heel * 0.42, m.ball * 0.14),
					at(m.heel * 0.42, m.ball * 0.5),
					at(-m.heel * 0.42, m.ball * 0.5),
				],
				ring,
			),
			label: one.value === undefined ? 'refer first' : `leg raise ${n(one.value)} mm`,
			across: 0,
			along: m.ball * 0.52,
		}),
	},
	{
		element: 'rearfoot-post-medial',
		svg: (at, m, one) => ({
			shape: postArea(at, m, true),
			label: postLabel(m, one),
			across: 0,
			along: m.ball * 0.37,
		}),
	},
	{
		element: 'rearfoot-post-lateral',
		svg: (at, m, one) => ({
			shape: postArea(at, m, false),
			label: postLabel(m, one),
			across: 0,
			along: m.ball * 0.37,
		}),
	},
	{
		element: 'medial-skive',
		svg: (at, m, one) => ({
			shape: ellipse(at, m.heel * 0.24, m.ball * 0.14, m.heel * 0.2, m.ball * 0.09, wedge),
			label: `skive ${n(one.value ?? 0)} mm`,
			across: 0,
			along: m.ball * 0.27,
		}),
	},
	{
		element: 'lateral-skive',
		svg: (at, m, one) => ({
			shape: ellipse(at, -m.heel * 0.24, m.ball * 0.14, m.heel * 0.2, m.ball * 0.09, wedge),
			label: `skive ${n(one.value ?? 0)} mm`,
			across: 0,
			along: m.ball * 0.27,
		}),
	},
	{
		element: 'heel-cushion',
		svg: (at, m, one) => ({
			shape: ellipse(at, 0, m.ball * 0.16, m.heel * 0.36, m.ball * 0.13, pad),
			label: `cushion ${n(one.value ?? 0)} mm`,
			across: 0,
			along: m.ball * 0.31,
		}),
	},
	{
		element: 'heel-aperture',
		svg: (at, m, one) => ({
			shape: ellipse(at, 0, m.ball * 0.16, m.heel * 0.24, m.ball * 0.09, cut),
			label: `${n(one.value ?? 0)} mm deep`,
			across: 0,
			along: m.ball * 0.16,
		}),
	},
	{
		element: 'metatarsal-dome',
		svg: (at, m, _one, _fifth, protocol) => {
			const edge = domeEdgeMm(m.ball, protocol.value('insert.domeBehindHeadsMm')),
				reach = m.ball * 0.11
			return {
				shape: ellipse(at, 0, edge - reach, m.width * 0.16, reach, pad),
				label: `dome, edge ${n(edge)} mm`,
				across: 0,
				along: edge - 2.3 * reach,
			}
		},
	},
	{
		element: 'first-ray-cutout',
		svg: (at, m, one, _fifth, protocol) => {
			const back = m.ball * 0.78,
				end = m.ball - protocol.value('insert.domeBehindHeadsMm')
			return {
				shape: area(
					[
						at(m.width * 0.5, end),
						at(m.width * 0.2, end),
						at(m.width * 0.2, back),
						at(m.width * 0.4, back),
					],
					cut,
				),
				label: `cut-out ${n(one.value ?? 0)} mm`,
				across: m.width * 0.18,
				along: back - 4,
			}
		},
	},
	{
		element: 'first-head-aperture',
		svg: (at, m, one) => ({
			shape: ellipse(at, m.width * 0.3, m.ball, m.width * 0.15, m.width * 0.15, cut),
			label: `${n(one.value ?? 0)} mm`,
			across: m.width * 0.3,
			along: m.ball,
		}),
	},
	{
		element: 'forefoot-post-medial',
		svg: (at, m, one, fifth) => ({
			shape: area(
				[
					at(m.width * 0.5, m.ball),
					at(m.width * 0.12, (m.ball + fifth) / 2),
					at(m.width * 0.12, m.ball * 0.8),
					at(m.width * 0.4, m.ball * 0.82),
				],
				wedge,
			),
			label: `${n(one.value ?? 0)} deg`,
			across: m.width * 0.26,
			along: m.ball * 0.9,
		}),
	},
	{
		element: 'forefoot-post-lateral',
		svg: (at, m, one, fifth) => ({
			shape: area(
				[
					at(-m.width * 0.5, fifth),
					at(m.width * 0.1, (m.ball + fifth) / 2 + 2),
					at(m.width * 0.1, m.ball * 0.78),
					at(-m.width * 0.4, fifth * 0.82),
				],
				wedge,
			),
			label: `${n(one.value ?? 0)} deg`,
			across: -m.width * 0.24,
			along: m.ball * 0.84,
		}),
	},
	{
		element: 'forefoot-cushion',
		svg: (at, m, one) => ({
			shape: ellipse(at, 0, m.ball * 0.98, m.width * 0.4, m.ball * 0.08, pad),
			label: `cushion ${n(one.value ?? 0)} mm`,
			across: 0,
			along: m.ball * 1.08,
		}),
	},
	{
		element: 'forefoot-stiffener',
		svg: (at, m, one) => ({
			shape: area(
				[
					at(m.width * 0.3, m.length * 0.95),
					at(m.width * 0.38, m.ball),
					at(m.width * 0.2, m.ball * 0.4),
					at(-m.width * 0.2, m.ball * 0.4),
					at(-m.width * 0.38, m.ball * 0.94),
					at(-m.width * 0.2, m.length * 0.9),
				],
				ring,
			),
			label: `stiff plate ${n(one.value ?? 0)} mm`,
			across: 0,
			along: m.ball * 0.62,
		}),
	},
]
const order = (element: string) => marks.findIndex((mark) => mark.element === element)

function drawFoot(
	side: Side,
	centreX: number,
	heelY: number,
	m: Measured,
	foot: InsertFoot,
	protocol: Protocol,
): string {
	const at = placer(side, centreX, heelY),
		fifth = m.ball * protocol.value('insert.fifthHeadPerBall')
	const length = foot.elements.find((element) => element.element === 'length')?.choice,
		full = length !== 'three-quarter'
	const text = (across: number, along: number, words: string, size = 3) => {
		const p = at(across, along)
		return (
			`<text x="${n(p.x)}" y="${n(p.y)}" font-family="Noto" font-size="${size}" ` +
			`text-anchor="middle" fill="#1d2726">${words}</text>`
		)
	}
	const drawn = [...foot.elements]
		.filter((element) => order(element.element) >= 0)
		.sort((a, b) => order(a.element) - order(b.element))
		.map((element) => {
			const { shape, label, across, along } = marks[order(element.element)]!.svg(
				at,
				m,
				element,
				fifth,
				protocol,
			)
			return `${shape}${text(across, along, label, 2.8)}`
		})
	const heads = [at(m.width * 0.5, m.ball), at(-m.width * 0.5, fifth)],
		centre = [at(0, 0), at(0, full ? m.length : m.ball)]
	const line = ([a, b]: { x: number; y: number }[]) =>
		`<line x1="${n(a!.x)}" y1="${n(a!.y)}" x2="${n(b!.x)}" y2="${n(b!.y)}" stroke="#6b7a78" ` +
		'stroke-width="0.2" stroke-dasharray="2 1.5"/>'
	return (
		'<path ' +
		`d="${outlinePath(at, m, full, fifth, protocol.value('insert.domeBehindHeadsMm'))}" ` +
		'fill="#f4f7f6" stroke="#1d2726" ' +
		`stroke-width="0.5"/>${line(heads)}${line(centre)}${drawn.join('')}${text(0, -7, `${side === 'left' ? 'Left' : 'Right'} insert, from above`, 3.6)}`
	)
}
const bar = (y: number) =>
	`<path d="M ${margin} ${n(y - 2)} V ${n(y + 2)} M ${margin} ${n(y)} H ` +
	`${margin + controlBarMm} M ${margin + controlBarMm} ${n(y - 2)} V ${n(y + 2)}" fill="none" ` +
	`stroke="#1d2726" stroke-width="0.4"/><text x="${margin}" y="${n(y + 6)}" font-family="Noto" ` +
	`font-size="3" fill="#1d2726">This bar must measure ${controlBarMm} mm. If not, print again ` +
	'at 100 % (no fitting to the page).</text>'

/**
 * The sheets: both feet on one where they fit the page, else one each. A foot without elements is
 * not drawn; one without its measures is named in `missing`.
 * Right is the mirror image of left for equal measures.
 */
export function insertSheets(
	feet: Readonly<Record<Side, InsertFoot>>,
	protocol: Protocol,
): InsertSheets {
	const missing: InsertSheets['missing'] = [],
		ready: { side: Side; m: Measured }[] = []
	for (const side of bothSides) {
		if (feet[side].elements.length === 0) continue
		const m = measured(feet[side].measures)
		if (Array.isArray(m)) missing.push({ side, measures: m })
		else ready.push({ side, m })
	}
	const widthOf = (list: typeof ready) =>
		list.reduce((sum, one) => sum + Math.max(one.m.width, one.m.heel), 0) +
		gap * (list.length - 1) +
		2 * margin
	const groups =
		ready.length === 2 && widthOf(ready) <= sheet.widthMm ? [ready] : ready.map((one) => [one])
	const sheets = groups.map((group): InsertFigure => {
		const widthMm = Math.max(widthOf(group), controlBarMm + 2 * margin),
			tallest = Math.max(
				...group.map((one) =>
					feet[one.side].elements.find((part) => part.element === 'length')?.choice ===
					'three-quarter'
						? one.m.ball
						: one.m.length,
				),
			)
		const heelY = margin + tallest,
			heightMm = heelY + captionRoom + barRoom
		const spare = (widthMm - widthOf(group)) / 2
		let left = margin + spare
		const drawn = group.map(({ side, m }) => {
			const wide = Math.max(m.width, m.heel),
				svg = drawFoot(side, left + wide / 2, heelY, m, feet[side], protocol)
			left += wide + gap
			return svg
		})
		const svg =
			`<svg xmlns="http://www.w3.org/2000/svg" width="${n(widthMm)}mm" ` +
			`height="${n(heightMm)}mm" viewBox="0 0 ${n(widthMm)} ` +
			`${n(heightMm)}">${drawn.join('')}${bar(heelY + captionRoom + 2)}</svg>`
		return {
			sides: group.map((one) => one.side),
			svg,
			widthMm,
			heightMm,
			widthPt: widthMm * ptPerMm,
			heightPt: heightMm * ptPerMm,
			alternative:
				'True-size insert outline, ' +
				`${group.map(({ side, m }) => `${side} ${n(m.length)} mm long, ${n(m.width)} mm wide at the ball and ${n(m.heel)} mm at the heel`).join('; ')}, ` +
				`with a ${controlBarMm} mm control bar.`,
		}
	})
	return { sheets, missing }
}
/**
 * True where a sheet is larger than a page holds: it must be printed on larger paper, never shrunk.
 */
export const tooLarge = (figure: InsertFigure): boolean =>
	figure.widthMm > sheet.widthMm || figure.heightMm > sheet.heightMm
