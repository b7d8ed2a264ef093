/**
 * The warning-sign questions as the schema has them: single questions, and groups that unfold.
 * Pure.
 */
import type { z } from 'zod'
import { schemaAt } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { questionHeadings } from '../../../shared/engine/words/en/question-headings.table.ts'

interface Loose {
	def: { type: string; innerType?: Loose }
	shape?: Record<string, Loose>
}
const unwrapped = (schema: z.ZodType): Loose => {
	let here = schema as unknown as Loose
	while (here.def.innerType) here = here.def.innerType
	return here
}
export interface QuestionGroup {
	path: string
	heading: string
	/** The sides a group must name before its questions can stand; empty where it needs none. */
	sides: readonly string[]
	/** Rows of one field, or of left and right. */
	rows: readonly (readonly string[])[]
}
/** @returns the group at a path, or undefined where the path is a single question */
export function questionGroup(path: string): QuestionGroup | undefined {
	const shape = unwrapped(schemaAt(visitSchema, path)).shape
	if (!shape) return undefined
	const name = path.split('.').at(-1) ?? ''
	const sides =
		'side' in shape ? (name === 'injury' ? ['left', 'right'] : ['left', 'right', 'both']) : []
	const left = shape.left ? unwrapped(shape.left as unknown as z.ZodType).shape : undefined
	const pairs = left
		? Object.keys(left).map((key) => [`${path}.left.${key}`, `${path}.right.${key}`])
		: []
	const single = Object.keys(shape)
		.filter((key) => !['side', 'left', 'right'].includes(key))
		.map((key) => [`${path}.${key}`])
	return { path, heading: questionHeadings[name] ?? name, sides, rows: [...pairs, ...single] }
}
