/**
 * The safeguarding note: clinicians and the owner read it in the assessment, nobody else is ever
 * answered it, and nobody else can lose it by saving.
 */
import { privatePaths } from '../../engine/visit/private.ts'
import { clinicians, type Role } from '../workplace/call.ts'
import type { DraftContent } from './calls.ts'

type Loose = Record<string, unknown>
const restrictedPaths = privatePaths
	.filter(({ topic }) => topic === 'safeguarding')
	.map(({ path }) => path)
const restrictedKeys = restrictedPaths.map((path) => path.slice(path.lastIndexOf('.') + 1))

export const seesRestricted = (role: Role): boolean => clinicians.includes(role)

const endsRestricted = (path: string): boolean =>
	restrictedPaths.some((restricted) => path === restricted || path.endsWith(`.${restricted}`))
/** A field by its own key, or by its path as raw text and marks have it. */
const isRestrictedKey = (key: string): boolean =>
	restrictedKeys.includes(key) || endsRestricted(key)
/** A line of a list that tells what happened to the field at a path. */
const tellsOfRestricted = (item: unknown): boolean => {
	const path = item !== null && typeof item === 'object' ? (item as Loose).path : undefined
	return typeof path === 'string' && endsRestricted(path)
}
/** An answer of the host without what its reader may not be told: the note, and lines about it. */
export function withoutRestricted(value: unknown): unknown {
	if (Array.isArray(value))
		return value.filter((item) => !tellsOfRestricted(item)).map(withoutRestricted)
	if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return value
	return Object.fromEntries(
		Object.entries(value)
			.filter(([key]) => !isRestrictedKey(key))
			.map(([key, inner]) => [key, withoutRestricted(inner)]),
	)
}
/** What somebody saved who is not shown the note: it stays as it stood. */
export function keepingRestricted(
	content: DraftContent,
	before: DraftContent | undefined,
): DraftContent {
	const { safeguardingNote: _, ...screening } = content.visit.screening ?? {}
	const note = before?.visit.screening?.safeguardingNote
	const kept = note === undefined ? screening : { ...screening, safeguardingNote: note }
	const { screening: __, ...rest } = content.visit
	const asked = content.visit.screening !== undefined || note !== undefined
	const raw = Object.entries(content.raw).filter(([path]) => !endsRestricted(path))
	const rawBefore = Object.entries(before?.raw ?? {}).filter(([path]) => endsRestricted(path))
	return {
		...content,
		visit: asked ? { ...rest, screening: kept } : rest,
		raw: Object.fromEntries([...raw, ...rawBefore]),
	}
}
