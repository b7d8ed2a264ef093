/** pdfmake has no types of its own; these are of the parts that are used. */
declare module 'pdfmake' {
	const pdfmake: {
		addFonts(fonts: Record<string, Record<string, string>>): void
		setUrlAccessPolicy(allow: (url: string) => boolean): void
		setLocalAccessPolicy(allow: (path: string) => boolean): void
		createPdf(definition: object): { getBuffer(): Promise<Buffer> }
	}
	export default pdfmake
}
declare module 'pdfmake/js/LayoutBuilder.js' {
	import type { Drawn, Line, Measure, Page, PdfFile } from './print/pdfmake.ts'

	class LayoutBuilder {
		constructor(pageSize: object, margins: object, svgMeasure: object)
		registerTableLayouts(layouts: object): void
		layoutDocument(
			content: unknown,
			file: PdfFile,
			styles: object,
			defaultStyle: object,
			background: undefined,
			header: unknown,
			footer: unknown,
			watermark: unknown,
			pageBreakBefore: unknown,
		): Page[]
		buildNextLine(node: Drawn): Line | null
		tryLayoutDocument(...given: unknown[]): unknown
		protected readonly docMeasure: Measure
		protected readonly writer: { context(): { availableWidth: number } }
	}
	const module: { default: typeof LayoutBuilder }
	export default module
}
declare module 'pdfmake/js/StyleContextStack.js' {
	class StyleContextStack {
		push(item: unknown): void
		pop(howMany?: number): void
		getProperty(property: string): unknown
		static getStyleProperty(
			item: Readonly<Record<string, unknown>>,
			stack: StyleContextStack | undefined,
			property: string,
			otherwise: unknown,
		): unknown
	}
	const module: { default: typeof StyleContextStack }
	export default module
}
declare module 'pdfmake/js/Renderer.js' {
	import type { Drawn, Line, Page, PdfFile } from './print/pdfmake.ts'

	class Renderer {
		constructor(file: PdfFile)
		renderPages(pages: Page[]): void
		renderLine(line: Line, x: number, y: number): void
		renderSVG(drawing: Drawn): void
		renderImage(drawing: Drawn): void
		renderVector(vector: object): void
		renderWatermark(page: Page): void
	}
	const module: { default: typeof Renderer }
	export default module
}
declare module 'pdfmake/js/PDFDocument.js' {
	import type { PdfFile } from './print/pdfmake.ts'

	const module: {
		default: new (
			fonts: object,
			images: object,
			patterns: object,
			attachments: object,
			options: object,
			virtualFiles: null,
			localAccess: (path: string) => boolean,
		) => PdfFile
	}
	export default module
}
declare module 'pdfmake/js/PageSize.js' {
	const module: {
		normalizePageSize(size: unknown, orientation: unknown): { width: number; height: number }
		normalizePageMargin(margins: unknown): object
	}
	export default module
}
declare module 'pdfmake/js/SVGMeasure.js' {
	const module: { default: new () => object }
	export default module
}
declare module 'pdfmake/js/tableLayouts.js' {
	const module: { tableLayouts: object }
	export default module
}
declare module 'hyphen/en-gb/index.js' {
	const language: {
		hyphenateSync(text: string, options: { hyphenChar: string; minWordLength: number }): string
	}
	export default language
}
declare module 'fontkit' {
	export interface Font {
		hasGlyphForCodePoint(code: number): boolean
	}
	export function openSync(file: string): unknown
}
