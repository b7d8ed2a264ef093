/** A logo unpacked before it reaches the page: what draws the page would stop at a damaged one. */
import { inflateSync } from 'node:zlib'
import jpeg from 'jpeg-js'
import { BadLogo } from '../../shared/engine/report/bad-logo.ts'
import type { Letterhead } from '../../shared/engine/report/document.ts'
import { checkNewLogo, type LogoPicture, readLogo } from '../../shared/engine/report/logo.ts'
import { hasKnownFilters, type Png, unpackedBytes } from '../../shared/engine/report/png.ts'

type Logo = NonNullable<Letterhead['logo']>
/** What decoding a JPEG may take; enough for the largest logo. */
const jpegLimits = { maxResolutionInMP: 17, maxMemoryUsageInMB: 512 }
const reasonOf = (error: unknown): string =>
	error instanceof Error ? error.message.slice(0, 100) : 'unknown'

/** @throws BadLogo where the data does not unpack to the picture that the header tells of */
function unpack(png: Png): void {
	const wanted = unpackedBytes(png)
	let unpacked: Uint8Array
	try {
		unpacked = inflateSync(png.data, { maxOutputLength: wanted + 1024 })
	} catch (error) {
		throw damaged(`that does not unpack (${reasonOf(error)})`)
	}
	if (unpacked.length < wanted)
		throw damaged(`of ${unpacked.length} bytes where ${wanted} are needed`)
	if (!hasKnownFilters(png, unpacked)) throw damaged('with a row of no known filter')
}
const damaged = (what: string) =>
	new BadLogo(
		`the picture is damaged, given a PNG ${what}, allowed: a whole PNG. Save the picture anew`,
	)
/** @throws BadLogo where a JPEG cannot be decoded to its last row */
function decode(bytes: Uint8Array): void {
	try {
		jpeg.decode(bytes, { ...jpegLimits, useTArray: true, tolerantDecoding: false })
	} catch (error) {
		throw new BadLogo(
			`the picture is damaged, given a JPEG that cannot be decoded (${reasonOf(error)}), ` +
				'allowed: a whole JPEG. Save the picture anew',
		)
	}
}
/**
 * The logo of a record as the page draws it. @throws BadLogo naming what is wrong and what is
 * allowed
 */
export function drawableLogo(logo: Logo): LogoPicture {
	const picture = readLogo(logo)
	if (picture.kind === 'image/png') {
		if (picture.png.animated) throw damaged('that moves')
		unpack(picture.png)
	}
	return picture
}
let last: { base64: string; picture: LogoPicture } | undefined
/** As drawableLogo; the logo of the last page is not unpacked again. @throws BadLogo */
export function logoOnce(logo: Logo): LogoPicture {
	if (last?.base64 !== logo.base64) last = { base64: logo.base64, picture: drawableLogo(logo) }
	return last.picture
}
/** Proves a logo that was just chosen to its last pixel. @throws BadLogo */
export function proveLogo(logo: Logo): void {
	const picture = checkNewLogo(logo)
	if (picture.kind === 'image/png') unpack(picture.png)
	else if (picture.kind === 'image/jpeg') decode(picture.bytes)
}
