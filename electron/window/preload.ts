/**
 * The one bridge into the page. A sandboxed preload is a plain script, so it uses require and
 * main.ts strips its types at start.
 */
const { contextBridge, ipcRenderer } = require('electron') as typeof import('electron')

contextBridge.exposeInMainWorld('lastwright', {
	// ipcRenderer itself never crosses: the page reaches one channel and no other
	call: (name: string, input: unknown): Promise<unknown> =>
		ipcRenderer.invoke('lastwright:call', name, input),
})
