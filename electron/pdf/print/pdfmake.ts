/** What is used of pdfmake's inner parts and of the PDF file that it writes, by type. */
import type { Part, Run } from './part.ts'

/** A node once it is laid out. */
export interface Drawn {
	part?: Part
	/** In which part of the text it stands; head and foot of a page in none. */
	place?: number
	/** The words of a text that are not yet on a line. */
	_inlines?: Inline[]
}
/** A run of letters that is not broken; widths in points. */
interface Inline {
	text: string
	width: number
	leadingCut?: number
	trailingCut?: number
	noWrap?: boolean
	fontSize: number
	fontFeatures?: unknown
	font: { widthOfString(text: string, size: number, features: unknown): number }
}
/** Works out how wide texts are before they are laid out; points. */
export interface Measure {
	measureLeaf(node: Drawn): Drawn & { _minWidth: number }
}
export interface Line extends Drawn {
	/** In the order in which lines are laid out. */
	number?: number
}
/** A line, a drawing or anything else as it stands on its page; points from its upper edge. */
interface PageItem {
	item: Drawn & { y?: number; height?: number; _height?: number; getHeight?: () => number }
}
export interface Page {
	items: PageItem[]
	pageSize: { width: number; height: number }
}
/** A font of a file, and what was worked out of it. */
export interface FileFont {
	/** As parsed; the same for every file. */
	font: object
	layoutCache?: Record<string, unknown>
	constructor: new (file: PdfFile, font: object, id: string) => FileFont
}
export interface StructElement {
	add(inner: StructElement | Run): void
	end(): void
}
/** The PDF file as it is written. */
export interface PdfFile extends NodeJS.ReadableStream {
	/** Fonts of this file by the name of their own file. */
	_fontFamilies: Record<string, FileFont>
	/** How many fonts the file has: they are named by it. */
	_fontCount: number
	font(source: string): { _font: FileFont }
	markContent(tag: 'Artifact'): void
	markStructureContent(role: string): Run
	endMarkedContent(): void
	struct(
		role: string,
		more: { scope?: string | undefined; alt?: string | undefined },
	): StructElement
	addStructure(element: StructElement): void
	end(): void
}
