/** When a message is tried again: doubling waits, an end after which it counts as returned. */

/**
 * Waits in ms. Network: common practice, no source. Refusals: RFC 5321 4.5.4.1, at least 30 minutes
 * between tries, from memory.
 */
export const waits = {
	network: { firstMs: 30_000, mostMs: 15 * 60_000 },
	refusal: { firstMs: 30 * 60_000, mostMs: 4 * 3_600_000 },
} as const
/** RFC 5321 4.5.4.1: a sender gives up after 4 to 5 days, from memory. */
const giveUpMs = 5 * 86_400_000
/** @param failures how often in a row, 1 or more. @returns ms until the next try */
export function waitMs(why: keyof typeof waits, failures: number): number {
	const { firstMs, mostMs } = waits[why]
	return Math.min(mostMs, firstMs * 2 ** Math.min(30, Math.max(0, failures - 1)))
}
/** Whether a message was tried for so long that it counts as returned. Both ISO moments. */
export const givesUp = (firstTriedAt: string, now: string): boolean =>
	Date.parse(now) - Date.parse(firstTriedAt) >= giveUpMs
