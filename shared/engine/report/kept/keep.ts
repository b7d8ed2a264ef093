/** A document as it is kept: its logo by digest, the words of its furniture with it. */
import { digestOf } from '../../plain/canonical.ts'
import { documentSentences } from '../../words/speak.ts'
import type { LwDocument } from '../document.ts'
import { documentVersion, type KeptDocument, type Logo } from './form.ts'

/** What stands round the blocks, by key of the catalogue. */
const furniture = ['page.draftMark', 'page.notes', 'page.notesApart', 'page.number'] as const

/** The digest by which a document names its logo: of picture and kind of file. */
export const logoDigest = ({ mediaType, base64 }: Logo): string => digestOf({ mediaType, base64 })

/** The form in which a document is kept beside the bytes that were drawn from it. */
export function keptForm(document: LwDocument): KeptDocument {
	const { logo, ...letterhead } = document.letterhead
	return {
		version: documentVersion,
		content: {
			...document,
			furniture: Object.fromEntries(furniture.map((key) => [key, documentSentences[key]])),
			letterhead: { ...letterhead, ...(logo && { logo: { sha256: logoDigest(logo) } }) },
		},
	}
}
/** SHA-256 of a kept document, by which a signed visit names it. */
export const keptDigest = ({ version, content }: KeptDocument): string =>
	digestOf({ version, content })
