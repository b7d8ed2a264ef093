/** The Electron shell: one locked-down window on the same app that the loopback serves. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
	app,
	BrowserWindow,
	dialog,
	ipcMain,
	Menu,
	nativeTheme,
	powerMonitor,
	protocol,
	type Session,
	screen,
	session,
	shell,
	type WebContents,
} from 'electron'
import type { Answer } from '../../shared/contract.ts'
import { type App, createApp } from '../app.ts'
import { builtScreens } from '../loopback/pages.ts'
import { renderPdf } from '../pdf/render.ts'
import { chosenBy } from './choosing.ts'
import { crashPath, stopsTooOften } from './crash.ts'
import { closing, leaving, notAnswering, outside, recordsShut, stoppedOften } from './dialogs.ts'
import { saveAs } from './downloads.ts'
import { openOutside } from './links.ts'
import { menuTemplate, nextZoom } from './menu.ts'
import { Paper } from './paper.ts'
import { lockWithThePc } from './power.ts'
import {
	answerPage,
	callChannel,
	chooseChannel,
	isOwnUrl,
	isTrustedSender,
	mayHave,
	mayNavigate,
	mayRequest,
	partition,
	printChannel,
	scheme,
	startUrl,
	webPreferences,
} from './security.ts'
import { keepState, placeOn, readState, smallest } from './windowState.ts'

app.enableSandbox()
protocol.registerSchemesAsPrivileged([
	{ scheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
])
const dataFolder = process.env.LASTWRIGHT_DATA ?? app.getPath('userData')
// the single-instance lock goes with the records, so that two data folders may be open side by side
const own = join(dataFolder, 'window')
mkdirSync(own, { recursive: true, mode: 0o700 })
app.setPath('userData', own)

let window: BrowserWindow | undefined
let lastwright: App | undefined
let stoppedBy = ''
const stops: number[] = []
const stateFile = join(own, 'place.json')
/** Loaded from inside the package, whose integrity the runtime checks. */
const preload = fileURLToPath(new URL('./preload.cjs', import.meta.url))
const note = (text: string) => process.stderr.write(`lastwright: ${text}\n`)

/**
 * A fault of the shell itself: told in words without anything of the records, then the program
 * ends.
 */
function fail(error: unknown): void {
	note(`the shell stopped by a ${error instanceof Error ? error.name : 'fault'}`)
	dialog.showErrorBox(...closing)
	app.exit(1)
}
/** In a window that nobody sees: the dialog of this PC asks which printer, and the pages are gone. */
async function showAndPrint(path: string): Promise<{ success: boolean; reason: string }> {
	const { preload: _, ...preferences } = webPreferences('')
	const shown = new BrowserWindow({ show: false, webPreferences: preferences })
	try {
		await shown.loadURL(`${startUrl}${path.slice(1)}`)
		return await new Promise((resolve) => {
			shown.webContents.print({ silent: false }, (success, reason) => resolve({ success, reason }))
		})
	} finally {
		shown.destroy()
	}
}
const paper = new Paper(showAndPrint)

function closeDoors(pages: Session): void {
	pages.protocol.handle(scheme, (request) => {
		const printing = isOwnUrl(request.url) && paper.at(new URL(request.url).pathname)
		if (printing)
			return new Response(Uint8Array.from(printing), {
				headers: { 'content-type': 'application/pdf', 'cache-control': 'no-store' },
			})
		const { status, headers, body } = answerPage(builtScreens, request, undefined, stoppedBy)
		return new Response(body === null ? null : Uint8Array.from(body), { status, headers })
	})
	pages.webRequest.onBeforeRequest((details, decide) =>
		decide({ cancel: !mayRequest(details.url) }),
	)
	pages.setPermissionRequestHandler((_contents, permission, decide, details) =>
		decide(mayHave(permission, details.requestingUrl)),
	)
	pages.setPermissionCheckHandler((_contents, permission, origin) => mayHave(permission, origin))
	pages.setDevicePermissionHandler(() => false)
	pages.on('will-download', (event, item) => {
		const file = saveAs(item.getURL(), item.getFilename(), item.getTotalBytes())
		if (!file) return event.preventDefault()
		item.setSaveDialogOptions({
			title: 'Save from Lastwright',
			defaultPath: file.name,
			filters: [{ name: file.kind, extensions: [file.ending] }],
		})
	})
}
async function askOutside(link: string): Promise<boolean> {
	const words = outside(link)
	return (
		(window ? await dialog.showMessageBox(window, words) : await dialog.showMessageBox(words))
			.response === 1
	)
}
function guard(contents: WebContents): void {
	contents.setWindowOpenHandler(({ url }) => {
		openOutside(url, askOutside, (link) => shell.openExternal(link)).catch(() =>
			note('an address could not be opened'),
		)
		return { action: 'deny' }
	})
	contents.on('will-navigate', (event) => {
		if (!mayNavigate(event.url, true, contents.getURL())) event.preventDefault()
	})
	contents.on('will-redirect', (event) => event.preventDefault())
	contents.on('will-frame-navigate', (event) => {
		if (!mayNavigate(event.url, event.isMainFrame, contents.getURL())) event.preventDefault()
	})
	contents.on('will-attach-webview', (event) => event.preventDefault())
}
/** Says that the screens stopped and offers them again; gives up after several in a row. */
function watch(made: BrowserWindow): void {
	made.webContents.on('render-process-gone', (_event, { reason }) => {
		if (reason === 'clean-exit') return
		stoppedBy = reason
		note(`the screens stopped: ${reason}`)
		stops.push(Date.now())
		if (stopsTooOften(stops, Date.now())) {
			dialog.showErrorBox(...stoppedOften(reason))
			return app.exit(1)
		}
		void made.loadURL(`${startUrl}${crashPath.slice(1)}`)
	})
	made.on('unresponsive', () => {
		void dialog.showMessageBox(made, notAnswering).then(({ response }) => {
			if (response === 1) void made.loadURL(startUrl)
		})
	})
	// the runtime stays by itself where a page asks to, and says nothing
	made.webContents.on('will-prevent-unload', (event) => {
		if (dialog.showMessageBoxSync(made, leaving) === 1) event.preventDefault()
	})
}
/** By the page's own keys, so that an entry is kept before it locks. */
const askToLock = (made: BrowserWindow | undefined): void =>
	made?.webContents.sendInputEvent({
		type: 'keyDown',
		keyCode: 'L',
		modifiers: ['control', 'shift'],
	})
function createWindow(): BrowserWindow {
	const state = placeOn(
		readState(stateFile),
		screen.getAllDisplays().map((display) => display.workArea),
	)
	let zoom = state.zoom
	const { maximized: _maximized, zoom: _zoom, ...place } = state
	// the paper of the theme, so that no white page flashes up before the first one
	const background = nativeTheme.shouldUseDarkColors ? '#121d1f' : '#f6f1e7'
	const made = new BrowserWindow({
		...place,
		minWidth: smallest.width,
		minHeight: smallest.height,
		show: false,
		title: 'Lastwright',
		backgroundColor: background,
		webPreferences: webPreferences(preload),
	})
	made.once('ready-to-show', () => {
		if (state.maximized) made.maximize()
		made.show()
	})
	made.webContents.on('did-finish-load', () => made.webContents.setZoomFactor(zoom))
	made.once('close', () => {
		try {
			keepState(stateFile, { ...made.getNormalBounds(), maximized: made.isMaximized(), zoom })
		} catch {
			note('the place of the window could not be kept')
		}
	})
	made.once('closed', () => {
		window = undefined
	})
	Menu.setApplicationMenu(
		Menu.buildFromTemplate(
			menuTemplate(
				{
					go: (room) => void made.loadURL(`${startUrl}#/${room}`),
					lock: () => askToLock(made),
					zoom: (step) => {
						zoom = nextZoom(zoom, step)
						made.webContents.setZoomFactor(zoom)
					},
					print: () => made.webContents.print({ printBackground: false }),
				},
				process.platform,
			),
		),
	)
	watch(made)
	void made.loadURL(startUrl)
	return made
}
const otherPage: Answer<never> = {
	ok: false,
	code: 'call.another-page',
	message: 'This page may not call Lastwright.',
}
function openRecords(): App | undefined {
	try {
		return createApp({ dataFolder, renderPdf, note })
	} catch (error) {
		dialog.showErrorBox(...recordsShut(error))
		return undefined
	}
}
process.on('uncaughtException', fail)
process.on('unhandledRejection', fail)
if (app.requestSingleInstanceLock()) {
	app.on('second-instance', () => {
		if (window?.isMinimized()) window.restore()
		window?.focus()
	})
	app.on('web-contents-created', (_event, contents) => guard(contents))
	app.on('window-all-closed', () => app.quit())
	app.on('will-quit', () => lastwright?.close())
	void app.whenReady().then(() => {
		const opened = openRecords()
		if (!opened) return app.quit()
		lastwright = opened
		closeDoors(session.fromPartition(partition))
		ipcMain.handle(callChannel, (event, name: unknown, input: unknown) => {
			if (!isTrustedSender(event.senderFrame)) return otherPage
			return opened.call(String(name), input)
		})
		ipcMain.handle(printChannel, (event, base64: unknown) => {
			if (!isTrustedSender(event.senderFrame)) return { printed: false, says: '' }
			return paper.print(base64)
		})
		ipcMain.handle(chooseChannel, (event, purpose: unknown) => {
			if (!isTrustedSender(event.senderFrame)) return otherPage
			return chosenBy(opened.call, purpose, (options) =>
				window ? dialog.showOpenDialog(window, options) : dialog.showOpenDialog(options),
			)
		})
		lockWithThePc(
			powerMonitor,
			() => askToLock(window),
			() => opened.call('session.lock', {}),
		)
		window = createWindow()
	})
} else {
	app.quit()
}
