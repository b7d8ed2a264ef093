/**
 * What stands on the pages of a PDF, by its operators: runs of letters, areas, lines and pictures,
 * with the clip that they were drawn in. No font of the machine and no canvas is needed, so that it
 * is the same everywhere.
 */
import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import {
	at,
	type Box,
	boxOf,
	type Matrix,
	outlinesOf,
	type Spot,
	scaleOf,
	shared,
	times,
} from './page-paths.ts'
import { openPdf } from './read-pages.ts'

interface Drawn {
	/** Closed outlines of an area, or open ones of a line. */
	outlines: Spot[][]
	box: Box
	/** What it was drawn in. */
	clip: Box
	/** From 0 (the paper) to 1 (black), transparency included. */
	ink: number
}
export interface TextMark extends Drawn {
	kind: 'text'
	text: string
	/** Of the letters, points. */
	size: number
	/** Degrees. */
	turn: number
}
interface ShapeMark extends Drawn {
	kind: 'area' | 'line' | 'picture'
	/** Of a line, points. */
	width: number
	/** Of an area filled with a tile: what tells it from others. */
	pattern?: string
}
export type Mark = TextMark | ShapeMark
export interface MarkedPage {
	width: number
	height: number
	marks: Mark[]
}
/** How dark a colour prints in grey: the weights of ITU-R BT.601. */
function inkOf(colour: string): number {
	const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((from) =>
		Number.parseInt(colour.slice(from, from + 2), 16),
	)
	return 1 - (0.299 * red + 0.587 * green + 0.114 * blue) / 255
}
interface State {
	matrix: Matrix
	clip: Box
	fill: string
	stroke: string
	pattern: string | undefined
	fillAlpha: number
	strokeAlpha: number
	width: number
	font: number
	letterSpace: number
}
interface Glyph {
	unicode: string
	width: number
	isSpace: boolean
}
const isFilled = (paint: number) =>
	[
		OPS.fill,
		OPS.eoFill,
		OPS.fillStroke,
		OPS.eoFillStroke,
		OPS.closeFillStroke,
		OPS.closeEOFillStroke,
	].includes(paint)
const isStroked = (paint: number) =>
	[
		OPS.stroke,
		OPS.closeStroke,
		OPS.fillStroke,
		OPS.eoFillStroke,
		OPS.closeFillStroke,
		OPS.closeEOFillStroke,
	].includes(paint)

/** Walks the operators of one page. */
class Reader {
	readonly marks: Mark[] = []
	readonly #stack: State[] = []
	#state: State
	#text: Matrix = [1, 0, 0, 1, 0, 0]
	#line: Matrix = [1, 0, 0, 1, 0, 0]
	#clips = false
	constructor(width: number, height: number) {
		this.#state = {
			// the page has its second axis upwards
			matrix: [1, 0, 0, -1, 0, height],
			clip: { left: 0, top: 0, right: width, bottom: height },
			fill: '#000000',
			stroke: '#000000',
			pattern: undefined,
			fillAlpha: 1,
			strokeAlpha: 1,
			width: 1,
			font: 0,
			letterSpace: 0,
		}
	}
	#set(more: Partial<State>) {
		this.#state = { ...this.#state, ...more }
	}
	readonly #does: Record<number, (given: never) => void> = {
		[OPS.save]: () => this.#stack.push(this.#state),
		[OPS.restore]: () => {
			this.#state = this.#stack.pop() ?? this.#state
		},
		[OPS.transform]: (given: number[]) =>
			this.#set({ matrix: times(this.#state.matrix, given as unknown as Matrix) }),
		[OPS.setFillRGBColor]: ([fill]: [string]) => this.#set({ fill, pattern: undefined }),
		[OPS.setStrokeRGBColor]: ([stroke]: [string]) => this.#set({ stroke }),
		[OPS.setFillColorN]: ([, ...tile]: unknown[]) =>
			this.#set({ fill: '#808080', pattern: JSON.stringify(tile.slice(1)) }),
		[OPS.setLineWidth]: ([width]: [number]) => this.#set({ width }),
		[OPS.setGState]: ([pairs]: [[string, number][]]) => {
			for (const [name, value] of pairs) {
				if (name === 'ca') this.#set({ fillAlpha: value })
				if (name === 'CA') this.#set({ strokeAlpha: value })
				if (name === 'Font') throw new Error('a font of a graphics state is not read')
			}
		},
		[OPS.clip]: () => {
			this.#clips = true
		},
		[OPS.eoClip]: () => {
			this.#clips = true
		},
		[OPS.constructPath]: ([paint, [data]]: [number, [ArrayLike<number> | null]]) =>
			this.#path(paint, data ?? []),
		[OPS.beginText]: () => {
			this.#text = [1, 0, 0, 1, 0, 0]
			this.#line = this.#text
		},
		[OPS.setFont]: ([, font]: [string, number]) => this.#set({ font }),
		[OPS.setCharSpacing]: ([letterSpace]: [number]) => this.#set({ letterSpace }),
		[OPS.setTextMatrix]: ([matrix]: [ArrayLike<number>]) => {
			this.#text = Array.from(matrix) as unknown as Matrix
			this.#line = this.#text
		},
		[OPS.moveText]: ([x, y]: [number, number]) => {
			this.#line = times(this.#line, [1, 0, 0, 1, x, y])
			this.#text = this.#line
		},
		[OPS.showText]: ([glyphs]: [(Glyph | number)[]]) => this.#show(glyphs),
		[OPS.paintImageXObject]: () => this.#picture(),
	}
	read(fn: number, given: unknown) {
		this.#does[fn]?.(given as never)
	}
	#path(paint: number, data: ArrayLike<number>) {
		const { matrix, clip, fill, stroke, pattern, fillAlpha, strokeAlpha, width } = this.#state
		const outlines = outlinesOf(data, matrix)
		const spots = outlines.flat()
		if (spots.length === 0) return
		const box = boxOf(spots)
		if (this.#clips) this.#set({ clip: shared(clip, box) })
		this.#clips = false
		const drawn = { outlines, box, clip, width: width * scaleOf(matrix) }
		if (isFilled(paint))
			this.marks.push({
				...drawn,
				kind: 'area',
				ink: fillAlpha * inkOf(fill),
				...(pattern === undefined ? {} : { pattern }),
			})
		if (isStroked(paint))
			this.marks.push({ ...drawn, kind: 'line', ink: strokeAlpha * inkOf(stroke) })
	}
	#picture() {
		const { matrix, clip, fillAlpha } = this.#state
		const corners = [
			[0, 0],
			[1, 0],
			[1, 1],
			[0, 1],
			[0, 0],
		] as const
		const outline = corners.map(([x, y]) => at(matrix, x, y))
		const drawn = { outlines: [outline], box: boxOf(outline), clip, width: 0 }
		this.marks.push({ ...drawn, kind: 'picture', ink: 0.5 * fillAlpha })
	}
	#show(glyphs: readonly (Glyph | number)[]) {
		const { matrix, clip, fill, fillAlpha, font, letterSpace } = this.#state
		const onPage = times(matrix, this.#text)
		let along = 0
		// a blank at the end of a run is seen by nobody
		let seen = 0
		let text = ''
		for (const glyph of glyphs) {
			if (typeof glyph === 'number') along -= (glyph / 1000) * font
			else {
				along += (glyph.width / 1000) * font + letterSpace
				text += glyph.unicode
				if (glyph.unicode.trim() !== '') seen = along
			}
		}
		this.#text = times(this.#text, [1, 0, 0, 1, along, 0])
		if (text.trim() === '') return
		// from the foot of a small letter without a tail to the head of a tall one
		const outline = [
			[0, 0],
			[seen, 0],
			[seen, 0.7 * font],
			[0, 0.7 * font],
			[0, 0],
		].map(([x = 0, y = 0]) => at(onPage, x, y))
		this.marks.push({
			kind: 'text',
			text,
			size: font * scaleOf(onPage),
			turn: Math.round((Math.atan2(onPage[1], onPage[0]) * 180) / Math.PI),
			outlines: [outline],
			box: boxOf(outline),
			clip,
			ink: fillAlpha * inkOf(fill),
		})
	}
}
/** Every page of a PDF with what is drawn on it, in the order of drawing. */
export async function markedPages(bytes: Uint8Array): Promise<MarkedPage[]> {
	const pdf = await openPdf(bytes)
	const pages: MarkedPage[] = []
	try {
		for (let number = 1; number <= pdf.numPages; number++) {
			const page = await pdf.getPage(number)
			const [, , width = 0, height = 0] = page.view
			const reader = new Reader(width, height)
			const { fnArray, argsArray } = await page.getOperatorList()
			for (const [index, fn] of fnArray.entries()) reader.read(fn, argsArray[index])
			pages.push({ width, height, marks: reader.marks })
		}
	} finally {
		await pdf.loadingTask.destroy()
	}
	return pages
}
