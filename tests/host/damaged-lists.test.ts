/** A record that is damaged on the disk, its card with it: lists leave it out, say so and go on. */
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { open, passphrase, signed, withPlayer } from './bench-app.ts'
import { packed } from './bench-pack.ts'

const consent = {
	purpose: 'photos',
	recipient: '',
	decision: 'permit',
	grantor: { name: 'Rae Ashdown', relation: 'guardian' },
	method: 'written',
	given: '2027-01-19',
}
/** Turns the last byte of what was written last of a kind. @returns its record */
function damage(here: string, kind: string): string {
	const db = new DatabaseSync(join(here, 'lastwright.db'))
	const turned = (bytes: Uint8Array | null) => {
		if (bytes === null) return null
		const copy = Uint8Array.from(bytes)
		copy[copy.length - 1] = (copy.at(-1) ?? 0) ^ 1
		return copy
	}
	const row = db
		.prepare(
			'SELECT record.seq AS seq, record.id AS id, record.sealed AS sealed, roll.card AS card FROM ' +
				'record JOIN roll ON roll.seq = record.seq WHERE record.kind = ? ORDER BY record.seq DESC',
		)
		.get(kind) as { seq: number; id: string; sealed: Uint8Array; card: Uint8Array | null }
	db.exec('DROP TRIGGER record_stays')
	db.prepare('UPDATE record SET sealed = ? WHERE seq = ?').run(turned(row.sealed), row.seq)
	db.prepare('UPDATE roll SET card = ? WHERE seq = ?').run(turned(row.card), row.seq)
	db.exec(
		"CREATE TRIGGER record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'a record is " +
			"never changed'); END",
	)
	db.close()
	return row.id
}

test.each([
	'player',
	'visit',
	'report',
	'consent',
	'hold',
	'contact',
	'sending-note',
	'season',
	'clinic',
	'person',
	'shelf',
])('a damaged %s stops nothing but what asks for it, and is named', async (kind) => {
	const { app, here, playerId } = await withPlayer()
	const other = (await app.ask('players.save', { player: ashdown })).playerId as string
	const first = await signed(app, playerId, {}, '2027-01-19')
	await signed(app, playerId)
	await app.ask('consents.record', { playerId, consent })
	await app.ask('retention.hold', { playerId, reason: 'a complaint is open', on: true })
	const email = 'rae@example.org'
	await app.ask('outbox.addContact', {
		...{ playerId, name: 'Rae Ashdown', role: 'doctor', email, emailAgain: email },
		warningsRead: true,
	})
	await app.ask('outbox.addNote', { playerId, text: 'No mail to the old address' })
	await app.ask('season.save', {
		playerId,
		season: { from: '2027-02-01', to: '2027-03-01', sessions: [] },
	})
	await app.ask('shelf.save', { shelf: { format: 'lastwright-shelf', version: 1, models: [] } })
	app.close()
	const record = damage(here, kind)

	const again = open(here)
	await again.ask('session.unlock', { passphrase })
	const { total } = await again.ask('players.search', { query: '', limit: 10 })
	expect(total).toBe(kind === 'player' ? 1 : 2)
	await again.ask('players.open', { playerId })
	await again.ask('visits.open', { visitId: first })
	await again.ask('reports.open', { visitId: first })
	for (const call of ['outbox.list', 'shelf.get', 'squad.list', 'outreach.list', 'people.list'])
		await again.ask(call)
	await again.ask('consents.list', { playerId })
	await again.ask('outbox.notes', { playerId })
	await again.ask('season.open', { playerId })
	await packed(again, [kind === 'player' ? playerId : other])
	const { problems } = await again.ask('audit.verify')
	const { warnings } = await again.ask('session.status')
	const isNamed = (says: string) => says.includes(record) && says.includes('backup')
	expect(problems.filter(isNamed), 'verify').not.toEqual([])
	if (kind !== 'report') expect(warnings.filter(isNamed), 'warnings').not.toEqual([])
	again.close()
})
const ashdown = { givenName: 'Tui', familyName: 'Ashdown', birthDate: '2010-05-02', sex: 'male' }
