/**
 * The built screens as files: where they lie, what type they have, and the policy they are served
 * under.
 */
import { readFileSync, realpathSync, statSync } from 'node:fs'
import { extname, isAbsolute, join, relative, resolve } from 'node:path'
import { placeOf } from '../place.ts'

export const builtScreens = placeOf('build/renderer/')
const types: Record<string, string> = {
	'.html': 'text/html; charset=utf-8',
	'.js': 'text/javascript; charset=utf-8',
	'.css': 'text/css; charset=utf-8',
	'.svg': 'image/svg+xml',
	'.png': 'image/png',
	'.ttf': 'font/ttf',
	'.woff2': 'font/woff2',
	'.json': 'application/json',
}

/** The content security policy of every answer; styles need the nonce of this load. */
export function cspFor(nonce: string): string {
	return (
		`default-src 'none'; script-src 'self'; style-src 'self' 'nonce-${nonce}'; img-src ` +
		`'self' data: blob:; font-src 'self'; connect-src 'self'; frame-src blob:; object-src ` +
		`'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`
	)
}
/**
 * @param urlPath the path as it came, still encoded. @returns the file inside `folder`, undefined
 * for anything outside or absent
 */
export function resolvePage(folder: string, urlPath: string): string | undefined {
	let decoded: string
	try {
		decoded = decodeURIComponent(urlPath)
	} catch {
		return undefined
	}
	if (decoded.includes('\0') || decoded.includes('\\')) return undefined
	try {
		const root = realpathSync(folder)
		const file = realpathSync(resolve(root, join('.', decoded === '/' ? 'index.html' : decoded)))
		const inside = relative(root, file)
		return inside.startsWith('..') || isAbsolute(inside) || !statSync(file).isFile()
			? undefined
			: file
	} catch {
		return undefined
	}
}
/** Reads a page; the index gets this load's nonce. */
export function readPage(file: string, nonce: string): { type: string; body: Uint8Array } {
	const type = types[extname(file)] ?? 'application/octet-stream'
	const bytes = readFileSync(file)
	return {
		type,
		body: type.startsWith('text/html')
			? Buffer.from(bytes.toString('utf8').replaceAll('__NONCE__', nonce))
			: bytes,
	}
}
