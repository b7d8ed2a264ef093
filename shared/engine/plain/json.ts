/**
 * JSON in which no key stands twice: JSON.parse keeps the last of them without a word, and what the
 * file's author meant is lost (RFC 8259, section 4, leaves it open).
 */

/** A key that stands twice in one object. */
export class RepeatedKey extends Error {
	override readonly name = 'RepeatedKey'
	/** dots between keys and places, as problems name a field */
	readonly path: string
	constructor(path: string) {
		super('given twice in one object, allowed: each key once')
		this.path = path
	}
}
/** An object or list while it is read. */
interface Group {
	/** undefined in a list */
	keys: Set<string> | undefined
	/** the key or place that is being read */
	at: string | number
}
const isSpace = (code: number): boolean => code === 32 || code === 10 || code === 13 || code === 9
const quote = 34
const backslash = 92
const colon = 58
/** The place after the text that begins at a place; the JSON is known to be whole. */
function endOfText(json: string, start: number): number {
	let end = json.indexOf('"', start + 1)
	while (isEscaped(json, end)) end = json.indexOf('"', end + 1)
	return end + 1
}
/** Whether an odd number of backslashes stands before a place. */
function isEscaped(json: string, at: number): boolean {
	let before = at - 1
	while (json.charCodeAt(before) === backslash) before--
	return (at - before) % 2 === 0
}
function isKey(json: string, end: number): boolean {
	let at = end
	while (isSpace(json.charCodeAt(at))) at++
	return json.charCodeAt(at) === colon
}
/** @throws RepeatedKey where the key stood in the object before */
function takeKey(groups: readonly Group[], written: string): void {
	const group = groups.at(-1)
	if (!group?.keys) return
	const key = written.includes('\\') ? (JSON.parse(written) as string) : written.slice(1, -1)
	group.at = key
	if (group.keys.has(key)) throw new RepeatedKey(groups.map(({ at }) => at).join('.'))
	group.keys.add(key)
}
/** What a sign outside of texts does to the groups that are open, by its code. */
const signs: readonly (readonly [sign: string, does: (groups: Group[]) => void])[] = [
	['{', (groups) => groups.push({ keys: new Set(), at: '' })],
	['[', (groups) => groups.push({ keys: undefined, at: 0 })],
	['}', (groups) => groups.pop()],
	[']', (groups) => groups.pop()],
	[
		',',
		(groups) => {
			const group = groups.at(-1)
			if (group && typeof group.at === 'number') group.at++
		},
	],
]
const byCode = Array.from(
	{ length: 128 },
	(_, code) => signs.find(([sign]) => sign.charCodeAt(0) === code)?.[1],
)
/** @param json whole JSON. @throws RepeatedKey naming the first key that stands twice */
function refuseRepeatedKeys(json: string): void {
	const groups: Group[] = []
	for (let at = 0; at < json.length; at++) {
		const code = json.charCodeAt(at)
		if (code !== quote) {
			byCode[code]?.(groups)
			continue
		}
		const end = endOfText(json, at)
		if (groups.at(-1)?.keys && isKey(json, end)) takeKey(groups, json.slice(at, end))
		at = end - 1
	}
}
/**
 * The value of a JSON text. @throws SyntaxError where it is none; RepeatedKey with the path of the
 * first key that stands twice
 */
export function parseJson(json: string): unknown {
	const value: unknown = JSON.parse(json)
	refuseRepeatedKeys(json)
	return value
}
