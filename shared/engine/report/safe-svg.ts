/**
 * An SVG cut down to its drawing, in time that grows with its length alone. No cleaner that was
 * tried runs without the document of a browser; here nothing is trusted that is not on the list, and
 * a new logo with anything else in it is refused instead of changed.
 */

const drawing = new Set([
	'svg',
	'g',
	'path',
	'rect',
	'circle',
	'ellipse',
	'line',
	'polyline',
	'polygon',
	'defs',
	'lineargradient',
	'radialgradient',
	'stop',
	'clippath',
	'title',
	'desc',
	'symbol',
])
interface Attribute {
	key: string
	/** with its quotes */
	quoted: string
}
interface Tag {
	/** As written, and in small letters; empty where it is no element. */
	name: string
	lower: string
	attributes: Attribute[]
	closes: boolean
	closesItself: boolean
}
const noTag: Tag = { name: '', lower: '', attributes: [], closes: false, closesItself: false }

/** A drawing, and what stood beside it in the file. */
interface Drawing {
	svg: string
	/** what was left out although it draws or acts, by its name, in the order of the file */
	leftOut: string[]
}
/** Notes of a drawing program: they neither draw nor act. */
const isNote = (lower: string): boolean => lower === 'metadata' || lower.includes(':')

/**
 * Keeps the drawing and nothing else: no script, style sheet, text in a foreign font, picture,
 * link, event or address outside the file.
 */
export function drawingOf(svg: string): Drawing {
	const kept: string[] = []
	const leftOut: string[] = /<!ENTITY/i.test(svg) ? ['an entity'] : []
	const skipped = new SkippedElement()
	for (const { text, tag } of tokensOf(withoutDeclarations(svg))) {
		const read = tagOf(tag)
		if (skipped.swallows(read)) continue
		if (text.trim() && kept.length > 0) kept.push(escapedText(text))
		if (!tag) continue
		if (drawing.has(read.lower)) kept.push(safeTag(read))
		else skipped.start(read)
		leftOut.push(...leftOutOf(read))
	}
	return { svg: kept.join('').trim(), leftOut }
}
function leftOutOf(tag: Tag): string[] {
	if (drawing.has(tag.lower)) return unsafeOf(tag).map(({ key }) => key)
	if (isNote(tag.lower)) return []
	return [tag.name ? `<${tag.name}>` : 'a tag that does not read']
}
/** The drawing alone. @internal */
export const safeSvg = (svg: string): string => drawingOf(svg).svg
/** Whether every element of a cut-down SVG ends, in the order in which they began. */
export function isNested(safe: string): boolean {
	const open: string[] = []
	for (const { tag } of tokensOf(safe)) {
		const { name, closes, closesItself } = tagOf(tag)
		if (!name || closesItself) continue
		if (!closes) open.push(name)
		else if (open.pop() !== name) return false
	}
	return open.length === 0
}

/** What is no drawing: how it starts, in capitals, and how it ends. */
const declarations: readonly { start: string; end: RegExp }[] = [
	{ start: '<?', end: /\?>/g },
	{ start: '<!--', end: /-->/g },
	{ start: '<![CDATA[', end: /\]\]>/g },
]
const docType = '<!DOCTYPE'
/** An end once not found is not looked for again: it cannot stand further on either. */
class Ends {
	readonly #svg: string
	readonly #missing = new Set<RegExp>()
	constructor(svg: string) {
		this.#svg = svg
	}
	/** The place after the next end from a place on; undefined where there is none. */
	after(end: RegExp, from: number): number | undefined {
		if (this.#missing.has(end)) return undefined
		end.lastIndex = from
		if (end.test(this.#svg)) return end.lastIndex
		this.#missing.add(end)
		return undefined
	}
}
const startOfSubset = /[>[]/g
const endOfSubset = /\]\s*>/g
/** Where the declaration at a place ends; undefined where none stands there, or has no end. */
function endOfDeclaration(svg: string, at: number, ends: Ends): number | undefined {
	const start = svg.slice(at, at + docType.length).toUpperCase()
	if (start === docType) {
		const after = ends.after(startOfSubset, at + docType.length)
		if (after === undefined || svg[after - 1] === '>') return after
		return ends.after(endOfSubset, after)
	}
	const known = declarations.find((declaration) => start.startsWith(declaration.start))
	return known && ends.after(known.end, at + known.start.length)
}
function withoutDeclarations(svg: string): string {
	const ends = new Ends(svg)
	const kept: string[] = []
	let from = 0
	for (let at = svg.indexOf('<'); at >= 0; at = svg.indexOf('<', at)) {
		const end = endOfDeclaration(svg, at, ends)
		if (end === undefined) {
			at++
			continue
		}
		kept.push(svg.slice(from, at))
		from = at = end
	}
	return kept.join('') + svg.slice(from)
}
/** Text and the tag after it, one after another; a '<' without an end is left out. */
function* tokensOf(svg: string): Generator<{ text: string; tag: string }> {
	const lastEnd = svg.lastIndexOf('>')
	let at = 0
	while (at < svg.length) {
		const start = svg.indexOf('<', at)
		if (start < 0) return yield { text: svg.slice(at), tag: '' }
		const end = start < lastEnd ? svg.indexOf('>', start) + 1 : start
		yield { text: svg.slice(at, start), tag: svg.slice(start, end) }
		at = Math.max(end, start + 1)
	}
}
/** An element that may not stand, with all that is in it. */
class SkippedElement {
	private name = ''
	private depth = 0
	start({ name, lower, closes, closesItself }: Tag): void {
		if (!name || closes || closesItself) return
		this.name = lower
		this.depth = 1
	}
	/** True while the element is open, its own end included. */
	swallows({ lower, closes, closesItself }: Tag): boolean {
		if (!this.name) return false
		if (lower === this.name && closes) this.depth--
		else if (lower === this.name && !closesItself) this.depth++
		if (this.depth === 0) this.name = ''
		return true
	}
}
const tagName = /^[A-Za-z][\w:-]*/
/** A tag with its angle brackets, read as far as it is one. */
function tagOf(tag: string): Tag {
	const inner = tag.slice(1, -1).trim()
	const closes = inner.startsWith('/')
	const rest = closes ? inner.slice(1).trimStart() : inner
	const [name] = tagName.exec(rest) ?? []
	if (name === undefined) return noTag
	const closesItself = rest.endsWith('/')
	const attributes = attributesOf(
		(closesItself ? rest.slice(0, -1).trimEnd() : rest).slice(name.length),
	)
	if (!attributes) return noTag
	return { name, lower: name.toLowerCase(), attributes, closes, closesItself }
}
/** Undefined where a text is not attributes alone. */
function attributesOf(text: string): Attribute[] | undefined {
	const attribute = /\s+([\w:-]+)\s*=\s*("[^"]*"|'[^']*')/y
	const found: Attribute[] = []
	let at = 0
	for (let read = attribute.exec(text); read; read = attribute.exec(text)) {
		found.push({ key: read[1] ?? '', quoted: read[2] ?? '' })
		at = attribute.lastIndex
	}
	return at === text.length ? found : undefined
}
/** A bare ampersand becomes an entity; those that are entities already stay. */
const escapedText = (text: string): string =>
	text.replace(/&(?!amp;|lt;|gt;|quot;|apos;|#\d+;|#x[\da-f]+;)/gi, '&amp;')
const unsafeOf = ({ attributes }: Tag): Attribute[] =>
	attributes.filter(({ key, quoted }) => !isSafe(key, quoted))
function safeTag({ name, attributes, closes, closesItself }: Tag): string {
	const kept = attributes
		.filter(({ key, quoted }) => isSafe(key, quoted))
		.map(({ key, quoted }) => ` ${key}=${quoted}`)
	return `<${closes ? '/' : ''}${name}${kept.join('')}${closesItself ? '/' : ''}>`
}
/** @param quoted the value with its quotes */
function isSafe(key: string, quoted: string): boolean {
	const value = quoted.slice(1, -1).replace(/\s/g, '').toLowerCase()
	if (/^on/i.test(key) || /href$/i.test(key) || /^xml:base$/i.test(key)) return false
	if (/javascript:|expression\(|@import|\\/.test(value)) return false
	return !/url\((?!['"]?#)/.test(value)
}
