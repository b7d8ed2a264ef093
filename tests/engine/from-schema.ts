/**
 * Random values drawn from a schema itself: its types, limits, usual ranges and choices. What is
 * added to the schema is tried without being listed here.
 */
import fc from 'fast-check'
import { z } from 'zod'
import { dateOfDay, dayNumber } from '../../shared/engine/plain/days.ts'

/**
 * What the schema cannot know, by path: dots between keys, '*' for a side, no index for an entry of
 * a list ('feet.*.heelToToeMm', 'footwear.sole').
 */
export interface Weights {
	/** A narrower everyday range than the soft limits. */
	usual?: Record<string, readonly [number, number]>
	/** Entries of a list at most, where fewer than the schema allows are enough. */
	most?: Record<string, number>
	/** Values of its own for a path, in place of those drawn from the schema. */
	own?: Record<string, fc.Arbitrary<unknown>>
	/** Of how many answers one is yes; 2 where nothing is said. */
	oneYesIn?: (path: string) => number
	/** Numbers and texts need no usual range: any that the schema accepts will do. */
	plain?: boolean
}
type Reader = (schema: z.ZodType, path: string, weights: Weights) => fc.Arbitrary<unknown>

const mostEntries = 4
const within = (path: string, key: string): string => {
	const name = key === 'left' || key === 'right' ? '*' : key
	return path === '' ? name : `${path}.${name}`
}
/** Numbers with so many digits after the point, both ends included. */
const decimals = (min: number, max: number, digits: number): fc.Arbitrary<number> => {
	const scale = 10 ** digits
	return fc
		.integer({ min: Math.ceil(min * scale), max: Math.floor(max * scale) })
		.map((scaled) => scaled / scale)
}
const numberMeta = z.object({ softMin: z.number(), softMax: z.number(), digits: z.int() })
/**
 * Mostly everyday values, often whole so that sides tie, sometimes anything that may be recorded.
 */
function numbersOf(schema: z.ZodNumber, path: string, { usual = {}, plain }: Weights) {
	const { minValue: min, maxValue: max } = schema
	const meta = numberMeta.safeParse(schema.meta())
	if (plain && !meta.success) return wholeWithin(min, max)
	if (min === null || max === null || !meta.success)
		throw new Error(`${path}: a number without limits`)
	const { softMin, softMax, digits } = meta.data
	const [low, high] = usual[path] ?? [softMin, softMax]
	const places = schema.format === 'safeint' ? 0 : Math.max(1, digits)
	const hasWhole = Math.ceil(low) <= Math.floor(high)
	return fc.oneof(
		{ weight: 3, arbitrary: decimals(low, high, hasWhole ? 0 : places) },
		{ weight: 3, arbitrary: decimals(low, high, places) },
		{ weight: 1, arbitrary: decimals(min, max, places) },
	)
}
/** Whole numbers, small ones where the schema sets no limit; no limit is one of 2^53 to it. */
const mostWhole = 1000
const wholeWithin = (min: number | null, max: number | null) =>
	fc.integer({
		min: Math.max(0, Math.ceil(min ?? 0)),
		max: Math.min(mostWhole, Math.floor(max ?? mostWhole)),
	})
/** The limits of a list or text as its schema checks them. */
function lengthsOf(schema: z.ZodType): { min: number; max: number | undefined } {
	let min = 0
	let max: number | undefined
	for (const check of schema.def.checks ?? []) {
		const { def } = check._zod
		if ('minimum' in def && typeof def.minimum === 'number') min = def.minimum
		if ('maximum' in def && typeof def.maximum === 'number') max = def.maximum
		if ('length' in def && typeof def.length === 'number') min = max = def.length
	}
	return { min, max }
}
function listsOf(schema: z.ZodArray, path: string, weights: Weights) {
	const { min, max = mostEntries } = lengthsOf(schema)
	const enough = Math.max(min, weights.most?.[path] ?? Math.max(mostEntries, min))
	return fc.array(valuesOf(schema.element as z.ZodType, path, weights), {
		minLength: min,
		maxLength: Math.min(max, enough),
	})
}
const dates = fc
	.integer({ min: dayNumber('2024-01-01'), max: dayNumber('2027-12-31') })
	.map(dateOfDay)
const texts = fc.constantFrom('A', 'as told', 'Old boots', '2 of 3 (worn)')

/** The form that a text must have, where its schema names one. */
function patternOf(schema: z.ZodString): RegExp | undefined {
	for (const check of schema.def.checks ?? []) {
		const { def } = check._zod
		if ('pattern' in def && def.pattern instanceof RegExp) return def.pattern
	}
	return undefined
}
function textsOf(schema: z.ZodString, path: string, { plain }: Weights) {
	const { max } = lengthsOf(schema)
	const pattern = patternOf(schema)
	if (pattern) return fc.stringMatching(pattern)
	if (plain && max !== undefined && max < 20) return fc.constantFrom('A', '2')
	if (max !== undefined && max < 20) throw new Error(`${path}: a text too short for the examples`)
	return texts
}
function objectsOf(schema: z.ZodObject, path: string, weights: Weights) {
	const fields = Object.entries(schema.shape as Record<string, z.ZodType>)
	return fc.record(
		Object.fromEntries(
			fields.map(([key, field]) => [key, valuesOf(field, within(path, key), weights)]),
		),
		{
			requiredKeys: fields
				.filter(([, field]) => !(field instanceof z.ZodOptional))
				.map(([key]) => key),
		},
	)
}
/** Keys are drawn from the choices where there are some, else any that need no special care. */
function recordsOf(schema: z.ZodRecord, path: string, weights: Weights) {
	const { keyType, valueType } = schema
	const keys =
		keyType instanceof z.ZodEnum
			? fc.constantFrom(...keyType.options.map(String))
			: (weights.own?.[within(path, '(key)')] ?? fc.stringMatching(/^[a-z]{1,8}$/))
	return fc.dictionary(
		keys as fc.Arbitrary<string>,
		valuesOf(valueType as z.ZodType, within(path, '(value)'), weights),
		{ maxKeys: mostEntries },
	)
}
/** How each kind of schema is read; the first that fits. */
const readers: readonly [new (...args: never[]) => z.ZodType, Reader][] = [
	[z.ZodOptional, (schema, path, weights) => valuesOf(inner(schema), path, weights)],
	[
		z.ZodNullable,
		(schema, path, weights) =>
			fc.option(valuesOf(inner(schema), path, weights), { nil: null, freq: 4 }),
	],
	[z.ZodLiteral, (schema) => fc.constantFrom(...(schema as z.ZodLiteral).values)],
	[z.ZodEnum, (schema) => fc.constantFrom(...(schema as z.ZodEnum).options)],
	[
		z.ZodBoolean,
		(_, path, { oneYesIn = () => 2 }) =>
			fc.integer({ min: 1, max: oneYesIn(path) }).map((drawn) => drawn === oneYesIn(path)),
	],
	[z.ZodNumber, (schema, path, weights) => numbersOf(schema as z.ZodNumber, path, weights)],
	[z.ZodISODate, () => dates],
	[z.ZodEmail, () => fc.constant('name@example.org')],
	[z.ZodString, (schema, path, weights) => textsOf(schema as z.ZodString, path, weights)],
	[z.ZodArray, (schema, path, weights) => listsOf(schema as z.ZodArray, path, weights)],
	[
		z.ZodUnion,
		(schema, path, weights) =>
			fc.oneof(
				...(schema as z.ZodUnion<z.ZodType[]>).options.map((option) =>
					valuesOf(option, path, weights),
				),
			),
	],
	[z.ZodRecord, (schema, path, weights) => recordsOf(schema as z.ZodRecord, path, weights)],
	[
		z.ZodTuple,
		(schema, path, weights) =>
			fc.tuple(
				...(schema as z.ZodTuple<z.ZodType[]>).def.items.map((item) =>
					valuesOf(item, path, weights),
				),
			),
	],
	[z.ZodUnknown, () => fc.jsonValue({ maxDepth: 2 })],
	[z.ZodObject, (schema, path, weights) => objectsOf(schema as z.ZodObject, path, weights)],
]
const inner = (schema: z.ZodType): z.ZodType =>
	(schema as z.ZodOptional<z.ZodType> | z.ZodNullable<z.ZodType>).unwrap()

/**
 * Values that a schema accepts. @param path where the schema stands, for the weights
 * @throws Error for a kind of schema that is not read yet
 */
export function valuesOf(
	schema: z.ZodType,
	path = '',
	weights: Weights = {},
): fc.Arbitrary<unknown> {
	const own = weights.own?.[path]
	if (own) return own
	const reader = readers.find(([kind]) => schema instanceof kind)?.[1]
	if (!reader) throw new Error(`${path}: no values are drawn for a schema of ${schema.type}`)
	return reader(schema, path, weights)
}
