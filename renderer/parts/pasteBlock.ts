/** Where each value of a pasted block would go. Nothing is written here. Pure. */
import type { DraftContent } from '../../shared/contract.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { withNotMeasured, withValue } from './draft-path.ts'
import { type Judged, judge } from './judge.ts'

export interface PasteCell {
	text: string
	/** absent where no field is there */
	path?: string
	name: string
	judged: Judged
}
/** True where the text holds more than one cell. */
export const isBlock = (text: string): boolean => /[\t;\n]/.test(text.trim())
const nameOf = (path: string): string => {
	const side = /\.(left|right)\./.exec(path)?.[1]
	return `${fieldMeta(visitSchema, path).title}${side ? `, ${side}` : ''}`
}
/**
 * One line fills the fields in the order of the walk; several lines go down from the field, their
 * columns to the right of it.
 * @param rows the fields of the step, row by row; @param at the field that was pasted into
 */
export function planPaste(
	text: string,
	rows: readonly (readonly string[])[],
	at: string,
): PasteCell[] {
	const lines = text
		.replace(/\r\n?/g, '\n')
		.replace(/\n+$/, '')
		.split('\n')
		.map((line) => line.split(/[\t;]/).map((cell) => cell.trim()))
	const cell = (words: string, path: string | undefined): PasteCell[] =>
		words === ''
			? []
			: [
					path === undefined
						? {
								text: words,
								name: 'no field there',
								judged: { error: 'There is no field at this place.' },
							}
						: { text: words, path, name: nameOf(path), judged: judge(path, words) },
				]
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
