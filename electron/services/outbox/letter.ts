/** The message that carries a document: the same for the mail server and for a draft. */
import { numberOf, type OutboxItem, type Recipient } from '../../../shared/desk/outbox/item.ts'
import { bodyFor, fileNameFor, subjectFor } from '../../../shared/desk/outbox/message.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { Message } from '../../mail/compose.ts'
import type { Deps } from '../records/deps.ts'
import { protectedCopy, storedDocument } from '../visits/documents.ts'

interface DocumentFile {
	bytes: Uint8Array
	fileName: string
}
/** The document as it leaves: under its password where it has one. */
export async function documentToSend(
	deps: Deps,
	{ itemId, documentId, sha256, protection, password }: OutboxItem,
): Promise<DocumentFile> {
	const stored = storedDocument(deps, documentId, sha256)
	return {
		bytes:
			protection === 'password' ? await protectedCopy(deps, stored, password ?? '') : stored.bytes,
		fileName: fileNameFor(numberOf(itemId)),
	}
}
/** Subject and body name no player and no finding: the number tells the item. */
export function letterFor({
	item,
	recipient,
	clinic,
	from,
	date,
	document,
}: {
	item: OutboxItem
	recipient: Recipient
	clinic: Clinic
	from: Message['from']
	date: Date
	document: DocumentFile
}): Message {
	const number = numberOf(item.itemId)
	return {
		from,
		to: { name: recipient.name, email: recipient.email ?? '' },
		subject: subjectFor(number, clinic),
		body: bodyFor({
			number,
			recipient: recipient.name,
			clinic,
			withPassword: item.protection === 'password',
			isReminder: item.kind === 'reminder',
		}),
		messageId: item.messageId,
		date,
		attachment: document,
	}
}
