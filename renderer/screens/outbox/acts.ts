/** What can be done with an item in its state, in the order in which it is offered. */
import { navigate } from 'wouter/use-hash-location'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { type Channel, isMail, type OutboxState } from '../../../shared/desk/outbox/item.ts'
import { call } from '../../host.ts'
import { saveBytes } from '../../parts/files.ts'
import { printPdf } from '../../parts/printPdf.ts'
import { change } from '../../query.ts'

export interface Act {
	label: string
	work: () => Promise<unknown>
	/** Said once it is done; empty where another page says it. */
	done: string
	/** What is usually done next. */
	main?: boolean
	/** A few words are asked for before. */
	needsNote?: boolean
	/** The words that ask for a note leave it out: the act beside it is the one to be taken. */
	besides?: boolean
	/** Something went wrong: it is marked so, and possible even while the item is being sent. */
	wrong?: boolean
}
/** An act that is offered only in some cases. */
interface Offer extends Act {
	when: boolean
}

interface Handling {
	/** The button that gives the file out. */
	giveOut: string
	/** The button that notes that it has left. */
	left: string
	saved: string
}
const paperSaved = 'Saved. Tick it here once it has left.'
const handled: Handling = {
	giveOut: 'Save for handing over',
	left: 'It was handed over',
	saved: paperSaved,
}
const handling: Record<Channel, Handling> = {
	eml: {
		giveOut: 'Save draft for the mail program',
		left: 'It was sent',
		saved: 'Saved. Open it, send it, then tick it here: a draft is no proof of sending.',
	},
	print: { giveOut: 'Save for printing', left: 'It was posted', saved: paperSaved },
	'hand-over': handled,
	smtp: handled,
}
/** States in which the document has left, so that it can be sent once more. */
const resendable: readonly OutboxState[] = ['sent', 'delivered', 'returned', 'closed']
/** Whether the document left, or may have left, this house. */
const mayHaveLeft = ({ sentAt, taken, state }: OutboxView): boolean =>
	sentAt !== undefined || taken !== undefined || state === 'uncertain'

interface Writing {
	item: OutboxView
	/** The note or reason typed; it is kept with the act. */
	note: string
}
type Learnt = 'sent' | 'delivered' | 'returned' | 'again'
const confirm =
	({ item: { itemId }, note }: Writing, what: Learnt) =>
	() =>
		change('outbox.confirm', { itemId, what, note })

/** A page can carry no password, and no mail goes with one. */
const isByHand = ({ channel, protection }: OutboxView): boolean =>
	(channel === 'print' || channel === 'hand-over') && protection !== 'password'
/** Ready: it is given out, noted as gone, or called back. */
function whenReady(writing: Writing): Offer[] {
	const { item, note } = writing
	const { itemId } = item
	const ready = item.state === 'ready'
	const { giveOut, left, saved } = handling[item.channel]
	return [
		{
			label: giveOut,
			when: ready && item.channel !== 'smtp',
			work: async () => {
				const { base64, fileName, mediaType } = await change('outbox.take', { itemId })
				saveBytes(base64, fileName, mediaType)
			},
			done: saved,
			main: isMail(item.channel),
		},
		{
			label: 'Save as a page for a screen reader',
			when: ready && isByHand(item),
			work: async () => {
				const file = await change('outbox.take', { itemId, asPage: true })
				saveBytes(file.base64, file.fileName, file.mediaType)
			},
			done: saved,
		},
		{
			label: left,
			when: ready && item.taken !== undefined,
			work: confirm(writing, 'sent'),
			done: 'Noted.',
			main: true,
		},
		{
			label: 'Call back',
			when: ready,
			work: () => change('outbox.back', { itemId, reason: note }),
			done: 'Called back.',
			needsNote: true,
		},
	]
}

export const onPaperInstead = 'Print and hand over, not by mail'
export const printedWaiting = 'Given to the printer. Tick it here once it has left.'
const printedCopy = 'Given to the printer. The copy is on record as handed over.'
/**
 * The pages on paper. Of what waits to be mailed it is said that it goes on paper from then on; what
 * waits to be checked is printed from beside its ticks (Release.tsx).
 */
function onPaper({ item: { itemId, state, channel, breachId, sentAt, taken } }: Writing): Offer[] {
	const isReady = state === 'ready'
	const isGivenUp = state === 'closed' && sentAt === undefined && taken === undefined
	const wasPrinted = taken !== undefined
	const byHand = wasPrinted ? 'Print again' : 'Print'
	const ready = isMail(channel) ? onPaperInstead : byHand
	return [
		{
			label: isReady ? ready : 'Print a copy to hand over',
			when: breachId === undefined && state !== 'to-check' && !isGivenUp,
			work: () => printItem(itemId),
			done: isReady ? printedWaiting : printedCopy,
			main: isReady && !isMail(channel) && !wasPrinted,
		},
	]
}
/** @throws Error in words where the printer could not be reached; it may be printed again */
export async function printItem(itemId: string): Promise<void> {
	const { base64, fileName } = await change('outbox.print', { itemId })
	await printPdf(base64, fileName)
}

/** Sent, perhaps: what was learnt of it. */
function whenSent(writing: Writing): Offer[] {
	const { state } = writing.item
	const uncertain = state === 'uncertain'
	return [
		{
			label: 'It arrived',
			when: uncertain || state === 'sent',
			work: confirm(writing, 'delivered'),
			done: 'Noted.',
			main: true,
		},
		{
			label: 'It left, arrival not known',
			when: uncertain,
			work: confirm(writing, 'sent'),
			done: 'Noted.',
		},
		{
			label: 'It did not arrive: check and send again',
			when: uncertain,
			work: confirm(writing, 'again'),
			done: 'Back to check. It may arrive twice.',
		},
		{
			label: 'It came back',
			when: state === 'sent' || state === 'delivered',
			work: confirm(writing, 'returned'),
			done: 'Noted.',
		},
	]
}

/** It has left: proof on paper, and once more in the same or a newer version. */
function afterwards({ item, note }: Writing): Offer[] {
	const { itemId, newerVersion, version } = item
	const again = resendable.includes(item.state)
	const resend = (which: 'same' | 'newest') => async () => {
		const sent = await change('outbox.resend', { itemId, version: which, reason: note })
		navigate(`/outbox/item/${sent.itemId}`)
	}
	return [
		{
			label: 'Transmission sheet',
			when: item.released !== undefined || item.sentAt !== undefined,
			work: async () => {
				const { base64, fileName } = await call('outbox.sheet', { itemId })
				saveBytes(base64, fileName, 'application/pdf')
			},
			done: 'The sheet is saved. Print it: it goes on top of the pages, or into the file.',
		},
		{
			label: `Send version ${newerVersion}`,
			when: again && newerVersion !== undefined,
			work: resend('newest'),
			done: 'Prepared.',
			main: true,
			needsNote: true,
		},
		{
			label: newerVersion ? `Send version ${version} again all the same` : 'Send again',
			when: again,
			work: resend('same'),
			done: 'Prepared.',
			needsNote: true,
			besides: newerVersion !== undefined,
		},
	]
}

/** Whatever its state: taken over, closed, or marked as sent in error. */
function always({ item, note }: Writing, mine: boolean): Offer[] {
	const { itemId, due } = item
	return [
		{
			label: 'Take over',
			when: !mine,
			work: () => change('outbox.mine', { itemId, due }),
			done: 'It is yours now.',
		},
		{
			label: 'Close',
			when: item.state !== 'closed',
			work: () => change('outbox.close', { itemId, note }),
			done: 'Closed.',
		},
		{
			label: 'Sent in error',
			when: mayHaveLeft(item) && item.breachId === undefined,
			work: async () => {
				const noticedAt = new Date().toISOString()
				await change('outbox.sentInError', { itemId, what: note, noticedAt })
				navigate('/outbox/errors')
			},
			done: '',
			needsNote: true,
			wrong: true,
		},
	]
}

/** @param mine whether the item is owned by who works here */
export const actsOf = (item: OutboxView, note: string, mine: boolean): Act[] =>
	[
		...onPaper({ item, note }),
		...whenReady({ item, note }),
		...whenSent({ item, note }),
		...afterwards({ item, note }),
		...always({ item, note }, mine),
	].filter(({ when }) => when)
