/** Setting up the server: once, whole or not at all, and never over what is not ours. */
import { afterEach, expect, it } from 'vitest'
import { prepare } from '../../../electron/share/server/prepare.ts'
import { steps } from '../../../electron/share/server/steps.table.ts'
import { Clinic, onServer } from './bench.ts'
import type { Cluster } from './cluster.ts'

const clinics: Clinic[] = []
afterEach(async () => {
	for (const clinic of clinics.splice(0)) await clinic.end()
})
const rolesOn = async (cluster: Cluster): Promise<number> =>
	cluster.asAdministrator('postgres', async (client) => {
		const { rows } = await client.query(
			"SELECT count(*)::int AS roles FROM pg_roles WHERE rolname LIKE 'lastwright%'",
		)
		return rows[0].roles
	})
/** Why it cannot be set up. */
const refusal = (cluster: Cluster, database: string, before: string): Promise<string> =>
	cluster.asAdministrator(database, async (client) => {
		if (before) await client.query(before)
		return prepare(client).then(
			() => 'it was set up',
			(error: Error) => `${error.name}: ${error.message}`,
		)
	})

onServer('a database for shared records', (cluster) => {
	it('is set up in one step, and the second time nothing is done', async () => {
		const database = await cluster().database()
		const [first, second] = await cluster().asAdministrator(database, async (client) => [
			await prepare(client),
			await prepare(client),
		])
		expect(first).toMatchObject({ taken: steps.length, step: steps.length })
		expect(second).toMatchObject({ taken: 0, step: steps.length, tag: first?.tag })
	})
	it('is set up once where two do it at the same moment', async () => {
		const database = await cluster().database()
		const both = await Promise.all([1, 2].map(() => cluster().asAdministrator(database, prepare)))
		expect(both.map(({ taken }) => taken).toSorted()).toEqual([0, steps.length])
		expect(new Set(both.map(({ tag }) => tag)).size).toBe(1)
	})
	it('is left as it is where a step fails: no role, no table', async () => {
		const database = await cluster().database()
		const before = await rolesOn(cluster())
		await cluster().asAdministrator(database, async (client) => {
			// the last thing that is made of it cannot be made
			await client.query(
				`CREATE FUNCTION refuse() RETURNS event_trigger LANGUAGE plpgsql AS $$ BEGIN
					IF EXISTS (SELECT FROM pg_event_trigger_ddl_commands() WHERE object_identity ~ 'seen')
					THEN RAISE EXCEPTION 'not here'; END IF; END $$;
				CREATE EVENT TRIGGER refuse ON ddl_command_end EXECUTE FUNCTION refuse()`,
			)
			await expect(prepare(client)).rejects.toThrow('not here')
			await client.query('DROP EVENT TRIGGER refuse')
			const { rows } = await client.query("SELECT to_regnamespace('lastwright') AS there")
			expect(rows).toEqual([{ there: null }])
			expect(await rolesOn(cluster())).toBe(before)
			expect((await prepare(client)).taken).toBe(steps.length)
		})
	})
	it('of a newer version is refused, and nothing in it is changed', async () => {
		const database = await cluster().database()
		await cluster().asAdministrator(database, prepare)
		expect(await refusal(cluster(), database, 'UPDATE lastwright.meta SET step = 99')).toMatch(
			/newer Lastwright \(step 99; this one knows up to \d+\)/,
		)
		await cluster().asAdministrator(database, async (client) => {
			const { rows } = await client.query('SELECT step FROM lastwright.meta')
			expect(rows).toEqual([{ step: 99 }])
		})
	})
	it.each([
		['holds something else', 'CREATE TABLE accounts (a int)', 'not empty (public.accounts)'],
		['has a schema of our name', 'CREATE SCHEMA lastwright', 'is not ours'],
	])('that %s is refused', async (_, before, words) => {
		expect(await refusal(cluster(), await cluster().database(), before)).toContain(words)
	})
	it('of the server itself is refused, and one in another encoding', async () => {
		expect(await refusal(cluster(), 'postgres', '')).toContain("the server's own database")
		const other = await cluster().database('LATIN1')
		expect(await refusal(cluster(), other, '')).toContain('LATIN1')
	})
	it('that came back from a dump without its rights is closed again by setting it up anew', async () => {
		const clinic = await Clinic.of(cluster())
		clinics.push(clinic)
		const pc = await clinic.pc()
		await cluster().asAdministrator('postgres', (client) =>
			client.query("CREATE ROLE stranger LOGIN PASSWORD 'stranger'"),
		)
		const asStranger = () => cluster().as('stranger', clinic.database, 'stranger', async () => 'in')
		await cluster().asAdministrator(clinic.database, async (client) => {
			const name = client.escapeIdentifier(clinic.database)
			await client.query(`GRANT CONNECT ON DATABASE ${name} TO PUBLIC`)
			await client.query(`REVOKE CONNECT ON DATABASE ${name} FROM ${pc.login.slice(0, 17)}_pc`)
			expect(await asStranger()).toBe('in')
			expect((await prepare(client)).taken).toBe(0)
		})
		await expect(asStranger()).rejects.toMatchObject({ code: '42501' })
		await clinic.client(pc.login, pc.password)
	})
	it('is set up by who owns it and may make roles, and by nobody less', async () => {
		const database = await cluster().database()
		await cluster().asAdministrator('postgres', async (client) => {
			await client.query("CREATE ROLE helper LOGIN PASSWORD 'helper'")
			const asHelper = () => cluster().as('helper', database, 'helper', prepare)
			await expect(asHelper()).rejects.toThrow('must own the database')
			await client.query(`ALTER DATABASE "${database}" OWNER TO helper`)
			await expect(asHelper()).rejects.toThrow('may make roles')
			await client.query('ALTER ROLE helper CREATEROLE')
			expect((await asHelper()).taken).toBe(steps.length)
			expect((await asHelper()).taken).toBe(0)
		})
	})
	it('is for the PCs of that clinic alone: those of another do not come in', async () => {
		const [one, other] = [await Clinic.of(cluster()), await Clinic.of(cluster())]
		clinics.push(one, other)
		const pc = await one.pc()
		await expect(cluster().client(pc.login, other.database, pc.password)).rejects.toMatchObject({
			code: '42501',
		})
	})
})
