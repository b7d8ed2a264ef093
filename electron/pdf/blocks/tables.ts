/** Tables of words, and the wall chart with its patterns. */
import type { BlockOf, ChartCell, Pattern } from '../../../shared/engine/report/document.ts'
import {
	hair,
	ink,
	keepTogether,
	type Look,
	lengthOf,
	lined,
	type Node,
	quiet,
	words,
} from '../look.ts'
import type { Scale } from '../page.ts'

/** A table of at most so many rows stays whole. */
const fewRows = 6
/** A scale with gaps under this is that of a letter on one page: its rows stand closer. */
const tightGap = 0.7

/** Whether a table stays whole: few rows with few letters. */
export const isShortTable = ({ rows }: BlockOf<'table'>): boolean =>
	rows.length <= fewRows && lengthOf(rows.flat()) < keepTogether
/**
 * A short table stays whole, with its caption; a long one breaks between rows under a repeated
 * head.
 */
export function table(block: BlockOf<'table'>, { colour, scale }: Look): Node {
	const { caption, head, rows, widths } = block
	return {
		unbreakable: isShortTable(block),
		stack: [
			words(caption, {
				fontSize: scale.caption,
				color: quiet,
				margin: [0, 3 * scale.gap, 0, 2 * scale.gap],
				headlineLevel: 3,
			}),
			{
				layout: lined(ruleWidth, scale.gap < tightGap ? 1.2 : 2.6),
				table: {
					headerRows: 1,
					dontBreakRows: rows.every((row) => lengthOf(row) < keepTogether),
					keepWithHeaderRows: 1,
					widths: widths ?? head.map((_, index) => (index === 0 ? '*' : 'auto')),
					body: [
						head.map((text) => words(text, { bold: true, fontSize: scale.head, color: colour })),
						...rows.map((row) =>
							head.map((_, index) => words(row[index] ?? '', { fontSize: scale.cell })),
						),
					],
				},
			},
		],
		margin: [0, 0, 0, 7 * scale.gap],
	}
}
/** None over the head, a strong one under it, a fine one under each row. */
function ruleWidth(row: number, rows: number): number {
	if (row === 0) return 0
	if (row === 1) return 1.2
	return row === rows ? 0.6 : 0.4
}

/** The field beside a letter that shows its pattern, in points. */
const swatch = { w: 30, h: 16 }
/** The wall chart: a box a session, its letter large, its pattern beside it. */
export const chart = (
	{ caption, head, rows, widths }: BlockOf<'chart'>,
	{ colour, scale }: Look,
): Node => ({
	unbreakable: rows.length <= fewRows,
	stack: [
		words(caption, {
			fontSize: scale.caption,
			color: quiet,
			margin: [0, 0, 0, 3],
			headlineLevel: 3,
		}),
		{
			layout: {
				hLineWidth: () => 0.8,
				vLineWidth: () => 0.8,
				hLineColor: () => hair,
				vLineColor: () => hair,
				paddingLeft: () => 5,
				paddingRight: () => 3,
				paddingTop: () => 2,
				paddingBottom: () => 3,
			},
			table: {
				headerRows: 1,
				dontBreakRows: true,
				keepWithHeaderRows: 1,
				widths,
				body: [
					head.map((text) => words(text, { bold: true, fontSize: scale.head, color: colour })),
					...rows.map((row) =>
						head.map((_, index) => chartCell(row[index] ?? { text: '' }, scale)),
					),
				],
			},
		},
	],
	margin: [0, 0, 0, 7],
})
function chartCell({ text, below, pattern, after }: ChartCell, scale: Scale): Node {
	const large = { fontSize: scale.chart, bold: true, lineHeight: 1, width: 'auto' }
	const worn = {
		columns: [
			words(text, large),
			// the pattern stands beside the letter, never over it
			...patternField(pattern),
			...(after ? [words(after, large)] : []),
		],
		columnGap: 6,
	}
	return {
		stack: [
			...(text ? [worn] : []),
			...(below ? [words(below, { fontSize: scale.cell, lineHeight: 1.05 })] : []),
		],
	}
}
function patternField(pattern: Pattern | undefined): Node[] {
	if (!pattern || pattern === 'plain') return []
	const field = { type: 'rect', x: 0, y: 5, ...swatch }
	return [
		{
			width: swatch.w + 4,
			canvas: [
				{ ...field, color: [pattern, ink] },
				{ ...field, lineWidth: 0.6, lineColor: ink },
			],
		},
	]
}
const tile = (pattern: string) => ({ boundingBox: [0, 0, 8, 8], xStep: 8, yStep: 8, pattern })
/**
 * Tiles of the patterns, in points, new each time: pdfmake writes into what it is given. The page
 * has its second axis downwards: a line to a larger y falls to the right.
 */
export const patternTiles = (): Record<Exclude<Pattern, 'plain'>, object> => ({
	rising: tile('1.6 w -1 9 m 9 -1 l s -1 1 m 1 -1 l s 7 9 m 9 7 l s'),
	falling: tile('1.6 w -1 -1 m 9 9 l s -1 7 m 1 9 l s 7 -1 m 9 1 l s'),
	dots: tile('2.5 2.5 3 3 re f'),
	bars: tile('3 0 2 8 re f'),
	grid: tile('0 3 8 1.4 re f 3 0 1.4 8 re f'),
})
