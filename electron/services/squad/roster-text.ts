/** The text of a roster as cells: separators, marks of spreadsheets, quotation marks. */
import Papa from 'papaparse'
import { type Roster, rosterFromCells } from '../../../shared/desk/squad/roster.ts'

/** Larger lists are refused before they are read. */
const longestChars = 2_000_000

type About = Parameters<typeof rosterFromCells>[1]
/** A line by which a spreadsheet says what parts the columns. */
const separatorLine = /^sep=(.)\r?\n/i

/** Never throws: what cannot be read is a problem by row. */
export function rosterOfText(text: string, about: About): Roster {
	const plain = text.replace(/^\uFEFF/, '')
	const [, separator] = separatorLine.exec(plain) ?? []
	if (plain.length > longestChars)
		return unreadable(about, [
			{
				row: 1,
				column: '(file)',
				code: 'too-long',
				message: `too large, given ${plain.length} characters, allowed: ${longestChars} or fewer`,
			},
		])
	// the line of the separator stays a row, so that rows are counted as a spreadsheet does
	const parsed = Papa.parse<string[]>(plain.replace(separatorLine, '\n'), {
		skipEmptyLines: false,
		...(separator ? { delimiter: separator } : { delimitersToGuess: [',', ';', '\t', '|'] }),
	})
	const quotes = parsed.errors.filter((error) => error.type === 'Quotes')
	if (quotes.length > 0)
		return unreadable(
			about,
			quotes.map((quote) => ({
				row: (quote.row ?? 0) + 1,
				column: '(line)',
				code: 'open-quotes',
				message: 'quotation marks do not close, given an open one, allowed: a closing one',
			})),
		)
	return rosterFromCells(parsed.data, about)
}
const unreadable = (about: About, problems: Roster['problems']): Roster => ({
	...rosterFromCells([], about),
	problems,
})
