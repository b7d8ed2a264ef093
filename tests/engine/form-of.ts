/** The form of a schema as a digest: what it accepts, without its labels. */
import { z } from 'zod'
import { digestOf } from '../../shared/engine/plain/canonical.ts'

/** Words of JSON Schema that say what is accepted; the rest are labels. */
const says = new Set([
	'$ref',
	'type',
	'required',
	'enum',
	'const',
	'pattern',
	'format',
	'minimum',
	'maximum',
	'exclusiveMinimum',
	'exclusiveMaximum',
	'multipleOf',
	'minLength',
	'maxLength',
	'minItems',
	'maxItems',
])
const holdsSchema = new Set(['items', 'additionalProperties', 'propertyNames', 'not'])
const holdsList = new Set(['anyOf', 'oneOf', 'allOf', 'prefixItems'])
const holdsNamed = new Set(['properties', '$defs', 'patternProperties'])

function bare(schema: unknown): unknown {
	if (typeof schema !== 'object' || schema === null) return schema
	return Object.fromEntries(
		Object.entries(schema).flatMap(([word, value]) => {
			if (says.has(word)) return [[word, value]]
			if (holdsSchema.has(word)) return [[word, bare(value)]]
			if (holdsList.has(word)) return [[word, (value as unknown[]).map(bare)]]
			if (holdsNamed.has(word))
				return [
					[
						word,
						Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, bare(inner)])),
					],
				]
			return []
		}),
	)
}
/** 16 hex digits, the same for schemas that accept the same by the same words. */
export const formOf = (schema: z.ZodType): string =>
	digestOf(bare(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }))).slice(0, 16)
