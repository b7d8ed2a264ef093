/** What the shell allows, as plain functions and tables: nothing here needs Electron, so all of it is tested without it. */
import { randomBytes } from 'node:crypto'
import { cspFor, readPage, resolvePage } from '../loopback/pages.ts'

export const scheme = 'app'
export const host = 'lastwright'
export const startUrl = `${scheme}://${host}/`
export const callChannel = 'lastwright:call'
/** Without the prefix 'persist:' the browser part keeps its cache in memory: nothing clinical reaches its profile on the disk. */
export const partition = 'lastwright'

/** Exactly our scheme and host, by parsing and never by the start of the text. */
export function isOwnUrl(url: string): boolean {
	try {
		const { protocol, host: found, username, password } = new URL(url)
		return protocol === `${scheme}:` && found === host && username === '' && password === ''
	} catch { return false }
}
/** A blob that one of our own pages made, such as a report shown in a frame. */
export function isOwnBlob(url: string): boolean { return url.startsWith('blob:') && isOwnUrl(url.slice('blob:'.length)) }

/** What the page may fetch at all: its own files, its own blobs, and data it wrote itself (the CSP says where data may be used). */
export function mayRequest(url: string): boolean { return isOwnUrl(url) || isOwnBlob(url) || url.startsWith('data:') }

/** The window itself never navigates. Only a frame inside it may, and only to a blob of ours. */
export function mayNavigate(url: string, isMainFrame: boolean): boolean { return !isMainFrame && isOwnBlob(url) }

/** @param frame the frame that sent a message, null once it is gone */
export function isTrustedSender(frame: { url: string; parent: unknown } | null): boolean { return frame !== null && frame.parent === null && isOwnUrl(frame.url) }

/** The one set of web preferences. */
export function webPreferences(preload: string) {
	return { preload, partition, contextIsolation: true, sandbox: true, nodeIntegration: false, webSecurity: true, spellcheck: false } as const
}

export interface PageAnswer { status: number; headers: Record<string, string>; body: Uint8Array | null }
/** Answers one request to app://lastwright/ from the folder of built screens. @param nonce fresh for each load */
export function answerPage(folder: string, request: { method: string; url: string }, nonce = randomBytes(18).toString('base64')): PageAnswer {
	const headers = { 'content-security-policy': cspFor(nonce), 'x-content-type-options': 'nosniff', 'cache-control': 'no-store', 'referrer-policy': 'no-referrer', 'cross-origin-opener-policy': 'same-origin', 'cross-origin-resource-policy': 'same-origin' }
	const plain = (status: number, words: string): PageAnswer => ({ status, headers: { ...headers, 'content-type': 'text/plain; charset=utf-8' }, body: Buffer.from(words) })
	if (!isOwnUrl(request.url)) return plain(403, 'This address is not served here.')
	if (request.method !== 'GET' && request.method !== 'HEAD') return plain(405, 'Only GET and HEAD are answered here.')
	const file = resolvePage(folder, new URL(request.url).pathname)
	if (file === undefined) return plain(404, 'There is nothing at this address.')
	const { type, body } = readPage(file, nonce)
	return { status: 200, headers: { ...headers, 'content-type': type }, body: request.method === 'HEAD' ? null : body }
}
