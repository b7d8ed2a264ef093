/** Reads labels, units and limits back from the visit schema, so no screen repeats them. */
import type { z } from 'zod'
import { type PrivateTopic, privateTopics } from './private-topics.ts'

interface Loose {
	def: {
		type: string
		innerType?: Loose
		element?: Loose
		options?: Loose[]
		format?: string
		checks?: readonly { _zod: { def: object } }[]
	}
	shape?: Record<string, Loose>
	options?: unknown[]
	minValue?: number | null
	maxValue?: number | null
	maxLength?: number | null
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
	/** Characters of a text at most. */
	maxLength?: number
	/** How many items it always has, added up; 0 where it is no such list. */
	items: number
	/** Words for the clinician alone, on as many lines as needed. */
	note: boolean
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
/** How many entries a list must have; 0 where that is not fixed. */
function fixedLength({ def }: Loose): number {
	for (const { _zod } of def.checks ?? [])
		if ('length' in _zod.def && typeof _zod.def.length === 'number') return _zod.def.length
	return 0
}
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
	let items = 0
	for (;;) {
		meta = { ...here.meta?.(), ...meta }
		if (here.def.innerType) here = here.def.innerType
		else if (here.def.type === 'union' && here.def.options?.[0]) {
			here = here.def.options[0]
			many = true
		} else if (here.def.type === 'array' && here.def.element) {
			items = fixedLength(here)
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
		items,
		note: meta.note === true,
		...privateIn(meta),
		title: text('title') || path,
		unit: text('unit'),
		softMin: number(meta.softMin),
		softMax: number(meta.softMax),
		digits: number(meta.digits) ?? 0,
		min: number(here.minValue),
		max: number(here.maxValue),
		maxLength: number(here.maxLength),
		options: kind === 'choice' ? (here.options as string[]) : [],
	}
}
