/** Pages on their way to the printer: an address of their own for as long as they are printed. */
import { randomBytes } from 'node:crypto'
import type { Printed } from '../../shared/desk/workplace/printed.ts'

const folder = '/paper/'
export const isPaperPath = (path: string): boolean => path.startsWith(folder)

/** Characters of base64: 60 MB of pages; a choice of this program. */
const longest = 80_000_000
const notAPdf = 'These are no pages that can be printed. Save the file and print it from there.'

/** The bytes of a PDF; undefined where it is none. */
function pdfBytes(base64: unknown): Buffer | undefined {
	if (typeof base64 !== 'string' || base64.length > longest) return undefined
	const bytes = Buffer.from(base64, 'base64')
	return bytes.subarray(0, 5).toString('latin1') === '%PDF-' ? bytes : undefined
}
/** Reasons of the runtime that say that the person left the dialog (from memory). */
const leftDialog = /cancel/i

/** What the runtime answers a printing, in words. */
function printedWords(success: boolean, reason: string): Printed {
	if (success || leftDialog.test(reason)) return { printed: success, says: '' }
	return {
		printed: false,
		says: 'The printer could not be reached. Look whether one is set up on this PC, then try again.',
	}
}
/** Shows an address where nobody sees it and has it printed by the dialog of this PC. */
export type ShowAndPrint = (path: string) => Promise<{ success: boolean; reason: string }>

export class Paper {
	readonly #pages = new Map<string, Buffer>()
	readonly #show: ShowAndPrint
	constructor(show: ShowAndPrint) {
		this.#show = show
	}
	/** The pages at a path; undefined where nothing is printed there now. */
	at(path: string): Uint8Array | undefined {
		return this.#pages.get(path)
	}
	/** Never throws: what went wrong is said in words. */
	async print(base64: unknown): Promise<Printed> {
		const bytes = pdfBytes(base64)
		if (!bytes) return { printed: false, says: notAPdf }
		const path = `${folder}${randomBytes(16).toString('hex')}.pdf`
		this.#pages.set(path, bytes)
		try {
			const { success, reason } = await this.#show(path)
			return printedWords(success, reason)
		} catch {
			return printedWords(false, '')
		} finally {
			this.#pages.delete(path)
		}
	}
}
