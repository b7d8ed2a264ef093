/** Lists of players taken in, for a screening day or without one. */
import { expect, test } from 'vitest'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { day, roster } from './squad-bench.ts'

test('one bad row keeps nobody out: it is repaired and joins the day', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const about = { text: roster(4).replace('\r\n3;', '\r\n1;'), team: 'Rovers', day }
	const first = await app.ask('squad.previewRoster', about)
	expect(first.bad).toMatchObject([{ row: 4, cells: { number: '1', givenName: 'Given2' } }])
	const { squadId, taken, left } = await app.ask('squad.create', { ...about, same: {} })
	expect([taken, left]).toEqual([[2, 3, 5], [4]])
	const answers = { leaveOut: taken, repairs: { 4: { number: '2' } } }
	const again = await app.ask('squad.previewRoster', { ...about, answers, squadId })
	expect(again.problems).toMatchObject([{ row: 4, column: 'number', code: 'given-twice' }])
	answers.repairs[4].number = '03'
	await app.ask('squad.create', { ...about, answers, squadId, same: {} })
	const { rows } = await app.ask('squad.open', { squadId })
	expect(rows.map(({ number }: { number: string }) => number)).toEqual(['1', '2', '3', '4'])
	app.close()
})
test('the same child twice, in the list or on the board, is asked about and never doubled', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const heads = 'Given name,Family name,Birth date,Sex'
	const about = {
		text: `${heads}\nIda,Lane,2012-04-17,f\nLane,Ida,2012-04-17,f\nBo,Reed,2011-04-17,m`,
		team: 'Rovers',
		day,
	}
	const { rows } = await app.ask('squad.previewRoster', about)
	expect(
		rows.map(({ alike }: { alike: { row: number }[] }) => alike.map(({ row }) => row)),
	).toEqual([[], [2], []])
	expect((await app.refused('squad.create', { ...about, same: {} })).code).toBe(
		'squad.roster-not-answered',
	)
	const { squadId, players } = await app.ask('squad.create', { ...about, same: { 3: 'leave-out' } })
	expect(players).toBe(2)
	const [onBoard] = (await app.ask('squad.open', { squadId })).rows
	const again = { ...about, text: `${heads}\nIda,Lane,2012-04-17,f`, squadId }
	expect(
		(await app.refused('squad.create', { ...again, same: { 2: onBoard.playerId } })).code,
	).toBe('squad.player-twice')
	app.close()
})
test('consents of a list are for persons: of mail the guardian, of sharing whoever is named', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const about = {
		text:
			'Given name,Family name,Birth date,Sex,Parent,Parent e-mail,Consents\n' +
			'Ida,Lane,2012-04-17,f,Rae Lane,rae@example.org,email share-with-coach',
		team: 'Rovers',
		day,
		same: {},
	}
	const unnamed = await app.refused('squad.create', about)
	expect([unnamed.code, unnamed.problems?.[0]?.path]).toEqual([
		'squad.consent-for-whom',
		'people.coach',
	])
	const coach = { name: 'Bea Moor', email: 'bea@example.org', emailAgain: 'bee@example.org' }
	expect((await app.refused('squad.create', { ...about, people: { coach } })).code).toBe(
		'outbox.addresses-differ',
	)
	expect((await app.ask('players.search', { query: '', limit: 1 })).total).toBe(0)
	const { squadId } = await app.ask('squad.create', {
		...about,
		people: { coach: { ...coach, emailAgain: coach.email, warningsRead: true } },
	})
	const [{ playerId }] = (await app.ask('squad.open', { squadId })).rows
	const inForce = async (purpose: string, recipient: string) =>
		(await app.ask('consents.check', { playerId, purpose, recipient })).inForce
	expect(await inForce('email', 'Rae Lane')).toBe(true)
	expect(await inForce('share-with-coach', 'Bea Moor')).toBe(true)
	expect(await inForce('share-with-coach', 'Rovers')).toBe(false)
	app.close()
})
test('a list puts players on record without a day; who is there already stays as it was', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const known = { givenName: 'Ida', familyName: 'Lane', birthDate: '2012-04-17', sex: 'female' }
	const { playerId } = await app.ask('players.save', { player: { ...known, club: 'Old Club' } })
	const list = {
		text: 'Vorname;Surname;Born;Sex;Parent e-mail\nIda;Lane;17.4.2012;f;\nBo;Reed;3.5.2011;m;\nCy;Hill;?;m;',
		team: 'New Club',
		day,
		answers: { columns: { 0: 'givenName' } },
	}
	const { players, left } = await app.ask('squad.importPlayers', { ...list, same: { 2: playerId } })
	expect([players, left]).toEqual([2, [4]])
	const { cards } = await app.ask('players.search', { query: '', limit: 9 })
	expect(cards.map(({ familyName, club }: Record<string, string>) => [familyName, club])).toEqual([
		['Lane', 'Old Club'],
		['Reed', 'New Club'],
	])
	expect((await app.ask('squad.list')).days).toEqual([])
	app.close()
})
