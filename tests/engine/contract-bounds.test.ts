/** No call of the contract takes a text, a list or a record without an end. */
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { contract } from '../../shared/contract.ts'
import { boundedRecord } from '../../shared/engine/plain/bounded.ts'
import { problemsOf } from '../../shared/engine/visit/problems.ts'

/** A schema as its JSON Schema says it: a second reading, apart from zod's own classes. */
interface Json {
	type?: string
	format?: string
	pattern?: string
	maxLength?: number
	maxItems?: number
	maxProperties?: number
	enum?: unknown[]
	const?: unknown
	properties?: Record<string, Json>
	propertyNames?: Json
	additionalProperties?: Json | boolean
	items?: Json
	prefixItems?: Json[]
	anyOf?: Json[]
	oneOf?: Json[]
	allOf?: Json[]
	not?: Json
}
/** Formats that are of one length by themselves. */
const fixedFormats = ['date']
/** Whether every text of a pattern ends: anchored at both ends, without an open repetition. */
const ends = (pattern: string) =>
	pattern.startsWith('^') && pattern.endsWith('$') && !/[*+]|\{\d+,\}/.test(pattern)
const isBoundedText = ({ maxLength, format = '', pattern = '' }: Json) =>
	maxLength !== undefined || fixedFormats.includes(format) || ends(pattern)

function openTexts(schema: Json, path: string): string[] {
	return isBoundedText(schema) ? [] : [`${path}: a text without an end`]
}
function openLists(schema: Json, path: string): string[] {
	const { items, prefixItems = [], maxItems } = schema
	return [
		...(maxItems === undefined && prefixItems.length === 0
			? [`${path}: a list without an end`]
			: []),
		...[...prefixItems, ...(items ? [items] : [])].flatMap((item) => open(item, `${path}[]`)),
	]
}
function openObjects(schema: Json, path: string): string[] {
	const { properties = {}, propertyNames, additionalProperties, maxProperties } = schema
	const fields = Object.entries(properties).flatMap(([key, field]) => open(field, `${path}.${key}`))
	if (additionalProperties === false) return fields
	return [
		...fields,
		...(maxProperties === undefined && !propertyNames?.enum
			? [`${path}: a record without an end`]
			: []),
		...(propertyNames ? open(propertyNames, `${path}{key}`) : [`${path}: keys without an end`]),
		...(typeof additionalProperties === 'object' ? open(additionalProperties, `${path}{}`) : []),
	]
}
const ofType: Record<string, (schema: Json, path: string) => string[]> = {
	string: openTexts,
	array: openLists,
	object: openObjects,
	number: () => [],
	integer: () => [],
	boolean: () => [],
	null: () => [],
}
/** Where a schema takes something without an end, each by its path. */
function open(schema: Json, path: string): string[] {
	const branches = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.allOf ?? [])]
	if (branches.length > 0) return branches.flatMap((branch) => open(branch, path))
	if (schema.enum || schema.const !== undefined || schema.not) return []
	const look = ofType[schema.type ?? '']
	return look ? look(schema, path) : [`${path}: anything at all`]
}
const openIn = (schema: z.ZodType, path: string) =>
	open(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Json, path)

describe('what a call takes', () => {
	it.each(Object.entries(contract))('%s has an end everywhere', (name, { input }) =>
		expect(openIn(input, name)).toEqual([]),
	)
	it.each<[string, z.ZodType]>([
		['a text', z.strictObject({ text: z.string() })],
		['an address', z.strictObject({ email: z.email() })],
		['an open pattern', z.strictObject({ text: z.string().regex(/^a+$/) })],
		['a list', z.strictObject({ list: z.array(z.boolean()) })],
		['the entries of a list', z.strictObject({ list: z.array(z.string()).max(3) })],
		['a record', z.strictObject({ by: z.record(z.string().max(3), z.boolean()) })],
		['keys', z.strictObject({ by: z.record(z.string(), z.boolean()).meta({ maxProperties: 3 }) })],
		['a branch', z.strictObject({ either: z.union([z.boolean(), z.string()]).optional() })],
		['any value', z.strictObject({ any: z.unknown() })],
		['further keys', z.looseObject({ text: z.string().max(2) })],
	])('%s without an end is found', (_, schema) => expect(openIn(schema, 'x')).not.toEqual([]))
})
describe('a record of bounded size', () => {
	const schema = z.strictObject({ raw: boundedRecord(5, z.string().max(3), 2) })
	const told = (raw: object) => {
		const read = schema.safeParse({ raw })
		return read.success ? [] : problemsOf(read.error, { raw })
	}
	it('takes as many as it may hold', () => expect(told({ a: 'x', b: 'y' })).toEqual([]))
	it('names the field, what was given and what is allowed', () => {
		expect(told({ a: 'x', b: 'y', c: 'z' })).toMatchObject([
			{ path: 'raw', code: 'too-long', params: { held: 3, most: 2, of: 'entries' } },
		])
		expect(told({ a: 'wxyz' })).toMatchObject([
			{ path: 'raw.a', code: 'too-long', params: { held: 4, most: 3, of: 'characters' } },
		])
		expect(told({ abcdef: 'x' })).toHaveLength(1)
	})
	it('lists no more problems than anybody reads', () => {
		const many = Object.fromEntries(Array.from({ length: 1000 }, (_, at) => [`${at}`, 'wxyz']))
		const listed = told(many)
		expect(listed).toHaveLength(201)
		// a thousand texts that are too long, and the record that holds too many
		expect(listed.at(-1)).toMatchObject({ code: 'more', params: { more: 1001 - 200 } })
	})
})
