/**
 * Reads a delivery report (RFC 3464): whole message or only its status part, as pasted. Unknown
 * text is refused in words.
 */
export const dsnActions = ['failed', 'delayed', 'delivered', 'relayed', 'expanded'] as const
export type DsnAction = (typeof dsnActions)[number]
export interface DsnRecipient {
	address: string
	action: DsnAction
	/** RFC 3463, such as 5.1.1 */
	status: string
	diagnostic?: string | undefined
}
export interface Dsn {
	/** Original-Envelope-Id of the report: the one we gave with the message */
	envelopeId?: string | undefined
	/** Message-ID of the message that is reported on */
	messageId?: string | undefined
	recipients: DsnRecipient[]
}
export type DsnAnswer = { ok: true; value: Dsn } | { ok: false; message: string }

type Fields = Map<string, string>
const lines = (text: string) => text.replace(/\r\n?/g, '\n')
/** Header fields up to the first empty line; folded lines joined; the first of a name counts. */
function fieldsOf(block: string): Fields {
	const fields: Fields = new Map()
	for (const line of block.replace(/\n[ \t]+/g, ' ').split('\n')) {
		const [, name = '', value = ''] = /^([A-Za-z][A-Za-z0-9-]*):[ \t]*(.*)$/.exec(line) ?? []
		const key = name.toLowerCase()
		if (key !== '' && !fields.has(key)) fields.set(key, value.trim())
	}
	return fields
}
const headOf = (text: string) => {
	const end = text.search(/\n[ \t]*\n/)
	return end < 0 ? text : text.slice(0, end)
}
/** Parts of a multipart body, nested ones opened; each with its type and text. */
function partsOf(text: string, depth = 0): { type: string; text: string }[] {
	const head = headOf(text)
	const type = fieldsOf(head).get('content-type') ?? ''
	const body = text.slice(head.length).replace(/^\n[ \t]*\n/, '')
	const boundary = /boundary\s*=\s*(?:"([^"]+)"|([^\s;]+))/i.exec(type)
	const mark = boundary?.[1] ?? boundary?.[2]
	if (!/^multipart\//i.test(type) || mark === undefined || depth > 5)
		return [{ type: (type.split(';')[0] ?? '').trim().toLowerCase(), text: body }]
	const cuts = `\n${body}`.split(`\n--${mark}`).slice(1)
	return cuts
		.filter((cut) => !cut.startsWith('--'))
		.flatMap((cut) => partsOf(cut.replace(/^[^\n]*\n/, ''), depth + 1))
}
const typed = (value: string) =>
	value
		.replace(/^[^;]*;\s*/, '')
		.trim()
		.replace(/^<|>$/g, '')
const bare = (value: string | undefined) => value?.match(/<[^<>\s]+>/)?.[0]

const statusTypes = ['message/delivery-status', 'message/global-delivery-status']
const originalTypes = [
	'message/rfc822',
	'text/rfc822-headers',
	'message/global',
	'message/global-headers',
]
/** @param text what was pasted or dropped */
export function readDsn(text: string): DsnAnswer {
	const all = lines(text).replace(/^\n+/, '')
	const parts = partsOf(all)
	const textOf = (types: readonly string[]) => parts.find(({ type }) => types.includes(type))?.text
	const status = textOf(statusTypes) ?? (/^Final-Recipient:/im.test(all) ? all : undefined)
	if (status === undefined)
		return {
			ok: false,
			message:
				'This is not a delivery report: no Final-Recipient line was found. Paste the whole ' +
				'returned message, with its source ("view source" or "save as" in the mail program).',
		}
	const groups = status.split(/\n[ \t]*\n/).map(fieldsOf)
	const recipients: DsnRecipient[] = []
	for (const group of groups.filter((fields) => fields.has('final-recipient'))) {
		const read = recipientOf(group)
		if (!read.ok) return read
		recipients.push(read.value)
	}
	if (recipients.length === 0)
		return {
			ok: false,
			message: 'The delivery report names no recipient. It may be cut: paste all of it.',
		}
	const envelopeId = groups
		.find((group) => group.has('original-envelope-id'))
		?.get('original-envelope-id')
	const messageId = messageIdOf(textOf(originalTypes))
	return { ok: true, value: { envelopeId: envelopeId || undefined, messageId, recipients } }
}
/** The Message-ID of the message that is reported on, where the report carries it. */
const messageIdOf = (original: string | undefined): string | undefined =>
	original === undefined
		? undefined
		: bare(fieldsOf(headOf(original.replace(/^\n+/, ''))).get('message-id'))

const isAction = (text: string): text is DsnAction =>
	(dsnActions as readonly string[]).includes(text)

/** One recipient of the report, by its fields. */
function recipientOf(
	group: Fields,
): { ok: true; value: DsnRecipient } | { ok: false; message: string } {
	const address = typed(group.get('original-recipient') ?? group.get('final-recipient') ?? '')
	const action = (group.get('action') ?? '').toLowerCase().split(/[\s(]/)[0] ?? ''
	if (!isAction(action))
		return {
			ok: false,
			message:
				`Action of ${address}: given "${group.get('action') ?? 'nothing'}", ` +
				`allowed: ${dsnActions.join(', ')}. The report may be cut: paste all of it.`,
		}
	const status = /\b[245]\.\d{1,3}\.\d{1,3}\b/.exec(group.get('status') ?? '')?.[0]
	if (status === undefined)
		return {
			ok: false,
			message:
				`Status of ${address}: given "${group.get('status') ?? 'nothing'}", ` +
				'allowed: three numbers such as 5.1.1. The report may be cut: paste all of it.',
		}
	const said = group.get('diagnostic-code')
	const diagnostic = said ? typed(said).slice(0, 300) : undefined
	return { ok: true, value: { address: address.toLowerCase(), action, status, diagnostic } }
}
/**
 * What a report means for a message: its new state and words. 5.x.x marks the address; 4.x.x is the
 * way, not the address.
 */
export function meaningOf({ action, status, diagnostic }: DsnRecipient): {
	state: 'sent' | 'delivered' | 'returned'
	badAddress: boolean
	says: string
} {
	const said = diagnostic ? ` The server said: ${diagnostic}` : ''
	switch (action) {
		case 'failed': {
			const badAddress = status.startsWith('5')
			const why = badAddress
				? 'the address or the mailbox refused it. Check the address with the recipient.'
				: 'it could not be delivered in time. It may be sent again.'
			return { state: 'returned', badAddress, says: `Returned (${status}): ${why}${said}` }
		}
		case 'delivered':
			return {
				state: 'delivered',
				badAddress: false,
				says: `Delivered to the mailbox (${status}). That is no proof that it was read.`,
			}
		case 'delayed':
			return {
				state: 'sent',
				badAddress: false,
				says: `Delayed (${status}): the recipient's server has not taken it yet.${said}`,
			}
		case 'relayed':
		case 'expanded':
			return {
				state: 'sent',
				badAddress: false,
				says: `Handed on (${status}) to a system that sends no further reports.`,
			}
	}
}
