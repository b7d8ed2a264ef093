/** What a window shows: a page of Chromium, held by its DevTools protocol. */
import { EventEmitter } from 'node:events'
import { statSync } from 'node:fs'
import type { CDPSession, Download, Page } from '@playwright/test'
import type { WebContents, WebPreferences } from 'electron'
import { browserOrigin, isInside, shellOrigin, toBrowser, toShell } from './addresses.ts'
import { Bridge } from './bridge.ts'
import { type FakeSession, session } from './pages.ts'
import { say } from './said.ts'

/** Permissions by the runtime's name and by that of the DevTools protocol. */
const permissionNames: Readonly<Record<string, string>> = {
	notifications: 'notifications',
	geolocation: 'geolocation',
	'clipboard-read': 'clipboard-read',
	'clipboard-sanitized-write': 'clipboard-write',
	media: 'camera',
	midi: 'midi',
}
type Used = Pick<
	WebContents,
	'getURL' | 'sendInputEvent' | 'setWindowOpenHandler' | 'setZoomFactor'
>
type OpenHandler = Parameters<WebContents['setWindowOpenHandler']>[0]
interface Paused {
	requestId: string
	request: { url: string; method: string }
	resourceType: string
	frameId: string
}
export class FakeContents extends EventEmitter implements Used {
	readonly pages: FakeSession
	readonly #bridge: Bridge | undefined
	#page: Page | undefined
	#devtools: CDPSession | undefined
	#mainFrame = ''
	#openHandler: OpenHandler | undefined
	/** Addresses that the shell itself loads: nobody is asked about these. */
	readonly #own = new Set<string>()
	zoom = 1

	constructor({ preload, partition }: WebPreferences) {
		super()
		this.pages = session.fromPartition(partition ?? '')
		this.#bridge = preload === undefined ? undefined : new Bridge(preload)
	}
	get page(): Page {
		if (!this.#page) throw new Error('No page is shown yet.')
		return this.#page
	}
	get devtools(): CDPSession {
		if (!this.#devtools) throw new Error('No page is shown yet.')
		return this.#devtools
	}
	setWindowOpenHandler(handler: OpenHandler): void {
		this.#openHandler = handler
	}
	getURL(): string {
		return this.#page ? toShell(this.#page.url()) : ''
	}
	setZoomFactor(factor: number): void {
		this.zoom = factor
	}
	sendInputEvent(event: Parameters<WebContents['sendInputEvent']>[0]): void {
		say('input', event)
		const { modifiers = [], keyCode } = event as { modifiers?: string[]; keyCode: string }
		const [ctrlKey, shiftKey] = [modifiers.includes('control'), modifiers.includes('shift')]
		// given to the page itself: a question of the browser's own may hold the keyboard
		this.#told(this.page.evaluate(pressIn, { key: keyCode, ctrlKey, shiftKey }))
	}
	/** Nothing is printed: it is said what would be. */
	print(options: object, done?: (success: boolean, reason: string) => void): void {
		say('print', options)
		done?.(true, '')
	}
	async show(page: Page): Promise<void> {
		this.#page = page
		const devtools = await page.context().newCDPSession(page)
		this.#devtools = devtools
		await this.#bridge?.putInto(page)
		devtools.on('Fetch.requestPaused', (paused) => this.#told(this.#paused(paused as Paused)))
		devtools.on('Page.frameRequestedNavigation', ({ url, frameId }) => {
			// what is asked of a network comes by Fetch
			if (!/^https?:/.test(url)) this.#navigates(url, frameId)
		})
		devtools.on('Page.windowOpen', ({ url }) => {
			const details = { url: toShell(url) } as Parameters<OpenHandler>[0]
			say('window.open', { url, action: this.#openHandler?.(details).action })
		})
		await devtools.send('Fetch.enable', { patterns: [{ urlPattern: '*' }] })
		await devtools.send('Page.enable')
		this.#mainFrame = (await devtools.send('Page.getFrameTree')).frameTree.frame.id
		page.on('load', () => this.emit('did-finish-load'))
		page.on('crash', () => this.emit('render-process-gone', {}, { reason: 'crashed' }))
		page.on('download', (download) => this.#told(this.#download(download)))
		page.on('dialog', (asks) => this.#told(this.#leaves(asks)))
		await this.#setPermissions(devtools)
	}
	async load(url: string): Promise<void> {
		this.#own.add(toBrowser(url).split('#')[0] ?? '')
		await this.page.goto(toBrowser(url))
	}
	/** Where nobody sees it no browser is needed: what would be shown is said. */
	async loadUnseen(url: string): Promise<void> {
		const isFetched = await this.pages.mayFetch(url)
		const answer = isFetched ? await this.pages.answer(url, 'GET') : undefined
		const type = answer?.headers.get('content-type')
		say('unseen', { url, status: answer?.status, type, text: await answer?.text() })
	}
	/** A fault of this stand-in is never silent. */
	#told(work: Promise<unknown>): void {
		work.catch((error: unknown) => say('fault', String(error)))
	}
	async #setPermissions(devtools: CDPSession): Promise<void> {
		for (const [name, inBrowser] of Object.entries(permissionNames)) {
			const isGranted = this.pages.has(name, shellOrigin) && this.pages.gets(name, shellOrigin)
			const setting = isGranted ? 'granted' : 'denied'
			const permission = { name: inBrowser }
			await devtools.send('Browser.setPermission', { permission, setting, origin: browserOrigin })
		}
	}
	/** @returns whether the shell stopped it */
	#navigates(url: string, frameId: string): boolean {
		const isMainFrame = frameId === this.#mainFrame
		let isStopped = false
		const event = {
			url: toShell(url),
			isMainFrame,
			preventDefault: () => {
				isStopped = true
			},
		}
		this.emit('will-frame-navigate', event)
		if (isMainFrame) this.emit('will-navigate', event)
		say('navigates', { url: event.url, isMainFrame, isStopped })
		return isStopped
	}
	async #paused({ requestId, request, resourceType, frameId }: Paused): Promise<void> {
		const { devtools } = this
		const fail = (errorReason: 'Aborted' | 'BlockedByClient' | 'InternetDisconnected') =>
			// a page that is gone meanwhile has nothing to be told
			devtools.send('Fetch.failRequest', { requestId, errorReason }).catch(() => {})
		const isDocument = resourceType === 'Document'
		const isOwn = this.#own.delete(request.url.split('#')[0] ?? '')
		if (isDocument && !isOwn && this.#navigates(request.url, frameId)) return void fail('Aborted')
		const url = toShell(request.url)
		if (!(await this.pages.mayFetch(url))) {
			say('cancelled', url)
			return void fail('BlockedByClient')
		}
		if (!isInside(request.url)) {
			if (!/^(?:blob|data):/.test(url)) say('left the house', url)
			return void fail('InternetDisconnected')
		}
		const answer = await this.pages.answer(url, request.method)
		if (!answer) return void fail('InternetDisconnected')
		const headers = [...answer.headers].map(([name, value]) => ({ name, value }))
		const body = Buffer.from(await answer.arrayBuffer()).toString('base64')
		const given = { requestId, responseCode: answer.status, responseHeaders: headers, body }
		await devtools.send('Fetch.fulfillRequest', given).catch(() => {})
	}
	async #download(download: Download): Promise<void> {
		const path = await download.path().catch(() => undefined)
		const size = path === undefined ? 0 : statSync(path).size
		let isStopped = false
		let options: unknown
		this.pages.emit(
			'will-download',
			{
				preventDefault: () => {
					isStopped = true
				},
			},
			{
				getURL: () => toShell(download.url()),
				getFilename: () => download.suggestedFilename(),
				getTotalBytes: () => size,
				setSaveDialogOptions: (given: unknown) => {
					options = given
				},
			},
			this,
		)
		say('download', { name: download.suggestedFilename(), isStopped, options })
	}
	/** A page that asks to stay, at its end: without a word of the shell it stays. */
	async #leaves(asks: { type(): string; accept(): Promise<void>; dismiss(): Promise<void> }) {
		if (asks.type() !== 'beforeunload') return asks.dismiss()
		let mayGo = false
		this.emit('will-prevent-unload', {
			preventDefault: () => {
				mayGo = true
			},
		})
		say('asks to stay', mayGo)
		return mayGo ? asks.accept() : asks.dismiss()
	}
}
/** Runs in the page. */
function pressIn(keys: { key: string; ctrlKey: boolean; shiftKey: boolean }): void {
	const pressed = new KeyboardEvent('keydown', { ...keys, bubbles: true, cancelable: true })
	;(document.activeElement ?? document.body).dispatchEvent(pressed)
}
