/**
 * The one bridge into the page. A sandboxed preload is a plain script: it uses require, and it is
 * JavaScript as it stands, so that it is read from the package and never from a file made at start.
 */
const { contextBridge, ipcRenderer } = require('electron')

contextBridge.exposeInMainWorld('lastwright', {
	/**
	 * ipcRenderer itself never crosses: the page reaches these two channels and no other.
	 * @param {string} name
	 * @param {unknown} input
	 * @returns {Promise<unknown>}
	 */
	call: (name, input) => ipcRenderer.invoke('lastwright:call', name, input),
	/**
	 * The pages of a document, given to the printer of this PC by its own dialog.
	 * @param {string} base64
	 * @returns {Promise<unknown>}
	 */
	print: (base64) => ipcRenderer.invoke('lastwright:print', base64),
	/**
	 * A folder or a file, chosen in the system's own dialog.
	 * @param {string} purpose
	 * @returns {Promise<unknown>}
	 */
	choose: (purpose) => ipcRenderer.invoke('lastwright:choose', purpose),
})
