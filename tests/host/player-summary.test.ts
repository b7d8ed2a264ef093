/** What stands first on a player's page: made from the records, as far as the role may read. */
import { expect, test } from 'vitest'
import { json } from '../demo.ts'
import { passphrase, signed, withPlayer } from './bench-app.ts'
import { found as recorded } from './found-visit.ts'

const others = 'reception words'
async function withVisits() {
	const { app, playerId } = await withPlayer()
	await app.ask('players.save', {
		playerId,
		player: {
			...json('visit-adolescent.json').player,
			guardian: { name: 'Rae Ashdown', relation: 'parent', phone: '555 0142' },
		},
	})
	const { feet } = recorded
	await signed(
		app,
		playerId,
		{ feet: { ...feet, left: { ...feet.left, heelToToeMm: 240 } } },
		'2026-07-15',
	)
	const visitId = await signed(app, playerId, recorded)
	return { app, playerId, visitId }
}
test('the last prescription, the sizes, the pairs, what is due and what was sent', async () => {
	const { app, playerId, visitId } = await withVisits()
	const { itemId } = await app.ask('outbox.add', {
		visitId,
		kind: 'guardian',
		recipientId: 'guardian',
		channel: 'print',
		due: '2027-01-25',
	})
	app.clock.ms += 60_000
	await app.ask('reports.handedOver', { visitId, recipient: 'Rae Ashdown', channel: 'by-hand' })
	const summary = await app.ask('players.summary', { playerId })
	expect(summary.plan).toMatchObject({ visitId, visitDate: '2027-01-20', held: [] })
	const line = (what: string) =>
		summary.plan.lines.find((one: { what: string }) => one.what === what)?.says
	expect(line('size')).toMatch(/^256\.5 to 260\.5 mm inside, EU 39½, UK 6½/)
	expect(line('replace')).toBe('Match boots by 3 February 2027')
	expect(line('raise')).toMatch(/mm in both shoes/)
	expect(summary.plan.pairs[0]).toMatchObject({
		name: 'Match boots',
		hoursWorn: 30,
		toeRoomMm: 4.5,
		verdict: 'replace',
		until: '2027-02-03',
	})
	expect(summary.due).toEqual({ date: '2027-02-03', isOverdue: false, why: 'the pairs at hand' })
	expect(summary.sizes.map((one: { visitDate: string }) => one.visitDate)).toEqual([
		'2027-01-20',
		'2026-07-15',
	])
	expect(summary.sizes[1].leftMm).toBe(240)
	expect(summary.sent).toMatchObject([
		{ kind: 'player', to: 'Rae Ashdown', state: 'handed-over', way: 'hand-over' },
		{ itemId, kind: 'guardian', to: 'Rae Ashdown', state: 'to-check', way: 'print' },
	])
	app.clock.ms = Date.parse('2027-03-01T09:00:00Z')
	await app.ask('session.unlock', { passphrase })
	expect((await app.ask('players.summary', { playerId })).due.isOverdue).toBe(true)
	app.close()
})
test('what danger holds is said, and nothing of it is proposed', async () => {
	const { app, playerId } = await withPlayer()
	const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	const decisions = { ...draft.content.decisions, referralDone: 'Sent to the emergency department' }
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, decisions },
	})
	await signed(app, playerId, {
		...recorded,
		screening: {
			injury: {
				side: 'left',
				daysAgo: 1,
				malleolarZonePain: true,
				tenderLateralMalleolus: true,
				unableToBearWeightThen: true,
				unableToBearWeightNow: true,
			},
		},
	})
	const { plan, due } = await app.ask('players.summary', { playerId })
	expect(plan.held.join(' ')).toMatch(/Held since 20 January 2027 \(.*left\): sport/)
	const proposed = plan.lines.map(({ what }: { what: string }) => what)
	for (const held of ['size', 'raise']) expect(proposed).not.toContain(held)
	expect(due.why).toContain('a warning sign')
	app.close()
})
test('reception is answered days and sendings, and nothing of why', async () => {
	const { app, playerId, visitId } = await withVisits()
	await app.ask('outbox.add', {
		visitId,
		kind: 'guardian',
		recipientId: 'guardian',
		channel: 'print',
		due: '2027-01-25',
	})
	for (const role of ['reception', 'student'] as const)
		await app.ask('people.save', {
			name: `Invented ${role}`,
			registration: '',
			role,
			passphrase: `${others} ${role}`,
		})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: `${others} reception` })
	const told = await app.ask('players.summary', { playerId })
	expect(told).toEqual({
		due: { date: '2027-02-03', isOverdue: false },
		sent: [expect.objectContaining({ to: 'Rae Ashdown', state: 'to-check' })],
		sizes: [],
		troubles: [],
	})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: `${others} student` })
	expect((await app.ask('players.summary', { playerId })).plan.visitId).toBe(visitId)
	app.close()
})
test('a player without a visit has an empty summary; nobody has none', async () => {
	const { app, playerId } = await withPlayer()
	expect(await app.ask('players.summary', { playerId })).toEqual({
		sent: [],
		sizes: [],
		troubles: [],
	})
	expect((await app.refused('players.summary', { playerId: 'nobody' })).code).toBe(
		'players.unknown',
	)
	app.close()
})
test('a name in another script is saved with its Latin spelling, and found by both', async () => {
	const { app, playerId } = await withPlayer()
	const noa = { givenName: 'נועה', familyName: 'לוי', birthDate: '2011-02-03', sex: 'female' }
	const refused = await app.refused('players.save', { player: noa })
	expect(refused.code).toBe('players.details-cannot-stand')
	expect(refused.problems?.map(({ path }) => path)).toEqual([
		'player.givenName',
		'player.familyName',
	])
	expect(
		(await app.refused('players.save', { player: { ...noa, givenName: 'Noa 😀' } })).problems?.[0]
			?.message,
	).toContain('😀 (U+1F600)')
	const latinName = { givenName: 'Noa', familyName: 'Levi' }
	const saved = await app.ask('players.save', {
		player: { ...noa, givenName: 'נועה\u200f', latinName },
	})
	for (const query of ['נועה', 'noa', 'levi', 'לוי']) {
		const { cards } = await app.ask('players.search', { query, limit: 9 })
		expect(cards, query).toMatchObject([{ playerId: saved.playerId, givenName: 'נועה', latinName }])
	}
	const again = await app.ask('players.save', { player: { ...noa, ...latinName } })
	expect(again.similar).toMatchObject([{ playerId: saved.playerId }])
	await signed(app, saved.playerId)
	expect(playerId).not.toBe(saved.playerId)
	app.close()
})
