/**
 * The audit trail in the file: rows sealed like the records and chained by keyed digests. While the
 * records are locked only the letter box takes rows, and few sorts of them.
 */
import { createHash, createHmac, timingSafeEqual } from 'node:crypto'
import {
	type AuditEntry,
	type AuditFunction,
	type AuditRow,
	auditRowSchema,
} from '../../shared/desk/records/audit.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { dropIn, takeOut } from './box.ts'
import type { DataKeys } from './data-keys.ts'
import type { Database } from './database.ts'
import { envelopeForm, keyIdOf, open, shut } from './envelope.ts'
import { unseal } from './seal.ts'

/** A link of the chain: the row's number and its digest. */
export interface Link {
	seq: number
	hash: Uint8Array
}
interface RawRow extends Link {
	form: number
	sealed: Uint8Array
}
/** A row as it reads, with the digest of its link. */
export interface OpenRow extends AuditRow {
	hash: string
}
/** What rows are sealed and opened with; without the data keys only the letter box takes any. */
export interface TrailKeys {
	keys: DataKeys | undefined
	boxPublic: Uint8Array | undefined
	boxPrivate: () => Uint8Array
}
/** Which rows are wanted of a page, and who is told of those that cannot be read. */
export interface PageWish {
	wanted?: (row: OpenRow) => boolean
	leftOut?: (from: number, to: number) => void
}
const start: Link = { seq: 0, hash: Buffer.alloc(32) }
/** rows of the first versions, sealed with the first key */
const firstForm = 1
const boxForm = 2
/** the most faults that are named one by one */
const mostNamed = 50
/** What may be written while the records are locked; of anything else the letter box is not believed. */
export const whileLocked: readonly AuditFunction[] = ['unlock-failed', 'refused', 'lock']
const rowSchema = auditRowSchema.loose()

export class AuditChain {
	readonly #database: Database
	#last: Link | undefined
	/** the first row that is keyed: what came before is of the first versions */
	#firstKeyed: number | undefined
	constructor(database: Database) {
		this.#database = database
	}

	last(): Link {
		this.#last ??=
			this.#database.first<Link>('SELECT seq, hash FROM audit ORDER BY seq DESC LIMIT 1') ?? start
		return this.#last
	}
	/** The digest of a row, hex; undefined where there is no such row. */
	hashAt(seq: number): string | undefined {
		if (seq === 0) return hex(start.hash)
		const row = this.#database.first<Link>('SELECT seq, hash FROM audit WHERE seq = ?', seq)
		return row && hex(row.hash)
	}
	/** Another file was opened, or a transaction rolled back: what was remembered is not so. */
	forget(): void {
		this.#last = undefined
		this.#firstKeyed = undefined
	}
	/** The number of the first keyed row; past the last row where there is none yet. */
	get firstKeyed(): number {
		if (this.#firstKeyed === undefined) {
			const row = this.#database.first<{ seq: number | null }>(
				'SELECT min(seq) AS seq FROM audit WHERE form = ?',
				envelopeForm,
			)
			this.#firstKeyed = row?.seq ?? undefined
		}
		return this.#firstKeyed ?? Number.POSITIVE_INFINITY
	}
	/**
	 * Adds a row; the caller decides on the transaction. While locked only the letter box is open, and
	 * where there is none yet nothing is added.
	 */
	add(entry: AuditEntry, workstationId: string, keys: TrailKeys): void {
		const before = this.last()
		const seq = before.seq + 1
		const row: AuditRow = { ...entry, seq, workstationId, prevHash: hex(before.hash) }
		const made = shutRow(keys, seq, Buffer.from(JSON.stringify(row), 'utf8'))
		if (!made) return
		const hash = linkOf(keys.keys, before.hash, { seq, ...made })
		this.#database.run(
			'INSERT INTO audit (seq, form, sealed, hash) VALUES (?, ?, ?, ?)',
			seq,
			made.form,
			made.sealed,
			hash,
		)
		this.#last = { seq, hash }
	}

	/**
	 * Newest first. A row that is missing, or cannot be opened or believed, is left out; `leftOut` gets
	 * the numbers of those.
	 */
	page(
		before: number,
		limit: number,
		keys: TrailKeys,
		{ wanted = () => true, leftOut = () => {} }: PageWish = {},
	): OpenRow[] {
		const rows: OpenRow[] = []
		let above = Math.min(before, this.last().seq + 1)
		for (const raw of this.#database.iterate<RawRow>(
			'SELECT seq, form, sealed, hash FROM audit WHERE seq < ? ORDER BY seq DESC',
			before,
		)) {
			const row = this.#believed(raw, keys)
			if (above - raw.seq > 1) leftOut(raw.seq + 1, above - 1)
			if (!row) leftOut(raw.seq, raw.seq)
			else if (wanted(row)) rows.push(row)
			above = raw.seq
			if (rows.length === limit) break
		}
		return rows
	}
	#believed(raw: RawRow, keys: TrailKeys): OpenRow | undefined {
		try {
			const row = openRow(raw, keys)
			return isForged(raw, row, this.firstKeyed) ? undefined : row
		} catch {
			return undefined
		}
	}
	/**
	 * Walks the whole chain. @returns the number of rows and a sentence for each fault, the row named
	 */
	verify(keys: TrailKeys, each: (row: OpenRow) => void): { rows: number; problems: string[] } {
		const problems: string[] = []
		let previous = start
		let rows = 0
		for (const raw of this.#database.iterate<RawRow>(
			'SELECT seq, form, sealed, hash FROM audit ORDER BY seq',
		)) {
			rows++
			if (problems.length > mostNamed) break
			problems.push(...linkProblems(keys, previous, raw))
			problems.push(...this.#contentProblems(previous, raw, keys, each))
			previous = raw
		}
		return { rows, problems: [...new Set(problems)] }
	}
	#contentProblems(
		previous: Link,
		raw: RawRow,
		keys: TrailKeys,
		each: (row: OpenRow) => void,
	): string[] {
		let row: OpenRow
		try {
			row = openRow(raw, keys)
		} catch {
			return [`Row ${raw.seq} was altered: it cannot be opened.`]
		}
		if (isForged(raw, row, this.firstKeyed))
			return [
				`Row ${raw.seq} says "${row.function}", but came in as what is noted while the records ` +
					'are locked: nobody can do that then. It was put in by somebody without a key.',
			]
		each(row)
		return row.seq !== raw.seq || (followsOn(previous, raw) && row.prevHash !== hex(previous.hash))
			? [`Row ${raw.seq} was altered, or the row before it was replaced.`]
			: []
	}
}
function shutRow(
	{ keys, boxPublic }: TrailKeys,
	seq: number,
	clear: Uint8Array,
): { form: number; sealed: Uint8Array } | undefined {
	if (keys) return { form: envelopeForm, sealed: shut(keys.newest, clear, ['audit', seq]) }
	if (boxPublic) return { form: boxForm, sealed: dropIn(boxPublic, String(seq), 'audit', clear) }
	return undefined
}
function clearOf({ form, seq, sealed }: RawRow, { keys, boxPrivate }: TrailKeys): Uint8Array {
	const opened = need(keys, 'the data keys')
	if (form === envelopeForm) return open(opened, sealed, ['audit', seq])
	if (form === boxForm) return takeOut(boxPrivate(), String(seq), 'audit', sealed)
	return unseal(opened.root.reader, String(seq), 'audit', sealed)
}
function openRow(raw: RawRow, keys: TrailKeys): OpenRow {
	const clear = Buffer.from(clearOf(raw, keys)).toString('utf8')
	return { ...rowSchema.parse(JSON.parse(clear)), hash: hex(raw.hash) }
}
/** Whether a row without a key says what only a key could have written. */
const isForged = (raw: RawRow, row: OpenRow, firstKeyed: number): boolean =>
	raw.seq > firstKeyed &&
	(raw.form === firstForm || (raw.form === boxForm && !whileLocked.includes(row.function)))
const followsOn = (previous: Link, raw: RawRow) => raw.seq === previous.seq + 1
function linkProblems({ keys }: TrailKeys, previous: Link, raw: RawRow): string[] {
	if (!followsOn(previous, raw)) return [missingRows(previous.seq + 1, raw.seq - 1)]
	const expected = linkOf(keys, previous.hash, raw)
	if (expected.length === raw.hash.length && timingSafeEqual(expected, raw.hash)) return []
	return [`Row ${raw.seq} was altered: its digest does not follow from the row before it.`]
}
/** The sentence for rows that are not there. */
export const missingRows = (from: number, to: number): string =>
	from === to
		? `Row ${from} is missing from the audit trail.`
		: `Rows ${from} to ${to} are missing from the audit trail.`
const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex')
/** The digest of a link: keyed where the row was written with a key. */
function linkOf(
	keys: DataKeys | undefined,
	previous: Uint8Array,
	{ seq, form, sealed }: Omit<RawRow, 'hash'>,
): Uint8Array {
	const key = form === envelopeForm ? keys?.derived(keyIdOf(sealed), 'chain') : undefined
	const hash = key ? createHmac('sha256', key) : createHash('sha256')
	return hash.update(previous).update(`|${seq}|`).update(sealed).digest()
}
