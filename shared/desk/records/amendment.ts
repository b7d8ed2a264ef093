/** What changed between two versions of a signed visit, and who still holds the earlier one. */
import { z } from 'zod'

export interface Difference {
	path: string
	before: string
	after: string
}

/** What stands for a value that one version lacks. */
export const notThere = 'not there'
function shown(value: unknown): string {
	if (value === undefined) return notThere
	return typeof value === 'string' ? value : JSON.stringify(value)
}
const isObject = (value: unknown): value is Record<string, unknown> =>
	value !== null && typeof value === 'object'
/** Where a whole group of fields came or went, each of its fields did. */
const beside = (value: unknown, other: unknown): unknown =>
	value === undefined && isObject(other) && !Array.isArray(other) ? {} : value
/** Two groups, or two lists of one length: only these are looked into. */
const haveSameShape = (before: object, after: object): boolean =>
	Array.isArray(before)
		? Array.isArray(after) && before.length === after.length
		: !Array.isArray(after)
/** Every leaf that differs, by its path; a list counts as one leaf where its length differs. */
export function differences(was: unknown, is: unknown, path = ''): Difference[] {
	if (Object.is(was, is)) return []
	const [before, after] = [beside(was, is), beside(is, was)]
	if (isObject(before) && isObject(after) && haveSameShape(before, after))
		return [...new Set([...Object.keys(before), ...Object.keys(after)])]
			.sort()
			.flatMap((key) => differences(before[key], after[key], path ? `${path}.${key}` : key))
	return JSON.stringify(before) === JSON.stringify(after)
		? []
		: [{ path: path || '(all)', before: shown(before), after: shown(after) }]
}
/** A version of a report that someone was given; who was only reminded of a visit holds none. */
export const handedOverSchema = z.object({
	recipient: z.string(),
	channel: z.string(),
	version: z.number(),
	at: z.string(),
	/** said of what is no report */
	documentKind: z.undefined().optional(),
})
export type HandedOver = z.infer<typeof handedOverSchema>
/**
 * Recipients of an earlier version who have not been given the latest: each once, with the last
 * version they hold.
 */
export function mustBeTold(handed: readonly HandedOver[], latest: number): HandedOver[] {
	const newest = new Map<string, HandedOver>()
	for (const handing of handed) {
		const recipient = handing.recipient.toLowerCase()
		const known = newest.get(recipient)
		if (!known || known.version <= handing.version) newest.set(recipient, handing)
	}
	return [...newest.values()].filter(({ version }) => version < latest)
}
