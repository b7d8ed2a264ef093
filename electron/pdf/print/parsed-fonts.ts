/**
 * Fonts parsed once for all files of a worker: parsing took more than half of the time of a page.
 * A file keeps its own selection of letters; the font and the runs of words worked out are shared.
 */
import { fontFiles } from '../fonts.ts'
import { PdfDocument } from './internals.ts'
import type { FileFont, PdfFile } from './pdfmake.ts'

/** So many runs of words are kept for a font; a report has some hundred. */
const mostRuns = 20_000
interface Parsed {
	file: string
	sample: FileFont
	runs: Record<string, unknown>
	count: number
}
let parsed: readonly Parsed[] | undefined
/** Read by a file of its own, which is thrown away. */
function parsedFonts(): readonly Parsed[] {
	parsed ??= [...new Set(Object.values(fontFiles))].map((file) => ({
		file,
		sample: new PdfDocument({}, {}, {}, {}, { font: null }, null, () => true).font(file)._font,
		...noRuns(),
	}))
	return parsed
}
const noRuns = () => ({ runs: Object.create(null) as Record<string, unknown>, count: 0 })
/** Gives a new file its fonts, so that it parses none. Those without a word are not written. */
export function giveFonts(to: PdfFile): void {
	for (const one of parsedFonts()) {
		const { file, sample } = one
		if (Object.keys(one.runs).length > mostRuns) Object.assign(one, noRuns())
		to._fontCount += 1
		const font = new sample.constructor(to, sample.font, `F${to._fontCount}`)
		font.layoutCache = one.runs
		to._fontFamilies[file] = font
	}
}
