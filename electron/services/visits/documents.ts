/** Documents made for somebody, as they are kept: bytes, digest and the document they show. */
import { z } from 'zod'
import type { DocumentValue } from '../../../shared/desk/visits/kept-pages.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { readDocument } from '../../../shared/engine/report/kept/read.ts'
import { UnreadablePdf } from '../../pdf/unreadable.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { draw, sha256Of } from './drawing.ts'
import { logosOf } from './logos.ts'

/** What lists know of a document without opening it. */
export const documentCardSchema = z.object({
	documentId: z.string(),
	visitId: z.string().optional(),
	kind: z.string(),
	version: z.number(),
	sha256: z.string(),
	at: z.string(),
	/** what it was made from */
	from: z.string().optional(),
})
type DocumentCard = z.infer<typeof documentCardSchema>
export interface StoredDocument {
	value: DocumentValue
	bytes: Uint8Array
}
/** Keeps a document. One of a squad is found by its day: it is about several players. */
export function keepDocument({ keep }: Pick<Deps, 'keep'>, value: DocumentValue): void {
	const { documentId, visitId, playerId, kind, version, sha256, at, from, squadId } = value
	const card: DocumentCard = { documentId, visitId, kind, version, sha256, at, from }
	keep({
		kind: 'document',
		at,
		value,
		...(playerId !== undefined && { about: playerId }),
		thing: squadId ?? documentId,
		card,
	})
}
/** The stored bytes, checked against the digest the outbox knows. */
export function storedDocument(deps: Deps, documentId: string, sha256: string): StoredDocument {
	const record = deps.store.cardsOf('document', documentId).at(-1)?.record
	if (record === undefined)
		throw new Refusal(
			'visits.document-is-gone',
			'The document is not in the records. Restore it from a backup, or prepare it anew.',
		)
	const stored = readStored(deps, record)
	if (!stored || stored.value.sha256 !== sha256)
		throw new Refusal(
			'visits.document-differs',
			'The stored document does not match what was checked. It is not sent. Restore it from a ' +
				'backup, or prepare it anew.',
		)
	return stored
}
/** A document whose bytes are what it says; undefined where it cannot be read. */
export function readStored({ openRecord }: Deps, record: string): StoredDocument | undefined {
	try {
		const { value } = openRecord('document', record)
		const bytes = Buffer.from(value.base64, 'base64')
		return sha256Of(bytes) === value.sha256 ? { value, bytes } : undefined
	} catch (error) {
		if (error instanceof Refusal) return undefined
		throw error
	}
}
/** The document that was kept, as this version reads it; undefined where there are bytes alone. */
export function documentRead(
	deps: Pick<Deps, 'openAll'>,
	{ document }: DocumentValue,
	signed?: Clinic,
): LwDocument | undefined {
	const read = document && readDocument(document, logosOf(deps, signed))
	return read?.state === 'read' ? read.document : undefined
}
/**
 * The kept bytes under a password. Nothing is drawn: only where an outside caller's own renderer
 * made no PDF of them is it asked to put its pages under a password itself.
 * @throws Refusal where they cannot be put under one
 */
export async function protectedCopy(
	deps: Deps,
	{ value, bytes }: StoredDocument,
	password: string,
): Promise<Uint8Array> {
	try {
		return await deps.protectPdf(bytes, password)
	} catch (error) {
		if (!(error instanceof UnreadablePdf)) throw error
		const document = documentRead(deps, value)
		if (document) return draw(deps, document, password)
		throw new Refusal(
			'visits.unreadable-pdf',
			'A copy with a password cannot be made: the kept pages are no PDF that can be read. Print ' +
				'them or hand them over.',
		)
	}
}
