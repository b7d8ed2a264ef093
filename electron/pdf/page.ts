/** Paper, margins and the type scale of each kind of page, in points. */
import { sheetEdges } from '../../shared/engine/insert/outline/paper.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'

export const ptPerMm = 72 / 25.4
const papers = { A4: [595.28, 841.89], Letter: [612, 792], A3: [841.89, 1190.55] } as const
/** The larger sheet for a true-size figure that the clinic's paper cannot hold. */
const largerOf = { A4: 'A3', Letter: 'TABLOID', A3: 'A2' } as const
const largerSize = { A4: papers.A3, Letter: [792, 1224], A3: [1190.55, 1683.78] } as const
export interface Scale {
	body: number
	small: number
	note: number
	strong: number
	lead: number
	headline: number
	title: number
	heading: number
	sub: number
	caption: number
	cell: number
	head: number
	label: number
	chart: number
	gap: number
}
/** One scale a use: a report, a letter on one page, a chart on a wall. */
const scales: Record<NonNullable<LwDocument['print']>, Scale> = {
	body: {
		body: 10,
		small: 8.2,
		note: 7.4,
		strong: 10,
		lead: 11,
		headline: 17,
		title: 20,
		heading: 13.5,
		sub: 11,
		caption: 8.6,
		cell: 9.2,
		head: 8.8,
		label: 8.4,
		chart: 14,
		gap: 1,
	},
	reading: {
		body: 10.8,
		small: 9,
		note: 7.4,
		strong: 10.8,
		lead: 12,
		headline: 17,
		title: 18,
		heading: 13,
		sub: 11.4,
		caption: 9,
		cell: 10.2,
		head: 9.4,
		label: 8.6,
		chart: 14,
		gap: 0.66,
	},
	compact: {
		body: 9.2,
		small: 8,
		note: 7,
		strong: 9.2,
		lead: 10.6,
		headline: 13,
		title: 17,
		heading: 10.8,
		sub: 10,
		caption: 8,
		cell: 8.6,
		head: 8.4,
		label: 8.2,
		chart: 14,
		gap: 0.55,
	},
	wall: {
		body: 11,
		small: 10,
		note: 10,
		strong: 11,
		lead: 12,
		headline: 18,
		title: 20,
		heading: 15,
		sub: 14,
		caption: 10,
		cell: 10,
		head: 11,
		label: 10,
		chart: 15,
		gap: 0.6,
	},
}
/** How much larger everything is on the large sheet of a wall. */
const onLargeSheet = 1.4
/**
 * How large the letters are tried, largest first, until what must stand on one page does: page one
 * of a report, a letter. Nothing in the hands of a player falls under 9 points.
 */
const triedSizes: Record<NonNullable<LwDocument['print']>, readonly number[]> = {
	body: [1],
	reading: [1, 0.95, 0.9, 0.85],
	compact: [1, 0.95, 0.91],
	wall: [1],
}
export const sizesOf = ({ print = 'body' }: LwDocument): readonly number[] => triedSizes[print]
const times = (scale: Scale, factor: number): Scale => ({
	...scale,
	...Object.fromEntries(Object.entries(scale).map(([use, points]) => [use, points * factor])),
})
/** The type scale of a document. @param size of its letters, against their usual one */
export function scaleOf(
	{ print = 'body', paper }: LwDocument,
	{ size, isClose }: Setting = usualSetting,
): Scale {
	const scale = isClose ? { ...scales[print], gap: closer[print].gap } : scales[print]
	if (print === 'wall') return paper === 'A3' ? times(scale, onLargeSheet) : scale
	return size === 1 ? scale : times(scale, size)
}
/** How a document is tried: the size of its letters against the usual one, and how close its lines. */
export interface Setting {
	size: number
	/** Lines and paragraphs stand closer, the letters as they are. */
	isClose: boolean
}
export const usualSetting: Setting = { size: 1, isClose: false }
/**
 * The usual one, then smaller letters. Closer lines come first in the hands of a player, whose letters
 * stay large, and last on the one page of a letter or an order.
 */
export function settingsOf(document: LwDocument): readonly Setting[] {
	const { print } = document
	const sizes = sizesOf(document)
	const smallest = Math.min(...sizes)
	return sizes.flatMap((size) => {
		const mayBeClose = print === 'reading' || (print === 'compact' && size === smallest)
		const close = mayBeClose ? [{ size, isClose: true }] : []
		return [{ size, isClose: false }, ...close]
	})
}
/** Of leading and gaps of lines that stand closer; what hangs on a wall is fitted to its page. */
const closer: Record<NonNullable<LwDocument['print']>, { leading: number; gap: number }> = {
	body: { leading: 1, gap: 0.7 },
	reading: { leading: 0.92, gap: 0.55 },
	compact: { leading: 1, gap: 0.45 },
	wall: { leading: 1.16, gap: 0.6 },
}
/**
 * From line to line, against the height of a line of the font, which is 1.36 of the size of its
 * letters: what a player holds has the usual leading of a book, and keeps its letters large.
 */
const leadings: Record<NonNullable<LwDocument['print']>, number> = {
	body: 1.16,
	reading: 0.97,
	compact: 1.16,
	wall: 1.16,
}
export const leadingOf = ({ print = 'body' }: LwDocument, isClose: boolean): number =>
	isClose ? closer[print].leading : leadings[print]
export interface Page {
	size: 'A4' | 'LETTER' | 'A3'
	orientation: 'portrait' | 'landscape'
	widthPt: number
	heightPt: number
	margins: [number, number, number, number]
	bodyPt: number
	/** A tenth of the room a heading needs below it. */
	lineRoom: number
}
/** Over the first line, points: the running head of further pages stands there. */
const topOf = { body: 46, reading: 42, compact: 46, wall: 30 } as const
/** Room for the foot, points. */
const bottomOf = { body: 58, reading: 46, compact: 48, wall: 40 } as const
/** Paper, margins and body of a document, in points. */
export function pageOf({ paper = 'A4', landscape = false, print = 'body' }: LwDocument): Page {
	const [short, long] = papers[paper]
	const side = print === 'wall' ? 30 : 54
	const widthPt = landscape ? long : short
	return {
		size: paper === 'Letter' ? 'LETTER' : paper,
		orientation: landscape ? 'landscape' : 'portrait',
		widthPt,
		heightPt: landscape ? short : long,
		margins: [side, topOf[print], side, bottomOf[print]],
		bodyPt: widthPt - 2 * side,
		lineRoom: print === 'compact' ? 4.5 : 6.5,
	}
}
/**
 * A page of its own for a figure at true size: the clinic's paper where it fits, the next larger
 * where it does not.
 */
export function trueSizePage(
	{ paper = 'A4' }: LwDocument,
	widthMm: number,
	heightMm: number,
): { pageSize: string; margins: [number, number, number, number]; sidePt: number } {
	const [side, head, foot] = [sheetEdges.sideMm, sheetEdges.headMm, sheetEdges.footMm].map(
		(mm) => mm * ptPerMm,
	) as [number, number, number]
	const [wide, high] = [widthMm * ptPerMm, heightMm * ptPerMm]
	const fits = ([width, height]: readonly [number, number]) =>
		wide <= width - 2 * side + 0.01 && high <= height - head - foot + 0.01
	const own = fits(papers[paper])
	const left = ((own ? papers[paper][0] : largerSize[paper][0]) - wide) / 2
	return {
		pageSize: own ? (paper === 'Letter' ? 'LETTER' : paper) : largerOf[paper],
		margins: [left, head, left - 1, foot - 1],
		sidePt: side,
	}
}
