/** A page definition to the bytes of a PDF with its structure. */
import { fontFiles } from '../fonts.ts'
import type { Node } from '../look.ts'
import {
	normalizePageMargin,
	normalizePageSize,
	PdfDocument,
	plainLayouts,
	SvgMeasure,
} from './internals.ts'
import { giveFonts } from './parsed-fonts.ts'
import type { Page, PdfFile } from './pdfmake.ts'
import { lookUpQuickly } from './quick-styles.ts'
import { structureOf } from './structure.ts'
import { addStructure, TaggedLayout, TaggedRenderer } from './tagged.ts'

/** How the pages of a document are laid out and what stands on them; pdfmake writes into it. */
export interface Definition {
	title: string
	author: string
	/** ISO date-time of making, so that the same document gives the same bytes. */
	createdAt: string
	language: string
	/** Opens the copy, and changes its permissions. */
	protection?: { password: string; owner: string } | undefined
	pageSize: string
	pageOrientation: 'portrait' | 'landscape'
	pageMargins: readonly number[]
	patterns: object
	defaultStyle: object
	watermark: object | undefined
	header: (page: number) => Node | ''
	footer: (page: number, pages: number) => Node
	pageBreakBefore: (node: never, around?: never) => boolean
	content: Node[]
}
lookUpQuickly()
const readAllowed = new Set<string>(Object.values(fontFiles))
const made = 'Lastwright'

function protectionOf({ protection }: Definition): Node {
	if (!protection) return { pdfVersion: '1.7' }
	return {
		pdfVersion: '1.7ext3',
		userPassword: protection.password,
		ownerPassword: protection.owner,
		permissions: {
			printing: 'highResolution',
			contentAccessibility: true,
			copying: false,
			modifying: false,
			annotating: false,
			fillingForms: false,
			documentAssembly: false,
		},
	}
}
function fileOf(definition: Definition): PdfFile {
	const { title, author, createdAt, language, patterns } = definition
	const day = new Date(createdAt)
	const file = new PdfDocument(
		{ Noto: fontFiles },
		{},
		patterns,
		{},
		{
			...protectionOf(definition),
			tagged: true,
			displayTitle: true,
			compress: true,
			lang: language,
			autoFirstPage: false,
			font: null,
			info: {
				Title: title,
				Author: author,
				Creator: made,
				Producer: made,
				CreationDate: day,
				ModDate: day,
			},
		},
		null,
		// no file is read but the fonts
		(path) => readAllowed.has(path),
	)
	giveFonts(file)
	return file
}
function layOut(definition: Definition, file: PdfFile): Page[] {
	const { pageSize, pageOrientation, pageMargins } = definition
	const layout = new TaggedLayout(
		normalizePageSize(pageSize, pageOrientation),
		normalizePageMargin([...pageMargins]),
		new SvgMeasure(),
	)
	layout.registerTableLayouts(plainLayouts)
	return layout.layoutDocument(
		definition.content,
		file,
		{},
		definition.defaultStyle,
		undefined,
		definition.header,
		definition.footer,
		definition.watermark,
		definition.pageBreakBefore,
	)
}
/** Where something of a part of the text stands: its page from 1, and points from its upper edge. */
export interface Stands {
	place: number
	page: number
	top: number
	bottom: number
}
/** A document laid out, not yet drawn. */
export interface LaidOut {
	/** Pages. */
	count: number
	/** Every line and drawing of the text, without head and foot of the pages. */
	stands: Stands[]
	draw(): Promise<Uint8Array>
}
/** Lays out; what a definition notes while it is laid out is then known. */
export function laidOut(definition: Definition): LaidOut {
	const whole = structureOf(definition.content)
	const file = fileOf(definition)
	const pages = layOut(definition, file)
	return {
		count: pages.length,
		stands: pages.flatMap(standingOn),
		async draw() {
			const bytes = bytesOf(file)
			new TaggedRenderer(file).renderPages(pages)
			addStructure(file, whole)
			file.end()
			return bytes
		},
	}
}
const standingOn = ({ items }: Page, index: number): Stands[] =>
	items.flatMap(({ item }) => {
		const { place, y = 0, height, _height } = item
		if (place === undefined) return []
		const high = item.getHeight?.() ?? _height ?? height ?? 0
		return [{ place, page: index + 1, top: y, bottom: y + high }]
	})
/** All bytes of the file, once it has ended. */
async function bytesOf(file: PdfFile): Promise<Uint8Array> {
	const chunks: Uint8Array[] = []
	for await (const chunk of file) chunks.push(chunk as unknown as Uint8Array)
	return new Uint8Array(Buffer.concat(chunks))
}
