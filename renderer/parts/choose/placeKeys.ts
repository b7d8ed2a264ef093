/** The keys of a list of folders: which entry is marked next, and which one a few letters mean. */

/** So many entries one page of keys goes on. */
const page = 10
/** Letters typed within so long of each other are one beginning; common practice, no source. */
const togetherMs = 900

const moves: Readonly<Record<string, (at: number, last: number) => number>> = {
	ArrowDown: (at, last) => Math.min(at + 1, last),
	ArrowUp: (at) => Math.max(at - 1, 0),
	Home: () => 0,
	End: (_, last) => last,
	PageDown: (at, last) => Math.min(at + page, last),
	PageUp: (at) => Math.max(at - page, 0),
}
/** The entry that a key leads to; undefined where it is no such key. */
export const markedBy = (key: string, at: number, count: number): number | undefined =>
	count === 0 ? undefined : moves[key]?.(at, count - 1)

/** Letters typed so far, and when the last came. */
export interface Typed {
	letters: string
	atMs: number
}
/** What is typed once another letter came; a pause begins anew. */
export const typedOn = (before: Typed, letter: string, nowMs: number): Typed => ({
	letters: nowMs - before.atMs > togetherMs ? letter : before.letters + letter,
	atMs: nowMs,
})
const folded = (text: string): string =>
	text.normalize('NFKD').replace(/\p{M}/gu, '').toLocaleLowerCase()
/**
 * The entry whose name begins with the letters: the marked one while it still fits, else the next
 * behind it; the same letter again goes on to the next one. Undefined where none fits.
 */
export function jumpTo(names: readonly string[], at: number, letters: string): number | undefined {
	const wanted = folded(letters)
	const isSame = wanted.length > 1 && [...wanted].every((letter) => letter === wanted[0])
	const beginnings = isSame ? [wanted, wanted[0] ?? ''] : [wanted]
	for (const beginning of beginnings) {
		const fits = names.flatMap((name, index) => (folded(name).startsWith(beginning) ? [index] : []))
		const from = beginning.length === 1 ? at + 1 : at
		const found = fits.find((index) => index >= from) ?? fits[0]
		if (found !== undefined) return found
	}
	return undefined
}
