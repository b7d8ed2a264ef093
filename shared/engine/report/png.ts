/** A PNG picture read chunk by chunk (W3C PNG, third edition): its header and its compressed data. */
import { BadLogo } from './bad-logo.ts'

/** What the header of a PNG says. */
interface PngHeader {
	width: number
	height: number
	/** bits of a sample */
	depth: number
	colour: number
	interlaced: boolean
}
export interface Png extends PngHeader {
	/** the zlib stream of all IDAT chunks */
	data: Uint8Array
	/** single colours of the palette are transparent */
	transparentPalette: boolean
	animated: boolean
	/** chunks whose check sum is wrong, by name */
	damaged: string[]
	/** bytes after the end of the picture */
	extraBytes: number
}
const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
/** Samples of a pixel and the depths allowed, by the number of the colour type. */
const colours: Readonly<Record<number, { samples: number; depths: readonly number[] }>> = {
	0: { samples: 1, depths: [1, 2, 4, 8, 16] },
	2: { samples: 3, depths: [8, 16] },
	3: { samples: 1, depths: [1, 2, 4, 8] },
	4: { samples: 2, depths: [8, 16] },
	6: { samples: 4, depths: [8, 16] },
}
/** The seven passes of an interlaced picture: first column and row, then the steps. */
const passes = [
	[0, 0, 8, 8],
	[4, 0, 8, 8],
	[0, 4, 4, 8],
	[2, 0, 4, 4],
	[0, 2, 2, 4],
	[1, 0, 2, 2],
	[0, 1, 1, 2],
] as const
const damagedWords = (what: string) =>
	new BadLogo(
		`the picture is damaged, given a PNG ${what}, allowed: a whole PNG. Save the picture anew`,
	)
export const isPng = (bytes: Uint8Array): boolean =>
	signature.every((byte, at) => bytes[at] === byte)

const numberAt = (bytes: Uint8Array, at: number): number =>
	[0, 1, 2, 3].reduce((sum, offset) => sum * 256 + (bytes[at + offset] ?? 0), 0)
const sumTable = Uint32Array.from({ length: 256 }, (_, byte) => {
	let sum = byte
	for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1
	return sum
})
function checkSum(bytes: Uint8Array): number {
	let sum = 0xffffffff
	for (const byte of bytes) sum = (sumTable[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8)
	return (sum ^ 0xffffffff) >>> 0
}
interface Chunk {
	name: string
	body: Uint8Array
	/** its check sum is right */
	whole: boolean
}
/** The chunks up to IEND, and where they end. @throws BadLogo where the file ends before it */
function chunksOf(bytes: Uint8Array): { chunks: Chunk[]; end: number } {
	const chunks: Chunk[] = []
	for (let at = signature.length; at + 12 <= bytes.length; ) {
		const length = numberAt(bytes, at)
		const end = at + 12 + length
		if (end > bytes.length) break
		const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
		chunks.push({
			name,
			body: bytes.subarray(at + 8, end - 4),
			whole: checkSum(bytes.subarray(at + 4, end - 4)) === numberAt(bytes, end - 4),
		})
		if (name === 'IEND') return { chunks, end }
		at = end
	}
	throw damagedWords('that ends before its end')
}
function headerOf({ chunks: [first] }: { chunks: readonly Chunk[] }): PngHeader {
	if (first?.name !== 'IHDR' || first.body.length !== 13) throw damagedWords('without its header')
	const { body } = first
	const [depth = 0, colour = 0, compression, filter, interlace = 0] = body.subarray(8)
	const known = colours[colour]?.depths.includes(depth)
	if (!known || compression !== 0 || filter !== 0 || interlace > 1)
		throw damagedWords('whose header names a form that there is none of')
	return {
		width: numberAt(body, 0),
		height: numberAt(body, 4),
		depth,
		colour,
		interlaced: interlace === 1,
	}
}
function joined(parts: readonly Uint8Array[]): Uint8Array {
	const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
	let at = 0
	for (const part of parts) {
		all.set(part, at)
		at += part.length
	}
	return all
}
/** @param bytes a file that begins as a PNG. @throws BadLogo where its parts do not stand */
export function readPng(bytes: Uint8Array): Png {
	const { chunks, end } = chunksOf(bytes)
	const header = headerOf({ chunks })
	const named = (name: string) => chunks.filter((chunk) => chunk.name === name)
	const data = named('IDAT')
	if (data.length === 0) throw damagedWords('without a picture in it')
	const [palette] = named('PLTE')
	const paletteFits = palette && palette.body.length > 0 && palette.body.length % 3 === 0
	if (header.colour === 3 && !paletteFits) throw damagedWords('without its palette')
	return {
		...header,
		data: joined(data.map(({ body }) => body)),
		transparentPalette: header.colour === 3 && named('tRNS').length > 0,
		animated: ['acTL', 'fcTL', 'fdAT'].some((name) => named(name).length > 0),
		damaged: chunks.filter(({ whole }) => !whole).map(({ name }) => name),
		extraBytes: bytes.length - end,
	}
}
/** The rows of a picture as they are stored: how many, and the bytes of each with its filter. */
function rowsOf(png: PngHeader): { rows: number; rowBytes: number }[] {
	const bits = png.depth * (colours[png.colour]?.samples ?? 1)
	const rowBytes = (width: number) => 1 + Math.ceil((width * bits) / 8)
	if (!png.interlaced) return [{ rows: png.height, rowBytes: rowBytes(png.width) }]
	return passes
		.map(([x, y, stepX, stepY]) => ({
			width: Math.max(0, Math.ceil((png.width - x) / stepX)),
			rows: Math.max(0, Math.ceil((png.height - y) / stepY)),
		}))
		.filter(({ width, rows }) => width > 0 && rows > 0)
		.map(({ width, rows }) => ({ rows, rowBytes: rowBytes(width) }))
}
/** Bytes that the data of a PNG must unpack to. */
export const unpackedBytes = (png: PngHeader): number =>
	rowsOf(png).reduce((sum, { rows, rowBytes }) => sum + rows * rowBytes, 0)
/** Whether each row of the unpacked data names a filter that there is. */
export function hasKnownFilters(png: PngHeader, unpacked: Uint8Array): boolean {
	let at = 0
	for (const { rows, rowBytes } of rowsOf(png))
		for (let row = 0; row < rows; row++) {
			if ((unpacked[at] ?? 255) > 4) return false
			at += rowBytes
		}
	return true
}
