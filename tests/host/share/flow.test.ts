/** Records between stores over a real server: whole, once, proven, and from wherever it stopped. */
import { randomUUID } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type pg from 'pg'
import { afterEach, expect, it } from 'vitest'
import { Flow } from '../../../electron/share/flow/flow.ts'
import { meet } from '../../../electron/share/flow/meet.ts'
import { pull } from '../../../electron/share/flow/pull.ts'
import { push } from '../../../electron/share/flow/push.ts'
import type { Store } from '../../../electron/store/store.ts'
import { Clinic, onServer, type Pc } from './bench.ts'
import type { Cluster } from './cluster.ts'
import { holding, openStore, type Place, storesOf, takingOf, writeIn } from './stores.ts'

interface Desk {
	place: Place
	store: Store
	pc: Pc
}
const ends: (() => unknown)[] = []
afterEach(async () => {
	for (const end of ends.splice(0).reverse()) await end()
})
async function desksOn(
	cluster: Cluster,
	howMany: number,
): Promise<{ clinic: Clinic; desks: Desk[] }> {
	const clinic = await Clinic.of(cluster)
	ends.push(() => clinic.end())
	const desks: Desk[] = []
	for (const { place, store } of await storesOf(howMany)) {
		ends.push(() => store.close())
		desks.push({ place, store, pc: await clinic.pc(desks[0]?.pc, store.origin) })
	}
	return { clinic, desks }
}
/** Brings and fetches once. */
async function exchange({ store, pc }: Desk, client: pg.Client = pc.client) {
	const { mark, isPutBack } = await meet(client, store.sharing)
	const pulled = await pull(client, takingOf(store), mark)
	const pushed = await push(client, store.sharing, pulled.mark)
	return { pulled: pulled.pulled, pushed: pushed.pushed, isPutBack, mark: pushed.mark }
}
async function untilSame(desks: readonly Desk[]): Promise<string[]> {
	for (let round = 0; round < 2; round++) for (const desk of desks) await exchange(desk)
	const [first, ...others] = desks.map(({ store }) => holding(store))
	for (const other of others) expect(other).toEqual(first)
	return first ?? []
}

onServer('records between PCs', (cluster) => {
	it('reach every PC, once, as they were written, and are not sent back', async () => {
		const { desks } = await desksOn(cluster(), 3)
		for (const [at, { store }] of desks.entries())
			for (let written = 0; written < 20; written++) writeIn(store, { at, written })
		const all = await untilSame(desks)
		// the player and the installation from before, two more installations, and 60
		expect(all).toHaveLength(64)
		for (const desk of desks)
			expect(await exchange(desk)).toMatchObject({ pulled: 0, pushed: 0, isPutBack: false })
		const { rows } = await desks[0]!.pc.client.query(
			'SELECT count(*)::int AS held, count(DISTINCT id)::int AS ids FROM lastwright.record',
		)
		expect(rows).toEqual([{ held: 64, ids: 64 }])
	})
	it('what comes makes one row of the audit trail, however many records', async () => {
		const {
			desks: [first, second],
		} = await desksOn(cluster(), 2)
		for (let written = 0; written < 50; written++) writeIn(first!.store, { written })
		await exchange(first!)
		const before = second!.store.auditPage(Number.MAX_SAFE_INTEGER, 500).length
		expect((await exchange(second!)).pulled).toBe(50)
		const rows = second!.store.auditPage(Number.MAX_SAFE_INTEGER, 500)
		expect(rows).toHaveLength(before + 1)
		expect(rows[0]).toMatchObject({ function: 'merge' })
	})
	it('the server sees neither kinds nor values nor dates of what it holds', async () => {
		const {
			clinic,
			desks: [desk],
		} = await desksOn(cluster(), 1)
		writeIn(desk!.store, { familyName: 'Ashdown-Marlowe of the test' })
		await exchange(desk!)
		const dump = await (await clinic.administrator()).query(
			'SELECT r::text AS whole, encode(sealed, $1) AS sealed FROM lastwright.record AS r',
			['escape'],
		)
		const text = JSON.stringify(dump.rows)
		for (const word of ['Ashdown', 'player', 'installation', '2027-01-20'])
			expect(text).not.toContain(word)
	})
	it('a commit whose answer was lost is not brought twice', async () => {
		const { desks } = await desksOn(cluster(), 2)
		const [first] = desks
		writeIn(first!.store, 1)
		const { mark } = await meet(first!.pc.client, first!.store.sharing)
		await push(first!.pc.client, first!.store.sharing, mark)
		// as if this PC had never heard of it
		first!.store.sharing.putMark(mark)
		writeIn(first!.store, 2)
		expect((await exchange(first!)).pushed).toBe(1)
		const { rows } = await first!.pc.client.query(
			'SELECT number::int FROM lastwright.record ORDER BY record.number',
		)
		expect(rows.map(({ number }) => number)).toEqual([1, 2, 3, 4])
		await untilSame(desks)
	})
	it('a server put back from an older dump is brought what it lacks, by whoever holds it', async () => {
		const { clinic, desks } = await desksOn(cluster(), 2)
		const [first, second] = desks
		writeIn(first!.store, 'before')
		await untilSame(desks)
		const dump = cluster().dump(clinic.database)
		writeIn(first!.store, 'after, of the first')
		writeIn(second!.store, 'after, of the second')
		const all = await untilSame(desks)
		await clinic.end()
		await cluster().putBack(clinic.database, dump)
		// the first PC is gone for good: the second one holds what it wrote
		second!.pc.client = await clinic.client(second!.pc.login, second!.pc.password)
		expect(await exchange(second!)).toMatchObject({ isPutBack: true, pushed: 2, pulled: 0 })
		const { rows } = await second!.pc.client.query(
			'SELECT count(*)::int AS held FROM lastwright.record',
		)
		expect(rows).toEqual([{ held: all.length }])
		first!.pc.client = await clinic.client(first!.pc.login, first!.pc.password)
		expect(await exchange(first!)).toMatchObject({ pushed: 0 })
		expect(await untilSame(desks)).toEqual(all)
	})
	it('a PC whose file was put back to an earlier state is refused under its name', async () => {
		const {
			desks: [desk],
		} = await desksOn(cluster(), 1)
		await exchange(desk!)
		const file = join(desk!.place.folder, 'lastwright.db')
		desk!.store.close()
		const earlier = readFileSync(file)
		desk!.store = await openStore(desk!.place)
		writeIn(desk!.store, 'written, sent, and forgotten')
		await exchange(desk!)
		desk!.store.close()
		// into the same file, so that nothing but the server can tell
		writeFileSync(file, earlier)
		desk!.store = await openStore(desk!.place)
		ends.push(() => desk!.store.close())
		writeIn(desk!.store, 'another one of the same number')
		await expect(exchange(desk!)).rejects.toMatchObject({ code: 'LW_FORKED', kind: 'ended' })
	})
	it('a copy bears another name and has to be invited', async () => {
		const {
			clinic,
			desks: [desk],
		} = await desksOn(cluster(), 1)
		const [other] = await storesOf(1)
		ends.push(() => other!.store.close())
		const { client } = desk!.pc
		await expect(meet(client, other!.store.sharing)).rejects.toMatchObject({
			code: 'LW_OTHER_NAME',
		})
		const administrator = await clinic.administrator()
		await administrator.query('UPDATE lastwright.meta SET least_client = 99')
		await expect(meet(client, desk!.store.sharing)).rejects.toMatchObject({ code: 'LW_TOO_OLD' })
	})
	it('a record that is lost on the server is told as a gap', async () => {
		const { clinic, desks } = await desksOn(cluster(), 2)
		const [first, second] = desks
		for (let written = 0; written < 5; written++) writeIn(first!.store, written)
		await exchange(first!)
		const administrator = await clinic.administrator()
		await administrator.query('ALTER TABLE lastwright.record DISABLE TRIGGER stays')
		await administrator.query('DELETE FROM lastwright.record WHERE number IN (4, 5)')
		const { mark } = await exchange(second!)
		expect(mark.gaps).toEqual([{ origin: first!.store.origin, from: 4, to: 5 }])
	})
	it("what does not open, stands elsewhere or is nobody's is not taken in; the rest is", async () => {
		const { desks } = await desksOn(cluster(), 2)
		const [first, second] = desks
		writeIn(first!.store, 'good')
		const { mark } = await exchange(first!)
		const { sharing } = first!.store
		const [row] = sharing.behind(0, 1)
		const record = sharing.carried(row!, new Map())!
		const put = async (id: string, number: number, sealed: Uint8Array) =>
			first!.pc.client.query(
				'INSERT INTO lastwright.record (id, origin, number, sealed) VALUES ($1, $2, $3, $4)',
				[id, sharing.origin, number, sealed],
			)
		const [noise, moved, forged] = [randomUUID(), randomUUID(), randomUUID()]
		await put(noise, mark.number + 1, Buffer.alloc(200, 7))
		await put(moved, mark.number + 2, sharing.sealItem(record, 1))
		// whoever has the data key and the login, and not the key that the installation signs with
		const altered = { ...record, id: forged, value: { familyName: 'Forged' } }
		await put(forged, mark.number + 3, sharing.sealItem(altered, mark.number + 3))
		const after = writeIn(first!.store, 'good as well')
		await push(first!.pc.client, sharing, { ...mark, number: mark.number + 3 })
		const got = await exchange(second!)
		expect(got.mark.refused).toEqual([
			{ id: noise, why: 'it does not open' },
			{ id: moved, why: 'it does not open' },
			{ id: forged, why: 'nobody known here has signed it' },
		])
		expect(second!.store.has(after)).toBe(true)
		for (const id of [noise, moved, forged]) expect(second!.store.has(id)).toBe(false)
	})
	it('stands on the other PC a moment after it was written, and goes on after the server was killed', async () => {
		const { clinic, desks } = await desksOn(cluster(), 2)
		const flows = desks.map(({ store, pc }) => {
			const times = { firstMs: 50, longestMs: 400, lookMs: 60_000, turnMs: 5000 }
			const flow = new Flow({
				...takingOf(store),
				wish: clinic.wish(pc),
				now: () => new Date(),
				times,
			})
			flow.start()
			ends.push(() => flow.stop())
			return flow
		})
		await expect.poll(() => flows.map(({ state }) => state.is)).toEqual(['together', 'together'])
		const first = writeIn(desks[0]!.store, 'first')
		flows[0]!.wake()
		await expect.poll(() => desks[1]!.store.has(first)).toBe(true)
		await cluster().stop('crash')
		const alone = writeIn(desks[1]!.store, 'written alone')
		flows[1]!.wake()
		await expect.poll(() => flows.map(({ state }) => state.is)).toEqual(['away', 'away'])
		await cluster().start()
		await expect.poll(() => desks[0]!.store.has(alone)).toBe(true)
		const administrator = await clinic.administrator()
		await administrator.query('SELECT lastwright.revoke(NULL, $1, NULL)', [desks[1]!.store.origin])
		await expect
			.poll(() => flows[1]!.state)
			.toMatchObject({
				is: 'stopped',
				refused: { kind: 'ended' },
			})
		expect(flows[0]!.state.is).toBe('together')
	})
})
