/** The text of a PDF that exists, page by page, in the order in which it was drawn. */
import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { UnreadablePdf } from './unreadable.ts'

/** A piece of a line; `y` of its foot in points from the lower edge. */
interface Piece {
	text: string
	y: number
	size: number
	endsLine: boolean
}
/** Lines further apart than so many times the size of the letters are two paragraphs. */
const paragraphGap = 1.75

/**
 * The paragraphs of each page, as plain text.
 * @throws UnreadablePdf where the bytes are no PDF that can be read
 */
export async function paragraphsOf(bytes: Uint8Array): Promise<string[][]> {
	const task = getDocument({
		data: new Uint8Array(bytes),
		useSystemFonts: false,
		isEvalSupported: false,
		verbosity: VerbosityLevel.ERRORS,
	})
	try {
		const pdf = await task.promise
		const pages: string[][] = []
		for (let number = 1; number <= pdf.numPages; number++) {
			const { items } = await (await pdf.getPage(number)).getTextContent()
			pages.push(joined(items.flatMap((item) => ('str' in item ? [pieceOf(item)] : []))))
		}
		return pages
	} catch {
		throw new UnreadablePdf('The bytes are no PDF whose text can be read.')
	} finally {
		await task.destroy()
	}
}
function pieceOf(item: { str: string; transform: number[]; hasEOL: boolean }): Piece {
	const [, , skew = 0, height = 0, , y = 0] = item.transform
	return { text: item.str, y, size: Math.hypot(skew, height), endsLine: item.hasEOL }
}
/** Pieces to paragraphs: a larger step up or down the page than a line begins a new one. */
function joined(pieces: readonly Piece[]): string[] {
	const paragraphs: string[] = []
	let text = ''
	let last: Piece | undefined
	for (const piece of pieces) {
		if (last && piece.text.trim() !== '') {
			const step = Math.abs(piece.y - last.y)
			if (step > paragraphGap * Math.max(piece.size, last.size)) {
				paragraphs.push(text)
				text = ''
			} else if (step > 0.5) text += ' '
		}
		text += piece.endsLine ? `${piece.text} ` : piece.text
		if (piece.text.trim() !== '') last = piece
	}
	return [...paragraphs, text].map((words) => words.replace(/\s+/g, ' ').trim()).filter(Boolean)
}
