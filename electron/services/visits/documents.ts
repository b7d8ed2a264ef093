/** Documents of signed visits as they are kept: with bytes and digest, opened by digest only. */
import type { OutboxKind } from '../../../shared/desk/outbox/item.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { draw, sha256Of } from './drawing.ts'

/** A document as a record of the kind 'document' holds it. */
export interface DocumentValue {
	documentId: string
	visitId: string
	playerId: string
	kind: OutboxKind
	version: number
	sha256: string
	base64: string
	/**
	 * the pages as data, for a copy under a password; absent where they cannot be drawn again byte by
	 * byte
	 */
	layout?: LwDocument | undefined
	recipientId: string
	at: string
	by: string
}
/** Keeps a document that makeDocument gave. */
export function keepDocument({ keep }: Deps, value: DocumentValue): void {
	const { documentId, visitId, playerId, kind, version, sha256, at } = value
	keep({
		kind: 'document',
		at,
		value,
		about: playerId,
		thing: documentId,
		card: { documentId, visitId, kind, version, sha256, at },
	})
}
/** The stored bytes, checked against the digest the outbox knows. */
export function storedDocument(
	{ store }: Deps,
	documentId: string,
	sha256: string,
): { value: DocumentValue; bytes: Uint8Array } {
	const record = store.cardsOf('document', documentId).at(-1)?.record
	if (record === undefined)
		throw new Refusal(
			'The document is not in the records. Restore it from a backup, or prepare it anew.',
		)
	const value = store.read(record).value as DocumentValue
	const bytes = Buffer.from(value.base64, 'base64')
	if (value.sha256 !== sha256 || sha256Of(bytes) !== sha256)
		throw new Refusal(
			'The stored document does not match what was checked. It is not sent. Restore it from a ' +
				'backup, or prepare it anew.',
		)
	return { value, bytes }
}
/** A copy of the same pages that opens by the password only. */
export async function protectedCopy(
	deps: Deps,
	{ layout }: DocumentValue,
	password: string,
): Promise<Uint8Array> {
	if (!layout)
		throw new Refusal(
			'A copy with a password cannot be made: this report was drawn by an earlier version of ' +
				'the program and would not look the same. Print it or hand it over.',
		)
	return draw(deps, layout, password)
}
