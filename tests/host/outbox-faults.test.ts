import { expect, test } from 'vitest'
import { open, passphrase } from './bench-app.ts'
import { type Smtp, startSmtp } from './mail-bench.ts'
import {
	bench,
	consent,
	item,
	mailed,
	put,
	release,
	sendings,
	settle,
	stops,
} from './outbox-bench.ts'

test(
	'offline: the queue waits with growing pauses and goes out in order when the ' +
		'network is back',
	async () => {
		const { app, smtp, wire, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		wire.cut = 'connect'
		const ids: string[] = []
		for (let number = 0; number < 4; number++) {
			const itemId = await put(app, visitId)
			await release(app, itemId)
			app.clock.ms += 1000
			ids.push(itemId)
		}
		await settle(app)
		const { queue } = await app.ask('outbox.list')
		expect(queue).toMatchObject({ waiting: 4, says: expect.stringMatching(/Nothing was sent/) })
		expect(Date.parse(queue.retryAt)).toBeGreaterThan(app.clock.ms)
		const tries = wire.conversations
		await app.ask('outbox.list')
		await new Promise((resolve) => setTimeout(resolve, 50))
		expect(wire.conversations, 'nothing is tried before its time').toBe(tries)
		wire.cut = undefined
		app.clock.ms = Date.parse(queue.retryAt) + 1
		await app.ask('outbox.list')
		await expect.poll(() => smtp.received.length).toBe(4)
		expect(smtp.received.map((message) => /Message-ID: <([^@]+)@/.exec(message.text)?.[1])).toEqual(
			ids,
		)
		await expect
			.poll(async () =>
				(await app.ask('outbox.list')).items.map((listed: { state: string }) => listed.state),
			)
			.toEqual(['sent', 'sent', 'sent', 'sent'])
	},
)
test.each(['connect', 'EHLO', 'AUTH', 'MAIL', 'RCPT', 'DATA'] as const)(
	'cut at %s: still ready, then sent exactly once',
	async (cut) => {
		const { app, smtp, wire, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		wire.cut = cut
		await release(app, itemId)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'ready' })
		expect(smtp.received).toHaveLength(0)
		wire.cut = undefined
		await settle(app)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'sent' })
		expect(smtp.received).toHaveLength(1)
	},
)
test.each([
	['message', 0],
	['answer', 1],
] as const)(
	'cut at the %s: uncertain, never sent again by itself; settled by a person',
	async (cut, arrived) => {
		const { app, smtp, wire, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		wire.cut = cut
		await release(app, itemId)
		await settle(app)
		wire.cut = undefined
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'uncertain' })
		expect(smtp.received).toHaveLength(arrived)
		expect(await sendings(app, visitId)).toEqual([])
		if (arrived) {
			await app.ask('outbox.confirm', { itemId, what: 'sent', note: 'telephoned' })
			expect(await sendings(app, visitId)).toHaveLength(1)
		} else {
			await app.ask('outbox.confirm', { itemId, what: 'again', note: '' })
			await release(app, itemId)
			await settle(app)
			expect(await item(app, itemId)).toMatchObject({ state: 'sent' })
		}
		expect(smtp.received).toHaveLength(1)
	},
)
test(
	'a stop of the program between the last byte and the answer is shown as uncertain at the ' +
		'next start',
	async () => {
		let hold: (() => void) | undefined
		const smtp: Smtp = await startSmtp({
			onData: (stream, _, done) => {
				stream.resume()
				stream.on('end', () => {
					hold = () => done()
				})
			},
		})
		stops.push(smtp.stop)
		const { app, here, visitId, playerId } = await mailed(smtp.port)
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		await release(app, itemId)
		await expect.poll(() => hold !== undefined).toBe(true)
		expect((await app.refused('outbox.close', { itemId, note: '' })).code).toBe('outbox.being-sent')
		app.close()
		const again = open(here)
		stops.push(() => again.close())
		await again.ask('session.unlock', { passphrase })
		await expect.poll(async () => (await item(again, itemId)).state).toBe('uncertain')
		hold?.()
	},
)
test(
	'locked while the server thinks: the answer is kept and written after the ' + 'unlock',
	async () => {
		let hungUp = false
		let answer: (() => void) | undefined
		const smtp: Smtp = await startSmtp({
			onData: (stream, _, done) => {
				stream.resume()
				stream.on('end', () => {
					answer = () => done()
				})
			},
			onClose: () => {
				hungUp = true
			},
		})
		stops.push(smtp.stop)
		const { app, visitId, playerId } = await mailed(smtp.port)
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		await release(app, itemId)
		await expect.poll(() => answer !== undefined).toBe(true)
		await app.ask('session.lock')
		answer?.()
		// the workstation has the answer once it ends the conversation
		await expect.poll(() => hungUp).toBe(true)
		await app.ask('session.unlock', { passphrase })
		await expect.poll(async () => (await item(app, itemId)).state).toBe('sent')
		expect(await sendings(app, visitId)).toHaveLength(1)
	},
)
test(
	'a refused recipient is returned, a busy one waits without holding up the others, a ' +
		'refused login stops the queue in words',
	async () => {
		const { app, smtp, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		smtp.answers.rcpt = [550, '5.1.1 no such mailbox']
		const lost = await put(app, visitId)
		await release(app, lost)
		await settle(app)
		expect(await item(app, lost)).toMatchObject({ state: 'returned', statusCode: '5.1.1' })
		smtp.answers.rcpt = [450, '4.2.1 busy']
		const busy = await put(app, visitId)
		const { sha256, warnings } = await app.ask('outbox.look', { itemId: busy })
		expect(warnings[0]).toMatch(/returned a message/)
		await app.ask('outbox.release', { itemId: busy, sha256, compared: true, warningsRead: true })
		await settle(app)
		expect(await item(app, busy)).toMatchObject({ state: 'ready', notBefore: expect.any(String) })
		expect((await item(app, busy)).attempts).toBeGreaterThanOrEqual(1)
		delete smtp.answers.rcpt
		smtp.answers.auth = false
		await settle(app)
		expect((await app.ask('outbox.list')).queue.says).toMatch(/refused the login/)
		delete smtp.answers.auth
		await settle(app)
		expect(await item(app, busy)).toMatchObject({ state: 'sent' })
		expect(smtp.received).toHaveLength(1)
	},
)
test('delivery reports are matched by what went with the message', async () => {
	const { app, visitId, playerId } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const [first, second] = [await put(app, visitId), await put(app, visitId)]
	for (const itemId of [first, second]) await release(app, itemId)
	await settle(app)
	const bare = 'Final-Recipient: rfc822; owain@player.example\nAction: failed\nStatus: 5.1.1\n'
	expect((await app.ask('outbox.readReport', { text: bare })).read[0].says).toMatch(
		/Several messages/,
	)
	expect(
		(
			await app.ask('outbox.readReport', {
				text: `Reporting-MTA: dns; relay.example\nOriginal-Envelope-Id: ${second}\n\n${bare}`,
			})
		).read[0].itemId,
	).toBe(second)
	expect(await item(app, first)).toMatchObject({ state: 'sent' })
	expect(await item(app, second)).toMatchObject({ state: 'returned', statusCode: '5.1.1' })
	expect((await app.refused('outbox.readReport', { text: 'nothing of the kind' })).code).toBe(
		'outbox.returned-unreadable',
	)
	expect(
		(
			await app.ask('outbox.readReport', {
				text: `${bare.replace('failed', 'delivered').replace('5.1.1', '2.0.0')}`,
			})
		).read[0].itemId,
	).toBe(first)
	expect(await item(app, first)).toMatchObject({ state: 'delivered' })
})
