/**
 * A message as bytes (RFC 5322, 2045): for the mail server, or as a draft that the PC's own mail
 * program opens.
 */
import MailComposer from 'nodemailer/lib/mail-composer'
import { clinicalWord } from '../../shared/desk/outbox/message.ts'

export interface Message {
	from: { name: string; email: string }
	to: { name: string; email: string }
	subject: string
	body: string
	/** With its angle brackets. */
	messageId: string
	date: Date
	attachment?: { fileName: string; bytes: Uint8Array }
}
/** @throws RangeError where the file name holds a clinical word */
export async function composeMessage({
	from,
	to,
	subject,
	body,
	messageId,
	date,
	attachment,
}: Message): Promise<Uint8Array> {
	const word = attachment ? clinicalWord(attachment.fileName) : undefined
	if (word)
		throw new RangeError(
			`The file name holds the word "${word}". A file name carries a number only.`,
		)
	return new MailComposer({
		from: { name: from.name, address: from.email },
		to: { name: to.name, address: to.email },
		subject,
		text: body,
		messageId,
		date,
		disableFileAccess: true,
		disableUrlAccess: true,
		...(attachment
			? {
					attachments: [
						{
							filename: attachment.fileName,
							content: Buffer.from(attachment.bytes),
							contentType: 'application/pdf',
							contentTransferEncoding: 'base64' as const,
						},
					],
				}
			: {}),
	})
		.compile()
		.build()
}
/**
 * X-Unsent: 1 makes some mail programs open the file as a new message (from memory, practice
 * standard 3.7); it stands first.
 */
export async function composeDraft(message: Message): Promise<Uint8Array> {
	return Buffer.concat([Buffer.from('X-Unsent: 1\r\n'), await composeMessage(message)])
}
