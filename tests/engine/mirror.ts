/** A visit and a result seen in a mirror: every left is a right. */
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

const swapWord = (text: string): string =>
	text.replace(/\b(left|right)\b/g, (word) => (word === 'left' ? 'right' : 'left'))
/** A basis names its rule, not a side of this player: it stays as it is. */
function swapped(value: unknown): unknown {
	if (typeof value === 'string') return swapWord(value)
	if (Array.isArray(value)) return value.map(swapped)
	if (value && typeof value === 'object')
		return Object.fromEntries(
			Object.entries(value).map(([key, field]) => [
				swapWord(key),
				key === 'basis' ? field : swapped(field),
			]),
		)
	return value
}
/** The same visit seen in a mirror. */
export const swapVisit = (visit: Visit): Visit => visitSchema.parse(swapped(visit))

/** What was said, seen in a mirror. */
export const swapSaid = <Said>(said: Said): Said => swapped(said) as Said

const text = (value: unknown): string => JSON.stringify(value)
const byId = (one: { id: string }, other: { id: string }) => (one.id < other.id ? -1 : 1)
/** A result brought to a comparable order, and (unless told not to) seen in a mirror. */
export function mirrored<
	Result extends {
		findings: { id: string; because: unknown[] }[]
		workings?: { id: string; lines: string[] }[]
	},
>(result: Result, swap = true): unknown {
	const seen = (swap ? swapped(result) : result) as Result
	const findings = seen.findings
		.map((finding) => ({
			...finding,
			because: finding.because.toSorted((reason, other) => (text(reason) < text(other) ? -1 : 1)),
		}))
		.sort(byId)
	// Left and right come in a fixed order: lines and workings are compared without it.
	const workings = seen.workings
		?.map((working) => ({ ...working, lines: working.lines.toSorted() }))
		.sort(byId)
	return JSON.parse(text({ ...seen, findings, ...(workings ? { workings } : {}) }))
}
