/**
 * Reads a delivery report (RFC 3464): its status part, or that part alone as pasted. Unknown text is
 * refused in words.
 */
const dsnActions = ['failed', 'delayed', 'delivered', 'relayed', 'expanded'] as const
type DsnAction = (typeof dsnActions)[number]
export interface DsnRecipient {
	address: string
	action: DsnAction
	/** RFC 3463, such as 5.1.1 */
	status: string
	diagnostic?: string | undefined
}
interface Dsn {
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
const typed = (value: string) =>
	value
		.replace(/^[^;]*;\s*/, '')
		.trim()
		.replace(/^<|>$/g, '')
const bare = (value: string | undefined) => value?.match(/<[^<>\s]+>/)?.[0]

/** A returned message by its parts, decoded. */
export interface ReportParts {
	/** all of it, as it was pasted or dropped */
	text: string
	/** what the mail system says of the delivery */
	status?: string
	/** the message that is reported on, or its head */
	original?: string
}
export function readDsn(parts: ReportParts): DsnAnswer {
	const all = lines(parts.text)
	const whole = parts.status ?? (/^Final-Recipient:/im.test(all) ? all : undefined)
	const status = whole === undefined ? undefined : lines(whole)
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
	const messageId = messageIdOf(parts.original)
	return { ok: true, value: { envelopeId: envelopeId || undefined, messageId, recipients } }
}
/** The Message-ID of the message that is reported on, where the report carries it. */
const messageIdOf = (original: string | undefined): string | undefined =>
	original === undefined
		? undefined
		: bare(fieldsOf(headOf(lines(original).replace(/^\n+/, ''))).get('message-id'))

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
/** RFC 3463; and the three figures of RFC 5321, where no such code stands. */
const codeInWords = /\b([45]\.\d{1,3}\.\d{1,3})\b/
const figuresInWords = /\b([45])[0-5]\d[\s-]/
/**
 * A message that says in words alone that something could not be delivered: the one address of
 * those mailed to that stands in it, with the code it gives.
 * @returns undefined where it names none of them, several, or no code
 */
export function failureInWords(
	text: string,
	mailedTo: readonly string[],
): DsnRecipient | undefined {
	const words = new Set(text.toLowerCase().split(/[\s<>()[\]"',;:]+/))
	const [address, ...others] = [...new Set(mailedTo)].filter(
		(email) => words.has(email) || words.has(`${email}.`),
	)
	const status = codeInWords.exec(text)?.[1]
	const figures = figuresInWords.exec(text)?.[1]
	const code = status ?? (figures && `${figures}.0.0`)
	if (address === undefined || others.length > 0 || code === undefined) return undefined
	return { address, action: 'failed', status: code }
}
/** RFC 3463 3.3 and 3.4: too big for the mailbox (5.2.3) or for the mail system (5.3.4). */
export const isTooBig = (status: string): boolean => status === '5.2.3' || status === '5.3.4'
export const tooBigWords = 'it is too big. Print it, or hand it over.'

/** Why it failed: the address, its size, or the way. */
function failedWords(status: string): string {
	if (isTooBig(status)) return tooBigWords
	return status.startsWith('5')
		? 'the address or the mailbox refused it. Check the address with the recipient.'
		: 'it could not be delivered in time. It may be sent again.'
}
/**
 * What a report means for a message: its new state and words. 5.x.x marks the address, unless the
 * message was too big; 4.x.x is the way, not the address.
 */
export function meaningOf({ action, status, diagnostic }: DsnRecipient): {
	state: 'sent' | 'delivered' | 'returned'
	badAddress: boolean
	says: string
} {
	const said = diagnostic ? ` The server said: ${diagnostic}` : ''
	switch (action) {
		case 'failed': {
			const badAddress = status.startsWith('5') && !isTooBig(status)
			const says = `Returned (${status}): ${failedWords(status)}${said}`
			return { state: 'returned', badAddress, says }
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
