/**
 * The transmission sheet: a cover page and proof that names the document by number and digest only,
 * with no clinical word (practice standard 5.4).
 */

import { dayInWords } from '../../engine/plain/days.ts'
import { letterheadOf } from '../../engine/report/base.ts'
import type { Clinic } from '../../engine/report/clinic.ts'
import type { LwDocument } from '../../engine/report/document.ts'
import { channelWords, isMail, numberOf, type OutboxItem } from './item.ts'

export interface SheetInput {
	item: Pick<
		OutboxItem,
		| 'itemId'
		| 'recipient'
		| 'channel'
		| 'protection'
		| 'version'
		| 'sha256'
		| 'messageId'
		| 'sentAt'
		| 'taken'
		| 'released'
		| 'consentIds'
		| 'resend'
		| 'state'
	>
	clinic: Clinic
	/** who made the sheet */
	by: string
	/** ISO moment it is made */
	at: string
	/** pages of the document */
	pages: number
}
const moment = (iso: string): string => `${dayInWords(iso)}, ${iso.slice(11, 16)} UTC`
const stateSays: Partial<Record<OutboxItem['state'], string>> = {
	ready: 'Ready to leave',
	sent: 'Left',
	delivered: 'Arrived',
	returned: 'Came back',
	uncertain: 'Not certain whether it arrived',
	closed: 'Closed',
}
type Row = [what: string, recorded: string]
/** A row where something is recorded; none where nothing is. */
const rowOf = (what: string, recorded: string | undefined): Row[] =>
	recorded ? [[what, recorded]] : []

/** The way it goes, and how a copy that is mailed opens. */
function wayOf({ channel, protection }: SheetInput['item']): string {
	if (!isMail(channel)) return channelWords[channel]
	const opens =
		protection === 'password'
			? 'copy opens by a password given another way'
			: 'copy opens without a password'
	return `${channelWords[channel]}, ${opens}`
}
function rowsOf({ item, by, at, pages }: SheetInput): Row[] {
	const byMail = isMail(item.channel)
	const { released, taken, sentAt } = item
	const consents = (item.consentIds ?? []).map((id) => id.slice(0, 8)).join(', ')
	const sheets = `${pages} ${pages === 1 ? 'page' : 'pages'}`
	return [
		['To', item.recipient.name],
		...rowOf('Address', byMail ? item.recipient.email : undefined),
		['Way', wayOf(item)],
		['Document', `Number ${numberOf(item.itemId)}, version ${item.version}, ${sheets}`],
		...rowOf('Sent before as', item.resend && numberOf(item.resend.of)),
		['Checked by', released ? `${released.name}, ${moment(released.at)}` : 'Not checked yet'],
		...rowOf('Given out', taken && moment(taken)),
		...rowOf('Left', sentAt && moment(sentAt)),
		['State', stateSays[item.state] ?? 'To be checked'],
		...rowOf('Message', byMail ? item.messageId : undefined),
		...rowOf('Permission on record', consents),
		['Sheet made by', `${by}, ${moment(at)}`],
	]
}
/** What is signed by whoever takes the pages by hand. */
const receipt: LwDocument['blocks'] = [
	{ kind: 'heading', text: 'Received' },
	{
		kind: 'table',
		caption: 'To be filled in by hand',
		head: ['Name', 'Date', 'Signature'],
		widths: ['*', 110, '*'],
		rows: [[' ', ' ', ' ']],
	},
]
function blocksOf(input: SheetInput): LwDocument['blocks'] {
	const { item, clinic } = input
	const phone = clinic.phone ? ` (${clinic.phone})` : ''
	return [
		{
			kind: 'table',
			caption: 'What was sent, to whom and how',
			head: ['What', 'As recorded'],
			widths: [120, '*'],
			rows: rowsOf(input),
		},
		{ kind: 'heading', text: 'Check sum of the document (SHA-256)' },
		{ kind: 'text', tone: 'strong', text: (item.sha256.match(/.{8}/g) ?? []).join(' ') },
		{
			kind: 'text',
			tone: 'small',
			text:
				item.protection === 'password'
					? 'Of the stored document. The copy under a password has other bytes and the same ' +
						'pages.'
					: 'The same sum over the file shows that it is the very document.',
		},
		{
			kind: 'alert',
			title: 'Not for you?',
			text:
				'If these pages are not meant for you: please do not read on, tell ' +
				`${clinic.name}${phone} and give them back or ` +
				'destroy them.',
		},
		...(item.channel === 'hand-over' ? receipt : []),
	]
}
export function transmissionSheet(input: SheetInput): LwDocument {
	const { item, clinic, at } = input
	const number = numberOf(item.itemId)
	return {
		title: 'Transmission sheet',
		kind: 'transmission-sheet',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		paper: clinic.paper ?? 'A4',
		running: number,
		createdAt: at,
		notes: [],
		subject: [
			['Document', number],
			['To', item.recipient.name],
			['Date', dayInWords(item.sentAt ?? at)],
		],
		blocks: blocksOf(input),
		footer: `${clinic.name}. Page for the sender's file and for the top of the pages.`,
	}
}
