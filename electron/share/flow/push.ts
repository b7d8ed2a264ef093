/** What was written here goes to the server: in batches, each whole, from wherever it stopped. */
import type pg from 'pg'
import { isKind, kinds } from '../../../shared/desk/ledger/ledger.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import type { ShareMark, Sharing } from '../../store/sharing.ts'

/** Records and bytes of one batch: small enough to hold in memory, large enough not to wait long. */
const [mostRecords, mostBytes] = [500, 4_000_000]

const put =
	'INSERT INTO lastwright.record (id, origin, number, sealed) ' +
	'SELECT u.id, $1, u.number, substring($4::bytea FROM u.begins FOR u.long) ' +
	'FROM unnest($2::uuid[], $3::bigint[], $5::int[], $6::int[]) AS u(id, number, begins, long) ' +
	'ON CONFLICT (id) DO NOTHING'

/** Those of the ids that the server holds, whoever brought them. */
async function alreadyThere(client: pg.Client, ids: readonly string[]): Promise<Set<string>> {
	if (ids.length === 0) return new Set()
	const { rows } = await client.query<{ id: string }>(
		'SELECT id FROM lastwright.record WHERE id = ANY ($1::uuid[])',
		[ids],
	)
	return new Set(rows.map(({ id }) => id))
}
const isShared = (kind: string): boolean => !isKind(kind) || kinds[kind].travels.share

interface Batch {
	records: Carried[]
	sealed: Uint8Array[]
	/** the last place in the file that is done with once they are there */
	until: number
}
/** The next records that the server lacks, sealed and numbered without a gap. */
async function nextBatch(
	client: pg.Client,
	sharing: Sharing,
	mark: ShareMark,
	players: ReadonlyMap<string, string>,
): Promise<Batch | undefined> {
	const rows = sharing.behind(mark.sent, mostRecords)
	if (rows.length === 0) return undefined
	const there = await alreadyThere(
		client,
		rows.filter(({ kind }) => isShared(kind)).map(({ id }) => id),
	)
	const batch: Batch = { records: [], sealed: [], until: mark.sent }
	let bytes = 0
	for (const row of rows) {
		const goes = isShared(row.kind) && !there.has(row.id)
		const record = goes ? sharing.carried(row, players) : undefined
		if (record) {
			const sealed = sharing.sealItem(record, mark.number + batch.records.length + 1)
			bytes += sealed.length
			if (bytes > mostBytes && batch.records.length > 0) break
			batch.records.push(record)
			batch.sealed.push(sealed)
		}
		batch.until = row.seq
	}
	return batch
}
/** @returns whether all of it was put: none is, where another PC brought one of them meanwhile */
async function putBatch(
	client: pg.Client,
	sharing: Sharing,
	mark: ShareMark,
	batch: Batch,
): Promise<boolean> {
	let begins = 1
	const places = batch.sealed.map(({ length }) => {
		const at = begins
		begins += length
		return at
	})
	const values = [
		sharing.origin,
		batch.records.map(({ id }) => id),
		batch.records.map((_, index) => mark.number + index + 1),
		Buffer.concat(batch.sealed),
		places,
		batch.sealed.map(({ length }) => length),
	]
	await client.query('BEGIN')
	try {
		const { rowCount } = await client.query({ name: 'put', text: put, values })
		const isWhole = rowCount === batch.records.length
		await client.query(isWhole ? 'COMMIT' : 'ROLLBACK')
		return isWhole
	} catch (error) {
		await client.query('ROLLBACK').catch(() => {})
		throw error
	}
}
/**
 * @param players ids of players by the digest that the roll holds: records of the first versions do not say theirs
 * @returns how far it is now, and how many records went
 */
export async function push(
	client: pg.Client,
	sharing: Sharing,
	from: ShareMark,
	players: ReadonlyMap<string, string> = new Map(),
): Promise<{ mark: ShareMark; pushed: number }> {
	let [mark, pushed] = [from, 0]
	for (;;) {
		const batch = await nextBatch(client, sharing, mark, players)
		if (!batch) return { mark, pushed }
		const count = batch.records.length
		if (count > 0 && !(await putBatch(client, sharing, mark, batch))) continue
		mark = { ...mark, sent: batch.until, number: mark.number + count }
		sharing.putMark(mark)
		pushed += count
	}
}
