/** After a restore, or a move to another PC, no act of mail happens without a person. */
import { cpSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { folder, type Opened, open, passphrase } from './bench-app.ts'
import { bench, consent, item, put, release, sendings, settle, stops } from './outbox-bench.ts'
import { later, leaveAll, linesOf, listAfter, restored } from './restore-bench.ts'

const email = consent('email', 'Owain Trescott')
/** Two items that are ready and wait, as the network is away, and a backup of that moment. */
async function waiting() {
	const made = await bench()
	const { app, wire, visitId, playerId } = made
	await app.ask('consents.record', { playerId, consent: email })
	wire.cut = 'connect'
	const items: string[] = []
	for (let number = 0; number < 3; number++) {
		const itemId = await put(app, visitId)
		await release(app, itemId)
		items.push(itemId)
		later(app)
	}
	await settle(app)
	const { file, folder: where } = await app.ask('backups.make')
	later(app)
	const [sent = '', calledBack = '', still = ''] = items
	return { ...made, file, path: join(where, file), sent, calledBack, still }
}
/** Whatever the outbox would do by itself: its own look, the list, and "Send now". */
async function letItRun(app: Opened): Promise<void> {
	await app.ask('outbox.list')
	await settle(app)
	await anHourLater(app)
	await settle(app)
	await app.ask('outbox.list')
}
async function anHourLater(app: Opened): Promise<void> {
	await app.ask('session.lock')
	later(app, 3_600_000)
	await app.ask('session.unlock', { passphrase })
}
test('an item sent since stays sent, one called back stays back, one that waited is for a person', async () => {
	const { app, smtp, wire, visitId, file, sent, calledBack, still } = await waiting()
	await app.ask('outbox.back', { itemId: calledBack, reason: 'the wrong address' })
	await app.ask('outbox.back', { itemId: still, reason: 'held for a moment' })
	wire.cut = undefined
	await settle(app)
	expect(smtp.received).toHaveLength(1)
	wire.cut = 'connect'
	const before = smtp.received.length
	const third = await put(app, visitId)
	await release(app, third)
	await settle(app)
	await restored(app, file)
	wire.cut = undefined
	await letItRun(app)
	expect(smtp.received).toHaveLength(before)
	expect(await item(app, sent)).toMatchObject({ state: 'sent' })
	expect(await item(app, calledBack)).toMatchObject({ state: 'to-check' })
	expect(await item(app, third)).toMatchObject({
		state: 'to-check',
		history: expect.arrayContaining([
			expect.objectContaining({ says: expect.stringMatching(/A backup was restored/) }),
		]),
	})
	expect(await sendings(app, visitId)).toHaveLength(before)
	const lines = await linesOf(app)
	expect(lines.map((line: { what: string }) => line.what)).toEqual(
		expect.arrayContaining(['sending', 'to-check']),
	)
	expect((await app.ask('outbox.list')).queue).toMatchObject({ waiting: 0 })
	// a person looks and releases; it leaves once the list is decided
	await release(app, third)
	await settle(app)
	expect(smtp.received).toHaveLength(before)
	expect((await app.ask('outbox.list')).queue.says).toMatch(/After the restore/)
	await leaveAll(app)
	await settle(app)
	await expect.poll(() => smtp.received.length).toBe(before + 1)
	expect((await app.ask('audit.verify')).problems).toEqual([])
})
test('a consent withdrawn since is not in force again, and nothing leaves by it', async () => {
	const { app, smtp, wire, playerId, file, sent } = await waiting()
	const { consents } = await app.ask('consents.list', { playerId })
	await app.ask('consents.withdraw', {
		...{ playerId, consentId: consents[0].consentId },
		...{ withdrawn: '2027-01-20', withdrawnBy: 'Owain Trescott' },
	})
	await restored(app, file)
	wire.cut = undefined
	await letItRun(app)
	await leaveAll(app)
	const { sha256 } = await app.ask('outbox.look', { itemId: sent })
	expect(
		(
			await app.refused('outbox.release', {
				...{ itemId: sent, sha256, compared: true, warningsRead: true },
			})
		).code,
	).toBe('outbox.no-consent')
	expect(smtp.received).toHaveLength(0)
})
test('one whose end was unknown is for a person, who is told that it may have arrived', async () => {
	const { app, smtp, wire, file, sent } = await waiting()
	wire.cut = 'answer'
	await anHourLater(app)
	await settle(app)
	expect((await item(app, sent)).state).toBe('uncertain')
	const arrived = smtp.received.length
	await restored(app, file)
	wire.cut = undefined
	await letItRun(app)
	expect(await item(app, sent)).toMatchObject({
		state: 'to-check',
		history: expect.arrayContaining([
			expect.objectContaining({ says: expect.stringMatching(/may have arrived/) }),
		]),
	})
	expect(smtp.received).toHaveLength(arrived)
})
test.each(['a backup on a new PC', 'a copied folder'])(
	'%s sends nothing by itself',
	async (how) => {
		const { app, here, smtp, wire, path, sent } = await waiting()
		app.close()
		const there = folder()
		if (how === 'a copied folder') cpSync(here, there, { recursive: true })
		const moved = open(there, '2027-01-20T10:00:00.000Z')
		stops.push(() => moved.close())
		if (how !== 'a copied folder') await moved.ask('session.moveHere', { file: path })
		await moved.ask('session.unlock', { passphrase })
		wire.cut = undefined
		await letItRun(moved)
		expect(smtp.received).toHaveLength(0)
		expect(await item(moved, sent)).toMatchObject({
			state: 'to-check',
			history: expect.arrayContaining([
				expect.objectContaining({ says: expect.stringMatching(/Whether this was sent/) }),
			]),
		})
		expect((await linesOf(moved, 'person')).map((line: { says: string }) => line.says)).toEqual(
			how === 'a copied folder' ? [] : [expect.stringMatching(/A\. Example \(owner\) can open/)],
		)
		expect((await listAfter(moved)).how).toBe(how === 'a copied folder' ? 'copy' : 'move')
		await leaveAll(moved)
		await letItRun(moved)
		expect(smtp.received).toHaveLength(0)
		expect((await moved.ask('audit.verify')).problems).toEqual([])
	},
)
