/**
 * The reminder: that the clinic asks to make an appointment, by when, and where to ring. Nothing of
 * why, and nothing that was found: whoever opens it may not be the one who was written to.
 */
import { dayInWords } from '../../engine/plain/days.ts'
import { letterheadOf } from '../../engine/report/base.ts'
import type { Clinic } from '../../engine/report/clinic.ts'
import type { LwDocument } from '../../engine/report/document.ts'

export interface ReminderInput {
	clinic: Clinic
	/** as it is printed */
	recipient: string
	/** whom the appointment is for, as it is printed */
	player: string
	/** whether the player opens it */
	isOwn: boolean
	/** the day by which, ISO date; undefined where it is past */
	by: string | undefined
	/** the day it is written, ISO date */
	on: string
	/** ISO moment */
	at: string
}
const askFor = (by: string | undefined): string =>
	by === undefined
		? 'Please make an appointment with us as soon as you can.'
		: `Please make an appointment with us for ${dayInWords(by)} or before.`
/** Where to ring; a clinic without a telephone says to answer the message. */
const ringAt = ({ name, phone }: Pick<Clinic, 'name' | 'phone'>): string =>
	phone ? `Ring ${name}: ${phone}.` : `Answer this letter, or come by at ${name}.`

/** The page, in the letterhead of the clinic. The same input gives the same document. */
export function reminderPage({
	clinic,
	recipient,
	player,
	isOwn,
	by,
	on,
	at,
}: ReminderInput): LwDocument {
	return {
		title: 'An appointment is due',
		kind: 'reminder',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		paper: clinic.paper ?? 'A4',
		running: clinic.name,
		createdAt: at,
		notes: [],
		subject: [
			['For', player],
			['Date', dayInWords(on)],
		],
		blocks: [
			{ kind: 'text', text: `Dear ${recipient},` },
			{
				kind: 'text',
				text: isOwn ? 'we would like to see you again.' : `we would like to see ${player} again.`,
			},
			{ kind: 'text', tone: 'strong', text: askFor(by) },
			{ kind: 'text', text: ringAt(clinic) },
			{
				kind: 'text',
				text: 'If an appointment is made already, there is nothing to do.',
			},
			{ kind: 'text', text: `Kind regards, ${clinic.name}` },
		],
		footer: `${clinic.name}. If this is not meant for you, please tell us and destroy it.`,
	}
}
