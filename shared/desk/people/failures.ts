/** Failed tries of getting in, as the owner is told of them. */
import { z } from 'zod'

/** What was tried: a passphrase or recovery key at the locked PC, a PIN, one's own passphrase. */
const failureKinds = ['unlock', 'pin', 'own-passphrase'] as const
export type FailureKind = (typeof failureKinds)[number]

export const failureSchema = z.strictObject({
	what: z.enum(failureKinds),
	/** the person aimed at; absent where a passphrase says nothing of whose it should be */
	whom: z.string().optional(),
	times: z.int().min(1),
	/** ISO 8601, of the first and the last of them */
	first: z.string(),
	last: z.string(),
})
export type Failure = z.infer<typeof failureSchema>

/** A failed try, as a row of the audit trail names it. */
export interface FailedTry {
	what: FailureKind
	whom: string | undefined
	/** ISO 8601 */
	at: string
}
/** Tries of the same kind for the same person together, the latest first. */
export function gatherFailures(tries: readonly FailedTry[]): Failure[] {
	const found = new Map<string, Failure>()
	for (const { what, whom, at } of tries) {
		const name = JSON.stringify([what, whom])
		const before = found.get(name)
		found.set(name, {
			what,
			...(whom === undefined ? {} : { whom }),
			times: (before?.times ?? 0) + 1,
			first: before && before.first < at ? before.first : at,
			last: before && before.last > at ? before.last : at,
		})
	}
	return [...found.values()].sort((left, right) => right.last.localeCompare(left.last))
}
