/** Lays out and draws as pdfmake does, and marks what is drawn with the part that it belongs to. */
import { divided } from './hyphens.ts'
import { LayoutBuilder, Renderer } from './internals.ts'
import { isPart, type Part } from './part.ts'
import type { Drawn, Line, Measure, Page, PdfFile, StructElement } from './pdfmake.ts'

/** A word wider than its line is divided; where it cannot be, it breaks at the edge. */
function divideFirst({ _inlines: inlines }: Drawn, widthPt: number): void {
	const [first] = inlines ?? []
	if (!inlines || !first || first.noWrap || first.width - (first.trailingCut ?? 0) <= widthPt)
		return
	const widthOf = (text: string) =>
		first.font.widthOfString(text, first.fontSize, first.fontFeatures)
	const parts = divided(first.text, (text) => widthOf(text) <= widthPt)
	if (!parts) return
	const { head, rest } = parts
	inlines.splice(
		0,
		1,
		{ ...first, text: head, width: widthOf(head), trailingCut: 0 },
		{ ...first, text: rest, width: widthOf(rest), leadingCut: 0 },
	)
}
/** How wide a column becomes for one word, against the size of its letters: some 12 of them. */
const mostForWord = 6
/** No word makes a column wider than that: it is divided. */
function askLess(measure: Measure): void {
	const measured = measure.measureLeaf.bind(measure)
	measure.measureLeaf = (node) => {
		const leaf = measured(node)
		const letters = Math.max(0, ...(leaf._inlines ?? []).map(({ fontSize }) => fontSize))
		return Object.assign(leaf, { _minWidth: Math.min(leaf._minWidth, mostForWord * letters) })
	}
}
/** Each line knows its part, also where a head is repeated on the next page. */
export class TaggedLayout extends LayoutBuilder {
	#lines = 0
	#measure: Measure | undefined
	override tryLayoutDocument(...given: unknown[]): unknown {
		// the same one for each try
		if (this.#measure !== this.docMeasure) askLess(this.docMeasure)
		this.#measure = this.docMeasure
		return super.tryLayoutDocument(...given)
	}
	override buildNextLine(node: Drawn): Line | null {
		divideFirst(node, this.writer.context().availableWidth)
		const line = super.buildNextLine(node)
		if (!line) return line
		return Object.assign(line, { part: node.part, place: node.place, number: ++this.#lines })
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
