/** Printing from the outbox: the same checks, on paper alone, and on record. */
import { expect, test } from 'vitest'
import { startSmtp } from './mail-bench.ts'
import {
	bench,
	consent,
	item,
	lookRight as look,
	mailed,
	many,
	put,
	sendings,
	settle,
	stops,
} from './outbox-bench.ts'

// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
type Any = any

test('what waits is printed and goes no more by mail; of what left a further copy is on record', async () => {
	const { app, playerId, visitId, smtp } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const waits = await put(app, visitId)
	expect(await app.refused('outbox.print', { itemId: waits })).toMatchObject({
		code: 'outbox.page-not-seen',
	})
	await look(app, waits)
	const printed = await app.ask('outbox.print', { itemId: waits })
	expect(Buffer.from(printed.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
	expect(printed.toBeNoted).toBe(true)
	await settle(app)
	expect(smtp.received).toEqual([])
	expect(await item(app, waits)).toMatchObject({
		state: 'ready',
		channel: 'hand-over',
		protection: 'open',
		taken: expect.any(String),
	})
	// its password is gone with the mail
	await app.refused('outbox.password', { itemId: waits })
	expect(await sendings(app, visitId)).toEqual([])
	await app.ask('outbox.confirm', { itemId: waits, what: 'sent', note: '' })
	expect(await sendings(app, visitId)).toMatchObject([
		{ recipient: 'Owain Trescott', channel: 'by-hand' },
	])

	// sent by mail, and printed afterwards: two sendings stand on record
	const mailed = await put(app, visitId)
	await look(app, mailed)
	await many(app, 'release', [mailed])
	await settle(app)
	expect(smtp.received).toHaveLength(1)
	expect((await app.ask('outbox.print', { itemId: mailed })).toBeNoted).toBe(false)
	expect(await item(app, mailed)).toMatchObject({ state: 'sent', channel: 'smtp' })
	expect(await sendings(app, visitId)).toHaveLength(3)
	const { sent } = await app.ask('players.summary', { playerId })
	expect(sent.filter(({ state }: Any) => state === 'sent')).toHaveLength(2)

	// not for the wrong one, not once it was given up, not when the visit was entered in error
	const wrong = await put(app, visitId, { channel: 'print' })
	await look(app, wrong)
	await app.ask('outbox.close', { itemId: wrong, note: '' })
	expect(await app.refused('outbox.print', { itemId: wrong })).toMatchObject({
		message: expect.stringContaining('closed before it left'),
	})
	await app.ask('outbox.sentInError', {
		itemId: waits,
		what: 'handed to a stranger',
		noticedAt: '2027-01-20T08:59:00.000Z',
	})
	expect(await app.refused('outbox.print', { itemId: waits })).toMatchObject({
		code: 'outbox.sent-in-error',
	})
	await app.ask('visits.markInError', { visitId, reason: 'another player was measured' })
	expect(await app.refused('outbox.print', { itemId: mailed })).toMatchObject({
		code: 'visits.in-error',
	})
	expect((await app.ask('audit.verify')).problems).toEqual([])
})

test('what is printed while another one is being mailed stays on paper', async () => {
	let go = () => {}
	const asked = new Promise<void>((resolve) => {
		go = resolve
	})
	let reached = () => {}
	const inFlight = new Promise<void>((resolve) => {
		reached = resolve
	})
	const slow = await startSmtp({
		onMailFrom: (_, __, done) => {
			reached()
			void asked.then(() => done())
		},
	})
	stops.push(slow.stop)
	const { app, playerId, visitId } = await mailed(slow.port)
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const [first, second] = [await put(app, visitId), await put(app, visitId)]
	for (const itemId of [first, second]) await look(app, itemId)
	await many(app, 'release', [first, second])
	await inFlight
	expect(await app.refused('outbox.print', { itemId: first })).toMatchObject({
		code: 'outbox.being-sent',
	})
	await app.ask('outbox.print', { itemId: second })
	go()
	await settle(app)
	expect(slow.received).toHaveLength(1)
	expect(await item(app, second)).toMatchObject({ state: 'ready', channel: 'hand-over' })
})
