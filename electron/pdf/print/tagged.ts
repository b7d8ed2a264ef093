/** Lays out and draws as pdfmake does, and marks what is drawn with the part that it belongs to. */
import { LayoutBuilder, Renderer } from './internals.ts'
import { isPart, type Part } from './part.ts'
import type { Drawn, Line, Page, PdfFile, StructElement } from './pdfmake.ts'

/** Each line knows its part, also where a head is repeated on the next page. */
export class TaggedLayout extends LayoutBuilder {
	#lines = 0
	override buildNextLine(node: Drawn): Line | null {
		const line = super.buildNextLine(node)
		if (!line) return line
		return Object.assign(line, { part: node.part, number: ++this.#lines })
	}
}
export class TaggedRenderer extends Renderer {
	readonly #file: PdfFile
	/** Lines that were drawn: a repeated head is read once. */
	readonly #read = new Set<number>()
	constructor(file: PdfFile) {
		super(file)
		this.#file = file
	}
	override renderLine(line: Line, x: number, y: number): void {
		const again = this.#read.has(line.number ?? 0)
		this.#read.add(line.number ?? 0)
		this.#marked(again ? undefined : line.part, () => super.renderLine(line, x, y))
	}
	override renderSVG(drawing: Drawn): void {
		this.#marked(drawing.part, () => super.renderSVG(drawing))
	}
	override renderImage(drawing: Drawn): void {
		this.#marked(drawing.part, () => super.renderImage(drawing))
	}
	override renderVector(vector: object): void {
		this.#marked(undefined, () => super.renderVector(vector))
	}
	override renderWatermark(page: Page): void {
		this.#marked(undefined, () => super.renderWatermark(page))
	}
	#marked(part: Part | undefined, draw: () => void): void {
		if (part) part.inner.push(this.#file.markStructureContent(part.role))
		else this.#file.markContent('Artifact')
		draw()
		this.#file.endMarkedContent()
	}
}
/** Nothing is said of a part of which nothing was drawn. */
const isDrawn = ({ inner }: Part): boolean =>
	inner.some((held) => (isPart(held) ? isDrawn(held) : true))
/** An empty cell still holds its column. */
const isKept = (part: Part): boolean => isDrawn(part) || part.role === 'TD' || part.role === 'TH'
function elementOf(file: PdfFile, { role, scope, alternative, inner }: Part): StructElement {
	const element = file.struct(role, { scope, alt: alternative })
	for (const held of inner)
		if (!isPart(held)) element.add(held)
		else if (isKept(held)) element.add(elementOf(file, held))
	return element
}
/** Writes the structure into the file, once all of it is drawn. */
export function addStructure(file: PdfFile, whole: Part): void {
	const root = elementOf(file, whole)
	file.addStructure(root)
	root.end()
}
