/** What somebody can do who has the files of the folder and no key. */
import { createHash } from 'node:crypto'
import type { DatabaseSync, SQLInputValue } from 'node:sqlite'
import { dropIn } from '../../electron/store/box.ts'

/** The records of this evening, and the same ones as they were this morning. */
export interface Bench {
	db: DatabaseSync
	morning: DatabaseSync
	/** the sealed note of a restore that was made in the morning, as it lay in the file then */
	restoreNote: Uint8Array
	/** puts the head beside the records back as it was this morning, or takes it away */
	headOfMorning: () => void
	dropHead: () => void
}
export interface Forgery {
	name: string
	forge: (bench: Bench) => void
	/** why nobody can find it; absent: it must be found */
	cannotBeFound?: string
}
type Row = Record<string, SQLInputValue>
const all = (db: DatabaseSync, sql: string, ...given: SQLInputValue[]): Row[] => db.prepare(sql).all(...given) as Row[]
const one = (db: DatabaseSync, sql: string, ...given: SQLInputValue[]): Row => {
	const [row] = all(db, sql, ...given)
	if (!row) throw new Error(`nothing to forge: ${sql} ${given.join(' ')}`)
	return row
}
const run = (db: DatabaseSync, sql: string, ...given: SQLInputValue[]): void => {
	if (db.prepare(sql).run(...given).changes === 0) throw new Error(`forged nothing: ${sql} ${given.join(' ')}`)
}
const lastOf = (db: DatabaseSync, kind: string): Row => one(db, 'SELECT * FROM record WHERE kind = ? ORDER BY seq DESC LIMIT 1', kind)
/** An older form in the place of the present one: less of it is bound. */
const downgrade = (db: DatabaseSync, table: string, form: number): void => {
	const [row] = all(db, `SELECT seq FROM ${table} WHERE form = 3 ORDER BY seq DESC LIMIT 1`)
	run(db, `UPDATE ${table} SET form = ? WHERE seq = ?`, form, (row as Row).seq as number)
}
const withdrawal = (db: DatabaseSync): Row => lastOf(db, 'consent')
const lastSeq = (db: DatabaseSync, table: string): number => Number(one(db, `SELECT max(seq) AS seq FROM ${table}`).seq)
const insert = (db: DatabaseSync, table: string, row: Row): void => {
	const names = Object.keys(row)
	run(db, `INSERT OR REPLACE INTO ${table} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`, ...Object.values(row))
}
/** Puts the contents of two rows in one another's place. */
const swap = (db: DatabaseSync, table: string, key: string, [first, second]: [Row, Row], columns: readonly string[]): void => {
	const sql = `UPDATE ${table} SET ${columns.map((column) => `${column} = ?`).join(', ')} WHERE ${key} = ?`
	const [a, b] = [columns.map((column) => first[column] as SQLInputValue), columns.map((column) => second[column] as SQLInputValue)]
	run(db, sql, ...b, first[key] as SQLInputValue)
	run(db, sql, ...a, second[key] as SQLInputValue)
}
const removeRecord = (db: DatabaseSync, id: SQLInputValue): void => {
	run(db, 'DELETE FROM record WHERE id = ?', id)
	run(db, 'DELETE FROM roll WHERE id = ?', id)
}
const cutTail = (db: DatabaseSync, table: string, rows: number): void => run(db, `DELETE FROM ${table} WHERE seq > ?`, lastSeq(db, table) - rows)
/** Takes everything of one table back to the morning. */
const asInMorning = ({ db, morning }: Bench, table: string): void => {
	db.exec(`DELETE FROM ${table}`)
	for (const row of all(morning, `SELECT * FROM ${table}`)) insert(db, table, row)
}
/** A row for the letter box, whose public key stands in clear: it claims whatever one likes. */
const dropRow = (db: DatabaseSync, claims: object): void => {
	const box = one(db, "SELECT value FROM setting WHERE name = 'box-public'").value as Uint8Array
	const last = one(db, 'SELECT seq, hash FROM audit ORDER BY seq DESC LIMIT 1')
	const seq = Number(last.seq) + 1
	const before = last.hash as Uint8Array
	const row = { utcTime: '2027-01-21T11:30:00.000Z', localOffsetMinutes: 0, personId: null, role: 'nobody', workstationId: 'abcdef012345', playerId: null, objectRef: '', purpose: '', outcome: 'done', ...claims, seq, prevHash: Buffer.from(before).toString('hex') }
	const sealed = dropIn(box, String(seq), 'audit', Buffer.from(JSON.stringify(row), 'utf8'))
	const hash = createHash('sha256').update(before).update(`|${seq}|`).update(sealed).digest()
	insert(db, 'audit', { seq, form: 2, sealed, hash })
}
const put = (db: DatabaseSync, name: string, value: string): void => insert(db, 'setting', { name, value: Buffer.from(value, 'utf8') })
const drafts = (db: DatabaseSync): [Row, Row] => {
	const [first, second] = all(db, 'SELECT * FROM draft ORDER BY id')
	if (!first || !second) throw new Error('fewer than two drafts')
	return [first, second]
}
const middleOf = (db: DatabaseSync): [Row, Row] => {
	const middle = Math.floor(lastSeq(db, 'audit') * 0.9)
	return [one(db, 'SELECT * FROM audit WHERE seq = ?', middle), one(db, 'SELECT * FROM audit WHERE seq = ?', middle + 1)]
}
const whole = ['record', 'roll', 'draft', 'keyslot', 'setting', 'audit', 'datakey'] as const

export const forgeries: readonly Forgery[] = [
	{ name: 'a signed visit is taken out, from record and roll', forge: ({ db }) => removeRecord(db, lastOf(db, 'visit').id as string) },
	{ name: 'a withdrawal of consent is taken out, from record and roll', forge: ({ db }) => removeRecord(db, withdrawal(db).id as string) },
	{ name: 'a report is taken out of the records alone', forge: ({ db }) => run(db, 'DELETE FROM record WHERE id = ?', lastOf(db, 'report').id as string) },
	{ name: 'a visit is taken out of the roll alone', forge: ({ db }) => run(db, 'DELETE FROM roll WHERE id = ?', lastOf(db, 'visit').id as string) },
	{ name: 'a card is taken off', forge: ({ db }) => run(db, 'UPDATE roll SET card = NULL, cardForm = 0 WHERE id = ?', lastOf(db, 'visit').id as string) },
	{
		name: 'a card is moved to another player',
		forge: ({ db }) => {
			const visit = one(db, "SELECT * FROM roll WHERE kind = 'visit' ORDER BY seq DESC LIMIT 1")
			run(db, 'UPDATE roll SET about = ? WHERE id = ?', one(db, 'SELECT about FROM roll WHERE about IS NOT NULL AND about <> ? LIMIT 1', visit.about as string).about as string, visit.id as string)
		},
	},
	{
		name: 'two cards are exchanged',
		forge: ({ db }) => {
			const [first, second] = all(db, "SELECT * FROM roll WHERE kind = 'visit' ORDER BY seq DESC LIMIT 2")
			swap(db, 'roll', 'id', [first as Row, second as Row], ['about', 'thing', 'card'])
		},
	},
	{
		name: 'an older version of a player is put under the id of the newest',
		forge: ({ db }) => {
			const [newest, older] = all(db, "SELECT * FROM record WHERE kind = 'player' ORDER BY seq DESC LIMIT 2")
			run(db, 'UPDATE record SET sealed = ? WHERE id = ?', (older as Row).sealed as Uint8Array, (newest as Row).id as string)
		},
	},
	{
		name: 'what two records hold is exchanged',
		forge: ({ db }) => {
			const [first, second] = all(db, "SELECT * FROM record WHERE kind = 'visit' ORDER BY seq DESC LIMIT 2")
			swap(db, 'record', 'id', [first as Row, second as Row], ['sealed', 'form', 'origin', 'tick', 'number'])
		},
	},
	{
		name: 'a record is put in a second time, under another id',
		forge: ({ db }) => {
			const { seq: _, ...row } = lastOf(db, 'consent')
			const { seq: __, ...line } = one(db, 'SELECT * FROM roll WHERE id = ?', row.id as string)
			const id = '00000000-0000-4000-8000-000000000000'
			insert(db, 'record', { ...row, id })
			insert(db, 'roll', { ...line, id, seq: lastSeq(db, 'record') })
		},
	},
	{
		name: 'the kind of a record is changed in clear',
		forge: ({ db }) => {
			const { id } = withdrawal(db)
			run(db, "UPDATE record SET kind = 'hold' WHERE id = ?", id as string)
			run(db, "UPDATE roll SET kind = 'hold' WHERE id = ?", id as string)
		},
	},
	{
		name: 'the time of a record is changed in clear',
		forge: ({ db }) => {
			const { id } = lastOf(db, 'visit')
			run(db, "UPDATE record SET at = '2020-01-01T00:00:00.000Z' WHERE id = ?", id as string)
			run(db, "UPDATE roll SET at = '2020-01-01T00:00:00.000Z' WHERE id = ?", id as string)
		},
	},
	{
		name: 'records and trail are cut at their ends',
		forge: ({ db }) => {
			cutTail(db, 'record', 3)
			cutTail(db, 'roll', 3)
			cutTail(db, 'audit', 12)
		},
	},
	{
		name: 'the records alone are cut at their end',
		forge: ({ db }) => {
			cutTail(db, 'record', 2)
			cutTail(db, 'roll', 2)
		},
	},
	{ name: 'the trail alone is cut at its end', forge: ({ db }) => cutTail(db, 'audit', 5) },
	{
		name: 'this morning’s records and roll in the place of those of now',
		forge: (bench) => {
			asInMorning(bench, 'record')
			asInMorning(bench, 'roll')
		},
	},
	{
		name: 'this morning’s file in the place of that of now',
		forge: (bench) => {
			for (const table of whole) asInMorning(bench, table)
		},
	},
	{ name: 'a row of the trail is taken out', forge: ({ db }) => run(db, 'DELETE FROM audit WHERE seq = ?', middleOf(db)[0].seq as number) },
	{
		name: 'a row of the trail is taken out and the gap closed',
		forge: ({ db }) => {
			const seq = middleOf(db)[0].seq as number
			run(db, 'DELETE FROM audit WHERE seq = ?', seq)
			for (const row of all(db, 'SELECT seq FROM audit WHERE seq > ? ORDER BY seq', seq)) run(db, 'UPDATE audit SET seq = ? WHERE seq = ?', Number(row.seq) - 1, row.seq as number)
		},
	},
	{
		name: 'a row of the trail is written again in the place of another',
		forge: ({ db }) => {
			const [first, second] = middleOf(db)
			run(db, 'UPDATE audit SET sealed = ?, hash = ? WHERE seq = ?', first.sealed as Uint8Array, first.hash as Uint8Array, second.seq as number)
		},
	},
	{ name: 'two rows of the trail are exchanged', forge: ({ db }) => swap(db, 'audit', 'seq', middleOf(db), ['form', 'sealed', 'hash']) },
	{
		name: 'the last row of the trail is written once more at its end',
		forge: ({ db }) => {
			const last = one(db, 'SELECT * FROM audit ORDER BY seq DESC LIMIT 1')
			insert(db, 'audit', { ...last, seq: Number(last.seq) + 1 })
		},
	},
	{ name: 'the name of this installation is changed', forge: ({ db }) => put(db, 'origin', '0123456789ab') },
	{ name: 'the id of the records is changed', forge: ({ db }) => put(db, 'records-id', '0123456789ab') },
	{ name: 'the settings are those of this morning', forge: (bench) => asInMorning(bench, 'setting') },
	{ name: 'the letter box is another one', forge: ({ db }) => put(db, 'box-public', 'no key of anybody') },
	{
		name: 'a restore is claimed, the trail cut',
		forge: ({ db }) => {
			put(db, 'restored', 'backup of 2027-01-20T09:00:00.000Z')
			cutTail(db, 'record', 3)
			cutTail(db, 'roll', 3)
			cutTail(db, 'audit', 12)
		},
	},
	{
		name: 'a restore is claimed, this morning’s file in the place of that of now',
		forge: (bench) => {
			for (const table of whole) asInMorning(bench, table)
			put(bench.db, 'restored', 'backup of 2027-01-20T09:00:00.000Z')
		},
	},
	{
		name: 'a restore is claimed by its sealed note of the morning, this morning’s file in the place of that of now',
		forge: (bench) => {
			for (const table of whole) asInMorning(bench, table)
			insert(bench.db, 'setting', { name: 'restored', value: bench.restoreNote })
		},
	},
	{
		name: 'a restore is claimed by its sealed note of the morning, the records cut',
		forge: ({ db, restoreNote }) => {
			insert(db, 'setting', { name: 'restored', value: restoreNote })
			cutTail(db, 'record', 3)
			cutTail(db, 'roll', 3)
			cutTail(db, 'audit', 12)
		},
	},
	{
		name: 'this morning’s file and the head beside it in the place of those of now',
		forge: (bench) => {
			for (const table of whole) asInMorning(bench, table)
			bench.headOfMorning()
		},
	},
	{
		name: 'the records are cut and the head beside them is taken away',
		forge: ({ db, dropHead }) => {
			cutTail(db, 'record', 3)
			cutTail(db, 'roll', 3)
			dropHead()
		},
	},
	{
		name: 'a destruction is claimed, the records cut',
		forge: ({ db }) => {
			put(db, 'purge', '1')
			cutTail(db, 'record', 3)
			cutTail(db, 'roll', 3)
		},
	},
	{
		name: 'a move to another folder is claimed, the records cut',
		forge: ({ db }) => {
			put(db, 'place', '{"host":"elsewhere","folder":"/elsewhere","file":"7"}')
			cutTail(db, 'record', 3)
			cutTail(db, 'roll', 3)
		},
	},
	{
		name: 'the inventory of drafts and settings is taken out, and a draft with it',
		forge: ({ db }) => {
			run(db, "DELETE FROM setting WHERE name = 'inventory'")
			run(db, 'DELETE FROM draft WHERE id = ?', drafts(db)[0].id as string)
		},
	},
	{ name: 'a record is called one of the second form', forge: ({ db }) => downgrade(db, 'record', 2) },
	{
		name: 'a record is called one of the first form, in the roll too',
		forge: ({ db }) => {
			downgrade(db, 'record', 1)
			downgrade(db, 'roll', 1)
		},
	},
	{ name: 'the newest row of the trail is called one of the first form', forge: ({ db }) => downgrade(db, 'audit', 1) },
	{ name: 'the whole trail is taken out', forge: ({ db }) => db.exec('DELETE FROM audit') },
	{ name: 'the table of the roll is taken out', forge: ({ db }) => db.exec('DROP TABLE roll') },
	{ name: 'the schema is called the one before', forge: ({ db }) => run(db, "UPDATE meta SET value = 2 WHERE name = 'schema'") },
	{
		name: 'the order of two records in the file is turned round',
		forge: ({ db }) => {
			for (const table of ['record', 'roll']) {
				const last = lastSeq(db, table)
				run(db, `UPDATE ${table} SET seq = -1 WHERE seq = ?`, last)
				run(db, `UPDATE ${table} SET seq = ? WHERE seq = ?`, last, Number(one(db, `SELECT max(seq) AS seq FROM ${table}`).seq))
				run(db, `UPDATE ${table} SET seq = ? WHERE seq = -1`, last - 1)
			}
		},
	},
	{ name: 'key slots of this morning, by which a changed passphrase opens again', forge: (bench) => asInMorning(bench, 'keyslot') },
	{ name: 'the key slot of one person is taken out', forge: ({ db }) => run(db, "DELETE FROM keyslot WHERE slot = (SELECT slot FROM keyslot WHERE slot LIKE 'person-%' ORDER BY slot LIMIT 1)") },
	{
		name: 'two key slots are exchanged',
		forge: ({ db }) => {
			const [first, second] = all(db, "SELECT * FROM keyslot WHERE slot LIKE 'person-%' ORDER BY slot LIMIT 2")
			swap(db, 'keyslot', 'slot', [first as Row, second as Row], ['cost', 'salt', 'sealed', 'public', 'box'])
		},
	},
	{ name: 'two drafts are exchanged', forge: ({ db }) => swap(db, 'draft', 'id', drafts(db), ['sealed', 'at']) },
	{
		name: 'one draft is as it was this morning',
		forge: ({ db, morning }) => {
			const changed = all(db, 'SELECT * FROM draft').find((row) => {
				const [then] = all(morning, 'SELECT * FROM draft WHERE id = ?', row.id as string)
				return then !== undefined && Buffer.compare(then.sealed as Uint8Array, row.sealed as Uint8Array) !== 0
			})
			if (!changed) throw new Error('no draft was changed since the morning')
			insert(db, 'draft', one(morning, 'SELECT * FROM draft WHERE id = ?', changed.id as string))
		},
	},
	{ name: 'a draft is taken out', forge: ({ db }) => run(db, 'DELETE FROM draft WHERE id = ?', drafts(db)[0].id as string) },
	{ name: 'a signature is dropped into the letter box', forge: ({ db }) => dropRow(db, { function: 'sign', objectRef: 'visit:forged' }) },
	{ name: 'a destruction is dropped into the letter box', forge: ({ db }) => dropRow(db, { function: 'destroy', objectRef: 'player:forged' }) },
	{ name: 'an unlock is dropped into the letter box', forge: ({ db }) => dropRow(db, { function: 'unlock', personId: 'owner', role: 'owner' }) },
	{ name: 'a failed unlock is dropped into the letter box', forge: ({ db }) => dropRow(db, { function: 'unlock-failed', outcome: 'refused' }), cannotBeFound: 'whoever has the files can type wrong passphrases too: the row is true of somebody, and changes nothing' },
	{ name: 'the last failed unlock is taken out of the letter box', forge: ({ db }) => cutTail(db, 'audit', 1), cannotBeFound: 'rows of the letter box since the last lock stand in no head: the head is keyed, and no key is there while the records are locked' },
	{
		name: 'the count of wrong tries is taken out',
		forge: ({ db }) => {
			db.exec("DELETE FROM setting WHERE name = 'tries'")
		},
		cannotBeFound: 'it is written while no key is there; it slows down who types, and whoever has the files tries elsewhere',
	},
]
