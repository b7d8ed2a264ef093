/** Words, colours and rules that every part of a page is drawn with. */
import type { Page, Scale } from './page.ts'
import type { NodeIs, Part } from './print/part.ts'

/** A part of a pdfmake definition. */
export type Node = Record<string, unknown> & {
	is?: NodeIs
	part?: Part
	/** A part of the text begins with it, so that a page may end before it. */
	begins?: boolean
	/** What is set under the text begins with it. */
	closes?: boolean
	/** Of what is drawn: in which part of the text it stands. */
	place?: number
}
export interface Look {
	/** Of the clinic, dark enough for text. */
	colour: string
	page: Page
	scale: Scale
}
export const ink = '#1d2726'
export const quiet = '#56625f'
export const hair = '#cfd6d2'

/** A text with how it is drawn. */
export const words = (text: string, more: Node = {}): Node => ({ text, ...more })
/** More than this is let break across pages: it could be taller than one. */
export const keepTogether = 1400
/** Letters of all the texts together: about how much room they take. */
export const lengthOf = (texts: readonly string[]): number =>
	texts.reduce((sum, text) => sum + text.length, 0)
/** A table without a line. @param right of each cell, points. @param pad above and below it */
export const bare = (right: number, pad = 0) => ({
	hLineWidth: () => 0,
	vLineWidth: () => 0,
	paddingLeft: () => 0,
	paddingRight: () => right,
	paddingTop: () => pad,
	paddingBottom: () => pad,
})
/**
 * A table with horizontal lines only.
 * @param widthOf the width of the line over a row; `rows` is that of the line under the last one
 * @param pad above and below the words, points
 */
export const lined = (widthOf: (row: number, rows: number) => number, pad = 3.5) => ({
	hLineWidth: (row: number, node: { table: { body: unknown[] } }) =>
		widthOf(row, node.table.body.length),
	vLineWidth: () => 0,
	hLineColor: () => hair,
	paddingLeft: () => 6,
	paddingRight: () => 6,
	paddingTop: () => pad,
	paddingBottom: () => pad,
})
