/** Steps under a heading of their own, and what stands beside them. */
import { heading } from '../base.ts'
import type { Block, InnerBlock } from '../document.ts'
import { textsIn } from '../texts.ts'

/** Nothing where there are no steps. */
export const ladder = (title: string, items: readonly string[]): InnerBlock[] =>
	items.length === 0 ? [] : [heading(title, { level: 2 }), { kind: 'list', items: [...items] }]
/** Neither column is so narrow that its sentences fall apart. */
const leastPercent = 42
/** What an item costs beyond its letters: about half a line of a column. */
const letters = (run: readonly InnerBlock[]): number =>
	textsIn(run).reduce((sum, text) => sum + text.length + 20, 0)
/** As wide as makes both equally high. One run alone takes the whole width. */
export function sideBySide(left: InnerBlock[], right: InnerBlock[]): Block[] {
	if (left.length === 0 || right.length === 0) return [...left, ...right]
	const share = Math.round((100 * letters(left)) / (letters(left) + letters(right)))
	const leftPercent = Math.min(100 - leastPercent, Math.max(leastPercent, share))
	return [{ kind: 'beside', left, right, leftPercent }]
}
