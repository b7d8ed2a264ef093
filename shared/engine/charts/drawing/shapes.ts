/** Shapes and words of a chart as SVG text, in points. */
import type { Series } from '../chart.ts'

/** A rectangle by its upper left corner. */
export interface Box {
	x: number
	y: number
	width: number
	height: number
}
export type Place = readonly [x: number, y: number]
interface Stroke {
	colour: string
	width: number
	/** As in the stroke-dasharray of SVG; unbroken where absent. */
	dash?: string | undefined
}
export const ink = '#1d2726'
export const quiet = '#4a5653'
export const hair = '#d5dbd8'
export const fontSize = 8.5
export const lineHeight = 10.5

/**
 * Mean advance of the font, a little over, so that estimated words are never wider than their room.
 */
export const widthOf = (words: string, bold = false): number =>
	words.length * fontSize * (bold ? 0.62 : 0.58)
/** A length or coordinate as the file writes it: two decimals at most. */
export const short = (value: number): string => String(Math.round(value * 100) / 100)
/** Whether two rectangles share any room; touching edges do not count. */
export const overlap = (box: Box, other: Box): boolean =>
	box.x < other.x + other.width &&
	other.x < box.x + box.width &&
	box.y < other.y + other.height &&
	other.y < box.y + box.height

const escaped = (words: string): string =>
	words
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
/** Words in the font of the house, by their base line. */
export function text(
	[x, y]: Place,
	words: string,
	{
		anchor = 'start',
		colour = ink,
		bold = false,
	}: { anchor?: 'start' | 'middle' | 'end'; colour?: string; bold?: boolean } = {},
): string {
	return (
		`<text x="${short(x)}" y="${short(y)}" font-family="Noto" ` +
		`font-size="${fontSize}"${bold ? ' font-weight="700"' : ''} text-anchor="${anchor}" ` +
		`fill="${colour}">${escaped(words)}</text>`
	)
}
const stroked = ({ colour, width, dash }: Stroke): string =>
	`stroke="${colour}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}`
/** A straight line between two places. */
export const line = ([x1, y1]: Place, [x2, y2]: Place, stroke: Stroke): string =>
	`<line x1="${short(x1)}" y1="${short(y1)}" x2="${short(x2)}" y2="${short(y2)}" ` +
	`${stroked(stroke)}/>`
const traced = (places: readonly Place[]): string =>
	places.map(([x, y], index) => `${index === 0 ? 'M' : 'L'} ${short(x)} ${short(y)}`).join(' ')
/** An open line through the places. */
export const path = (places: readonly Place[], stroke: Stroke): string =>
	`<path d="${traced(places)}" fill="none" ${stroked(stroke)}/>`
/** A closed shape without an edge, washed in the colour. */
export const area = (places: readonly Place[], colour: string): string =>
	`<path d="${traced(places)} Z" fill="${colour}" fill-opacity="0.15"/>`
/** A reading: a filled circle in the colour, or a hollow square in ink. */
export function marker(kind: Series['marker'], [x, y]: Place, colour: string): string {
	return kind === 'circle'
		? `<circle cx="${short(x)}" cy="${short(y)}" r="3.2" fill="${colour}" stroke="#ffffff" ` +
				'stroke-width="0.8"/>'
		: `<rect x="${short(x - 2.9)}" y="${short(y - 2.9)}" width="5.8" height="5.8" ` +
				`fill="#ffffff" stroke="${ink}" stroke-width="1.4"/>`
}
/** The line that joins the readings of a series. */
export const strokeOf = ({ marker: kind, dashed }: Series, colour: string): Stroke => ({
	colour: kind === 'circle' ? colour : ink,
	width: 1.5,
	dash: dashed ? '4 2.5' : undefined,
})
