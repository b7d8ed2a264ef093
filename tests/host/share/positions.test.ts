/** Positions follow the order of commits: who reads on from a position never misses a record. */
import { randomBytes, randomUUID } from 'node:crypto'
import { afterEach, expect, it } from 'vitest'
import { Clinic, onServer, type Pc, sqlState, write } from './bench.ts'

const clinics: Clinic[] = []
afterEach(async () => {
	for (const clinic of clinics.splice(0)) await clinic.end()
})
const begin = async (cluster: Parameters<typeof Clinic.of>[0]) => {
	const clinic = await Clinic.of(cluster)
	clinics.push(clinic)
	return clinic
}
const readOn = async ({ client }: Pc, from: string) =>
	(
		await client.query(
			'SELECT position::text, id FROM lastwright.record AS r WHERE position > $1 ' +
				'ORDER BY r.position LIMIT 7',
			[from],
		)
	).rows as { position: string; id: string }[]

async function writeTogether(
	{ client, origin }: Pc,
	before: number,
	ids: readonly string[],
	end: 'COMMIT' | 'ROLLBACK',
): Promise<void> {
	await client.query('BEGIN')
	for (const [index, id] of ids.entries())
		await client.query(
			'INSERT INTO lastwright.record (id, origin, number, sealed) VALUES ($1, $2, $3, $4)',
			[id, origin, before + index + 1, randomBytes(40)],
		)
	await client.query(end)
}
/** Fifteen transactions of one to three records; every fifth is given up, its positions never used. */
async function writeBatches(
	writer: Pc,
	at: number,
	isWritten: (id: string) => void,
): Promise<void> {
	for (let batch = 0; batch < 15; batch++) {
		const ids = Array.from({ length: 1 + ((batch + at) % 3) }, () => randomUUID())
		const end = batch % 5 === 4 ? 'ROLLBACK' : 'COMMIT'
		await writeTogether(writer, batch * 3, ids, end)
		if (end === 'COMMIT') ids.forEach(isWritten)
	}
}

onServer('positions', (cluster) => {
	it('who began first and commits last does not stand before the other', async () => {
		const clinic = await begin(cluster())
		const first = await clinic.pc()
		const other = await clinic.pc(first)
		const reader = await clinic.pc(first)
		await first.client.query('BEGIN')
		await first.client.query('SELECT count(*) FROM lastwright.record')
		const one = await write(other, 1)
		const two = await write(first, 1)
		// the turn is held until the commit
		await other.client.query("SET lock_timeout = '200ms'")
		expect(await sqlState(write(other, 2))).toBe('55P03')
		const seen = await readOn(reader, '0')
		expect(seen.map(({ id }) => id)).toEqual([one])
		await first.client.query('COMMIT')
		const three = await write(other, 2)
		expect((await readOn(other, seen.at(-1)?.position ?? '0')).map(({ id }) => id)[0]).toBe(two)
		expect((await readOn(other, '0')).map(({ id }) => id)).toEqual([one, two, three])
	})
	it('six that write at once are read whole by one who only ever reads on', async () => {
		const clinic = await begin(cluster())
		const reader = await clinic.pc()
		const writers: Pc[] = []
		for (let made = 0; made < 6; made++) writers.push(await clinic.pc(reader))
		const written = new Set<string>()
		const working = { done: false }
		const all = Promise.all(
			writers.map((writer, at) => writeBatches(writer, at, (id) => written.add(id))),
		).then(() => {
			working.done = true
		})
		const read: string[] = []
		let from = '0'
		let wasDone = false
		while (!wasDone) {
			// what was committed before the last look is read by it
			wasDone = working.done
			let rows = await readOn(reader, from)
			while (rows.length > 0) {
				read.push(...rows.map(({ id }) => id))
				from = rows.at(-1)?.position ?? from
				rows = await readOn(reader, from)
			}
		}
		await all
		expect(read.length).toBe(new Set(read).size)
		expect(new Set(read)).toEqual(written)
	})
})
