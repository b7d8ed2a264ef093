/** The Electron shell: one locked-down window on the same app that the loopback serves. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { app, BrowserWindow, dialog, ipcMain, protocol, type Session, session, type WebContents } from 'electron'
import { type App, createApp } from '../app.ts'
import { builtScreens } from '../loopback/pages.ts'
import { renderPdf } from '../pdf/render.ts'
import { answerPage, callChannel, isOwnBlob, isTrustedSender, mayNavigate, mayRequest, partition, scheme, startUrl, webPreferences } from './security.ts'

app.enableSandbox()
protocol.registerSchemesAsPrivileged([{ scheme, privileges: { standard: true, secure: true, supportFetchAPI: true } }])
const dataFolder = process.env.LASTWRIGHT_DATA ?? app.getPath('userData')
// the single-instance lock goes with the records, so that two data folders may be open side by side
app.setPath('userData', join(dataFolder, 'window'))

let window: BrowserWindow | undefined
let lastwright: App | undefined
const scratch = mkdtempSync(join(tmpdir(), 'lastwright-window-'))

function writePreload(): string {
	const file = join(scratch, 'preload.js')
	writeFileSync(file, stripTypeScriptTypes(readFileSync(new URL('./preload.ts', import.meta.url), 'utf8')), { mode: 0o600 })
	return file
}
function closeDoors(pages: Session): void {
	pages.protocol.handle(scheme, (request) => {
		const { status, headers, body } = answerPage(builtScreens, request)
		return new Response(body === null ? null : Uint8Array.from(body), { status, headers })
	})
	pages.webRequest.onBeforeRequest((details, decide) => decide({ cancel: !mayRequest(details.url) }))
	pages.setPermissionRequestHandler((_contents, _permission, decide) => decide(false))
	pages.setPermissionCheckHandler(() => false)
	pages.setDevicePermissionHandler(() => false)
	pages.on('will-download', (event, item) => { if (!isOwnBlob(item.getURL())) event.preventDefault() })
}
function guard(contents: WebContents): void {
	contents.setWindowOpenHandler(() => ({ action: 'deny' }))
	contents.on('will-navigate', (event) => event.preventDefault())
	contents.on('will-redirect', (event) => event.preventDefault())
	contents.on('will-frame-navigate', (event) => { if (!mayNavigate(event.url, event.isMainFrame)) event.preventDefault() })
	contents.on('will-attach-webview', (event) => event.preventDefault())
}
function createWindow(preload: string): BrowserWindow {
	const made = new BrowserWindow({ width: 1440, height: 900, minWidth: 1024, minHeight: 700, show: false, title: 'Lastwright', autoHideMenuBar: true, webPreferences: webPreferences(preload) })
	made.once('ready-to-show', () => made.show())
	made.once('closed', () => { window = undefined })
	void made.loadURL(startUrl)
	return made
}
function openRecords(): App | undefined {
	try {
		return createApp({ dataFolder, renderPdf, note: (text) => process.stderr.write(`lastwright: ${text}\n`) })
	} catch (error) {
		dialog.showErrorBox('Lastwright cannot open the records', error instanceof Error ? error.message : 'The data folder could not be opened.')
		return undefined
	}
}
if (app.requestSingleInstanceLock()) {
	app.on('second-instance', () => {
		if (window?.isMinimized()) window.restore()
		window?.focus()
	})
	app.on('web-contents-created', (_event, contents) => guard(contents))
	app.on('window-all-closed', () => app.quit())
	app.on('will-quit', () => {
		lastwright?.close()
		rmSync(scratch, { recursive: true, force: true })
	})
	void app.whenReady().then(() => {
		const opened = openRecords()
		if (!opened) return app.quit()
		lastwright = opened
		closeDoors(session.fromPartition(partition))
		ipcMain.handle(callChannel, (event, name: unknown, input: unknown) => {
			if (!isTrustedSender(event.senderFrame)) return { ok: false, message: 'This page may not call Lastwright.' }
			return opened.call(String(name), input)
		})
		window = createWindow(writePreload())
	})
} else {
	rmSync(scratch, { recursive: true, force: true })
	app.quit()
}
