/** The pages of a PDF printed: through the desktop window where there is one, else by the browser. */
import { saveBytes, urlOf } from './files.ts'

/** How it ended: a dialog of the printer was shown, or the file was saved instead. */
export type PrintedBy = 'printer' | 'saved'

/** The frame stays until the next printing: the dialog may still read from it. */
let frame: HTMLIFrameElement | undefined

/** Seen nowhere, and drawn all the same: a frame that is not displayed has no pages to print. */
const hidden = {
	position: 'fixed',
	width: '1px',
	height: '1px',
	right: '0',
	bottom: '0',
	border: '0',
	opacity: '0',
}

function framed(url: string): Promise<HTMLIFrameElement> {
	return new Promise((resolve) => {
		const made = document.createElement('iframe')
		Object.assign(made.style, hidden)
		Object.assign(made, { title: 'Pages for the printer', src: url, tabIndex: -1 })
		made.setAttribute('aria-hidden', 'true')
		made.addEventListener('load', () => resolve(made), { once: true })
		document.body.append(made)
	})
}
async function byBrowser(base64: string): Promise<boolean> {
	// a browser without a viewer of its own would download the file instead
	if (!navigator.pdfViewerEnabled) return false
	if (frame) {
		URL.revokeObjectURL(frame.src)
		frame.remove()
	}
	frame = await framed(urlOf(base64))
	try {
		frame.contentWindow?.focus()
		frame.contentWindow?.print()
		return true
	} catch {
		return false
	}
}
/**
 * Prints a PDF; where this window cannot, its file is saved.
 * @param base64 of the PDF
 * @throws Error in words where the printer could not be reached
 */
export async function printPdf(base64: string, fileName: string): Promise<PrintedBy> {
	if (window.lastwright) {
		const { printed, says } = await window.lastwright.print(base64)
		if (!printed && says !== '') throw new Error(says)
		return 'printer'
	}
	if (await byBrowser(base64)) return 'printer'
	saveBytes(base64, fileName, 'application/pdf')
	return 'saved'
}
