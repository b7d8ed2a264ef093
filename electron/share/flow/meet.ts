/** The first moment of a connection: whether server and store still know each other as they did. */
import type pg from 'pg'
import { z } from 'zod'
import { freshMark, type ShareMark, type Sharing } from '../../store/sharing.ts'
import { ShareRefused } from '../faults.ts'

/** The form of what this program brings to the server; a server may ask for a later one. */
const form = 1
const metaSchema = z.object({
	generation: z.string(),
	least: z.int(),
	mine: z.string().nullable(),
})
const ownSchema = z.array(z.object({ number: z.coerce.number(), id: z.string() }))
/** So many of the last records that this installation brought are looked at. */
const looksBack = 1000

/** Whether what was fetched last still stands where it stood. */
async function stands(client: pg.Client, mark: ShareMark): Promise<boolean> {
	if (mark.position === 0) return true
	const { rows } = await client.query('SELECT id FROM lastwright.record WHERE position = $1', [
		mark.position,
	])
	return rows[0]?.id === mark.positionId
}
/** What the server holds of this installation beyond a number, the last ones first. */
const broughtBeyond = async (client: pg.Client, origin: string, number: number) =>
	ownSchema.parse(
		(
			await client.query(
				'SELECT number, id FROM lastwright.record WHERE origin = $1 AND number >= $2 ' +
					'ORDER BY record.number DESC LIMIT $3',
				[origin, number, looksBack],
			)
		).rows,
	)
/**
 * How far store and server are with each other. A server that was put back to an older state, or made
 * anew, is met as if for the first time: then everything is held against it and what it lacks is brought.
 * @throws ShareRefused where this installation may not go on under its name
 */
export async function meet(
	client: pg.Client,
	sharing: Sharing,
): Promise<{ mark: ShareMark; isPutBack: boolean }> {
	const { rows } = await client.query(
		'SELECT generation, least_client AS least, lastwright.my_origin() AS mine FROM lastwright.meta',
	)
	if (rows.length === 0) throw new ShareRefused('LW001')
	const meta = metaSchema.parse(rows[0])
	if (meta.least > form) throw new ShareRefused('LW_TOO_OLD')
	if (meta.mine !== sharing.origin) throw new ShareRefused('LW_OTHER_NAME')
	const before = sharing.mark ?? freshMark(meta.generation)
	const isSame = before.generation === meta.generation && (await stands(client, before))
	const last = (await broughtBeyond(client, sharing.origin, 0))[0]?.number ?? 0
	const isPutBack = !isSame || last < before.number
	const mark = isPutBack ? freshMark(meta.generation) : before
	// what is there under this name and not here was written after these records were copied
	const beyond = await broughtBeyond(client, sharing.origin, mark.number + 1)
	if (beyond.some(({ id }) => !sharing.has(id))) throw new ShareRefused('LW_FORKED')
	return { mark: { ...mark, number: last }, isPutBack }
}
