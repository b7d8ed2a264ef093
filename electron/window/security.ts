/**
 * What the shell allows, as plain functions and tables: nothing here needs Electron, so all of it
 * is tested without it.
 */
import { randomBytes } from 'node:crypto'
import { cspFor, readPage, resolvePage } from '../loopback/pages.ts'
import { crashPage, crashPath } from './crash.ts'
import { isPaperPath } from './paper.ts'

export const scheme = 'app'
const host = 'lastwright'
export const startUrl = `${scheme}://${host}/`
export const callChannel = 'lastwright:call'
export const printChannel = 'lastwright:print'
export const chooseChannel = 'lastwright:choose'
/**
 * Without the prefix 'persist:' the browser part keeps its cache in memory: nothing clinical
 * reaches its profile on the disk.
 */
export const partition = 'lastwright'

/** Exactly our scheme and host, by parsing and never by the start of the text. */
export function isOwnUrl(url: string): boolean {
	try {
		const { protocol, host: found, username, password } = new URL(url)
		return protocol === `${scheme}:` && found === host && username === '' && password === ''
	} catch {
		return false
	}
}
/** A blob that one of our own pages made, such as a report shown in a frame. */
export function isOwnBlob(url: string): boolean {
	return url.startsWith('blob:') && isOwnUrl(url.slice('blob:'.length))
}

/** Pages that are being printed: the viewer fetches them once more in a frame of its own. */
const isPaper = (url: string): boolean => isOwnUrl(url) && isPaperPath(new URL(url).pathname)

/**
 * The runtime's own viewer that shows a report in a frame; its parts are in the program and not on
 * a network. Names from memory.
 */
const viewer = {
	protocol: 'chrome-extension:',
	hosts: ['mhjfbmdgcfjbbpaeojofohoefgiehjai'],
	parts: ['resources'],
}
function isViewer(url: string): boolean {
	if (!URL.canParse(url)) return false
	const { protocol, host: found } = new URL(url)
	return protocol === viewer.protocol && viewer.hosts.includes(found)
}
const isViewerPart = (url: string): boolean =>
	URL.canParse(url) &&
	new URL(url).protocol === 'chrome:' &&
	viewer.parts.includes(new URL(url).host)

/**
 * What the page may fetch at all: its own files, its own blobs, data it wrote itself (the CSP says
 * where data may be used), and the viewer of reports.
 */
export function mayRequest(url: string): boolean {
	return (
		isOwnUrl(url) || isOwnBlob(url) || url.startsWith('data:') || isViewer(url) || isViewerPart(url)
	)
}

/**
 * The window itself goes nowhere but from the page of a stop back to the start. A frame inside it
 * may go to a blob of ours, to pages that are being printed, and to the viewer of reports. @param from where the window is
 */
export function mayNavigate(url: string, isMainFrame: boolean, from = ''): boolean {
	if (isMainFrame) return url === startUrl && from === `${startUrl}${crashPath.slice(1)}`
	return isOwnBlob(url) || isViewer(url) || isPaper(url)
}
/** Names the runtime may ask a permission for; each that is not here is denied too. @internal */
export const permissions: Readonly<Record<string, { allowed: boolean; why: string }>> = {
	'clipboard-sanitized-write': {
		allowed: true,
		why: 'a value or a line of the report is copied by a key of the person',
	},
	'clipboard-read': {
		allowed: false,
		why: 'pasting works by the keys of the person and needs no standing permission',
	},
	media: { allowed: false, why: 'no camera and no microphone is used' },
	geolocation: { allowed: false, why: 'where the PC stands concerns nobody' },
	notifications: { allowed: false, why: 'a name must not appear on a locked screen' },
	hid: { allowed: false, why: 'no device is read' },
	serial: { allowed: false, why: 'no device is read' },
	usb: { allowed: false, why: 'no device is read' },
	fullscreen: { allowed: false, why: 'the menu does this' },
	openExternal: { allowed: false, why: 'only links.ts leads outside' },
}
/** @param origin the page that asks */
export function mayHave(permission: string, origin: string): boolean {
	return (
		Object.hasOwn(permissions, permission) &&
		permissions[permission]?.allowed === true &&
		isOwnUrl(origin.endsWith('/') ? origin : `${origin}/`)
	)
}

/** @param frame the frame that sent a message, null once it is gone */
export function isTrustedSender(frame: { url: string; parent: unknown } | null): boolean {
	return frame !== null && frame.parent === null && isOwnUrl(frame.url)
}

/** The one set of web preferences. */
export function webPreferences(preload: string) {
	return {
		preload,
		partition,
		contextIsolation: true,
		sandbox: true,
		nodeIntegration: false,
		webSecurity: true,
		webviewTag: false,
		allowRunningInsecureContent: false,
		experimentalFeatures: false,
		navigateOnDragDrop: false,
		spellcheck: false,
		// the records are on the page: nobody at the keyboard reads past what the screens show
		devTools: false,
		// the viewer of reports counts as a plug-in; there is no other
		plugins: true,
	} as const
}

export interface PageAnswer {
	status: number
	headers: Record<string, string>
	body: Uint8Array | null
}
/**
 * Answers one request to app://lastwright/ from the folder of built screens. @param nonce fresh for
 * each load; @param stoppedBy why the screens stopped, for the page that says so
 */
export function answerPage(
	folder: string,
	request: { method: string; url: string },
	nonce = randomBytes(18).toString('base64'),
	stoppedBy = '',
): PageAnswer {
	const headers = {
		'content-security-policy': cspFor(nonce),
		'x-content-type-options': 'nosniff',
		'cache-control': 'no-store',
		'referrer-policy': 'no-referrer',
		'cross-origin-opener-policy': 'same-origin',
		'cross-origin-resource-policy': 'same-origin',
	}
	const plain = (status: number, words: string): PageAnswer => ({
		status,
		headers: { ...headers, 'content-type': 'text/plain; charset=utf-8' },
		body: Buffer.from(words),
	})
	if (!isOwnUrl(request.url)) return plain(403, 'This address is not served here.')
	if (request.method !== 'GET' && request.method !== 'HEAD')
		return plain(405, 'Only GET and HEAD are answered here.')
	const { pathname } = new URL(request.url)
	if (pathname === crashPath)
		return {
			status: 200,
			headers: { ...headers, 'content-type': 'text/html; charset=utf-8' },
			body: request.method === 'HEAD' ? null : Buffer.from(crashPage(stoppedBy, nonce)),
		}
	const file = resolvePage(folder, pathname)
	if (file === undefined) return plain(404, 'There is nothing at this address.')
	const { type, body } = readPage(file, nonce)
	return {
		status: 200,
		headers: { ...headers, 'content-type': type },
		body: request.method === 'HEAD' ? null : body,
	}
}
