/** Reminders for many: through the outbox, under its rules, and without a word of why. */
import { expect, test } from 'vitest'
import { type Opened, signed, withPlayer } from './bench-app.ts'
import { found } from './found-visit.ts'
import { adult, bench, consent, item, minor, release, sendings, settle } from './outbox-bench.ts'

const remind = async (app: Opened, playerIds: string[], way = 'mail') =>
	(await app.ask('recall.remind', { playerIds, way })).lines
const permit = (app: Opened, playerId: string, who: string, by = who, relation = 'player') =>
	app.ask('consents.record', { playerId, consent: consent('email', who, by, relation) })

test('a reminder is mailed to who consented; nobody is left out without a word', async () => {
	const { app, smtp, playerId } = await bench(adult)
	const save = async (player: object) => (await app.ask('players.save', { player })).playerId
	await permit(app, playerId, 'Owain Trescott')
	await signed(app, playerId, found, '2027-01-19')
	const child = await save(minor)
	await permit(app, child, 'Rae Ashdown', 'Rae Ashdown', 'parent')
	const childVisit = await signed(app, child, found)
	const silent = await save({ ...adult, givenName: 'Aled', email: 'aled@player.example' })
	await signed(app, silent, found)
	const alone = await save({ ...minor, givenName: 'Bo', guardian: undefined })
	await signed(app, alone, found)
	const seen = await save({ ...adult, givenName: 'Carys' })
	const lines = await remind(app, [playerId, child, silent, alone, seen])
	expect(lines).toMatchObject([
		{ name: 'Owain Trescott', list: 'made', to: 'Owain Trescott' },
		{ name: 'Tui Ashdown', list: 'made', to: 'Rae Ashdown' },
		{ name: 'Aled Trescott', list: 'by-letter', says: expect.stringMatching(/No consent/) },
		{ name: 'Bo Ashdown', list: 'by-telephone', says: expect.stringMatching(/no guardian/) },
		{ name: 'Carys Trescott', list: 'nothing', says: 'Nothing is due any more.' },
	])
	const [, toGuardian] = lines
	await release(app, toGuardian.itemId)
	await settle(app)
	expect((await item(app, toGuardian.itemId)).state).toBe('sent')
	const [{ text } = { text: '' }] = smtp.received
	expect(text).toMatch(/please make an appointment with us/)
	for (const private_ of ['Tui', 'boot', 'heel', 'foot', 'measure'])
		expect(text).not.toContain(private_)
	// who was reminded holds no version of the report
	expect(await sendings(app, childVisit)).toEqual([])
	const [again] = await remind(app, [playerId])
	expect(again).toMatchObject({
		list: 'nothing',
		says: expect.stringMatching(/waits in the outbox/),
	})
	expect(await remind(app, [silent], 'letter')).toMatchObject([{ list: 'made' }])
})
test('the page names clinic, player and day, and nothing that was found', async () => {
	const drawn: string[] = []
	const { app, playerId } = await withPlayer(undefined, undefined, async (document) => {
		if (document.kind === 'reminder') drawn.push(JSON.stringify(document))
		return Buffer.from(`%PDF-1.7 ${JSON.stringify(document)}`)
	})
	await app.ask('players.save', {
		playerId,
		player: { ...minor, givenName: 'Tui', familyName: 'Ashdown' },
	})
	await signed(app, playerId, {
		...found,
		conditions: [{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' }],
		body: { ...found.body, massKg: 46.2 },
	})
	const [line] = await remind(app, [playerId], 'letter')
	expect(line).toMatchObject({ list: 'made', to: 'Rae Ashdown' })
	const [page = ''] = drawn
	expect(page).toContain('Please make an appointment with us')
	for (const clinical of ['46.2', '246', 'pain', 'boot', 'heel', 'night', 'growth', 'review'])
		expect(page.toLowerCase()).not.toContain(clinical)
	// seen meanwhile: what was asked for is over
	app.clock.ms += 86_400_000
	await app.ask('session.unlock', { passphrase: 'correct horse' })
	await signed(app, playerId, {}, '2027-01-21')
	await app.ask('outbox.look', { itemId: line.itemId })
	const { sha256 } = await item(app, line.itemId)
	const released = { itemId: line.itemId, sha256, compared: true, warningsRead: true }
	expect((await app.refused('outbox.release', released)).code).toBe('outbox.seen-since')
	app.close()
})
test('a student’s visit that nobody countersigned reminds nobody; the telephone is left', async () => {
	const { app } = await withPlayer()
	const { playerId } = await app.ask('players.save', { player: minor })
	const student = { name: 'Invented student', registration: '', role: 'student' }
	await app.ask('people.save', { ...student, passphrase: 'student words here' })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'student words here' })
	await signed(app, playerId, found)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'correct horse' })
	expect(await remind(app, [playerId], 'letter')).toMatchObject([
		{
			list: 'by-telephone',
			says: expect.stringMatching(/countersigned/),
			phones: [{ name: 'Rae Ashdown', role: 'guardian', phone: '555 0177' }],
		},
	])
	app.close()
})
