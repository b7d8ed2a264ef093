/** Which characters the pages can print: asked where a name is typed, and before anything is drawn. */
import { printableRuns } from './printable.table.ts'

/** Ends a line; no font draws it. */
const newLine = 0x0a

/** Whether every font of the pages has this code point. @internal */
export function isPrintable(code: number): boolean {
	if (code === newLine) return true
	let [from, to] = [0, printableRuns.length - 1]
	while (from <= to) {
		const middle = (from + to) >> 1
		const [first, last] = printableRuns[middle] ?? [0, 0]
		if (code < first) to = middle - 1
		else if (code > last) from = middle + 1
		else return true
	}
	return false
}
/** The characters of a text that no font of the pages has, each once, in their order. */
export const unprintableIn = (text: string): string[] => [
	...new Set(
		[...text.normalize('NFC')].filter((character) => !isPrintable(character.codePointAt(0) ?? 0)),
	),
]
