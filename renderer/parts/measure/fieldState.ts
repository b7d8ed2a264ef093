/** One field of the visit as it stands in the draft, for whichever kind of field shows it. */
import type { KeyboardEvent } from 'react'
import type { DraftContent } from '../../../shared/contract.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { readPath, withValue } from '../draft-path.ts'

export interface FieldProps {
	path: string
	draft: DraftContent
	change: (update: (now: DraftContent) => DraftContent) => void
	before?: unknown
}
/** A field may copy its other side with this key. */
export const sameAsOther = '='
export const sideOf = (path: string): 'left' | 'right' | undefined => {
	if (/\.left\./.test(path)) return 'left'
	return /\.right\./.test(path) ? 'right' : undefined
}
/** The same field of the other side; undefined where the field has no side. */
export function otherOf(path: string): string | undefined {
	const side = sideOf(path)
	if (!side) return undefined
	return path.replace(`.${side}.`, side === 'left' ? '.right.' : '.left.')
}
export function nameOf(path: string): string {
	const { title } = fieldMeta(visitSchema, path)
	const side = sideOf(path)
	return side ? `${title}, ${side}` : title
}
function asText(value: unknown): string {
	if (value === undefined || value === null) return ''
	return Array.isArray(value) ? value.join(' ') : String(value)
}
/** What stands in the field: raw text, the reason why it was not measured, or the value. */
export const storedText = ({ path, draft }: Pick<FieldProps, 'path' | 'draft'>): string =>
	draft.raw[path] ?? draft.visit.notMeasured?.[path] ?? asText(readPath(draft.visit, path))

/** The other side's value by one key; it does nothing where there is none yet. */
export const copyOther =
	({ path, draft, change }: FieldProps, copied: () => void = () => {}) =>
	(event: KeyboardEvent): void => {
		const other = otherOf(path)
		if (other === undefined || event.key !== sameAsOther) return
		if (readPath(draft.visit, other) === undefined) return
		event.preventDefault()
		copied()
		change((now) => withValue(now, path, readPath(now.visit, other)))
	}
