/** Several documents in one step: each by the rules of one, and one that fails stops no other. */
import { expect, test } from 'vitest'
import { signed } from './bench-app.ts'
import {
	adult,
	bench,
	consent,
	item,
	lookRight as look,
	many,
	minor,
	put,
	settle,
} from './outbox-bench.ts'

const desk = 'reception at the desk'
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
type Any = any

test('several are released in one step: only what was compared, each with the consents of now', async () => {
	const { app, playerId, visitId, smtp } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const [a, b, unseen, paper] = await Promise.all([
		put(app, visitId),
		put(app, visitId),
		put(app, visitId),
		put(app, visitId, { channel: 'print' }),
	])
	// seen is not compared, and compared is asked for beside the page
	await app.ask('outbox.look', { itemId: unseen })
	expect(
		await app.refused('outbox.compared', { itemId: a, sha256: 'x', warningsRead: false }),
	).toMatchObject({ code: 'outbox.page-not-seen' })
	for (const itemId of [a, b, paper]) await look(app, itemId)
	expect((await item(app, a)).compared).toBe(true)
	expect((await item(app, unseen)).compared).toBe(false)

	// a note that came up since: what was compared before it is read again
	const { noteId } = await app.ask('outbox.addNote', { playerId, text: 'not to the old address' })
	expect((await many(app, 'release', [a]))[0]).toMatchObject({
		done: false,
		says: expect.stringContaining('A warning came up since the page was opened.'),
	})
	await app.ask('outbox.look', { itemId: a })
	expect((await item(app, a)).compared).toBe(false)
	await app.ask('outbox.removeNote', { playerId, noteId, reason: 'settled' })
	await look(app, a)

	const lines = await many(app, 'release', [a, unseen, b, paper, 'no-such-item'])
	expect(lines.map(({ done }) => done)).toEqual([true, false, true, true, false])
	expect(lines[1]?.says).toMatch(/not compared with its first page yet/)
	expect(lines[4]?.says).toMatch(/not in the outbox any more/)
	await settle(app)
	expect(smtp.received).toHaveLength(2)
	expect((await item(app, unseen)).state).toBe('to-check')

	// called back and closed together; what cannot be says why
	expect((await many(app, 'back', [paper, a], 'wrong day')).map(({ done }) => done)).toEqual([
		true,
		false,
	])
	expect((await item(app, paper)).compared).toBe(true)
	expect((await many(app, 'close', [a, b, paper, unseen])).every(({ done }) => done)).toBe(true)
	expect((await many(app, 'close', [a]))[0]?.done).toBe(true)
	expect((await app.ask('audit.verify')).problems).toEqual([])
})

test('what somebody else compared is not released, and another person who takes over ends the step', async () => {
	const { app, playerId, visitId } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const ids: string[] = []
	for (let index = 0; index < 4; index++) ids.push(await put(app, visitId, { channel: 'print' }))
	for (const itemId of ids) await look(app, itemId)
	await app.ask('people.save', {
		name: 'Desk Person',
		registration: '',
		role: 'reception',
		passphrase: desk,
	})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: desk })
	expect((await item(app, ids[0] as string)).compared).toBe(false)
	expect((await many(app, 'release', ids)).map(({ done }) => done)).toEqual(ids.map(() => false))
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'correct horse' })
	// the step has begun when the other one takes over
	const step = many(app, 'close', ids)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: desk })
	const lines = await step
	expect(lines.at(-1)).toMatchObject({
		done: false,
		says: expect.stringContaining('Another person took over before this one.'),
	})
	const done = lines.filter((line) => line.done).length
	const states = (await app.ask('outbox.list')).items.map(({ state }: Any) => state)
	expect(states.filter((state: string) => state === 'closed')).toHaveLength(done)
})

test('signed and nobody was given anything: proposed by age and consent, put by the rules of one', async () => {
	const { app, playerId, visitId } = await bench()
	const { playerId: child } = await app.ask('players.save', { player: minor })
	const of = await signed(app, child)
	const { contactId: coach } = await app.ask('outbox.addContact', {
		playerId: child,
		name: 'Cass Coach',
		role: 'coach',
		email: '',
		emailAgain: '',
		warningsRead: true,
	})
	const { contactId: doctor } = await app.ask('outbox.addContact', {
		playerId,
		name: 'Dr Mirren Vale',
		role: 'doctor',
		email: '',
		emailAgain: '',
		warningsRead: true,
	})
	const list = async (): Promise<Any[]> =>
		(await app.ask('outbox.unsent', { from: '2027-01-01', limit: 100 })).visits
	const proposed = (visit: Any) =>
		visit.offers
			.filter(({ isProposed }: Any) => isProposed)
			.map(({ kind, recipient, channel }: Any) => `${kind} ${recipient.role} ${channel}`)
	const none = await app.ask('outbox.unsent', { from: '2027-01-21', limit: 100 })
	expect(none).toEqual({ visits: [], more: 0 })
	const counted = await app.ask('outbox.unsent', { from: '2027-01-01', limit: 0 })
	expect(counted).toEqual({ visits: [], more: 2 })
	const before = await list()
	expect(before.map((visit) => [visit.visitId, proposed(visit)])).toEqual(
		expect.arrayContaining([
			[visitId, ['player player print']],
			[of, ['guardian guardian print']],
		]),
	)
	// a sign that asks for a doctor is not urgent by itself, a bone that may be broken is
	expect(before.every((visit) => !visit.goesFirst)).toBe(true)
	const unagreed = before
		.find((visit) => visit.visitId === of)
		.offers.find(({ recipient }: Any) => recipient.role === 'coach')
	expect(unagreed.cannot.print).toMatch(/No consent/)

	// with the consents: by mail, and to those it may be shared with
	await app.ask('consents.record', {
		playerId: child,
		consent: consent('email', 'Rae Ashdown', 'Rae Ashdown', 'parent'),
	})
	await app.ask('consents.record', {
		playerId: child,
		consent: consent('share-with-coach', 'Cass Coach', 'Rae Ashdown', 'parent'),
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('share-with-care', 'Dr Mirren Vale', 'Owain Trescott'),
	})
	const after = await list()
	expect(proposed(after.find((visit) => visit.visitId === of)).sort()).toEqual([
		'coach coach print',
		'guardian guardian smtp',
	])
	expect(proposed(after.find((visit) => visit.visitId === visitId)).sort()).toEqual([
		'player player print',
		'referral doctor print',
	])

	const row = (change: object) => ({
		visitId: of,
		kind: 'guardian',
		recipientId: 'guardian',
		channel: 'smtp',
		...change,
	})
	// a birth date that differs from the signed one keeps everything of that visit here
	await app.ask('players.save', { playerId, player: { ...adult, birthDate: '1994-03-31' } })
	expect((await list()).find((visit) => visit.visitId === visitId)).toMatchObject({
		cannot: expect.stringContaining('Nothing is sent while they differ'),
		offers: [],
	})
	const { lines } = await app.ask('outbox.putMany', {
		due: '2027-01-22',
		rows: [
			row({ visitId, kind: 'player', recipientId: 'player', channel: 'print' }),
			row({}),
			row({}),
			row({ kind: 'player', recipientId: 'player', channel: 'smtp' }),
			row({ kind: 'coach', recipientId: coach, channel: 'print' }),
			row({ kind: 'insert-order', recipientId: coach, channel: 'print' }),
			row({ visitId: 'nowhere' }),
			row({ visitId, kind: 'referral', recipientId: doctor, channel: 'print' }),
		],
	})
	expect(lines.map(({ itemId }: Any) => itemId !== undefined)).toEqual([
		false,
		true,
		false,
		false,
		true,
		false,
		false,
		false,
	])
	expect(lines.map(({ says }: Any) => says)).toEqual([
		expect.stringContaining('Nothing is sent while they differ'),
		'',
		expect.stringContaining('is to check already'),
		expect.stringContaining('The player is a minor'),
		'',
		expect.stringContaining('is not for a coach'),
		'This visit is not in the records.',
		expect.stringContaining('Nothing is sent while they differ'),
	])
	expect((await list()).map((visit) => visit.visitId)).toEqual([visitId])
	// given up before it left: nobody was given anything again
	const { items } = await app.ask('outbox.list')
	await many(
		app,
		'close',
		items.map(({ itemId }: Any) => itemId),
	)
	expect((await list()).map((visit) => visit.visitId).sort()).toEqual([of, visitId].sort())
})
