/** An SVG of a clinic, cut down to its drawing. */

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
const declarations =
	/<\?[\s\S]*?\?>|<!--[\s\S]*?-->|<!DOCTYPE[^>[]*(?:\[[\s\S]*?\])?\s*>|<!\[CDATA\[[\s\S]*?\]\]>/gi
const element =
	/^<\s*(\/?)\s*([A-Za-z][\w:-]*)((?:\s+[\w:-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)\s*>$/
interface Tag {
	/** As written, and in small letters; empty where it is no element. */
	name: string
	lower: string
	attributes: string
	closes: boolean
	closesItself: boolean
}

/**
 * Keeps the drawing and nothing else: no script, style sheet, text in a foreign font, picture,
 * link, event or address outside the file.
 */
export function safeSvg(svg: string): string {
	let kept = ''
	const skipped = new SkippedElement()
	for (const [, text = '', tag = ''] of svg
		.replace(declarations, '')
		.matchAll(/([^<]*)(<[^>]*>)?/g)) {
		const read = tagOf(tag)
		if (skipped.swallows(read)) continue
		if (text.trim() && kept.trim()) kept += escapedText(text)
		if (!tag) continue
		if (drawing.has(read.lower)) kept += safeTag(read)
		else skipped.start(read)
	}
	return kept.trim()
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
function tagOf(tag: string): Tag {
	const [, slash = '', name = '', attributes = '', end = ''] = element.exec(tag) ?? []
	return {
		name,
		lower: name.toLowerCase(),
		attributes,
		closes: slash !== '',
		closesItself: end !== '',
	}
}
/** A bare ampersand becomes an entity; those that are entities already stay. */
const escapedText = (text: string): string =>
	text.replace(/&(?!amp;|lt;|gt;|quot;|apos;|#\d+;|#x[\da-f]+;)/gi, '&amp;')
function safeTag({ name, attributes, closes, closesItself }: Tag): string {
	const kept = [...attributes.matchAll(/([\w:-]+)\s*=\s*("[^"]*"|'[^']*')/g)]
		.filter(([, key = '', value = '']) => isSafe(key, value))
		.map(([, key, value]) => ` ${key}=${value}`)
	return `<${closes ? '/' : ''}${name}${kept.join('')}${closesItself ? '/' : ''}>`
}
/** @param quoted the value with its quotes */
function isSafe(key: string, quoted: string): boolean {
	const value = quoted.slice(1, -1).replace(/\s/g, '').toLowerCase()
	if (/^on/i.test(key) || /href$/i.test(key) || /^xml:base$/i.test(key)) return false
	if (/javascript:|expression\(|@import|\\/.test(value)) return false
	return !/url\((?!['"]?#)/.test(value)
}
