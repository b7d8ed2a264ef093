/** Reading the clinic logo: three kinds of picture, under 500 kB. */
import type { Clinic } from '../../../shared/engine/report/clinic.ts'

const kinds = ['image/png', 'image/jpeg', 'image/svg+xml'] as const
const mostBytes = 500_000
const piece = 0x8000

/** @throws Error naming the file, what is wrong and the remedy */
export async function readLogo(file: File): Promise<NonNullable<Clinic['logo']>> {
	const mediaType = kinds.find((kind) => kind === file.type)
	if (!mediaType)
		throw new Error(
			`Logo ${file.name} is not a PNG, JPEG or SVG picture. Choose a file of one of these kinds.`,
		)
	if (file.size === 0) throw new Error(`Logo ${file.name} is empty. Choose another file.`)
	if (file.size >= mostBytes)
		throw new Error(
			`Logo ${file.name} has ${Math.ceil(file.size / 1000)} kB. Choose a file under ` +
				`${mostBytes / 1000} kB.`,
		)
	const bytes = new Uint8Array(await file.arrayBuffer())
	let binary = ''
	// in pieces, as a call takes only so many arguments
	for (let at = 0; at < bytes.length; at += piece)
		binary += String.fromCharCode(...bytes.subarray(at, at + piece))
	return { mediaType, base64: btoa(binary) }
}
