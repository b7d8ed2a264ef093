/** What changed between two versions of a signed visit, and who still holds the earlier one. */
export interface Difference { path: string; before: string; after: string }

const shown = (value: unknown) => (value === undefined ? 'not there' : typeof value === 'string' ? value : JSON.stringify(value))
/** Every leaf that differs, by its path; a list counts as one leaf where its length differs. */
export function differences(before: unknown, after: unknown, path = ''): Difference[] {
	if (Object.is(before, after)) return []
	const isObject = (value: unknown): value is Record<string, unknown> => value !== null && typeof value === 'object'
	if (isObject(before) && isObject(after) && Array.isArray(before) === Array.isArray(after) && (!Array.isArray(before) || before.length === (after as unknown as unknown[]).length)) {
		return [...new Set([...Object.keys(before), ...Object.keys(after)])].sort().flatMap((key) => differences(before[key], after[key], path ? `${path}.${key}` : key))
	}
	return JSON.stringify(before) === JSON.stringify(after) ? [] : [{ path: path || '(all)', before: shown(before), after: shown(after) }]
}
export interface HandedOver { recipient: string; channel: string; version: number; at: string }
/** Recipients of an earlier version who have not been given the latest: each once, with the last version they hold. */
export function mustBeTold(handed: readonly HandedOver[], latest: number): HandedOver[] {
	const newest = new Map<string, HandedOver>()
	for (const one of handed) {
		const known = newest.get(one.recipient.toLowerCase())
		if (!known || known.version <= one.version) newest.set(one.recipient.toLowerCase(), one)
	}
	return [...newest.values()].filter((one) => one.version < latest)
}
