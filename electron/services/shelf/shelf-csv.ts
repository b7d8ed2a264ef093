/** Shelf as CSV text: reading with a preview that names each bad cell, and writing. */
import Papa from 'papaparse'
import {
	type ShelfPreview,
	shelfFromCells,
} from '../../../shared/desk/exchange/shelf-from-cells.ts'
import { shelfToCells } from '../../../shared/desk/exchange/shelf-to-cells.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'

/** Larger files are refused before they are read: 2000 models of 80 sizes fit well inside. */
const limitChars = 30_000_000

/**
 * What parts the heading's columns; not guessed from the cells, since a cell of studs holds
 * semicolons.
 */
function delimiterOf(text: string): string {
	const heading = text.slice(0, text.search(/[\r\n]|$/))
	const columns = (mark: string) => heading.split(mark).length
	return [',', ';', '\t'].reduce((best, mark) => (columns(mark) > columns(best) ? mark : best))
}
const unreadable = (problems: ShelfPreview['problems']): ShelfPreview => ({
	shelf: { format: 'lastwright-shelf', version: 1, models: [] },
	good: 0,
	problems,
})
const wholeFile = (message: string): ShelfPreview =>
	unreadable([{ row: 1, column: '(file)', message }])
/**
 * Reads CSV text (comma, semicolon or tab). Never throws for bad text: the preview names line and
 * column of every problem.
 */
export function readShelfCsv(text: string): ShelfPreview {
	if (text.length > limitChars)
		return wholeFile(`too large, given ${text.length} characters, allowed: ${limitChars} or fewer`)
	if (text.trim() === '')
		return wholeFile('empty, given nothing, allowed: a heading line and one line a size')
	const plain = text.replace(/^\uFEFF/, '')
	const parsed = Papa.parse<string[]>(plain, {
		skipEmptyLines: false,
		delimiter: delimiterOf(plain),
	})
	const quotes = parsed.errors.filter((error) => error.type === 'Quotes')
	if (quotes.length > 0)
		return unreadable(
			quotes.map((quote) => ({
				row: (quote.row ?? 0) + 1,
				column: '(line)',
				message:
					`quotation marks do not close, given ${quote.message.toLowerCase()}, allowed: a ` +
					'cell in quotation marks closed before the next cell',
			})),
		)
	return shelfFromCells(parsed.data)
}
/**
 * CSV with commas and CRLF; a cell that a spreadsheet would run as a formula is led by an
 * apostrophe, which reading takes off again.
 */
export function writeShelfCsv(shelf: Shelf): string {
	return `${Papa.unparse(shelfToCells(shelf), { newline: '\r\n', escapeFormulae: true })}\r\n`
}
