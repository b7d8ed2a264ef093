/** Documents on their way: one in each state, an item sent in error, contacts and notes. */
import { type Cut, startSmtp, startWire } from '../../host/mail-bench.ts'
import type { Home } from './home.ts'
import type { Ask } from './program.ts'

const plainWords = 'send without encryption'
const mailBy = (port: number) => ({
	smtp: {
		host: '127.0.0.1',
		port,
		security: 'none',
		inSoManyWords: plainWords,
		user: 'desk',
		password: 'right words',
		from: { name: 'Quarry Bank Foot Clinic', email: 'desk@quarrybank.example' },
	},
	clock: { assessWithinDays: 30, authorityWithinHours: 72 },
})
/** Nothing listens here: what is ready stays ready. */
const deadPort = 9

async function put(ask: Ask, visitId: string, more: object): Promise<string> {
	const own = { visitId, kind: 'player', recipientId: 'player', due: '2027-01-25' }
	// the same goes out in several ways, each in a state of its own
	const given = { ...own, again: 'asked for once more', ...more }
	return (await ask('outbox.add', given)).itemId
}
async function release(ask: Ask, itemId: string): Promise<void> {
	const { sha256 } = await ask('outbox.look', { itemId })
	await ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
}
/** Given out by hand and noted as sent. */
async function handed(ask: Ask, visitId: string, channel: string, more: object = {}) {
	const itemId = await put(ask, visitId, { channel, ...more })
	await release(ask, itemId)
	await ask('outbox.take', { itemId })
	await ask('outbox.confirm', { itemId, what: 'sent', note: '' })
	return itemId
}
async function contacts(ask: Ask, playerId: string): Promise<string> {
	const one = (name: string, role: string, email: string) => ({
		playerId,
		name,
		role,
		email,
		emailAgain: email,
		phone: '555 0133',
		warningsRead: true,
	})
	const doctor = await ask(
		'outbox.addContact',
		one('Dr Sol Vance', 'doctor', 'sol@surgery.example'),
	)
	const coach = await ask('outbox.addContact', one('Coach Hale', 'coach', 'hale@rovers.example'))
	await ask('outbox.removeContact', { playerId, contactId: coach.contactId })
	await ask('outbox.addNote', { playerId, text: 'Never give his address to the club.' })
	const { noteId } = await ask('outbox.addNote', { playerId, text: 'Moves house in February.' })
	await ask('outbox.removeNote', { playerId, noteId, reason: 'he has moved' })
	return doctor.contactId
}
/** Mailed by a real server: one arrives, one is cut off before the answer. */
async function mailed(ask: Ask, visitId: string): Promise<void> {
	const smtp = await startSmtp()
	const wire = await startWire(smtp.port)
	await ask('mail.save', mailBy(wire.port))
	for (const cut of [undefined, 'answer'] as (Cut | undefined)[]) {
		wire.cut = cut
		const itemId = await put(ask, visitId, { channel: 'smtp' })
		await release(ask, itemId)
		await ask('outbox.sendNow')
	}
	await ask('mail.save', mailBy(deadPort))
	await wire.stop()
	await smtp.stop()
}
async function sentInError(ask: Ask, itemId: string): Promise<void> {
	const { breachId } = await ask('outbox.sentInError', {
		itemId,
		what: 'handed to a namesake',
		noticedAt: '2027-01-20T09:00:30.000Z',
	})
	await ask('breaches.step', { breachId, step: 'contain', note: 'asked for it back' })
}
/** Items of the outbox in each state that it knows. */
export async function fillOutbox(ask: Ask, { playerIds, visits }: Home): Promise<void> {
	const doctorId = await contacts(ask, playerIds.adult)
	await mailed(ask, visits.adult)
	await put(ask, visits.adult, { channel: 'print' })
	const ready = await put(ask, visits.adult, {
		channel: 'smtp',
		kind: 'referral',
		recipientId: doctorId,
	})
	await release(ask, ready)
	const printed = await handed(ask, visits.adult, 'print')
	await ask('outbox.confirm', { itemId: printed, what: 'delivered', note: 'he called' })
	const returned = await handed(ask, visits.amended, 'print')
	await ask('outbox.confirm', { itemId: returned, what: 'returned', note: 'unknown there' })
	await ask('outbox.resend', { itemId: returned, version: 'same', reason: 'a new address' })
	const lost = await handed(ask, visits.adult, 'eml')
	await ask('outbox.confirm', { itemId: lost, what: 'returned', note: 'his box is full' })
	const draft = await put(ask, visits.adult, { channel: 'eml' })
	await release(ask, draft)
	await ask('outbox.take', { itemId: draft })
	const guardian = { kind: 'guardian', recipientId: 'guardian' }
	await sentInError(ask, await handed(ask, visits.countersigned, 'hand-over', guardian))
	const closed = await put(ask, visits.amended, { channel: 'eml' })
	await ask('outbox.close', { itemId: closed, note: 'not needed any more' })
}
