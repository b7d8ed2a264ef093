/** Who is due and which referrals nobody has heard from, over real records. */
import { expect, test } from 'vitest'
import type { Role } from '../../shared/contract.ts'
import { decideAll } from '../decide.ts'
import { folder, type Opened, open, passphrase, player, signed, withPlayer } from './bench-app.ts'
import { homecoming, of } from './bench-homecoming.ts'
import { back, bring, laptopOf, packed } from './bench-pack.ts'
import { found } from './found-visit.ts'

const others = 'words of another'
const broken = {
	injury: { side: 'left', daysAgo: 1, malleolarZonePain: true, tenderLateralMalleolus: true },
} as const
const day = (app: Opened, date: string) => {
	app.clock.ms = Date.parse(`${date}T09:00:00Z`)
	return app.ask('session.unlock', { passphrase })
}
async function as(app: Opened, role: Exclude<Role, 'nobody' | 'owner'>) {
	const { people } = await app.ask('people.list')
	if (!people.some((person: { role: string }) => person.role === role))
		await app.ask('people.save', {
			name: `Invented ${role}`,
			registration: 'X2',
			role,
			passphrase: `${others} ${role}`,
		})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: `${others} ${role}` })
}
async function asOwner(app: Opened) {
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
}
const list = (app: Opened, chosen: object = {}) => app.ask('recall.list', { limit: 50, ...chosen })
interface Item {
	kind: string
	from: string
	pair?: string
	on: string
	standing: string
	day: string
}
const itemOf = async (app: Opened, kind: string, chosen: object = {}): Promise<Item | undefined> =>
	(await list(app, chosen)).lines[0]?.items.find((item: Item) => item.kind === kind)
const bare = ({ kind, from, pair, on }: Item) => ({ kind, from, on, ...(pair && { pair }) })
async function referred(app: Opened, playerId: string, visitDate = '2027-01-20') {
	const { draft } = await app.ask('drafts.open', { playerId, visitDate })
	const decisions = { ...draft.content.decisions, referralDone: 'Sent for a film with his mother' }
	await app.ask('drafts.save', { draftId: draft.draftId, content: { ...draft.content, decisions } })
	return signed(app, playerId, { screening: broken }, visitDate)
}

test('answers are kept, the newest counts, and a newer signed visit ends what was due', async () => {
	const { app, here, playerId } = await withPlayer()
	await signed(app, playerId, found)
	const pair = await itemOf(app, 'pair')
	if (!pair) throw new Error('no pair is due')
	const answer = (given: object) =>
		app.ask('recall.answer', { playerId, items: [bare(pair)], answer: given })
	await answer({ what: 'booked', on: '2027-02-01' })
	expect(await itemOf(app, 'pair')).toMatchObject({ standing: 'booked', day: '2027-02-01' })
	app.clock.ms += 60_000
	await answer({ what: 'not-needed' })
	expect(await itemOf(app, 'pair')).toMatchObject({
		standing: 'ended',
		answered: { says: 'not needed', by: 'A. Example' },
	})
	app.clock.ms += 60_000
	await answer({ what: 'wait', until: '2027-02-10' })
	app.close()
	const again = open(here, '2027-02-05T09:00:00.000Z')
	await again.ask('session.unlock', { passphrase })
	expect(await itemOf(again, 'pair')).toMatchObject({ standing: 'waits', day: '2027-02-10' })
	await day(again, '2027-02-10')
	expect(await itemOf(again, 'pair')).toMatchObject({ standing: 'due', day: '2027-02-10' })
	const refused = await again.refused('recall.answer', {
		playerId,
		items: [{ ...bare(pair), on: '2027-02-11' }],
		answer: { what: 'not-needed' },
	})
	expect(refused.code).toBe('recall.not-due')
	const wrong = { what: 'booked', on: '2027-02-01' }
	expect(
		await again.refused('recall.answer', { playerId, items: [bare(pair)], answer: wrong }),
	).toMatchObject({ code: 'recall.day', problems: [{ path: 'answer.on' }] })
	await signed(again, playerId, { feet: found.feet }, '2027-02-10')
	const { lines } = await list(again)
	expect(lines[0].items.map(({ from }: Item) => from)).not.toContain(pair.from)
	again.close()
})
test('each role is answered what is for it, and may do what is its own', async () => {
	const { app, playerId } = await withPlayer()
	const visitId = await signed(app, playerId, found)
	const { playerId: hurt } = await app.ask('players.save', {
		player: { ...player, givenName: 'Bo', familyName: 'Quill' },
	})
	const hurtVisit = await referred(app, hurt)
	await day(app, '2027-01-22')
	const told = await list(app)
	expect(JSON.stringify(told.lines)).toContain('Match boots'.toLowerCase())
	expect(told.followUps).toBe(1)
	const review = told.lines
		.find((line: { playerId: string }) => line.playerId === hurt)
		.items.find((item: Item) => item.kind === 'review')
	const tried = { what: 'try', says: 'rang, no answer' }
	const note = { playerId: hurt, visitIds: [hurtVisit], entry: tried }
	const ending = { playerId: hurt, items: [bare(review)], answer: { what: 'not-needed' } }

	await as(app, 'reception')
	const desk = await list(app)
	expect(desk.followUps).toBe(1)
	// an id is drawn, and any three figures may stand in it
	const words = JSON.stringify(desk).replace(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, '')
	for (const clinical of ['boots', 'sign', 'film', 'Ottawa', 'detail', '246', 'heel'])
		expect(words).not.toContain(clinical)
	expect((await app.refused('recall.referrals')).code).toBe('call.not-for-this-role')
	expect((await app.refused('recall.followUp', note)).code).toBe('call.not-for-this-role')
	expect((await app.refused('recall.answer', ending)).code).toBe('recall.only-who-treats')
	await app.ask('recall.answer', { ...ending, answer: { what: 'booked', on: '2027-01-25' } })

	await asOwner(app)
	await as(app, 'student')
	expect((await app.ask('recall.referrals')).referrals).toHaveLength(1)
	for (const [name, input] of [
		['recall.followUp', note],
		['recall.answer', ending],
		['recall.remind', { playerIds: [playerId], way: 'letter' }],
	] as const)
		expect((await app.refused(name, input)).code, name).toBe('call.not-for-this-role')

	await asOwner(app)
	await as(app, 'clinician')
	await app.ask('recall.answer', ending)
	// what is due of the one is no business of the other, and an answer about it reaches no referral
	expect((await app.ask('recall.referrals')).referrals).toHaveLength(1)
	const strange = { playerId, items: [bare(review)], answer: { what: 'due' } }
	expect((await app.refused('recall.answer', strange)).code).toBe('recall.not-due')
	expect((await app.refused('recall.followUp', { ...note, visitIds: [visitId] })).code).toBe(
		'recall.not-open',
	)
	app.close()
})
test('a referral stands until what came of it is written, and again where that is taken back', async () => {
	const { app, here, playerId } = await withPlayer()
	const visitId = await referred(app, playerId)
	expect((await app.ask('recall.referrals')).referrals).toEqual([])
	await day(app, '2027-01-21')
	const [referral] = (await app.ask('recall.referrals')).referrals
	expect(referral).toMatchObject({
		playerId,
		visitIds: [visitId],
		since: '2027-01-20',
		asked: 'Medical review the same day',
		done: ['Sent for a film with his mother'],
	})
	const write = (entry: object) =>
		app.ask('recall.followUp', { playerId, visitIds: [visitId], entry })
	await write({ what: 'try', says: 'rang, no answer', again: '2027-01-22' })
	expect((await app.ask('recall.referrals')).referrals[0].tries).toMatchObject([
		{ says: 'rang, no answer', again: '2027-01-22', by: 'A. Example' },
	])
	const outcome = {
		what: 'outcome',
		result: 'excluded',
		found: 'no fracture on the film',
		how: 'rang the ward',
		from: 'Dr Invented',
		on: '2027-01-21',
	}
	const late = { playerId, visitIds: [visitId], entry: { ...outcome, on: '2027-01-22' } }
	expect((await app.refused('recall.followUp', late)).problems?.[0]?.path).toBe('entry.on')
	const { followUpId } = await write(outcome)
	const heard = await app.ask('recall.referrals')
	expect(heard.referrals).toEqual([])
	expect(heard.heard).toMatchObject([{ followUpId, visitIds: [visitId] }])
	// what is held is lifted by the outcome of a visit alone
	expect((await app.ask('players.summary', { playerId })).plan.held.join(' ')).toMatch(/Held since/)
	await write({ what: 'taken-back', of: followUpId, why: 'of another player' })
	app.close()
	const again = open(here, '2027-01-22T09:00:00.000Z')
	await again.ask('session.unlock', { passphrase })
	expect((await again.ask('recall.referrals')).referrals).toHaveLength(1)
	const rule = 'screening.ottawa-met'
	const { draft } = await again.ask('drafts.open', { playerId, visitDate: '2027-01-22' })
	await again.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit: {
				...draft.content.visit,
				outcomes: [
					{
						rule,
						side: 'left',
						result: 'excluded',
						found: 'no fracture',
						how: 'film',
						by: 'radiology',
						on: '2027-01-21',
						lifts: ['test'],
					},
				],
			},
		},
	})
	await decideAll(again.ask, playerId, '2027-01-22')
	await again.ask('visits.sign', { draftId: draft.draftId })
	expect((await again.ask('recall.referrals')).referrals).toEqual([])
	again.close()
})
test('two records of one player stand on one line, and end with the player', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, found, '2027-01-18')
	const { playerId: twin } = await app.ask('players.save', {
		player: { ...player, givenName: 'Zoe' },
	})
	await referred(app, twin, '2027-01-19')
	const review = (await list(app)).lines
		.find((line: { playerId: string }) => line.playerId === twin)
		.items.find((item: Item) => item.kind === 'review')
	await app.ask('recall.answer', {
		playerId: twin,
		items: [bare(review)],
		answer: { what: 'booked', on: '2027-01-25' },
	})
	await app.ask('players.merge', { from: twin, into: playerId, reason: 'same person' })
	const { lines } = await list(app)
	expect(lines).toHaveLength(1)
	expect(lines[0]).toMatchObject({ playerId, visitDate: '2027-01-19' })
	expect(await itemOf(app, 'review')).toMatchObject({ standing: 'booked' })
	expect((await app.ask('recall.referrals')).referrals).toMatchObject([{ playerId }])
	await day(app, '2040-04-18')
	await app.ask('retention.destroy', {
		playerId,
		reason: 'kept long enough',
		name: 'zoe marlowe-nguyen',
		alsoBackups: true,
	})
	expect((await list(app)).lines).toEqual([])
	app.close()
})
test('answers travel to an outreach day and home again, and the newest counts', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, found)
	const pair = await itemOf(app, 'pair')
	if (!pair) throw new Error('no pair is due')
	const booked = { what: 'booked', on: '2027-02-01' }
	await app.ask('recall.answer', { playerId, items: [bare(pair)], answer: booked })
	const { app: laptop } = await laptopOf(await packed(app, [playerId]))
	expect(await itemOf(laptop, 'pair')).toMatchObject({ standing: 'booked' })
	laptop.clock.ms += 60_000
	const wait = { what: 'wait', until: '2027-03-01' }
	await laptop.ask('recall.answer', { playerId, items: [bare(pair)], answer: wait })
	const { changes } = await bring(app, await back(laptop))
	expect(changes[0].lines.join(' ')).toMatch(
		/a pair runs out by .*asked to wait until 1 March 2027/,
	)
	expect(await itemOf(app, 'pair')).toMatchObject({ standing: 'waits', day: '2027-03-01' })
	laptop.close()
	app.close()
})
test('a file of the way back silences nothing by a name that may not', async () => {
	const { app, playerId, other, without } = await homecoming()
	const item = { kind: 'review', from: 'somewhere', on: '2027-02-01' }
	const at = '2027-01-20T09:00:00.000Z'
	const recall = { playerId, item, answer: { what: 'not-needed' }, by: 'Rae Desk', at }
	await without(
		({ written }) => [written('recall', recall, { about: playerId })],
		/who is not here one who may answer so/,
	)
	await without(
		(forger) => [
			forger.written(
				'follow-up',
				{
					followUpId: 'f1',
					playerId: other,
					visitIds: [of(forger, 'visit').thing],
					entry: { what: 'try', says: 'rang' },
					by: 'A. Example',
					at,
				},
				{ about: other },
			),
		],
		/visits of another player/,
	)
	app.close()
})
test('a folder without signed visits says that nobody is due', async () => {
	const { app } = await withPlayer(folder())
	expect(await list(app)).toMatchObject({ total: 0, lines: [], followUps: 0, troubles: [] })
	app.close()
})
