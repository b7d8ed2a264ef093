/**
 * Pages as bytes: drawn with what cannot be printed said in words, and given to the screens with
 * their digest.
 */
import { createHash } from 'node:crypto'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { UnprintableText } from '../../pdf/unprintable.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

export const sha256Of = (bytes: Uint8Array): string =>
	createHash('sha256').update(bytes).digest('hex')
/** @throws Refusal naming the character that no font of the pages has */
export async function draw(
	deps: Pick<Deps, 'renderPdf'>,
	document: LwDocument,
	password?: string,
): Promise<Uint8Array> {
	try {
		return await deps.renderPdf(document, password === undefined ? undefined : { password })
	} catch (error) {
		if (error instanceof UnprintableText) throw new Refusal('visits.unprintable', error.message)
		throw error
	}
}
/** A page as the contract carries it. */
export const pdfOf = (
	bytes: Uint8Array,
	fileName: string,
): { base64: string; sha256: string; fileName: string } => ({
	base64: Buffer.from(bytes).toString('base64'),
	sha256: sha256Of(bytes),
	fileName,
})
