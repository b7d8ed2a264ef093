/** Document to PDF bytes. */
import { present } from '../../shared/engine/plain/present.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { inWorker } from './lanes.ts'
import { mustBeLongEnough } from './password.ts'

export { warmPdf } from './lanes.ts'

/**
 * @param options.password makes a copy that opens by it only (AES-256), printing allowed; without
 * it the same document gives the same bytes. Pages that are kept are put under a password by
 * kept.ts instead: they are not drawn a second time.
 * @param options.logoMustShow a logo that cannot be drawn is refused; else the page goes without it
 * @throws BadLogo where a logo that must show cannot; UnprintableText where a character is in no
 * font; Error in plain words where the password
 * is too short, drawing failed or took over 30 s
 */
export async function renderPdf(
	document: LwDocument,
	{ password, logoMustShow }: { password?: string; logoMustShow?: boolean } = {},
): Promise<Uint8Array> {
	if (password !== undefined) mustBeLongEnough(password)
	const task = present({ document, password, logoMustShow })
	const result = await inWorker({ does: 'draw', ...task })
	if ('bytes' in result) return result.bytes
	throw new Error('The worker gave no bytes.')
}
