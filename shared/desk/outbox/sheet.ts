/**
 * The transmission sheet: a cover page and proof that names the document by number and digest only,
 * with no clinical word (practice standard 5.4).
 */

import { letterheadOf } from '../../engine/report/base.ts'
import type { Clinic } from '../../engine/report/clinic.ts'
import type { LwDocument } from '../../engine/report/document.ts'
import { dayInWords } from '../../engine/visit/age.ts'
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
export function transmissionSheet({ item, clinic, by, at, pages }: SheetInput): LwDocument {
	const number = numberOf(item.itemId)
	const mail = isMail(item.channel)
	const rows: [string, string][] = [
		['To', item.recipient.name],
		...(mail && item.recipient.email
			? [['Address', item.recipient.email] as [string, string]]
			: []),
		[
			'Way',
			`${channelWords[item.channel]}${mail ? (item.protection === 'password' ? ', copy opens by a password given another way' : ', copy opens without a password') : ''}`,
		],
		[
			'Document',
			`Number ${number}, version ${item.version}, ${pages} ${pages === 1 ? 'page' : 'pages'}`,
		],
		...(item.resend ? [['Sent before as', numberOf(item.resend.of)] as [string, string]] : []),
		[
			'Checked by',
			item.released ? `${item.released.name}, ${moment(item.released.at)}` : 'Not checked yet',
		],
		...(item.taken ? [['Given out', moment(item.taken)] as [string, string]] : []),
		...(item.sentAt ? [['Left', moment(item.sentAt)] as [string, string]] : []),
		['State', stateSays[item.state] ?? 'To be checked'],
		...(mail ? [['Message', item.messageId] as [string, string]] : []),
		...(item.consentIds && item.consentIds.length > 0
			? [
					['Permission on record', item.consentIds.map((id) => id.slice(0, 8)).join(', ')] as [
						string,
						string,
					],
				]
			: []),
		['Sheet made by', `${by}, ${moment(at)}`],
	]
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
		blocks: [
			{
				kind: 'table',
				caption: 'What was sent, to whom and how',
				head: ['What', 'As recorded'],
				widths: [120, '*'],
				rows,
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
					`${clinic.name}${clinic.phone ? ` (${clinic.phone})` : ''} and give them back or ` +
					'destroy them.',
			},
			...(item.channel === 'hand-over'
				? [
						{ kind: 'heading' as const, text: 'Received' },
						{
							kind: 'table' as const,
							caption: 'To be filled in by hand',
							head: ['Name', 'Date', 'Signature'],
							widths: ['*' as const, 110, '*' as const],
							rows: [[' ', ' ', ' ']],
						},
					]
				: []),
		],
		footer: `${clinic.name}. Page for the sender's file and for the top of the pages.`,
	}
}
