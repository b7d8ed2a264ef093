/** Pages that exist already, as bytes: under a password, the first alone, or as text. Never drawn again. */
import { inWorker } from './lanes.ts'
import { mustBeLongEnough } from './password.ts'

/**
 * The same pages as a file that opens by the password only (AES-256, revision 6); printing and
 * reading aloud are allowed.
 * @throws UnreadablePdf where the bytes are no PDF; RangeError where the password is too short
 */
export async function protectPdf(bytes: Uint8Array, password: string): Promise<Uint8Array> {
	mustBeLongEnough(password)
	const result = await inWorker({ does: 'protect', bytes, password })
	if ('bytes' in result) return result.bytes
	throw new Error('The worker gave no bytes.')
}
/** The first page as a file of its own. @throws UnreadablePdf where the bytes are no PDF */
export async function firstPagePdf(bytes: Uint8Array): Promise<Uint8Array> {
	const result = await inWorker({ does: 'cut', bytes })
	if ('bytes' in result) return result.bytes
	throw new Error('The worker gave no bytes.')
}
/**
 * The paragraphs of each page, as plain text.
 * @throws UnreadablePdf where the bytes are no PDF
 */
export async function textOfPdf(bytes: Uint8Array): Promise<string[][]> {
	const result = await inWorker({ does: 'read', bytes })
	if ('pages' in result) return result.pages
	throw new Error('The worker gave no pages.')
}
