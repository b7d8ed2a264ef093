/** The parts of a page as a reader that speaks walks them: heading, paragraph, list, table, figure. */
import { present } from '../../../shared/engine/plain/present.ts'

/** Standard structure types (ISO 32000-1, 14.8.4). */
type Role =
	| 'Document'
	| 'Sect'
	| 'H1'
	| 'H2'
	| 'H3'
	| 'P'
	| 'L'
	| 'LI'
	| 'Lbl'
	| 'LBody'
	| 'Table'
	| 'TR'
	| 'TH'
	| 'TD'
	| 'Caption'
	| 'Figure'
/** What of a part stands on paper: a run between two marks. */
export type Run = object
/** One element of the structure; its runs come as the page is drawn. */
export interface Part {
	role: Role
	/** Which cells a head speaks for. */
	scope?: 'Column' | 'Row'
	/** What is said of a drawing. */
	alternative?: string
	inner: (Part | Run)[]
}
/** A new part, put last into another. */
export function partOf(
	parent: Part,
	role: Role,
	more: Pick<Part, 'scope' | 'alternative'> = {},
): Part {
	const part: Part = { role, inner: [], ...present(more) }
	parent.inner.push(part)
	return part
}
export const isPart = (inner: Part | Run): inner is Part => 'role' in inner
/** What a node is, where its form does not tell. */
export type NodeIs =
	/** Of headings and captions. */
	| 'title'
	| 'heading'
	| 'sub'
	| 'caption'
	/** A drawing or a table with its caption. */
	| 'captioned'
	/** A table whose first row names the columns, and the first cell of each its row. */
	| 'data'
	/** A table of names and what they hold. */
	| 'facts'
	/** Rows that are the items of a list: its number, what it says. */
	| 'items'
	/** A part of its own, in a box. */
	| 'box'
	/** Nothing is said of it. */
	| 'decoration'
