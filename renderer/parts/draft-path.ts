/** Reading and writing a draft by dotted path; arrays by index. */
import type { DraftContent } from '../../shared/contract.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

type Loose = Record<string, unknown>
export function readPath(whole: object, path: string): unknown {
	return path.split('.').reduce<unknown>((here, key) => (here as Loose | undefined)?.[key], whole)
}
/**
 * A copy with the value at the path; undefined takes the key away, and empty groups
 * with it.
 */
export function writePath<Whole extends object>(whole: Whole, path: string, value: unknown): Whole {
	const put = (here: unknown, [key = '', ...rest]: string[]): unknown => {
		const copy: Loose | unknown[] = Array.isArray(here)
			? [...here]
			: { ...(here as Loose | undefined) }
		const next = rest.length === 0 ? value : put((copy as Loose)[key], rest)
		const empty =
			next === undefined ||
			(rest.length > 0 &&
				typeof next === 'object' &&
				next !== null &&
				!Array.isArray(next) &&
				Object.keys(next).length === 0)
		if (empty && !Array.isArray(copy)) delete copy[key]
		else (copy as Loose)[key] = next
		return copy
	}
	return put(whole, path.split('.')) as Whole
}
/** The visit with a field marked as not measured, or with the mark taken away. */
function marked(visit: Visit, path: string, reason: string | undefined): Visit {
	const { [path]: _, ...others } = visit.notMeasured ?? {}
	const notMeasured = reason === undefined ? others : { ...others, [path]: reason }
	const { notMeasured: __, ...rest } = visit
	return Object.keys(notMeasured).length > 0 ? { ...rest, notMeasured } : rest
}
/** Marks a field as not measured: no value, no raw text, and no longer missing. */
export function withNotMeasured(
	draft: DraftContent,
	path: string,
	reason = 'not measured',
): DraftContent {
	const { [path]: _, ...raw } = draft.raw
	return { ...draft, raw, visit: marked(writePath(draft.visit, path, undefined), path, reason) }
}
/** Sets a value and forgets the raw text; or keeps the raw text and takes the value away. */
export function withValue(draft: DraftContent, path: string, value: unknown): DraftContent {
	const { [path]: _, ...raw } = draft.raw
	return { ...draft, raw, visit: marked(writePath(draft.visit, path, value), path, undefined) }
}
export function withRaw(draft: DraftContent, path: string, text: string): DraftContent {
	return {
		...draft,
		raw: { ...draft.raw, [path]: text },
		visit: marked(writePath(draft.visit, path, undefined), path, undefined),
	}
}
/** The first place where two drafts differ, as a dotted path; empty where they are the same. */
export function changedPath(before: unknown, after: unknown, at = ''): string {
	if (Object.is(before, after)) return ''
	// repeats and other plain lists are one entry
	const plain = (value: unknown): boolean =>
		value !== undefined &&
		(typeof value !== 'object' ||
			value === null ||
			(Array.isArray(value) && !value.some((item) => typeof item === 'object')))
	if (plain(before) || plain(after))
		return JSON.stringify(before) === JSON.stringify(after) ? '' : at || '.'
	// a group that is not there yet is an empty one
	const [was, is] = [(before ?? {}) as Loose, (after ?? {}) as Loose]
	for (const key of new Set([...Object.keys(was), ...Object.keys(is)])) {
		const found = changedPath(was[key], is[key], at ? `${at}.${key}` : key)
		if (found) return found
	}
	return ''
}
