/** Pictures made for a test: whole ones, and ways to spoil them. */
import { crc32, deflateSync } from 'node:zlib'
import jpeg from 'jpeg-js'

const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
/** A chunk of a PNG with its check sum. */
export function chunk(name: string, body: Uint8Array): Buffer {
	const named = Buffer.concat([Buffer.from(name, 'latin1'), body])
	const made = Buffer.alloc(named.length + 8)
	made.writeUInt32BE(body.length, 0)
	named.copy(made, 4)
	made.writeUInt32BE(crc32(named), named.length + 4)
	return made
}
const samples: Record<number, number> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }
export interface PngForm {
	width?: number
	height?: number
	depth?: number
	colour?: number
	interlace?: number
	/** chunks before the picture */
	before?: Buffer[]
	/** the rows, unpacked */
	raw?: Uint8Array
}
/** The rows of a plain picture, each with the filter 0. */
export const rawOf = ({ width = 40, height = 40, depth = 8, colour = 6 }: PngForm): Buffer =>
	Buffer.alloc(height * (1 + Math.ceil((width * depth * (samples[colour] ?? 1)) / 8)))
export function png(form: PngForm = {}): Buffer {
	const { width = 40, height = 40, depth = 8, colour = 6, interlace = 0, before = [] } = form
	const header = Buffer.alloc(13)
	header.writeUInt32BE(width, 0)
	header.writeUInt32BE(height, 4)
	header.set([depth, colour, 0, 0, interlace], 8)
	const palette = colour === 3 ? [chunk('PLTE', Buffer.from([0, 0, 0, 200, 10, 10]))] : []
	return Buffer.concat([
		signature,
		chunk('IHDR', header),
		...palette,
		...before,
		chunk('IDAT', deflateSync(form.raw ?? rawOf(form))),
		chunk('IEND', Buffer.alloc(0)),
	])
}
export const jpegPicture = (side = 40): Buffer =>
	Buffer.from(
		jpeg.encode({ width: side, height: side, data: Buffer.alloc(side * side * 4, 90) }, 80).data,
	)
export const svgPicture = '<svg viewBox="0 0 9 9"><path d="M0 0L9 9"/></svg>'
export const cut = (bytes: Buffer, share: number): Buffer =>
	bytes.subarray(0, Math.floor(bytes.length * share))
/** The same bytes with one of them turned round. */
export function spoilt(bytes: Buffer, at: number): Buffer {
	const made = Buffer.from(bytes)
	made[at] = (made[at] ?? 0) ^ 0xff
	return made
}
