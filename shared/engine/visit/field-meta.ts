/** Reads labels, units and limits back from the visit schema, so no screen repeats them. */
import type { z } from 'zod'
import { type PrivateTopic, privateTopics } from './private-topics.ts'

interface Loose {
	def: { type: string; innerType?: Loose; element?: Loose; options?: Loose[]; format?: string }
	shape?: Record<string, Loose>
	options?: unknown[]
	minValue?: number | null
	maxValue?: number | null
	meta?: () => Record<string, unknown> | undefined
}
export interface FieldMeta {
	kind: 'number' | 'choice' | 'yesNo' | 'date' | 'text'
	title: string
	unit: string
	softMin?: number
	softMax?: number
	digits: number
	min?: number
	max?: number
	options: string[]
	many: boolean
	/** What is private about it; left out where nothing is. */
	private?: PrivateTopic
}

function at(schema: Loose, path: string): Loose {
	let here = schema
	for (const key of path.split('.')) {
		while (here.def.innerType) here = here.def.innerType
		const next =
			here.def.type === 'array' && /^\d+$/.test(key) ? here.def.element : here.shape?.[key]
		if (!next) throw new RangeError(`${path}: no such field in the visit file`)
		here = next
	}
	return here
}
/** The schema at a dotted path, for checking a value. */
export const schemaAt = (schema: z.ZodType, path: string): z.ZodType =>
	at(schema as unknown as Loose, path) as unknown as z.ZodType
/** What a field's meta says is private about it. */
export function privateIn(meta: Record<string, unknown> | undefined): { private?: PrivateTopic } {
	const topic = privateTopics.find((known) => known === meta?.private)
	return topic ? { private: topic } : {}
}
/** What a screen needs of the field at `path`. @throws RangeError where the schema has none. */
export function fieldMeta(schema: z.ZodType, path: string): FieldMeta {
	let here = at(schema as unknown as Loose, path)
	let meta: Record<string, unknown> = {}
	let many = false
	for (;;) {
		meta = { ...here.meta?.(), ...meta }
		if (here.def.innerType) here = here.def.innerType
		else if (here.def.type === 'union' && here.def.options?.[0]) {
			here = here.def.options[0]
			many = true
		} else if (here.def.type === 'array' && here.def.element) {
			here = here.def.element
			many = true
		} else break
	}
	const kinds: Record<string, FieldMeta['kind']> = {
		number: 'number',
		enum: 'choice',
		boolean: 'yesNo',
	}
	const kind = here.def.format === 'date' ? 'date' : (kinds[here.def.type] ?? 'text')
	const text = (key: string) => (typeof meta[key] === 'string' ? (meta[key] as string) : '')
	const number = (value: unknown) => (typeof value === 'number' ? value : undefined)
	return {
		kind,
		many,
		...privateIn(meta),
		title: text('title') || path,
		unit: text('unit'),
		softMin: number(meta.softMin),
		softMax: number(meta.softMax),
		digits: number(meta.digits) ?? 0,
		min: number(here.minValue),
		max: number(here.maxValue),
		options: kind === 'choice' ? (here.options as string[]) : [],
	}
}
