/** Where a roster's headings stand, and which column of it is what. */
import { folded } from '../../engine/plain/folded.ts'
import { type RosterAnswers, unread } from './roster-answers.ts'
import { type Column, columns, columnWords } from './roster-columns.table.ts'

const plainHeading = (title: string): string =>
	folded(title)
		.replaceAll('#', 'number')
		.replace(/[^a-z]/g, '')
const byHeading = new Map<string, Column>(
	columns.flatMap((column) =>
		columnWords[column].headings.map((heading): [string, Column] => [heading, column]),
	),
)
const columnOf = (title: string): Column | undefined => byHeading.get(plainHeading(title))

/** Lines over the headings that are looked through: a title, the season, who made the list. */
const mostTitleLines = 15
const fewestKnown = 2
/** The line of headings: that with most headings known, the first of them; the first line otherwise. */
function headingPlace(cells: readonly (readonly string[])[]): number {
	const known = cells
		.slice(0, mostTitleLines)
		.map((line) => new Set(line.flatMap((title) => columnOf(title) ?? [])).size)
	const most = Math.max(0, ...known)
	return most < fewestKnown
		? Math.max(
				0,
				cells.findIndex((line) => line.some((cell) => cell.trim() !== '')),
			)
		: known.indexOf(most)
}
/** A column of the list as it came. */
interface Heading {
	place: number
	title: string
	/** absent where it is not read */
	column?: Column
}
export interface Headings {
	/** lines before the headings */
	titleLines: number
	headings: Heading[]
	/** columns that the list lacks */
	missing: Column[]
	/** columns that stand twice, with the place of the second */
	twice: Heading[]
}
/** A name is given in two columns or in one. */
const wanted: readonly (readonly Column[])[] = [
	['givenName', 'name'],
	['familyName', 'name'],
	['birthDate'],
]

/** @param answers what was said of columns whose heading does not say it, and of the sex of all */
export function headingsOf(
	cells: readonly (readonly string[])[],
	answers: RosterAnswers,
): Headings {
	const titleLines = headingPlace(cells)
	const width = Math.max(0, ...cells.slice(titleLines).map((line) => line.length))
	const headings = Array.from({ length: width }, (_, place): Heading => {
		const title = (cells[titleLines]?.[place] ?? '').trim()
		const said = answers.columns?.[String(place)]
		const column = said === unread ? undefined : (said ?? columnOf(title))
		return { place, title, ...(column && { column }) }
	}).filter(
		({ title, column }, place) => title !== '' || column || hasCells(cells, titleLines, place),
	)
	const read = headings.flatMap(({ column }) => column ?? [])
	const sexes: Column[][] = answers.sex === undefined ? [['sex']] : []
	return {
		titleLines,
		headings,
		missing: [...wanted, ...sexes]
			.filter((either) => !either.some((column) => read.includes(column)))
			.flatMap(([column]) => column ?? []),
		twice: headings.filter(
			({ place, column }) =>
				column && headings.some((other) => other.column === column && other.place < place),
		),
	}
}
const hasCells = (cells: readonly (readonly string[])[], from: number, place: number): boolean =>
	cells.slice(from + 1).some((line) => (line[place] ?? '').trim() !== '')
