/** Reading the clinic logo: PNG, JPEG or SVG by its content, under 500 kB, that can be drawn. */
import { BadLogo } from '../../../shared/engine/report/bad-logo.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { checkNewLogo, logoKind, logoUrl } from '../../../shared/engine/report/logo.ts'

const mostBytes = 500_000
const piece = 0x8000
/** What a file chooser offers; what the file is, its bytes say. */
export const logoKinds = 'image/png,image/jpeg,image/svg+xml'

function base64Of(bytes: Uint8Array): string {
	let binary = ''
	// in pieces, as a call takes only so many arguments
	for (let at = 0; at < bytes.length; at += piece)
		binary += String.fromCharCode(...bytes.subarray(at, at + piece))
	return btoa(binary)
}
/** @throws BadLogo where the browser cannot decode it either */
async function decode(logo: NonNullable<Clinic['logo']>): Promise<void> {
	const picture = new Image()
	picture.src = logoUrl(logo) ?? ''
	await picture.decode().catch(() => {
		throw new BadLogo('the picture is damaged. Save it anew in a picture program')
	})
}
/** @throws Error naming the file, what is wrong and the remedy */
export async function readLogo(file: File): Promise<NonNullable<Clinic['logo']>> {
	if (file.size === 0) throw new Error(`Logo ${file.name} is empty. Choose another file.`)
	if (file.size >= mostBytes)
		throw new Error(
			`Logo ${file.name} has ${Math.ceil(file.size / 1000)} kB. Choose a file under ` +
				`${mostBytes / 1000} kB.`,
		)
	const bytes = new Uint8Array(await file.arrayBuffer())
	const mediaType = logoKind(bytes)
	if (!mediaType)
		throw new Error(
			`Logo ${file.name} is not a PNG, JPEG or SVG picture. Choose a file of one of these kinds.`,
		)
	const logo = { mediaType, base64: base64Of(bytes) }
	try {
		checkNewLogo(logo)
		await decode(logo)
	} catch (error) {
		if (!(error instanceof BadLogo)) throw error
		throw new Error(`Logo ${file.name} cannot be used: ${error.flaw}.`)
	}
	return logo
}
