/** Finding a player by whatever is known: accents, order and ways of writing do not matter. */
import { expect, test } from 'vitest'
import { clinic, folder, open, passphrase } from './bench-app.ts'

test('by name, guardian, address, telephone and a birth date in any form', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const born = (givenName: string, familyName: string, birthDate: string, more: object = {}) =>
		app.ask('players.save', {
			player: { givenName, familyName, birthDate, sex: 'female', ...more },
		})
	const { playerId } = await born('Zoë', 'Nguyễn-Marlowe', '2010-04-03', {
		club: 'Harrow Rovers',
		email: 'zoe@example.org',
		phone: '(0777) 01 02 03',
		guardian: { name: 'Ræ Ashdown', email: 'rae.ashdown@example.org', phone: '0555 014-2233' },
	})
	await born('Ida', 'Lane', '2012-11-30')
	const found = async (query: string) =>
		(await app.ask('players.search', { query, limit: 9 })).cards.map(
			(card: { playerId: string }) => card.playerId,
		)
	for (const query of [
		...['zoe', 'MARLOWE nguyen', 'rovers zo', 'Ashdown', 'rae ashdown', 'rae.ashdown@example.org'],
		...[
			'zoe@example',
			'0555 0142233',
			'05550142',
			'0777 010203',
			'2010-04-03',
			'3 April 2010',
			'3. April 2010',
		],
		...['03/04/2010', '4/3/2010', '3.4.2010', 'April 3, 2010', '3-Apr-10', 'nguyen 3 april 2010'],
	])
		expect(await found(query), query).toEqual([playerId])
	for (const query of ['zoe 4 April 2010', '31/02/2010', 'ashdown lane', '0666'])
		expect(await found(query), query).toEqual([])
	// what is typed on narrows the same list, also where a date comes and goes
	for (const [query, total] of [
		['z', 1],
		['zo', 1],
		['zo 2012', 0],
		['', 2],
	] as const)
		expect((await found(query)).length, query).toBe(total)
	app.close()
})
