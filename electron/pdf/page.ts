/** Paper, margins and the type scale of each kind of page, in points. */
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
	compact: {
		body: 9.2,
		small: 8,
		note: 7,
		strong: 9.2,
		lead: 10.6,
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
/** The type scale of a document. */
export function scaleOf({ print = 'body', paper }: LwDocument): Scale {
	const scale = scales[print]
	if (print !== 'wall' || paper !== 'A3') return scale
	const larger = Object.entries(scale).map(([use, points]) => [use, points * onLargeSheet])
	return { ...scale, ...Object.fromEntries(larger) }
}
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
/** Room for the foot, points. */
const bottomOf = { body: 58, compact: 48, wall: 40 } as const
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
		margins: [side, print === 'wall' ? 30 : 46, side, bottomOf[print]],
		bodyPt: widthPt - 2 * side,
		lineRoom: print === 'compact' ? 4.5 : 6.5,
	}
}
/** The margin a printer needs, mm, round a figure at true size. */
const edgeMm = 10
/**
 * A page of its own for a figure at true size: the clinic's paper where it fits, the next larger
 * where it does not.
 */
export function trueSizePage(
	{ paper = 'A4' }: LwDocument,
	widthMm: number,
	heightMm: number,
): { pageSize: string; margins: [number, number, number, number]; pageWidthPt: number } {
	const edge = edgeMm * ptPerMm
	const fits = ([width, height]: readonly [number, number]) =>
		widthMm * ptPerMm <= width - 2 * edge + 0.01 && heightMm * ptPerMm <= height - 2 * edge + 0.01
	const own = fits(papers[paper])
	const pageWidthPt = own ? papers[paper][0] : largerSize[paper][0]
	const left = (pageWidthPt - widthMm * ptPerMm) / 2
	return {
		pageSize: own ? (paper === 'Letter' ? 'LETTER' : paper) : largerOf[paper],
		margins: [left, edge, left - 1, edge - 1],
		pageWidthPt,
	}
}
