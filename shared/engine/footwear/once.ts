/** Reasons told once. */
import type { Because } from '../protocol/basis.ts'

/** Each reason once, as it was first given: the same measure, side and value are one reason. */
export function once(reasons: readonly Because[]): Because[] {
	const seen = new Set<string>()
	return reasons.filter(({ measure, side, value }) => {
		const reason = JSON.stringify([measure, side, value])
		if (seen.has(reason)) return false
		seen.add(reason)
		return true
	})
}
