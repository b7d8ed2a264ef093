/**
 * Reports of the mail system on what became of a message: matched by what we gave with the
 * message, never by the address alone where two were sent.
 */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { tidyAddress } from '../../../shared/desk/outbox/addresses.ts'
import { failureInWords, meaningOf, readDsn } from '../../../shared/desk/outbox/dsn.ts'
import { isMail, numberOf, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { reportParts } from '../../mail/report-parts.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { move, recordSending, sent } from './items.ts'

type Needs = Pick<Memory, 'outbox' | 'people'>
type Report = Extract<ReturnType<typeof readDsn>, { ok: true }>['value']
type ReportedRecipient = Report['recipients'][number]

/** @throws Refusal where it is no report, neither to a program nor in its words */
export async function readReport(
	memory: Needs,
	deps: Deps,
	{ text }: InputOf<'outbox.readReport'>,
): Promise<OutputOf<'outbox.readReport'>> {
	const read = readDsn(await reportParts(text))
	const mailed = memory.outbox.items.all().filter(leftByMail)
	const inWords = read.ok ? undefined : failureInWords(text, addressesOf(mailed))
	if (!read.ok && !inWords) throw new Refusal('outbox.returned-unreadable', read.message)
	const report: Report = read.ok ? read.value : { recipients: inWords ? [inWords] : [] }
	return {
		read: report.recipients.map((recipient) => {
			const { address } = recipient
			const toAddress = mailed.filter(
				({ recipient: { email } }) => email && tidyAddress(email) === tidyAddress(address),
			)
			const item = namedBy(report, mailed) ?? onlyOneFor(report, toAddress)
			if (!item) return { address, says: notFoundWords(address, toAddress.length) }
			const says = settleBy(memory, deps, item, recipient)
			return { itemId: item.itemId, address, says: `${numberOf(item.itemId)}: ${says}` }
		}),
	}
}
const addressesOf = (items: readonly OutboxItem[]): string[] =>
	items.flatMap(({ recipient: { email } }) => (email ? [tidyAddress(email)] : []))

function leftByMail({ channel, state, sentAt }: OutboxItem): boolean {
	if (!isMail(channel)) return false
	if (state === 'closed') return sentAt !== undefined
	return state === 'sent' || state === 'delivered' || state === 'uncertain'
}
const namedBy = ({ envelopeId, messageId }: Report, mailed: readonly OutboxItem[]) =>
	mailed.find((item) => item.itemId === envelopeId || item.messageId === messageId)

/** The only message to an address, where the report names none. */
function onlyOneFor(
	{ envelopeId, messageId }: Report,
	toAddress: readonly OutboxItem[],
): OutboxItem | undefined {
	if (envelopeId !== undefined || messageId !== undefined) return undefined
	return toAddress.length === 1 ? toAddress[0] : undefined
}
const notFoundWords = (address: string, toAddress: number): string =>
	toAddress > 1
		? `Several messages went to ${address}, and the report does not say which ` +
			'one it is about. Mark the right one by hand.'
		: `No sent message fits this report about ${address}. It may be about a ` +
			'message from the mail program.'

/** Moves the item as the report says, where that is news. @returns what it says, in words */
function settleBy(
	memory: Needs,
	deps: Deps,
	item: OutboxItem,
	recipient: ReportedRecipient,
): string {
	const { state: to, badAddress, says } = meaningOf(recipient)
	const change = badAddress ? { statusCode: recipient.status } : {}
	if (item.state === 'uncertain' && to !== 'returned') {
		sent(memory, deps, item, says, to, change)
		return says
	}
	// a late word that it is on its way says nothing new of one that arrived
	const old = item.state === 'closed' || (item.state === 'delivered' && to === 'sent')
	if (to !== 'returned' && old) return says
	deps.store.together(() => {
		if (item.state === 'uncertain') recordSending(memory, deps, item)
		move(memory, deps, item, to, says, change)
	})
	return says
}
