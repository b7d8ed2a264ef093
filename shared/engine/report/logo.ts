/**
 * The clinic's logo as far as its bytes show without unpacking them: its kind by its content, its
 * size in pixels, and an SVG cut down to drawing. electron/pdf/logo.ts unpacks it.
 */
import { BadLogo } from './bad-logo.ts'
import type { Letterhead } from './document.ts'
import { isPng, type Png, readPng } from './png.ts'
import { drawingOf, isNested } from './safe-svg.ts'

type Logo = NonNullable<Letterhead['logo']>
/** Pixels each way; a choice of this program. */
const leastPx = 32
const mostPx = 4000
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const sextets = new Map([...letters].map((letter, value) => [letter, value]))

/** Bytes of a base64 text. */
function bytesOf(base64: string): Uint8Array {
	const plain = base64.replace(/[^A-Za-z0-9+/]/g, '')
	const bytes = new Uint8Array(Math.floor((plain.length * 3) / 4))
	let held = 0
	let bits = 0
	let at = 0
	for (const letter of plain) {
		held = ((held << 6) | (sextets.get(letter) ?? 0)) & 0xffffff
		bits += 6
		if (bits >= 8) {
			bits -= 8
			bytes[at++] = (held >> bits) & 0xff
		}
	}
	return bytes
}
/** Text of UTF-8 bytes. */
function textOf(bytes: Uint8Array): string {
	const escaped: string[] = []
	for (const byte of bytes) escaped.push(`%${byte.toString(16).padStart(2, '0')}`)
	try {
		return decodeURIComponent(escaped.join(''))
	} catch {
		throw new BadLogo(
			'not a text, given an SVG with bytes that are not UTF-8, allowed: an SVG saved as ' + 'UTF-8',
		)
	}
}
const word = (bytes: Uint8Array, at: number) => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0)
const isJpeg = (bytes: Uint8Array): boolean => word(bytes, 0) === 0xffd8

/** Width and height by the frame header of a JPEG (ITU-T T.81, B.2.2). */
function sizeOfJpeg(bytes: Uint8Array): { width: number; height: number } {
	for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff; at += 2 + word(bytes, at + 2)) {
		const mark = bytes[at + 1] ?? 0
		// the frame headers, save those of tables (C4), a reserved one (C8) and arithmetic coding (CC)
		if (mark >= 0xc0 && mark <= 0xcf && mark !== 0xc4 && mark !== 0xc8 && mark !== 0xcc)
			return { width: word(bytes, at + 7), height: word(bytes, at + 5) }
	}
	throw new BadLogo(
		'the picture is damaged, given a JPEG without the header of its frame, allowed: a ' +
			'whole JPEG. Save the picture anew',
	)
}
export type LogoKind = Logo['mediaType']
/** The kind of a picture by its content, never by its name; undefined where it is none of ours. */
export function logoKind(bytes: Uint8Array): LogoKind | undefined {
	if (isPng(bytes)) return 'image/png'
	if (isJpeg(bytes)) return 'image/jpeg'
	const start = String.fromCharCode(...bytes.subarray(0, 1000))
	return /^[^<]{0,9}</.test(start) && /<(svg|!doctype svg|\?xml|!--)/i.test(start)
		? 'image/svg+xml'
		: undefined
}
function svgOf(bytes: Uint8Array): { svg: string; leftOut: string[] } {
	const { svg, leftOut } = drawingOf(textOf(bytes))
	const root = /^<svg\b[^>]*>/i.exec(svg)?.[0]
	if (!root)
		throw new BadLogo(
			'not an SVG picture, given a file without an <svg> element at its start, allowed: ' +
				'a PNG or JPEG picture',
		)
	if (!/\bviewBox\s*=/.test(root) && !(/\bwidth\s*=/.test(root) && /\bheight\s*=/.test(root)))
		throw new BadLogo(
			'no size, given an SVG without viewBox or width and height, allowed: a PNG or JPEG ' +
				'picture',
		)
	if (!isNested(svg))
		throw new BadLogo(
			'damaged, given an SVG whose elements do not all end, allowed: a PNG or JPEG picture',
		)
	return { svg, leftOut }
}
const attributeOf = (root: string, name: string): string =>
	new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(root)?.[1] ?? ''
/** Width and height of a drawing in its own units; not a number where it names none. */
function sizeOfSvg(svg: string): [number, number] {
	const root = /^<svg\b[^>]*>/i.exec(svg)?.[0] ?? ''
	const [, , width, height] = attributeOf(root, 'viewBox')
		.trim()
		.split(/[\s,]+/)
	if (width !== undefined) return [Number(width), Number(height)]
	return [parseFloat(attributeOf(root, 'width')), parseFloat(attributeOf(root, 'height'))]
}
function sized<Size extends { width: number; height: number }>(picture: Size): Size {
	const { width, height } = picture
	if ([width, height].some((side) => side < leastPx || side > mostPx))
		throw new BadLogo(
			`size, given ${width} x ${height} pixels, allowed: ${leastPx} to ${mostPx} pixels ` +
				'each way',
		)
	return picture
}
/**
 * A logo by its content: what is drawn, and a PNG's parts for whoever unpacks it. `wide`: its width
 * against its height; 1 for an SVG that tells of neither.
 */
export type LogoPicture = { wide: number } & (
	| { kind: 'image/svg+xml'; svg: string; leftOut: string[] }
	| { kind: 'image/png'; png: Png; bytes: Uint8Array; dataUrl: string }
	| { kind: 'image/jpeg'; bytes: Uint8Array; dataUrl: string }
)

/** The picture in a logo's bytes. @throws BadLogo naming what is wrong and what is allowed */
export function readLogo({ mediaType, base64 }: Logo): LogoPicture {
	const bytes = bytesOf(base64)
	const kind = logoKind(bytes) ?? mediaType
	const dataUrl = `data:${kind};base64,${base64}`
	if (kind === 'image/svg+xml') {
		const drawing = svgOf(bytes)
		const [width, height] = sizeOfSvg(drawing.svg)
		return { kind, ...drawing, wide: width > 0 && height > 0 ? width / height : 1 }
	}
	if (isPng(bytes)) {
		const png = sized(readPng(bytes))
		return { kind: 'image/png', png, bytes, dataUrl, wide: png.width / png.height }
	}
	if (!isJpeg(bytes))
		throw new BadLogo(
			'its bytes are no picture that is known here, given a file called ' +
				`${mediaType}, allowed: a PNG or JPEG picture`,
		)
	const { width, height } = sized(sizeOfJpeg(bytes))
	return { kind: 'image/jpeg', bytes, dataUrl, wide: width / height }
}
/** A browser shows an SVG of its own only where the name of its language stands in it. */
const named = (svg: string): string =>
	svg.replace(/^<svg\b(?![^>]*\sxmlns\s*=)/i, '<svg xmlns="http://www.w3.org/2000/svg"')
/**
 * The logo as an address for an img element; undefined where there is none, or none that can be
 * drawn: a page is never held up by it.
 */
export function logoUrl(logo: Letterhead['logo']): string | undefined {
	if (!logo) return undefined
	try {
		const picture = readLogo(logo)
		return picture.kind === 'image/svg+xml'
			? `data:image/svg+xml,${encodeURIComponent(named(picture.svg))}`
			: picture.dataUrl
	} catch (error) {
		if (error instanceof BadLogo) return undefined
		throw error
	}
}
/**
 * What a new logo must be, beyond what an old one may: of the kind it is called, whole to the last
 * byte, and where it is an SVG a drawing and nothing else. @throws BadLogo
 */
export function checkNewLogo(logo: Logo): LogoPicture {
	const bytes = bytesOf(logo.base64)
	const kind = logoKind(bytes)
	if (kind !== undefined && kind !== logo.mediaType)
		throw new BadLogo(
			`its bytes are not of its kind, given a picture of ${kind} called ` +
				`${logo.mediaType}, allowed: the kind that it is`,
		)
	const picture = readLogo(logo)
	if (picture.kind === 'image/png') refuseDoubtful(picture.png)
	if (picture.kind === 'image/svg+xml') refuseMore(picture)
	return picture
}
/** An SVG is taken as it is or not at all: cut down it might look otherwise. */
function refuseMore({ svg, leftOut }: { svg: string; leftOut: readonly string[] }): void {
	const size = sizeOfSvg(svg).map((side) => (Number.isFinite(side) ? side : 0))
	if (!size.every((side) => side > 0 && side < 1_000_000))
		throw new BadLogo(
			`no size, given an SVG of ${size.join(' x ')}, allowed: a viewBox with a width and ` +
				'height above 0',
		)
	if (leftOut.length > 0)
		throw new BadLogo(
			`more than a drawing, given an SVG with ${[...new Set(leftOut)].slice(0, 5).join(', ')}, ` +
				'allowed: shapes and paths alone. Save it as PNG and choose that file',
		)
}
/** Kinds of PNG that the pages would draw wrongly or not at all. */
function refuseDoubtful({ damaged, extraBytes, animated, ...png }: Png): void {
	const packed = png.depth < 8 && (png.interlaced || png.transparentPalette)
	const wrong = [
		damaged.length > 0 && `whose check sums are wrong (${damaged.slice(0, 5).join(', ')})`,
		extraBytes > 0 && `with ${extraBytes} bytes after its end`,
		animated && 'that moves',
		packed && `of ${png.depth} bits that is interlaced or partly transparent`,
	].find(Boolean)
	if (wrong)
		throw new BadLogo(
			`not a plain picture, given a PNG ${wrong}, allowed: a whole PNG of 8 bits. Save ` +
				'the picture anew',
		)
}
