/**
 * The audit trail in the file: rows chained by hash, sealed like the records, the chain's head kept
 * a second time beside it.
 */
import { createHash } from 'node:crypto'
import type { AuditEntry, AuditRow } from '../../shared/desk/records/audit.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { dropIn, takeOut } from './box.ts'
import { ChainHead, type Link, sameBytes } from './chain-head.ts'
import type { Database } from './database.ts'
import { seal, unseal } from './seal.ts'

interface RawRow extends Link {
	form: number
	sealed: Uint8Array
}
/** A row as it reads, with the hash of its link. */
export interface OpenRow extends AuditRow {
	hash: string
}
/** What rows are sealed and opened with; without the data key only the letter box takes any. */
export interface TrailKeys {
	dataKey: Uint8Array | undefined
	boxPublic: Uint8Array | undefined
	boxPrivate: () => Uint8Array
}
const start: Link = { seq: 0, hash: Buffer.alloc(32) }
const sealedForm = 1
const boxForm = 2
/** the most faults that are named one by one */
const mostNamed = 50

export class AuditChain {
	readonly #database: Database
	readonly #head: ChainHead
	#last: Link | undefined
	constructor(database: Database, headFile: string) {
		this.#database = database
		this.#head = new ChainHead(headFile)
	}

	#lastLink(): Link {
		this.#last ??=
			this.#database.first<Link>('SELECT seq, hash FROM audit ORDER BY seq DESC LIMIT 1') ?? start
		return this.#last
	}
	/** Another file was opened, or a transaction rolled back: what was remembered is not so. */
	forget(): void {
		this.#last = undefined
	}
	/**
	 * Adds a row; the caller decides on the transaction. While locked only the letter box is open,
	 * and where there is none yet nothing is added.
	 */
	add(entry: AuditEntry, workstationId: string, keys: TrailKeys): void {
		const before = this.#lastLink()
		const seq = before.seq + 1
		const row: AuditRow = { ...entry, seq, workstationId, prevHash: hex(before.hash) }
		const shut = shutRow(keys, seq, Buffer.from(JSON.stringify(row), 'utf8'))
		if (!shut) return
		const hash = hashOf(before.hash, seq, shut.sealed)
		this.#database.run(
			'INSERT INTO audit (seq, form, sealed, hash) VALUES (?, ?, ?, ?)',
			seq,
			shut.form,
			shut.sealed,
			hash,
		)
		this.#last = { seq, hash }
	}
	/** Writes the head beside the store; called once the rows are committed. */
	noteHead(dataKey: Uint8Array): void {
		this.#head.note(dataKey, this.#lastLink())
	}
	removeHead(): void {
		this.#head.remove()
	}
	close(): void {
		this.#head.close()
	}

	/** Newest first. A row that cannot be opened is left out here and named by verify(). */
	page(
		before: number,
		limit: number,
		keys: TrailKeys,
		wanted: (row: OpenRow) => boolean = () => true,
	): OpenRow[] {
		const rows: OpenRow[] = []
		for (const raw of this.#database.iterate<RawRow>(
			'SELECT seq, form, sealed, hash FROM audit WHERE seq < ? ORDER BY seq DESC',
			before,
		)) {
			try {
				const row = openRow(raw, keys)
				if (wanted(row)) rows.push(row)
			} catch {
				/* named by verify */
			}
			if (rows.length === limit) break
		}
		return rows
	}
	/**
	 * Walks the whole chain. @returns the number of rows and a sentence for each fault, the row named
	 */
	verify(
		keys: TrailKeys & { dataKey: Uint8Array },
		each: (row: OpenRow) => void,
	): { rows: number; problems: string[] } {
		const problems: string[] = []
		const head = this.#head.read(keys.dataKey)
		let headHash: string | undefined
		let previous = start
		let rows = 0
		for (const raw of this.#database.iterate<RawRow>(
			'SELECT seq, form, sealed, hash FROM audit ORDER BY seq',
		)) {
			rows++
			if (problems.length > mostNamed) break
			problems.push(...linkProblems(previous, raw), ...contentProblems(previous, raw, keys, each))
			if (head?.seq === raw.seq) headHash = hex(raw.hash)
			previous = raw
		}
		problems.push(...headProblems(head, previous.seq, headHash))
		return { rows, problems: [...new Set(problems)] }
	}
	/** What the two places say at unlock, in words; empty where they agree. */
	headWarning(dataKey: Uint8Array): string {
		const last = this.#lastLink().seq
		if (last === 0) return ''
		const head = this.#head.read(dataKey)
		if (!head)
			return (
				"The second copy of the audit trail's head is missing or damaged. Open the audit " +
				'trail and have it verified.'
			)
		if (head.seq > last)
			return (
				`${missing(last + 1, head.seq)} They were cut off at the end of the audit trail. ` +
				'Compare with a backup.'
			)
		return ''
	}
}
function shutRow(
	{ dataKey, boxPublic }: TrailKeys,
	seq: number,
	clear: Uint8Array,
): { form: number; sealed: Uint8Array } | undefined {
	if (dataKey) return { form: sealedForm, sealed: seal(dataKey, String(seq), 'audit', clear) }
	if (boxPublic) return { form: boxForm, sealed: dropIn(boxPublic, String(seq), 'audit', clear) }
	return undefined
}
function openRow(raw: RawRow, keys: TrailKeys): OpenRow {
	const clear =
		raw.form === boxForm
			? takeOut(keys.boxPrivate(), String(raw.seq), 'audit', raw.sealed)
			: unseal(need(keys.dataKey, 'the data key'), String(raw.seq), 'audit', raw.sealed)
	return { ...(JSON.parse(Buffer.from(clear).toString('utf8')) as AuditRow), hash: hex(raw.hash) }
}
const followsOn = (previous: Link, raw: RawRow) => raw.seq === previous.seq + 1
function linkProblems(previous: Link, raw: RawRow): string[] {
	if (!followsOn(previous, raw)) return [missing(previous.seq + 1, raw.seq - 1)]
	if (sameBytes(hashOf(previous.hash, raw.seq, raw.sealed), raw.hash)) return []
	return [`Row ${raw.seq} was altered: its hash does not follow from the row before it.`]
}
function contentProblems(
	previous: Link,
	raw: RawRow,
	keys: TrailKeys,
	each: (row: OpenRow) => void,
): string[] {
	const problems: string[] = []
	try {
		const row = openRow(raw, keys)
		if (row.seq !== raw.seq || (followsOn(previous, raw) && row.prevHash !== hex(previous.hash)))
			problems.push(`Row ${raw.seq} was altered, or the row before it was replaced.`)
		each(row)
	} catch {
		problems.push(`Row ${raw.seq} was altered: it cannot be opened.`)
	}
	return problems
}
/** @param hashThere what the chain has in the row that the second copy names */
function headProblems(
	head: { seq: number; hash: string } | undefined,
	lastSeq: number,
	hashThere: string | undefined,
): string[] {
	if (!head)
		return [
			'The second copy of the chain head is missing or damaged: rows removed from the end ' +
				'cannot be told. Compare with a backup.',
		]
	if (head.seq > lastSeq) return [`${missing(lastSeq + 1, head.seq)} They were cut off at the end.`]
	if (hashThere !== undefined && hashThere !== head.hash)
		return [`Row ${head.seq} is not the one whose hash was kept beside the store.`]
	return []
}
const missing = (from: number, to: number) =>
	from === to
		? `Row ${from} is missing from the audit trail.`
		: `Rows ${from} to ${to} are missing from the audit trail.`
const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex')
const hashOf = (previous: Uint8Array, seq: number, sealed: Uint8Array) =>
	createHash('sha256').update(previous).update(`|${seq}|`).update(sealed).digest()
