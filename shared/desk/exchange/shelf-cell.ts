/** One cell of a shelf table: its text to a value, and a value to its text. */
import type { Model, ShelfSize, Stud } from '../../engine/visit/shelf.ts'
import type { CellKind } from './shelf-columns.ts'

/** The value, not yet held against the shelf's schema, or the words for what is wrong with it. */
export type CellRead = { value: unknown } | { wrong: string }

const decimal = /^-?\d+([.,]\d+)?$/
const yesOrNo = /^(yes|no)$/i
const numberIn = (digits: string): number => Number(digits.replace(',', '.'))
const isYes = (word: string): boolean => word.toLowerCase() === 'yes'
const parted = (cell: string, at: string | RegExp): string[] =>
	cell
		.split(at)
		.map((part) => part.trim())
		.filter((part) => part !== '')

/** @param cell its text, trimmed and not blank */
export const readCell = (kind: CellKind, cell: string): CellRead => readers[kind](cell)
const readers: Record<CellKind, (cell: string) => CellRead> = {
	text: (cell) => ({ value: cell }),
	number: (cell) => {
		const number = decimal.test(cell) ? numberIn(cell) : Number.NaN
		return Number.isFinite(number)
			? { value: number }
			: {
					wrong: `not a number, given "${cell}", allowed: digits with one point or comma, no unit`,
				}
	},
	'yes-no': (cell) =>
		yesOrNo.test(cell)
			? { value: isYes(cell) }
			: { wrong: `not yes or no, given "${cell}", allowed: yes, no or blank` },
	codes: (cell) => ({ value: parted(cell, /[;|]/) }),
	studs: readStuds,
}
function readStuds(cell: string): CellRead {
	if (cell === 'none') return { value: [] }
	const texts = parted(cell, ';').map((text) => text.split(/\s+/))
	const studs: object[] = []
	for (const [index, parts] of texts.entries()) {
		const stud = readStud(parts)
		if (stud === undefined)
			return {
				wrong:
					`stud ${index + 1} not understood, given ` +
					`"${parts.join(' ').slice(0, 60)}", allowed: from heel 0 to 1, across -1 ` +
					'to 1, round, blade or oval, height in mm, yes or no for coming out (0.72 -0.6 ' +
					'round 9 no), studs parted by semicolons; or none',
			}
		studs.push(stud)
	}
	return { value: studs }
}
/** Undefined where it is not understood; whether the shape is known is for the schema to say. */
function readStud([x, y, shape, height, out, ...more]: readonly string[]): object | undefined {
	if (x === undefined || y === undefined || height === undefined || out === undefined)
		return undefined
	if (more.length > 0 || ![x, y, height].every((part) => decimal.test(part))) return undefined
	if (!yesOrNo.test(out)) return undefined
	return {
		xFraction: numberIn(x),
		yFraction: numberIn(y),
		shape,
		heightMm: numberIn(height),
		removable: isYes(out),
	}
}

type CellValue =
	| Model[Exclude<keyof Model, 'sizes'>]
	| ShelfSize[Exclude<keyof ShelfSize, 'listed' | 'measured'>]
/** A blank cell is what is not recorded; an empty list of studs is 'none', a sole without studs. */
export function writeCell(kind: CellKind, value: CellValue): string {
	if (value === undefined) return ''
	if (typeof value === 'boolean') return value ? 'yes' : 'no'
	if (!Array.isArray(value)) return String(value)
	const parts = value.map((part) => (typeof part === 'string' ? part : writeStud(part)))
	if (kind !== 'studs') return parts.join(';')
	return parts.length === 0 ? 'none' : parts.join('; ')
}
const writeStud = ({ xFraction, yFraction, shape, heightMm, removable }: Stud): string =>
	[xFraction, yFraction, shape, heightMm, removable ? 'yes' : 'no'].join(' ')
