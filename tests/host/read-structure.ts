/** The structure of a PDF read back with an independent reader. */
import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { openPdf } from './read-pages.ts'

/** An element: its role, its words in reading order, what is said of a drawing. */
export interface Element {
	role: string
	alternative?: string
	words: string
	inner: Element[]
}
export interface Structure {
	language: string | undefined
	/** One for each page, from its root. */
	pages: Element[]
	/** Text shown outside any mark. */
	bare: number
	/** Runs that say they belong to an element. */
	marked: number
	/** Runs that an element owns. */
	owned: number
}
interface TreeNode {
	role?: string
	alt?: string
	type?: string
	id?: string
	lang?: string
	children?: TreeNode[]
}
type Loaded = Awaited<ReturnType<typeof openPdf>>
type LoadedPage = Awaited<ReturnType<Loaded['getPage']>>

/** The words of each marked run of a page, by its name. */
async function runsOf(page: LoadedPage): Promise<Map<string, string>> {
	const runs = new Map<string, string>()
	const open: (string | undefined)[] = []
	const { items } = await page.getTextContent({ includeMarkedContent: true })
	for (const item of items)
		if ('str' in item) {
			const run = open.findLast((id) => id !== undefined)
			if (run) runs.set(run, `${runs.get(run) ?? ''}${item.str}${item.hasEOL ? ' ' : ''}`)
		} else if (item.type === 'endMarkedContent') open.pop()
		else open.push(item.id)
	return runs
}
/** How many texts are shown outside any mark, and how many runs are marked as of an element. */
async function marksOf(page: LoadedPage): Promise<{ bare: number; marked: number }> {
	const { fnArray, argsArray } = await page.getOperatorList()
	let depth = 0
	let bare = 0
	let marked = 0
	for (const [at, operator] of fnArray.entries()) {
		if (operator === OPS.beginMarkedContent || operator === OPS.beginMarkedContentProps) {
			depth++
			if (typeof argsArray[at]?.[1] === 'number') marked++
		} else if (operator === OPS.endMarkedContent) depth--
		else if (operator === OPS.showText && depth === 0) bare++
	}
	return { bare, marked }
}
const count = ({ type, children = [] }: TreeNode): number =>
	(type === 'content' ? 1 : 0) + children.reduce((sum, child) => sum + count(child), 0)
function elementOf(node: TreeNode, runs: Map<string, string>): Element {
	const { role = '', alt, children = [] } = node
	const own = children
		.filter(({ type }) => type === 'content')
		.map(({ id = '' }) => runs.get(id) ?? '')
	return {
		role,
		...(alt === undefined ? {} : { alternative: alt }),
		words: own.join(' ').replace(/\s+/g, ' ').trim(),
		inner: children.filter((child) => child.role).map((child) => elementOf(child, runs)),
	}
}
export async function structureOf(bytes: Uint8Array): Promise<Structure> {
	const pdf = await openPdf(bytes)
	const read: Structure = { language: undefined, pages: [], bare: 0, marked: 0, owned: 0 }
	for (let number = 1; number <= pdf.numPages; number++) {
		const page = await pdf.getPage(number)
		const tree = (await page.getStructTree()) as TreeNode | null
		const { bare, marked } = await marksOf(page)
		read.bare += bare
		read.marked += marked
		read.owned += tree ? count(tree) : 0
		if (tree) read.pages.push(elementOf(tree, await runsOf(page)))
	}
	const { info } = await pdf.getMetadata()
	read.language = (info as { Language?: string }).Language
	return read
}
/** An element and all within it, in reading order. */
export const allOf = (element: Element): Element[] => [element, ...element.inner.flatMap(allOf)]
