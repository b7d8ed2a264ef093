/** JSON in which a key stands twice is refused, by its path; all other JSON is read as ever. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseJson, RepeatedKey } from '../../shared/engine/plain/json.ts'

const pathOf = (json: string): string | undefined => {
	try {
		parseJson(json)
		return undefined
	} catch (error) {
		if (error instanceof RepeatedKey) return error.path
		throw error
	}
}
describe('a key that stands twice', () => {
	it.each([
		['{"a":1,"a":2}', 'a'],
		['{"a":{"b":1,"c":{},"b":2}}', 'a.b'],
		['{"list":[{"x":1},{"x":1,"y":[1,2],"x":2}]}', 'list.1.x'],
		['[[{"a":1}],{"a" :1 , "a"\n:2}]', '1.a'],
		['{"a":1,"\\u0061":2}', 'a'],
		['{"":1,"":2}', ''],
		['{"__proto__":1,"__proto__":2}', '__proto__'],
		['{"feet":{"left":{"heelToToeMm":250,"heelToToeMm":260}}}', 'feet.left.heelToToeMm'],
		['{"a\\"b":[],"a\\"b":[]}', 'a"b'],
	])('%s is named by its path', (json, path) => expect(pathOf(json)).toBe(path))
	it.each([
		'{"a":{"a":{"a":1}},"b":[{"a":1},{"a":1}]}',
		'{"a":"a\\":1","b":"{\\"a\\":1,\\"a\\":2}"}',
		'["a","a",{"b":"a","c":"a"}]',
		'"text"',
		' 1 ',
	])('%s has none', (json) => expect(parseJson(json)).toEqual(JSON.parse(json)))
	it('does not change what JSON says', () =>
		fc.assert(
			fc.property(fc.json({ maxDepth: 6 }), (json) => {
				expect(parseJson(json)).toEqual(JSON.parse(json))
			}),
		))
	it('is found wherever an entry is written a second time', () =>
		fc.assert(
			fc.property(
				fc.dictionary(fc.string(), fc.jsonValue(), { minKeys: 1, noNullPrototype: true }),
				fc.nat(),
				(object, place) => {
					const entries = Object.entries(object)
					const written = entries.map(
						([key, value]) => `${JSON.stringify(key)}:${JSON.stringify(value)}`,
					)
					const again = written[place % written.length] ?? ''
					const [key] = entries[place % entries.length] ?? ['']
					expect(pathOf(`[{${[...written, again].join(',')}}]`)).toBe(`0.${key}`)
				},
			),
		))
	it('text that is no JSON stays a matter of syntax', () =>
		expect(() => parseJson('{"a":1,"a":')).toThrow(SyntaxError))
	it('is looked for once through, however deep or long the text', () => {
		const deep = `${'['.repeat(5000)}${']'.repeat(5000)}`
		const long = JSON.stringify(Array.from({ length: 50_000 }, (_, at) => ({ at, text: '\\"' })))
		expect([pathOf(deep), pathOf(long)]).toEqual([undefined, undefined])
	})
})
