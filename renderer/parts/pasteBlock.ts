/** Where each value of a pasted block would go. Nothing is written here. Pure. */
import type { DraftContent } from '../../shared/contract.ts'
import { catalogue, type Placed, pathsOf } from '../../shared/engine/visit/measures/catalogue.ts'
import type { Side } from '../../shared/engine/visit/visit.ts'
import { withNotMeasured, withValue } from './draft-path.ts'
import { type Judged, judge } from './judge.ts'
import { nameOf } from './measure/fieldState.ts'
import { type Heading, headingOf, tableOf } from './pasteTable.ts'

export interface PasteCell {
	text: string
	/** absent where no field is there */
	path?: string
	name: string
	judged: Judged
}
export interface PastePlan {
	/** By the names in it; else by the place of each value. */
	by: 'names' | 'place'
	cells: PasteCell[]
}
/** True where the text holds more than one cell. */
export const isBlock = (text: string): boolean => /[\t;\n]/.test(text.trim())
const refused = (text: string, name: string, error: string): PasteCell => ({
	text,
	name,
	judged: { error },
})
const placedAt = (path: string, text: string): PasteCell => ({
	text,
	path,
	name: nameOf(path),
	judged: judge(path, text),
})
/**
 * By place: one line fills the fields in the order of the walk; several lines go down from the
 * field, their columns to the right of it.
 * @param rows the fields of the step, row by row; @param at the field of the first value
 * @internal
 */
export function planPaste(
	text: string,
	rows: readonly (readonly string[])[],
	at: string,
): PasteCell[] {
	const lines = tableOf(text)
	const cell = (words: string, path: string | undefined): PasteCell[] => {
		if (words === '') return []
		if (path !== undefined) return [placedAt(path, words)]
		return [refused(words, 'no field there', 'There is no field at this place.')]
	}
	const [first = []] = lines
	if (lines.length === 1) {
		const walk = rows.flat()
		const from = walk.indexOf(at)
		return first.flatMap((words, index) => cell(words, walk[from + index]))
	}
	const row = rows.findIndex((paths) => paths.includes(at))
	const column = rows[row]?.indexOf(at) ?? 0
	return lines.flatMap((line, down) =>
		line.flatMap((words, right) => cell(words, rows[row + down]?.[column + right])),
	)
}
/** A value with all that the names beside and above it say. */
interface Named extends Heading {
	row: number
	text: string
}
/** What a row and a column say together; of the row first, since the names mostly stand there. */
function together(headings: readonly (Heading | undefined)[]): Heading {
	const told = <Key extends keyof Heading>(key: Key): Heading[Key] =>
		headings.find((heading) => heading?.[key] !== undefined)?.[key]
	const [measure, side, unit, unknown] = [
		told('measure'),
		told('side'),
		told('unit'),
		told('unknown'),
	]
	return {
		...(measure && { measure }),
		...(side && { side }),
		...(unit && { unit }),
		...(unknown && { unknown }),
	}
}
/** A bare number in the unit that its heading says. */
const inUnit = (text: string, unit: string | undefined): string =>
	unit && /^[+-]?[\d.,\s]+$/.test(text)
		? text
				.split(/\s+/)
				.map((number) => `${number} ${unit}`)
				.join(' ')
		: text
function namedIn(table: readonly (readonly string[])[]): Named[] {
	const headings = table.map((line, row) =>
		line.map((cell, column) => {
			const heading = headingOf(cell)
			// words inside the block are a value, perhaps a term
			const inside = column > 0 && (row > 0 || headingOf(line[0] ?? '')?.measure !== undefined)
			return heading?.unknown !== undefined && inside ? undefined : heading
		}),
	)
	const isHead = table.map((line, row) =>
		line.every((cell, column) => cell === '' || headings[row]?.[column] !== undefined),
	)
	/** Heads of columns stand in lines that hold no value. */
	const above = (column: number) =>
		headings.filter((_, row) => isHead[row]).map((line) => line[column])
	return table.flatMap((line, row) =>
		isHead[row]
			? []
			: line.flatMap((text, column): Named[] => {
					if (text === '' || headings[row]?.[column] !== undefined) return []
					const said = together([...(headings[row] ?? []), ...above(column)])
					return [{ ...said, row, text: inUnit(text, said.unit) }]
				}),
	)
}
/** Two values without a side stand as they are always written: left, then right. */
function sideOf(value: Named, all: readonly Named[]): Side | undefined {
	if (value.side !== undefined) return value.side
	const pair = all.filter(
		({ row, measure, side }) => row === value.row && measure === value.measure && !side,
	)
	if (pair.length !== 2) return undefined
	return pair[0] === value ? 'left' : 'right'
}
function pathOf(measure: Placed, value: Named, all: readonly Named[]): string | undefined {
	const [only, right] = pathsOf(measure)
	if (right === undefined) return only
	const side = sideOf(value, all)
	return side && (side === 'left' ? only : right)
}
/** Every path of a measure, in the order of the walk. */
const walk = catalogue.flatMap((placed): readonly string[] => pathsOf(placed))
/** By names: whatever the order; several values of one field are its readings. */
function planNamed(table: readonly (readonly string[])[]): PasteCell[] {
	const all = namedIn(table)
	const texts = new Map<string, string>()
	const left: PasteCell[] = []
	for (const value of all) {
		const { measure, unknown, text } = value
		const path = measure && pathOf(measure, value, all)
		if (path !== undefined) texts.set(path, [texts.get(path), text].filter(Boolean).join(' '))
		else if (measure)
			left.push(refused(text, measure.measure.label, 'Whether left or right is not said.'))
		else left.push(refused(text, unknown ?? 'no name', 'No field of the visit has this name.'))
	}
	const inOrder = walk.filter((path) => texts.has(path))
	return [...inOrder.map((path) => placedAt(path, texts.get(path) ?? '')), ...left]
}
/**
 * A block with names in it goes by them alone, so that nothing shifts; one of values alone goes by
 * place.
 */
export function planBlock(
	text: string,
	rows: readonly (readonly string[])[],
	at: string,
): PastePlan {
	const table = tableOf(text)
	const cells = planPaste(text, rows, at)
	const isNamed = table.flat().some((cell) => {
		const heading = headingOf(cell)
		return heading?.measure !== undefined || heading?.side !== undefined
	})
	const hasWords = cells.some(
		({ text: words, judged }) =>
			judged.error !== undefined && headingOf(words)?.unknown !== undefined,
	)
	return isNamed || hasWords ? { by: 'names', cells: planNamed(table) } : { by: 'place', cells }
}
/** The draft with the cells that can be read; the others are left out. */
export function applyPaste(draft: DraftContent, cells: readonly PasteCell[]): DraftContent {
	return cells.reduce(
		(now, { path, judged }) =>
			path === undefined || judged.error !== undefined
				? now
				: judged.notMeasured !== undefined
					? withNotMeasured(now, path, judged.notMeasured)
					: withValue(now, path, judged.value),
		draft,
	)
}
