/** What somebody does with the credential of a PC, and no more than that: the server refuses it. */
import { randomBytes, randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { Clinic, onServer, type Pc, sqlState, verifierOf, write } from './bench.ts'

onServer('a stolen credential', (cluster) => {
	let clinic: Clinic
	let honest: Pc
	let thief: Pc
	beforeAll(async () => {
		clinic = await Clinic.of(cluster())
		honest = await clinic.pc()
		thief = await clinic.pc(honest)
		await write(honest, 1)
		await write(thief, 1)
	})
	afterAll(() => clinic.end())
	const held = async () =>
		(await honest.client.query('SELECT id, origin, number, sealed FROM lastwright.record')).rows

	it.each([
		['changes a record', "UPDATE lastwright.record SET sealed = '\\x00'", '42501'],
		['deletes records', 'DELETE FROM lastwright.record', '42501'],
		['empties the table', 'TRUNCATE lastwright.record', '42501'],
		['drops the table', 'DROP TABLE lastwright.record', '42501'],
		[
			'turns the rows of others loose',
			'ALTER TABLE lastwright.record DISABLE ROW LEVEL SECURITY',
			'42501',
		],
		['lifts the trigger', 'ALTER TABLE lastwright.record DISABLE TRIGGER ALL', '42501'],
		['skips triggers', "SET session_replication_role = 'replica'", '42501'],
		['becomes the owner', 'SET ROLE lastwright_TAG_owner', '42501'],
		['becomes another PC', 'SET ROLE lastwright_TAG_HONEST', '42501'],
		['becomes another session', 'SET SESSION AUTHORIZATION lastwright_TAG_HONEST', '42501'],
		['makes a role', 'CREATE ROLE accomplice LOGIN', '42501'],
		['changes a login', "ALTER ROLE lastwright_TAG_HONEST PASSWORD 'x'", '42501'],
		['ends a session', 'SELECT pg_terminate_backend(pid) FROM pg_stat_activity', '42501'],
		['makes a table', 'CREATE TABLE lastwright.mine (a int)', '42501'],
		['makes one in public', 'CREATE TABLE public.mine (a int)', '42501'],
		['makes a temporary one', 'CREATE TEMPORARY TABLE record (a int)', '42501'],
		[
			'makes a function',
			'CREATE FUNCTION lastwright.f() RETURNS int LANGUAGE sql AS $$ SELECT 1 $$',
			'42501',
		],
		['reads the word of the clinic', 'SELECT word FROM lastwright.meta', '42501'],
		['reads who verifies guests', 'SELECT verifier FROM lastwright.guest', '42501'],
		['reads passwords', 'SELECT rolpassword FROM pg_authid', '42501'],
		['reads files', "SELECT pg_read_file('pg_hba.conf')", '42501'],
		['runs a program', "COPY (SELECT 1) TO PROGRAM 'true'", '42501'],
		['changes the version', 'UPDATE lastwright.meta SET step = 99', '42501'],
		['admits itself again', 'UPDATE lastwright.pc SET revoked = NULL', '42501'],
		['sets the positions back', "SELECT setval('lastwright.record_position_seq', 1)", '42501'],
		['burns positions', "SELECT nextval('lastwright.record_position_seq')", '42501'],
		[
			'takes the turn for itself',
			'DO $$ BEGIN LOCK TABLE lastwright.turn IN EXCLUSIVE MODE; END $$',
			'42501',
		],
		['calls what only the server calls', "SELECT lastwright.make_pc('x', 'y')", '42501'],
		['clears invitations', 'SELECT lastwright.clear_guests()', '42501'],
		['knocks without an invitation', "SELECT lastwright.knock('a', '', '', '', '')", '42501'],
		['writes over a key box', "UPDATE lastwright.keybox SET sealed = '\\x00'", '42501'],
	])('that %s is refused', async (_, statement, code) => {
		const before = await held()
		const tag = thief.login.split('_')[1] ?? ''
		const asked = statement.replaceAll('TAG', tag).replaceAll('HONEST', honest.origin)
		expect(await sqlState(thief.client.query(asked))).toBe(code)
		expect(await held()).toEqual(before)
	})
	const insert = 'INSERT INTO lastwright.record'
	it('writes under no other name, at no place of its choice and not over its own', async () => {
		const sealed = randomBytes(64)
		const asked: [string, unknown[], string][] = [
			[
				'(id, origin, number, sealed) VALUES ($1, $2, 2, $3)',
				[randomUUID(), honest.origin, sealed],
				'42501',
			],
			[
				'(position, id, origin, number, sealed) OVERRIDING SYSTEM VALUE VALUES (1, $1, $2, 2, $3)',
				[randomUUID(), thief.origin, sealed],
				'42501',
			],
			[
				"(id, origin, number, sealed, came) VALUES ($1, $2, 2, $3, '2001-01-01')",
				[randomUUID(), thief.origin, sealed],
				'42501',
			],
			[
				'(id, origin, number, sealed) VALUES ($1, $2, 1, $3)',
				[randomUUID(), thief.origin, sealed],
				'23505',
			],
			[
				'(id, origin, number, sealed) VALUES ($1, $2, 0, $3)',
				[randomUUID(), thief.origin, sealed],
				'23514',
			],
			[
				'(id, origin, number, sealed) VALUES ($1, $2, 2, $3)',
				[randomUUID(), thief.origin, Buffer.alloc(0)],
				'23514',
			],
			[
				'(id, origin, number, sealed) VALUES ($1, $2, 2, $3) ON CONFLICT (id) DO UPDATE SET sealed = excluded.sealed',
				[randomUUID(), thief.origin, sealed],
				'42501',
			],
		]
		const before = await held()
		for (const [what, values, code] of asked)
			expect([what, await sqlState(thief.client.query(`${insert} ${what}`, values))]).toEqual([
				what,
				code,
			])
		expect(await held()).toEqual(before)
	})
	it('without the word of the clinic it invites, admits and puts out nobody', async () => {
		const wrong = randomBytes(32)
		const verifier = verifierOf('of an accomplice')
		const asked: [string, unknown[]][] = [
			['SELECT lastwright.invite($1, $2, 60)', [wrong, verifier]],
			['SELECT lastwright.invite($1, $2, 60)', [null, verifier]],
			['SELECT lastwright.admit($1, $2)', [wrong, thief.login]],
			['SELECT lastwright.refuse($1, $2)', [wrong, thief.login]],
			['SELECT lastwright.revoke($1, $2, NULL)', [wrong, honest.origin]],
		]
		for (const [what, values] of asked)
			expect([what, await sqlState(thief.client.query(what, values))]).toEqual([what, 'LW002'])
		expect(await sqlState(honest.client.query('SELECT 1'))).toBe('done')
	})
	it('reads the key boxes of no other PC, and makes none in the name of another', async () => {
		const put =
			'INSERT INTO lastwright.keybox (epoch, origin, made_by, sealed) VALUES (1, $1, $2, $3)'
		const box = randomBytes(100)
		await honest.client.query(put, [honest.origin, honest.origin, box])
		expect((await thief.client.query('SELECT FROM lastwright.keybox')).rowCount).toBe(0)
		const forged = thief.client.query(put, [honest.origin, honest.origin, box])
		expect(await sqlState(forged)).toBe('42501')
	})
	it('of an invitation sees nothing at all', async () => {
		const invited = await clinic.invite(honest)
		const guest = await clinic.client(invited.login, invited.password)
		for (const table of ['record', 'pc', 'meta', 'guest', 'keybox', 'turn'])
			expect(await sqlState(guest.query(`SELECT FROM lastwright.${table}`))).toBe('42501')
		expect(await sqlState(guest.query('SELECT lastwright.my_origin()'))).toBe('42501')
		expect(
			await sqlState(guest.query('SELECT lastwright.admit($1, $2)', [clinic.word, invited.login])),
		).toBe('42501')
	})
	it('that holds the turn keeps the others waiting, loses them nothing and ends by being put out', async () => {
		await thief.client.query('BEGIN')
		await write(thief, 2)
		await honest.client.query("SET lock_timeout = '200ms'")
		expect(await sqlState(write(honest, 2))).toBe('55P03')
		const other = await clinic.client(honest.login, honest.password)
		await other.query('SELECT lastwright.revoke($1, $2, NULL)', [clinic.word, thief.origin])
		await honest.client.query("SET lock_timeout = '10s'")
		await write(honest, 2)
		expect((await held()).map(({ origin, number }) => `${origin} ${number}`)).toEqual([
			...[`${honest.origin} 1`, `${thief.origin} 1`, `${honest.origin} 2`],
		])
	})
})
