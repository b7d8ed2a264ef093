/** A window: where it stands, and the page in it. */
import { EventEmitter } from 'node:events'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import type {
	BaseWindow,
	BrowserWindow,
	BrowserWindowConstructorOptions,
	Rectangle,
} from 'electron'
import { app } from './app.ts'
import { FakeContents } from './contents.ts'
import { say } from './said.ts'

let browser: Promise<BrowserContext> | undefined
const executablePath = process.env.LASTWRIGHT_BROWSER
async function startBrowser(): Promise<BrowserContext> {
	const context = await chromium.launchPersistentContext(
		join(app.getPath('userData'), 'chromium'),
		{
			...(executablePath ? { executablePath } : {}),
			args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
			viewport: null,
		},
	)
	context.on('page', (page) => {
		if (isExpected) return
		// a page that nobody of the shell asked for: no window of the runtime opens for it
		say('popup')
		void page.close().catch(() => {})
	})
	return context
}
const theBrowser = (): Promise<BrowserContext> => {
	browser ??= startBrowser()
	return browser
}
let isExpected = false
async function newPage(context: BrowserContext): Promise<Page> {
	isExpected = true
	try {
		return await context.newPage()
	} finally {
		isExpected = false
	}
}
export const endBrowser = async (): Promise<void> => (await browser)?.close()

type Used = Pick<
	BrowserWindow,
	| 'close'
	| 'destroy'
	| 'focus'
	| 'getBounds'
	| 'getNormalBounds'
	| 'isMaximized'
	| 'isMinimized'
	| 'loadURL'
	| 'maximize'
	| 'minimize'
	| 'restore'
	| 'show'
> &
	Pick<BaseWindow, 'setBounds'>
class FakeWindow extends EventEmitter implements Used {
	readonly webContents: FakeContents
	readonly options: BrowserWindowConstructorOptions
	/** Without a preload nobody sees it: it only holds what is printed. */
	readonly #isSeen: boolean
	#bounds: Rectangle
	#opened: Promise<void> | undefined
	#state: 'normal' | 'maximized' | 'minimized' = 'normal'
	#isGone = false
	#isClosing = false
	isShown = false
	isCrashed = false

	constructor(options: BrowserWindowConstructorOptions = {}) {
		super()
		this.options = options
		const { x = 0, y = 0, width = 800, height = 600, webPreferences = {} } = options
		this.#bounds = { x, y, width, height }
		this.#isSeen = webPreferences.preload !== undefined
		this.webContents = new FakeContents(webPreferences)
		if (this.#isSeen) windows.add(this)
		app.emit('web-contents-created', {}, this.webContents)
		this.webContents.on('render-process-gone', () => {
			this.isCrashed = true
		})
	}
	async loadURL(url: string): Promise<void> {
		if (!this.#isSeen) return this.webContents.loadUnseen(url)
		if (this.isCrashed) this.#opened = undefined
		this.#opened ??= this.#open()
		await this.#opened
		await this.webContents.load(url).catch((error: unknown) => say('load failed', String(error)))
		if (!this.isShown) this.emit('ready-to-show')
	}
	async #open(): Promise<void> {
		const context = await theBrowser()
		const [first] = context.pages()
		const isFresh = first !== undefined && first.url() === 'about:blank' && !this.isCrashed
		const page = isFresh ? first : await newPage(context)
		this.isCrashed = false
		await this.webContents.show(page)
		page.on('close', () => this.#closed())
	}
	show(): void {
		this.isShown = true
	}
	maximize(): void {
		this.#state = 'maximized'
	}
	minimize(): void {
		this.#state = 'minimized'
	}
	isMaximized(): boolean {
		return this.#state === 'maximized'
	}
	isMinimized(): boolean {
		return this.#state === 'minimized'
	}
	restore(): void {
		this.#state = 'normal'
		say('restored')
	}
	focus(): void {
		say('focused')
	}
	getBounds(): Rectangle {
		return { ...this.#bounds }
	}
	getNormalBounds(): Rectangle {
		return { ...this.#bounds }
	}
	setBounds(bounds: Partial<Rectangle>): void {
		this.#bounds = { ...this.#bounds, ...bounds }
	}
	/** As a person closes it: the page may ask to stay, then the shell is told. */
	close(): void {
		if (this.#isClosing) return
		this.#isClosing = true
		void this.webContents.page.close({ runBeforeUnload: true }).catch(() => {})
	}
	/** The page asked to stay and was let. */
	stays(): void {
		this.#isClosing = false
	}
	destroy(): void {
		this.#isGone = true
		windows.delete(this)
		say('destroyed')
	}
	#closed(): void {
		if (this.#isGone || this.isCrashed || !this.webContents.page.isClosed()) return
		this.emit('close', { preventDefault: () => {} })
		this.destroy()
		this.emit('closed')
		if (windows.size === 0) app.emit('window-all-closed')
	}
}
const windows = new Set<FakeWindow>()
app.closeWindows = () => {
	for (const one of windows) one.destroy()
}
/** Those that a person sees. */
export const openWindows = (): FakeWindow[] => [...windows]
export { FakeWindow as BrowserWindow }
