/** Pages of a PDF read back with an independent reader. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** A run of text on a page; places and sizes in points from the lower left corner. */
interface Item {
	str: string
	x: number
	y: number
	width: number
	size: number
}
export interface Page {
	items: Item[]
	width: number
	height: number
}
export async function openPdf(bytes: Uint8Array, password?: string) {
	return getDocument({
		data: new Uint8Array(bytes),
		useSystemFonts: false,
		...(password === undefined ? {} : { password }),
	}).promise
}
export async function pagesOf(bytes: Uint8Array, password?: string): Promise<Page[]> {
	const pdf = await openPdf(bytes, password)
	const pages: Page[] = []
	for (let number = 1; number <= pdf.numPages; number++) {
		const page = await pdf.getPage(number)
		const [, , width = 0, height = 0] = page.view
		pages.push({
			width,
			height,
			items: (await page.getTextContent()).items.flatMap((item) =>
				'str' in item && item.str.trim()
					? [
							{
								str: item.str,
								x: item.transform[4] as number,
								y: item.transform[5] as number,
								width: item.width,
								size: Math.hypot(item.transform[2] as number, item.transform[3] as number),
							},
						]
					: [],
			),
		})
	}
	return pages
}
/** All text of the pages, a blank between two runs. */
export const wordsOf = (pages: Page[]) =>
	pages
		.flatMap((page) => page.items)
		.map((item) => item.str)
		.join(' ')
		.replace(/\s+/g, ' ')
/** Words without spaces: a line may break anywhere. */
export const tight = (text: string) => text.replace(/\s+/g, '')
