/**
 * The parts of a returned message, whatever its transfer encoding and however deep it stands: read
 * by the MIME library.
 */
import PostalMime from 'postal-mime'
import type { ReportParts } from '../../shared/desk/outbox/dsn.ts'

/** RFC 3464, and RFC 6533 for addresses beyond ASCII. */
const statusTypes = ['message/delivery-status', 'message/global-delivery-status']
const originalTypes = [
	'message/rfc822',
	'text/rfc822-headers',
	'message/global',
	'message/global-headers',
]
/** Never throws: what is no message is its own text. */
export async function reportParts(pasted: string): Promise<ReportParts> {
	const text = pasted.replace(/^\s+/, '')
	const message = await PostalMime.parse(text, {
		attachmentEncoding: 'utf8',
		forceRfc822Attachments: true,
	}).catch(() => undefined)
	const partOf = (types: readonly string[]): string | undefined => {
		const found = message?.attachments.find(({ mimeType }) => types.includes(mimeType))
		return typeof found?.content === 'string' ? found.content : undefined
	}
	const [status, original] = [partOf(statusTypes), partOf(originalTypes)]
	return {
		text,
		...(status !== undefined && { status }),
		...(original !== undefined && { original }),
	}
}
