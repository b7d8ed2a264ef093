/** Whatever the visit file can record turns up in random visits, without being listed for them. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { z } from 'zod'
import { measure, repeats, sides } from '../../shared/engine/visit/fields.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { valuesOf } from './from-schema.ts'
import { wholeVisit } from './random-visit.ts'

/** A file format as JSON Schema says it: a second reading of the schema, apart from the walk. */
interface Json {
	properties?: Record<string, Json>
	items?: Json
	anyOf?: Json[]
	enum?: unknown[]
	type?: string
}
const below = (path: string, key: string) => (path === '' ? key : `${path}.${key}`)
function pathsOf(schema: Json, path = ''): string[] {
	const deeper = [
		...Object.entries(schema.properties ?? {}).flatMap(([key, inner]) =>
			pathsOf(inner, below(path, key)),
		),
		...(schema.items ? pathsOf(schema.items, below(path, '[]')) : []),
		...(schema.anyOf ?? []).flatMap((branch) => pathsOf(branch, path)),
	]
	return [...(path === '' ? [] : [path]), ...deeper]
}
function pathsIn(value: unknown, path = ''): string[] {
	if (Array.isArray(value))
		return [path, ...value.flatMap((entry) => pathsIn(entry, below(path, '[]')))]
	if (value === null || typeof value !== 'object') return [path]
	return [
		path,
		...Object.entries(value).flatMap(([key, field]) => pathsIn(field, below(path, key))),
	]
}
const every = (schema: z.ZodType): string[] => [
	...new Set(pathsOf(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Json)),
]

it('every measure, question, pair and session of the visit file is drawn', () => {
	const drawn = new Set(fc.sample(wholeVisit, 1000).flatMap((visit) => pathsIn(visit)))
	const wanted = every(visitSchema)
	expect(wanted.length).toBeGreaterThan(250)
	expect(wanted).toContain('feet.left.heelToToeMm.[]')
	expect(wanted.filter((path) => !drawn.has(path))).toEqual([])
})
it('a measure added to the schema is drawn within its limits, everyday values first', () => {
	const schema = z.strictObject({
		hands: sides({ spanMm: repeats(measure('Span', 'mm', [50, 400], [150, 250], 1)) }).optional(),
	})
	const values = fc
		.sample(valuesOf(schema), 400)
		.flatMap((value) => Object.values(schema.parse(value).hands ?? {}))
		.flatMap(({ spanMm }) => spanMm ?? [])
	expect(Math.min(...values)).toBeLessThan(150)
	expect(Math.max(...values)).toBeGreaterThan(250)
	const usual = values.filter((value) => value >= 150 && value <= 250)
	expect(usual.length).toBeGreaterThan(values.length / 2)
})
it('a schema that cannot be read is named', () => {
	expect(() => valuesOf(z.strictObject({ when: z.date() }))).toThrow('when: no values')
	expect(() => valuesOf(z.strictObject({ many: z.number() }))).toThrow('many')
})
