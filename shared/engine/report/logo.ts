/**
 * The clinic's logo: its kind checked against its bytes, its size in pixels, and an SVG cut down to
 * drawing.
 */
import type { Letterhead } from './document.ts'
import { safeSvg } from './safe-svg.ts'

/** A logo that cannot be drawn; its message says what is wrong and what is allowed. */
export class BadLogo extends Error {
	override readonly name = 'BadLogo'
}
const leastPx = 32
const mostPx = 4000
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
/** Bytes of a base64 text. */
function bytesOf(base64: string): Uint8Array {
	const plain = base64.replace(/[^A-Za-z0-9+/]/g, '')
	const bytes = new Uint8Array(Math.floor((plain.length * 3) / 4))
	let held = 0
	let bits = 0
	let at = 0
	for (const letter of plain) {
		held = ((held << 6) | letters.indexOf(letter)) & 0xffffff
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
	let escaped = ''
	for (const byte of bytes) escaped += `%${byte.toString(16).padStart(2, '0')}`
	try {
		return decodeURIComponent(escaped)
	} catch {
		throw new BadLogo(
			'logo: not a text, given an SVG with bytes that are not UTF-8, allowed: an SVG saved as ' +
				'UTF-8',
		)
	}
}
const word = (bytes: Uint8Array, at: number) => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0)
function sizeOfPng(bytes: Uint8Array): [number, number] | undefined {
	return [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a].every((byte, at) => bytes[at] === byte)
		? [word(bytes, 16) * 65536 + word(bytes, 18), word(bytes, 20) * 65536 + word(bytes, 22)]
		: undefined
}
function sizeOfJpeg(bytes: Uint8Array): [number, number] | undefined {
	if (word(bytes, 0) !== 0xffd8) return undefined
	for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff; at += 2 + word(bytes, at + 2)) {
		const mark = bytes[at + 1] ?? 0
		// the frame headers, save those of tables (C4), a reserved one (C8) and arithmetic coding (CC)
		if (mark >= 0xc0 && mark <= 0xcf && mark !== 0xc4 && mark !== 0xc8 && mark !== 0xcc)
			return [word(bytes, at + 7), word(bytes, at + 5)]
	}
	return undefined
}
function svgOf(base64: string): string {
	const svg = safeSvg(textOf(bytesOf(base64)))
	const root = /^<svg\b[^>]*>/i.exec(svg)?.[0]
	if (!root)
		throw new BadLogo(
			'logo: not an SVG picture, given a file without an <svg> element at its start, allowed: ' +
				'an SVG drawing',
		)
	if (!/\bviewBox\s*=/.test(root) && !(/\bwidth\s*=/.test(root) && /\bheight\s*=/.test(root)))
		throw new BadLogo(
			'logo: no size, given an SVG without viewBox or width and height, allowed: an SVG with a ' +
				'viewBox',
		)
	return svg
}
type SafeLogo = { kind: 'svg'; svg: string } | { kind: 'picture'; dataUrl: string }
/** The logo as it may be drawn. @throws BadLogo naming what is wrong and what is allowed */
export function safeLogo({ mediaType, base64 }: NonNullable<Letterhead['logo']>): SafeLogo {
	if (mediaType === 'image/svg+xml') return { kind: 'svg', svg: svgOf(base64) }
	const bytes = bytesOf(base64)
	const size = mediaType === 'image/png' ? sizeOfPng(bytes) : sizeOfJpeg(bytes)
	if (!size)
		throw new BadLogo(
			`logo: its bytes are not of its kind, given ${mediaType}, allowed: a ` +
				`${mediaType === 'image/png' ? 'PNG' : 'JPEG'} picture`,
		)
	if (size.some((side) => side < leastPx || side > mostPx))
		throw new BadLogo(
			`logo: size, given ${size[0]} x ${size[1]} pixels, allowed: ${leastPx} to ${mostPx} ` +
				'pixels each way',
		)
	return { kind: 'picture', dataUrl: `data:${mediaType};base64,${base64}` }
}
/**
 * The logo as an address for an img element; undefined where there is none.
 * @throws BadLogo naming what is wrong and what is allowed
 */
export function logoUrl(logo: Letterhead['logo']): string | undefined {
	if (!logo) return undefined
	const safe = safeLogo(logo)
	return safe.kind === 'picture'
		? safe.dataUrl
		: `data:image/svg+xml,${encodeURIComponent(safe.svg)}`
}
