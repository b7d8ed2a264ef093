/**
 * A PDF that exists, put under a password: its pages stay as they are, stream by stream.
 * Revision 6 of the standard security handler (AES-256, ISO 32000-2, 7.6).
 */
import { PDFDocument } from '@cantoo/pdf-lib'
import { UnreadablePdf } from './unreadable.ts'

/** @throws UnreadablePdf where the bytes are no PDF that can be read */
export async function encrypted(
	bytes: Uint8Array,
	password: string,
	ownerPassword: string,
): Promise<Uint8Array> {
	const pdf = await readPdf(bytes)
	pdf.encrypt({
		userPassword: password,
		ownerPassword,
		algorithm: 'AES-256',
		permissions: {
			printing: 'highResolution',
			contentAccessibility: true,
			copying: false,
			modifying: false,
			annotating: false,
			fillingForms: false,
			documentAssembly: false,
		},
	})
	return pdf.save({ addDefaultPage: false, updateFieldAppearances: false })
}
async function readPdf(bytes: Uint8Array): Promise<PDFDocument> {
	try {
		const pdf = await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true })
		pdf.getPages()
		return pdf
	} catch {
		throw new UnreadablePdf('The bytes are no PDF that can be read.')
	}
}
