/**
 * A shelf read from a table: one line a size, the model's own properties repeated or left blank
 * after its first line. Pure: cells in, shelf and problems out. Reading the text is the host's work
 * (electron/services/shelf/shelf-csv.ts).
 */
import type { z } from 'zod'
import { problemsOf } from '../../engine/visit/problems.ts'
import { type Model, modelSchema, type Shelf, shelfProblems } from '../../engine/visit/shelf.ts'
import { readCell } from './shelf-cell.ts'
import { modelColumns, neededColumns, shelfColumns, sizeColumns } from './shelf-columns.ts'

/**
 * What is wrong with one cell: the line of the file (the heading is line 1), its column, and a
 * plain sentence.
 */
interface CellProblem {
	row: number
	column: string
	message: string
}
/** What a table would bring, before anything is saved. */
export interface ShelfPreview {
	shelf: Shelf
	/** How many models are without a problem. */
	good: number
	problems: CellProblem[]
}
/** A model as far as its lines were read. */
interface Draft {
	row: number
	/** The line on which each of the model's own properties was first given, and its text there. */
	given: Map<string, { row: number; text: string }>
	model: Record<string, unknown>
	sizes: { row: number; values: Record<string, unknown> }[]
	bad: boolean
}
/** A line of the table under its heading. */
interface Line {
	row: number
	heading: readonly string[]
	cells: readonly string[]
}
const shelfOf = (models: Model[]): Shelf => ({ format: 'lastwright-shelf', version: 1, models })
const isBlank = (cell: string | undefined): boolean => cell === undefined || cell.trim() === ''

/**
 * Reads the cells of a shelf table, heading first. Nothing is guessed: a model with any bad cell is
 * left out of the preview's shelf, and each bad cell is named with its line and column.
 */
export function shelfFromCells(cells: readonly (readonly string[])[]): ShelfPreview {
	const heading = (cells[0] ?? []).map((name) => name.trim().replace(/^\uFEFF/, ''))
	const wrongHeading = [...unknownColumns(heading), ...missingColumns(heading)]
	if (wrongHeading.length > 0) return { shelf: shelfOf([]), good: 0, problems: wrongHeading }
	const { drafts, problems } = draftsOf(heading, cells)
	const models: Model[] = []
	for (const draft of drafts) {
		if (draft.bad) continue
		const read = modelOf(draft)
		if ('problems' in read) problems.push(...read.problems)
		else models.push(read.model)
	}
	problems.sort((first, second) => first.row - second.row)
	return { shelf: shelfOf(models), good: models.length, problems }
}

/** Columns that no shelf has, or that stand twice; a column without a heading is passed over. */
function unknownColumns(heading: readonly string[]): CellProblem[] {
	const problems: CellProblem[] = []
	for (const [index, column] of heading.entries()) {
		if (column === '') continue
		if (!shelfColumns.includes(column))
			problems.push({
				row: 1,
				column,
				message: `no such column, given "${column}", allowed: ${shelfColumns.join(', ')}`,
			})
		else if (heading.indexOf(column) !== index)
			problems.push({
				row: 1,
				column,
				message: `column twice, given "${column}", allowed: each column once`,
			})
	}
	return problems
}
const missingColumns = (heading: readonly string[]): CellProblem[] =>
	neededColumns
		.filter((column) => !heading.includes(column))
		.map((column) => ({
			row: 1,
			column,
			message:
				'column missing, given ' +
				`${heading.length === 0 ? 'an empty file' : 'a heading without it'}, allowed: ` +
				`a heading with the column ${column}`,
		}))

/** The text of a cell, undefined where blank; an apostrophe that guards a formula is taken off. */
function cellOf({ heading, cells }: Line, column: string): string | undefined {
	const index = heading.indexOf(column)
	const cell = index < 0 ? undefined : cells[index]
	return cell === undefined || isBlank(cell) ? undefined : cell.trim().replace(/^'(?=[=+\-@])/, '')
}
/** Lines gathered by model; a line without an id belongs to the model before it. */
function draftsOf(
	heading: readonly string[],
	table: readonly (readonly string[])[],
): { drafts: Iterable<Draft>; problems: CellProblem[] } {
	const drafts = new Map<string, Draft>()
	const problems: CellProblem[] = []
	let lastId: string | undefined
	for (const [index, cells] of table.entries()) {
		if (index === 0 || cells.every(isBlank)) continue
		const line: Line = { row: index + 1, heading, cells }
		const id = cellOf(line, 'id') ?? lastId
		if (id === undefined) {
			problems.push({
				row: line.row,
				column: 'id',
				message:
					'missing, given nothing, allowed: the id of a model (small letters, digits and hyphens)',
			})
			continue
		}
		lastId = id
		const draft = drafts.get(id) ?? {
			row: line.row,
			given: new Map(),
			model: {},
			sizes: [],
			bad: false,
		}
		drafts.set(id, draft)
		const wrong = [...overlong(line), ...readModel(line, id, draft), ...readSize(line, draft)]
		if (wrong.length > 0) draft.bad = true
		problems.push(...wrong)
	}
	return { drafts: drafts.values(), problems }
}
const overlong = ({ row, heading, cells }: Line): CellProblem[] =>
	cells.slice(heading.length).every(isBlank)
		? []
		: [
				{
					row,
					column: '(line)',
					message:
						`more cells than the heading has, given ${cells.length}, allowed: ` +
						`${heading.length}`,
				},
			]
/** The model's own properties: one model, one value. */
function readModel(line: Line, id: string, draft: Draft): CellProblem[] {
	const { row } = line
	const problems: CellProblem[] = []
	for (const [column, kind] of modelColumns) {
		const text = column === 'id' ? id : cellOf(line, column)
		if (text === undefined) continue
		const before = draft.given.get(column)
		if (before === undefined) {
			draft.given.set(column, { row, text })
			const read = readCell(kind, text)
			if ('wrong' in read) problems.push({ row, column, message: read.wrong })
			else draft.model[column] = read.value
		} else if (before.text !== text)
			problems.push({
				row,
				column,
				message:
					`differs from line ${before.row}, given "${text.slice(0, 60)}", allowed: ` +
					`"${before.text.slice(0, 60)}" or blank (one model, one value)`,
			})
	}
	return problems
}
function readSize(line: Line, draft: Draft): CellProblem[] {
	const { row } = line
	const problems: CellProblem[] = []
	const values: Record<string, unknown> = {}
	for (const [column, kind] of sizeColumns) {
		const text = cellOf(line, column)
		if (text === undefined) continue
		const read = readCell(kind, text)
		if ('wrong' in read) problems.push({ row, column, message: read.wrong })
		else values[column] = read.value
	}
	draft.sizes.push({ row, values })
	return problems
}

/** The model of a draft without bad cells, or what the shelf's schema refuses in it. */
function modelOf(draft: Draft): { model: Model } | { problems: CellProblem[] } {
	const input = { ...draft.model, sizes: draft.sizes.map(({ values }) => values) }
	const parsed = modelSchema.safeParse(input)
	if (!parsed.success) return { problems: refusedCells(parsed.error, input, draft) }
	const repeated = shelfProblems(shelfOf([parsed.data]))
	if (repeated.length === 0) return { model: parsed.data }
	return {
		problems: repeated.map(({ path, message }) => {
			// models.0.sizes.INDEX.COLUMN
			const parts = path.split('.')
			return { row: sizeRow(draft, parts[3]), column: parts.at(-1) ?? path, message }
		}),
	}
}
const sizeRow = (draft: Draft, index: string | undefined): number =>
	draft.sizes[Number(index)]?.row ?? draft.row
/** A schema's refusals, each told at its line and column. */
const refusedCells = (error: z.ZodError, input: unknown, draft: Draft): CellProblem[] =>
	problemsOf(error, input).map(({ path, message }) => {
		const [, index, sizeColumn] = /^sizes\.(\d+)\.(\w+)/.exec(path) ?? []
		if (index !== undefined && sizeColumn !== undefined)
			return { row: sizeRow(draft, index), column: sizeColumn, message }
		const [column = path] = path.split('.')
		return { row: draft.given.get(column)?.row ?? draft.row, column, message }
	})
