/**
 * The shelf as a table: one line a size, the model's own properties repeated or left blank after
 * its first line.
 * Pure: cells in, shelf and problems out. Reading and writing the text is the host's work
 * (electron/services/shelf/shelf-csv.ts).
 */
import type { z } from 'zod'
import { problemsOf } from '../../engine/visit/problems.ts'
import {
	type Model,
	modelSchema,
	type Shelf,
	type ShelfSize,
	type Stud,
	shelfProblems,
} from '../../engine/visit/shelf.ts'

/**
 * What is wrong with one cell: the line of the file (the heading is line 1), its column, and a
 * plain sentence.
 */
export interface CellProblem {
	row: number
	column: string
	message: string
}
export interface ShelfPreview {
	shelf: Shelf
	good: number
	problems: CellProblem[]
}
type Kind = 'text' | 'number' | 'yes-no' | 'codes' | 'studs'
const modelColumns = {
	id: 'text',
	name: 'text',
	sole: 'text',
	codes: 'codes',
	toeBoxDepthMm: 'number',
	heelStackMm: 'number',
	forefootStackMm: 'number',
	counterStiffness: 'text',
	counterHeight: 'text',
	collar: 'text',
	paddedCollar: 'yes-no',
	instep: 'text',
	torsion: 'text',
	forefootStiffness: 'text',
	upperSoftness: 'text',
	forefootSeams: 'text',
	cushioning: 'text',
	base: 'text',
	massG: 'number',
	removableLiner: 'yes-no',
	linerThicknessMm: 'number',
	studs: 'studs',
	price: 'number',
	retired: 'yes-no',
	note: 'text',
} as const satisfies Record<Exclude<keyof Model, 'sizes'>, Kind>
const sizeColumns = {
	system: 'text',
	label: 'number',
	insideLengthMm: 'number',
	ballWidthMm: 'number',
	fitting: 'text',
} as const satisfies Record<keyof ShelfSize, Kind>
type ModelColumn = keyof typeof modelColumns
type SizeColumn = keyof typeof sizeColumns
export const shelfColumns: readonly string[] = [
	...Object.keys(modelColumns),
	...Object.keys(sizeColumns),
]

const writeStud = (stud: Stud) =>
	[stud.xFraction, stud.yFraction, stud.shape, stud.heightMm, stud.removable ? 'yes' : 'no'].join(
		' ',
	)
/** @returns the value, or the words for what is wrong with it */
function read(kind: Kind, cell: string): { value: unknown } | { wrong: string } {
	switch (kind) {
		case 'text':
			return { value: cell }
		case 'number': {
			const number = /^-?\d+([.,]\d+)?$/.test(cell) ? Number(cell.replace(',', '.')) : Number.NaN
			return Number.isFinite(number)
				? { value: number }
				: {
						wrong: `not a number, given "${cell}", allowed: digits with one point or comma, no unit`,
					}
		}
		case 'yes-no':
			return /^(yes|no)$/i.test(cell)
				? { value: cell.toLowerCase() === 'yes' }
				: { wrong: `not yes or no, given "${cell}", allowed: yes, no or blank` }
		case 'codes':
			return {
				value: cell
					.split(/[;|]/)
					.map((one) => one.trim())
					.filter((one) => one !== ''),
			}
		case 'studs': {
			if (cell === 'none') return { value: [] }
			const studs = cell
				.split(';')
				.map((one) => one.trim())
				.filter((one) => one !== '')
				.map((one) => one.split(/\s+/))
			const odd = studs.findIndex(
				(parts) =>
					parts.length !== 5 ||
					![0, 1, 3].every((at) => /^-?\d+([.,]\d+)?$/.test(parts[at]!)) ||
					!/^(yes|no)$/i.test(parts[4]!),
			)
			if (odd >= 0)
				return {
					wrong:
						`stud ${odd + 1} not understood, given ` +
						`"${studs[odd]!.join(' ').slice(0, 60)}", allowed: from heel 0 to 1, across -1 ` +
						'to 1, round, blade or oval, height in mm, yes or no for coming out (0.72 -0.6 ' +
						'round 9 no), studs parted by semicolons; or none',
				}
			const number = (part: string) => Number(part.replace(',', '.'))
			return {
				value: studs.map(([x, y, shape, height, out]) => ({
					xFraction: number(x!),
					yFraction: number(y!),
					shape,
					heightMm: number(height!),
					removable: out!.toLowerCase() === 'yes',
				})),
			}
		}
	}
}
const blank = (cell: string | undefined) => cell === undefined || cell.trim() === ''

/**
 * Reads the cells of a shelf table, heading first. Nothing is guessed: a model with any bad cell is
 * left out of the preview's
 * shelf, and each bad cell is named with its line and column.
 */
export function shelfFromCells(cells: readonly (readonly string[])[]): ShelfPreview {
	const problems: CellProblem[] = []
	const empty: Shelf = { format: 'lastwright-shelf', version: 1, models: [] }
	const heading = (cells[0] ?? []).map((one) => one.trim().replace(/^\uFEFF/, ''))
	for (const [at, column] of heading.entries()) {
		if (column !== '' && !shelfColumns.includes(column))
			problems.push({
				row: 1,
				column,
				message: `no such column, given "${column}", allowed: ${shelfColumns.join(', ')}`,
			})
		else if (column !== '' && heading.indexOf(column) !== at)
			problems.push({
				row: 1,
				column,
				message: `column twice, given "${column}", allowed: each column once`,
			})
	}
	for (const column of ['id', 'name', 'sole', 'system', 'label', 'insideLengthMm', 'ballWidthMm'])
		if (!heading.includes(column))
			problems.push({
				row: 1,
				column,
				message:
					'column missing, given ' +
					`${heading.length === 0 ? 'an empty file' : 'a heading without it'}, allowed: ` +
					`a heading with the column ${column}`,
			})
	if (problems.length > 0) return { shelf: empty, good: 0, problems }

	interface Draft {
		row: number
		rowOf: Record<string, number>
		sizeRows: number[]
		model: Record<string, unknown>
		sizes: Record<string, unknown>[]
		texts: Record<string, string>
		bad: boolean
	}
	const drafts = new Map<string, Draft>()
	let last: string | undefined
	for (const [index, line] of cells.entries()) {
		if (index === 0 || line.every((cell) => blank(cell))) continue
		const row = index + 1
		const cellOf = (column: string) => {
			const at = heading.indexOf(column)
			return at < 0 || blank(line[at]) ? undefined : line[at]!.trim().replace(/^'(?=[=+\-@])/, '')
		}
		const id = cellOf('id') ?? last
		if (id === undefined) {
			problems.push({
				row,
				column: 'id',
				message:
					'missing, given nothing, allowed: the id of a model (small letters, digits and hyphens)',
			})
			continue
		}
		last = id
		const draft: Draft = drafts.get(id) ?? {
			row,
			rowOf: {},
			sizeRows: [],
			model: {},
			sizes: [],
			texts: {},
			bad: false,
		}
		drafts.set(id, draft)
		const wrong = (column: string, message: string) => {
			problems.push({ row, column, message })
			draft.bad = true
		}
		if (line.length > heading.length && line.slice(heading.length).some((cell) => !blank(cell)))
			wrong(
				'(line)',
				`more cells than the heading has, given ${line.length}, allowed: ${heading.length}`,
			)
		for (const [column, kind] of Object.entries(modelColumns) as [ModelColumn, Kind][]) {
			const cell = column === 'id' ? id : cellOf(column)
			if (cell === undefined) continue
			const before = draft.texts[column]
			if (before !== undefined) {
				if (before !== cell)
					wrong(
						column,
						`differs from line ${draft.rowOf[column]}, given "${cell.slice(0, 60)}", allowed: ` +
							`"${before.slice(0, 60)}" or blank (one model, one value)`,
					)
				continue
			}
			draft.texts[column] = cell
			draft.rowOf[column] = row
			const got = read(kind, cell)
			if ('wrong' in got) wrong(column, got.wrong)
			else draft.model[column] = got.value
		}
		const size: Record<string, unknown> = {}
		for (const [column, kind] of Object.entries(sizeColumns) as [SizeColumn, Kind][]) {
			const cell = cellOf(column)
			if (cell === undefined) continue
			const got = read(kind, cell)
			if ('wrong' in got) wrong(column, got.wrong)
			else size[column] = got.value
		}
		draft.sizes.push(size)
		draft.sizeRows.push(row)
	}
	const models: Model[] = []
	for (const draft of drafts.values()) {
		if (draft.bad) continue
		const input = { ...draft.model, sizes: draft.sizes }
		const parsed = modelSchema.safeParse(input)
		if (!parsed.success) {
			problems.push(...cellsOf(parsed.error, input, draft))
			continue
		}
		const twice = shelfProblems({ ...empty, models: [parsed.data] })
		if (twice.length > 0) {
			problems.push(
				...twice.map((problem) => ({
					row: draft.sizeRows[Number(problem.path.split('.')[3])] ?? draft.row,
					column: problem.path.split('.').at(-1)!,
					message: problem.message,
				})),
			)
			continue
		}
		models.push(parsed.data)
	}
	problems.sort((a, b) => a.row - b.row)
	return { shelf: { ...empty, models }, good: models.length, problems }
}
/** A schema's refusals, each told at its line and column. */
function cellsOf(
	error: z.ZodError,
	input: unknown,
	draft: { row: number; rowOf: Record<string, number>; sizeRows: number[] },
): CellProblem[] {
	return problemsOf(error, input).map(({ path, message }) => {
		const size = /^sizes\.(\d+)\.(\w+)/.exec(path)
		const column = size ? size[2]! : path.split('.')[0]!
		return {
			row: size ? draft.sizeRows[Number(size[1])]! : (draft.rowOf[column] ?? draft.row),
			column,
			message,
		}
	})
}
/**
 * The shelf as cells, heading first; model properties on the first line of each model only, but its
 * id on every line.
 */
export function shelfToCells(shelf: Shelf): string[][] {
	const show = (kind: Kind, value: unknown): string => {
		if (value === undefined) return ''
		switch (kind) {
			case 'yes-no':
				return value === true ? 'yes' : 'no'
			case 'codes':
				return (value as string[]).join(';')
			case 'studs':
				return (value as Stud[]).length === 0 ? 'none' : (value as Stud[]).map(writeStud).join('; ')
			default:
				return String(value)
		}
	}
	const lines = shelf.models.flatMap((model) =>
		model.sizes.map((size, index) => [
			...(Object.entries(modelColumns) as [ModelColumn, Kind][]).map(([column, kind]) =>
				index === 0 || column === 'id' ? show(kind, model[column]) : '',
			),
			...(Object.entries(sizeColumns) as [SizeColumn, Kind][]).map(([column, kind]) =>
				show(kind, size[column]),
			),
		]),
	)
	return [[...shelfColumns], ...lines]
}
