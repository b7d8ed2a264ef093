/** The roll held against the records that it lists, and made anew from them where it is damaged. */

import { openRecord, type RecordRow, recordColumns, type StoredRecord } from './record.ts'
import { isDamage, type RecordParts } from './records.ts'
import { type RollRow, rollColumns } from './roll.ts'

/** What is amiss between a record and its row in the roll. */
export interface RollFault {
	id: string
	kind: string
	at: string
	/** its place, of the row in the roll or else of the record */
	seq: number
	what: 'record-damaged' | 'record-gone' | 'row-gone' | 'row-other' | 'row-stray' | 'card-damaged'
}
type Parts = Pick<RecordParts, 'database' | 'keyring' | 'roll' | 'cards'>
const same: readonly (keyof RollRow)[] = [
	'seq',
	'id',
	'kind',
	'at',
	'follows',
	'origin',
	'tick',
	'number',
	'form',
	'about',
	'thing',
]

/**
 * Opens every record and looks at its row and card, one step for each.
 * @param use gets each record that opens
 * @returns each fault, undefined for a record without one; nothing is changed
 */
export function* walkRoll(
	parts: Parts,
	use: (record: StoredRecord) => void = () => {},
): Generator<RollFault | undefined> {
	const { database } = parts
	const listed = new Map(
		database
			.all<RollRow>(`SELECT ${rollColumns} FROM roll NOT INDEXED ORDER BY seq`)
			.map((row) => [row.seq, row] as const),
	)
	const [seen, ids] = [new Set<number>(), new Set<string>()]
	for (const { seq } of database.all<{ seq: number }>('SELECT seq FROM record NOT INDEXED')) {
		const row = database.first<RecordRow>(`SELECT ${recordColumns} FROM record WHERE seq = ?`, seq)
		if (!row) continue
		seen.add(seq)
		ids.add(row.id)
		yield faultsOf(parts, row, listed.get(seq), use)[0]
	}
	for (const row of listed.values())
		if (!seen.has(row.seq))
			yield { ...nameOf(row), what: ids.has(row.id) ? 'row-stray' : 'record-gone' }
}
/** Every fault at once. */
export const rollFaults = (
	parts: Parts,
	use: (record: StoredRecord) => void = () => {},
): RollFault[] => [...walkRoll(parts, use)].flatMap((fault) => fault ?? [])
const nameOf = ({ id, kind, at, seq }: Omit<RollFault, 'what'>) => ({ id, kind, at, seq })
function faultsOf(
	parts: Parts,
	row: RecordRow,
	listed: RollRow | undefined,
	use: (record: StoredRecord) => void,
): RollFault[] {
	let record: StoredRecord
	try {
		record = openRecord(parts.keyring.opened(), row)
	} catch (error) {
		if (!isDamage(error)) throw error
		return [{ ...nameOf(listed ?? row), what: 'record-damaged' }]
	}
	use(record)
	if (!listed) return [{ ...nameOf(row), what: 'row-gone' }]
	const expected = expectedRow(parts, row, record, listed)
	if (same.some((key) => expected[key] !== listed[key]))
		return [{ ...nameOf(row), what: 'row-other' }]
	return isCardWhole(parts, listed) ? [] : [{ ...nameOf(row), what: 'card-damaged' }]
}
/** What the roll should say of a record; of the first versions the roll alone knows the subject. */
function expectedRow(
	{ cards }: Parts,
	row: RecordRow,
	record: StoredRecord,
	listed: RollRow | undefined,
): RollRow {
	// of the first form nothing but id and kind was bound: the roll is believed, the anchor tells
	const { seq, id, kind, at, follows, origin, tick, number, form } =
		row.form === 1 && listed ? listed : row
	const place = { seq, id, kind, at, follows, origin, tick, number, form }
	const card = cards.cardOf(record, form)
	if (card) return cards.ofRecord(place, card).row
	return { ...place, about: listed?.about ?? null, thing: listed?.thing ?? null, cardForm: 0 }
}
const isCardWhole = ({ cards }: Parts, row: RollRow): boolean =>
	row.cardForm === 0 || cards.isWhole(row)

/**
 * Makes rows and cards anew where the records say otherwise.
 * @returns how many were made anew
 */
export function repairRoll(parts: Parts, faults: readonly RollFault[]): number {
	const { roll } = parts
	const mendable = faults.filter(({ what }) => what !== 'record-damaged' && what !== 'record-gone')
	for (const { id, what, seq } of mendable) {
		if (what === 'row-stray') roll.dropRow(seq)
		else makeAnew(parts, id)
	}
	return mendable.length
}
function makeAnew({ database, keyring, roll, cards }: Parts, id: string): void {
	const row = database.first<RecordRow>(
		`SELECT ${recordColumns} FROM record NOT INDEXED WHERE id = ?`,
		id,
	)
	if (!row) return
	const { seq, kind, at, follows, origin, tick, number, form } = row
	const place = { seq, id, kind, at, follows, origin, tick, number, form }
	const record = openRecord(keyring.opened(), row)
	const made = cards.ofRecord(place, cards.cardOf(record, form) ?? {})
	roll.replace(made.row, made.card)
}
