/** What other installations wrote comes here: in batches, each whole, from wherever it stopped. */
import type pg from 'pg'
import { z } from 'zod'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { SealBroken } from '../../store/seal.ts'
import type { SharedItem, ShareMark, Sharing } from '../../store/sharing.ts'

/** Records and bytes of one batch; a record that is longer comes alone. */
const [mostRecords, mostBytes] = [1000, 4_000_000]

const rowSchema = z.object({
	position: z.coerce.number(),
	id: z.string(),
	origin: z.string(),
	number: z.coerce.number(),
	bytes: z.coerce.number(),
})
type Row = z.infer<typeof rowSchema>

export interface Taking {
	sharing: Sharing
	/** whether a record was destroyed here: it stays so */
	isGone: (id: string) => boolean
	/** takes in what came and moves the mark, in one transaction */
	take: (records: readonly Carried[], mark: ShareMark) => void
}
/** The next rows behind the mark: only what the server may know of them. */
async function nextRows(client: pg.Client, { position }: ShareMark): Promise<Row[]> {
	const { rows } = await client.query({
		name: 'rows',
		text:
			'SELECT position, id, origin, number, octet_length(sealed) AS bytes FROM lastwright.record ' +
			'WHERE position > $1 ORDER BY position LIMIT $2',
		values: [position, mostRecords],
	})
	return z.array(rowSchema).parse(rows)
}
/** As many of the rows as fit into a batch; what is here already costs nothing. */
function fitting(rows: readonly Row[], isWanted: (row: Row) => boolean): Row[] {
	const fit: Row[] = []
	let bytes = 0
	for (const row of rows) {
		if (isWanted(row)) bytes += row.bytes
		if (bytes > mostBytes && fit.length > 0) break
		fit.push(row)
	}
	return fit
}
async function sealedOf(client: pg.Client, rows: readonly Row[]): Promise<Map<string, Uint8Array>> {
	if (rows.length === 0) return new Map()
	const { rows: found } = await client.query<{ id: string; sealed: Uint8Array }>({
		name: 'sealed',
		text: 'SELECT id, sealed FROM lastwright.record WHERE position = ANY ($1::bigint[])',
		values: [rows.map(({ position }) => position)],
	})
	return new Map(found.map(({ id, sealed }) => [id, sealed]))
}
/** The mark behind these rows: gaps in the numbers of an installation are noted, never passed in silence. */
function marked(mark: ShareMark, rows: readonly Row[]): ShareMark {
	const last = { ...mark.last }
	const gaps = [...mark.gaps]
	for (const { origin, number } of rows) {
		const expected = (last[origin] ?? 0) + 1
		if (number > expected) gaps.push({ origin, from: expected, to: number - 1 })
		last[origin] = Math.max(number, expected - 1)
	}
	const end = rows.at(-1)
	return end ? { ...mark, last, gaps, position: end.position, positionId: end.id } : mark
}
type Opened = { row: Row; item: SharedItem } | { row: Row; why: string }
function opened(sharing: Sharing, row: Row, sealed: Uint8Array | undefined): Opened {
	try {
		if (sealed) return { row, item: sharing.openItem(row, sealed) }
		return { row, why: 'it was not handed out' }
	} catch (error) {
		if (!(error instanceof SealBroken)) throw error
		return { row, why: 'it does not open' }
	}
}
/** Of what came, the records that are what they say, and why others are not ours. */
function proven(sharing: Sharing, all: readonly Opened[]) {
	const authors = sharing.authors(all.flatMap((one) => ('item' in one ? [one.item] : [])))
	const records: Carried[] = []
	const refused: ShareMark['refused'] = []
	for (const one of all)
		if ('why' in one) refused.push({ id: one.row.id, why: one.why })
		else if (sharing.provenBy(one.item, one.row.origin, authors) === 'good')
			records.push(one.item.record)
		else refused.push({ id: one.row.id, why: 'nobody known here has signed it' })
	return { records, refused }
}
/** @returns how far it is now, and how many records came */
export async function pull(
	client: pg.Client,
	{ sharing, isGone, take }: Taking,
	from: ShareMark,
): Promise<{ mark: ShareMark; pulled: number }> {
	let [mark, pulled] = [from, 0]
	const isWanted = ({ id }: Row) => !sharing.has(id) && !isGone(id)
	for (;;) {
		const rows = fitting(await nextRows(client, mark), isWanted)
		if (rows.length === 0) break
		const wanted = rows.filter(isWanted)
		const sealed = await sealedOf(client, wanted)
		const { records, refused } = proven(
			sharing,
			wanted.map((row) => opened(sharing, row, sealed.get(row.id))),
		)
		const next = marked(mark, rows)
		take(records, { ...next, refused: [...next.refused, ...refused] })
		mark = sharing.mark ?? next
		pulled += records.length
	}
	if (mark.position > 0) await client.query('SELECT lastwright.seen($1)', [mark.position])
	return { mark, pulled }
}
