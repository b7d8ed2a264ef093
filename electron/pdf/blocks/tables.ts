/** Tables of words. */
import { present } from '../../../shared/engine/plain/present.ts'
import type { BlockOf } from '../../../shared/engine/report/document.ts'
import { keepTogether, type Look, lengthOf, lined, type Node, quiet, words } from '../look.ts'

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
export function table(block: BlockOf<'table'>, { colour, page, scale }: Look): Node {
	const { caption, head, rows, widths, align } = block
	const placed = (column: number) =>
		present({ alignment: align?.[column] ?? (isOfNumbers(rows, column) ? 'right' : undefined) })
	return {
		is: 'captioned',
		unbreakable: isShortTable(block),
		stack: [
			words(caption, {
				is: 'caption',
				fontSize: scale.caption,
				color: quiet,
				margin: [0, 3 * scale.gap, 0, 2 * scale.gap],
				headlineLevel: 3,
			}),
			{
				is: 'data',
				layout: lined(ruleWidth, scale.gap < tightGap ? 1.2 : 2.6),
				table: {
					headerRows: 1,
					dontBreakRows: rows.every((row) => lengthOf(row) < keepTogether),
					keepWithHeaderRows: 1,
					widths: widths
						? fitting(widths, page.bodyPt, scale.cell)
						: head.map((_, index) => (index === 0 ? '*' : 'auto')),
					body: [
						head.map((text, index) =>
							words(text, {
								bold: true,
								fontSize: scale.head,
								color: colour,
								...placed(index),
							}),
						),
						...rows.map((row) =>
							head.map((_, index) =>
								words(row[index] ?? '', { fontSize: scale.cell, ...placed(index) }),
							),
						),
					],
				},
			},
		],
		margin: [0, 0, 0, 7 * scale.gap],
	}
}
const aNumber = /^[-\u2212]?\d+([.,]\d+)?$/
/** Numbers alone stand under one another by their last digit; the first column names its rows. */
const isOfNumbers = (rows: readonly string[][], column: number): boolean => {
	const cells = rows.map((row) => row[column] ?? '').filter((words) => words !== '')
	return column > 0 && cells.length > 0 && cells.every((words) => aNumber.test(words))
}
/** Left and right of the words of a cell, points. */
const cellSides = 12
/** The least that a column without a width is, against the size of its letters: a part of a word. */
const leastColumn = 6
type Widths = NonNullable<BlockOf<'table'>['widths']>
/** Widths were chosen for A4: on narrower paper, or beside something, each gives up its share. */
function fitting(widths: Widths, bodyPt: number, letters: number): Widths {
	const given = widths.reduce<number>((sum, one) => sum + (typeof one === 'number' ? one : 0), 0)
	const open = widths.filter((one) => typeof one !== 'number').length
	const room = bodyPt - widths.length * cellSides - open * leastColumn * letters
	const share = Math.min(1, room / given)
	return widths.map((one) => (typeof one === 'number' ? Math.floor(one * share) : one))
}
/** None over the head, a strong one under it, a fine one under each row. */
function ruleWidth(row: number, rows: number): number {
	if (row === 0) return 0
	if (row === 1) return 1.2
	return row === rows ? 0.6 : 0.4
}
