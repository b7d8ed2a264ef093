/** Who typed which entry of a draft last: so that what was typed twice can be said with its names. */
import { z } from 'zod'

const typistSchema = z.looseObject({
	/** id of the person; absent where it is not known */
	by: z.string().optional(),
	/** ISO 8601 */
	at: z.string(),
	/** the window, by the name that it gave itself; absent where it gave none */
	window: z.string().optional(),
})
type Typist = z.infer<typeof typistSchema>
/** By the keys of the entry with dots between them. */
export const typistsSchema = z.record(z.string(), typistSchema)
export type Typists = z.infer<typeof typistsSchema>
/** So many of the latest are kept: two who type at one draft do so within the hour. */
const mostKept = 200

export const pathOf = (keys: readonly string[]): string => keys.join('.')

/** @param changed the keys of the entries that were typed just now */
export function withTypist(
	before: Typists | undefined,
	changed: readonly (readonly string[])[],
	typist: Typist,
): Typists | undefined {
	if (changed.length === 0) return before
	const now = { ...before, ...Object.fromEntries(changed.map((keys) => [pathOf(keys), typist])) }
	const all = Object.entries(now)
	if (all.length <= mostKept) return now
	return Object.fromEntries(
		all.sort(([, one], [, other]) => (one.at < other.at ? 1 : -1)).slice(0, mostKept),
	)
}
/** The id of who typed into a draft last; undefined where that is not known. */
export const lastTypist = (typists: Typists = {}): string | undefined =>
	Object.values(typists).reduce<Typist | undefined>(
		(last, one) => (last && last.at > one.at ? last : one),
		undefined,
	)?.by
/** Who typed the entry last, or what stands below it; undefined where that is not known. */
export function typistOf(typists: Typists = {}, keys: readonly string[]): Typist | undefined {
	const path = pathOf(keys)
	const own = typists[path]
	if (own) return own
	return Object.entries(typists)
		.filter(([inner]) => inner.startsWith(`${path}.`))
		.map(([, typist]) => typist)
		.sort((one, other) => (one.at < other.at ? 1 : -1))[0]
}
