/**
 * The audit trail: rows chained by hash, sealed like the records, the chain's head kept a second
 * time in a file beside the store.
 */
import { createHash, createHmac, hkdfSync, timingSafeEqual } from 'node:crypto'
import {
	closeSync,
	existsSync,
	ftruncateSync,
	openSync,
	readFileSync,
	rmSync,
	writeSync,
} from 'node:fs'
import type { DatabaseSync } from 'node:sqlite'
import type { AuditEntry, AuditRow } from '../../shared/desk/records/audit.ts'
import { dropIn, takeOut } from './box.ts'
import { seal, unseal } from './seal.ts'

interface Raw {
	seq: number
	form: number
	sealed: Uint8Array
	hash: Uint8Array
}
export interface OpenRow extends AuditRow {
	hash: string
}
export interface Keys {
	dataKey: Uint8Array | undefined
	boxPublic: Uint8Array | undefined
	boxPrivate: () => Uint8Array
}
const start = Buffer.alloc(32)
const sealedForm = 1
const boxForm = 2
/** the most faults that are named one by one */
const mostNamed = 50

export class AuditTrail {
	readonly #db: DatabaseSync
	readonly #headFile: string
	readonly #workstation: string
	#head: number | undefined
	#last: { seq: number; hash: Uint8Array } | undefined
	constructor(db: DatabaseSync, headFile: string, workstation: string) {
		this.#db = db
		this.#headFile = headFile
		this.#workstation = workstation
	}

	#lastRow(): { seq: number; hash: Uint8Array } {
		this.#last ??= (this.#db
			.prepare('SELECT seq, hash FROM audit ORDER BY seq DESC LIMIT 1')
			.get() as { seq: number; hash: Uint8Array } | undefined) ?? { seq: 0, hash: start }
		return this.#last
	}
	/** A transaction was rolled back: what was remembered of it is not so. */
	forget(): void {
		this.#last = undefined
	}
	/**
	 * Adds a row; the caller decides on the transaction. While locked only the letter box is open.
	 */
	add(entry: AuditEntry, keys: Keys): number {
		const before = this.#lastRow()
		const seq = before.seq + 1
		const row: AuditRow = {
			...entry,
			seq,
			workstationId: this.#workstation,
			prevHash: Buffer.from(before.hash).toString('hex'),
		}
		const clear = Buffer.from(JSON.stringify(row), 'utf8')
		const form = keys.dataKey ? sealedForm : boxForm
		if (!keys.dataKey && !keys.boxPublic) return before.seq
		const sealed = keys.dataKey
			? seal(keys.dataKey, String(seq), 'audit', clear)
			: dropIn(keys.boxPublic as Uint8Array, String(seq), 'audit', clear)
		const hash = hashOf(before.hash, seq, sealed)
		this.#db
			.prepare('INSERT INTO audit (seq, form, sealed, hash) VALUES (?, ?, ?, ?)')
			.run(seq, form, sealed, hash)
		this.#last = { seq, hash }
		return seq
	}
	/**
	 * Writes the head a second time; called once the row is committed. A head that lags by the last
	 * row after a power cut is no fault.
	 */
	noteHead(dataKey: Uint8Array): void {
		const { seq, hash } = this.#lastRow()
		const text = JSON.stringify({
			seq,
			hash: Buffer.from(hash).toString('hex'),
			mac: macOf(dataKey, seq, hash),
		})
		this.#head ??= openSync(this.#headFile, existsSync(this.#headFile) ? 'r+' : 'w+', 0o600)
		writeSync(this.#head, text.padEnd(256), 0)
		ftruncateSync(this.#head, 256)
	}
	dropHead(): void {
		this.close()
		rmSync(this.#headFile, { force: true })
	}
	close(): void {
		if (this.#head !== undefined) closeSync(this.#head)
		this.#head = undefined
	}

	#open(row: Raw, keys: Keys): OpenRow {
		const clear =
			row.form === boxForm
				? takeOut(keys.boxPrivate(), String(row.seq), 'audit', row.sealed)
				: unseal(keys.dataKey as Uint8Array, String(row.seq), 'audit', row.sealed)
		return {
			...(JSON.parse(Buffer.from(clear).toString('utf8')) as AuditRow),
			hash: Buffer.from(row.hash).toString('hex'),
		}
	}
	/** Newest first. A row that cannot be opened is left out here and named by verify(). */
	page(
		before: number,
		limit: number,
		keys: Keys,
		wanted: (row: OpenRow) => boolean = () => true,
	): OpenRow[] {
		const rows: OpenRow[] = []
		for (const raw of this.#db
			.prepare('SELECT seq, form, sealed, hash FROM audit WHERE seq < ? ORDER BY seq DESC')
			.iterate(before)) {
			try {
				const row = this.#open(raw as unknown as Raw, keys)
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
		keys: Keys,
		each: (row: OpenRow) => void = () => {},
	): { rows: number; problems: string[] } {
		const problems: string[] = []
		let previous: { seq: number; hash: Uint8Array } = { seq: 0, hash: start }
		let rows = 0
		const hashes = this.#headOnFile(keys.dataKey as Uint8Array)
		let headHash: string | undefined
		for (const raw of this.#db
			.prepare('SELECT seq, form, sealed, hash FROM audit ORDER BY seq')
			.iterate() as unknown as Iterable<Raw>) {
			rows++
			if (problems.length > mostNamed) break
			const gap = raw.seq !== previous.seq + 1
			if (gap) problems.push(missing(previous.seq + 1, raw.seq - 1))
			else if (!same(hashOf(previous.hash, raw.seq, raw.sealed), raw.hash))
				problems.push(
					`Row ${raw.seq} was altered: its hash does not follow from the row before it.`,
				)
			try {
				const row = this.#open(raw, keys)
				if (
					row.seq !== raw.seq ||
					(!gap && row.prevHash !== Buffer.from(previous.hash).toString('hex'))
				)
					problems.push(`Row ${raw.seq} was altered, or the row before it was replaced.`)
				each(row)
			} catch {
				problems.push(`Row ${raw.seq} was altered: it cannot be opened.`)
			}
			if (hashes?.seq === raw.seq) headHash = Buffer.from(raw.hash).toString('hex')
			previous = raw
		}
		if (!hashes)
			problems.push(
				'The second copy of the chain head is missing or damaged: rows removed from the end ' +
					'cannot be told. Compare with a backup.',
			)
		else if (hashes.seq > previous.seq)
			problems.push(`${missing(previous.seq + 1, hashes.seq)} They were cut off at the end.`)
		else if (headHash !== undefined && headHash !== hashes.hash)
			problems.push(`Row ${hashes.seq} is not the one whose hash was kept beside the store.`)
		return { rows, problems: [...new Set(problems)] }
	}
	#headOnFile(dataKey: Uint8Array): { seq: number; hash: string } | undefined {
		try {
			const { seq, hash, mac } = JSON.parse(readFileSync(this.#headFile, 'utf8')) as {
				seq: number
				hash: string
				mac: string
			}
			return same(
				Buffer.from(mac, 'hex'),
				Buffer.from(macOf(dataKey, seq, Buffer.from(hash, 'hex')), 'hex'),
			)
				? { seq, hash }
				: undefined
		} catch {
			return undefined
		}
	}
	/** What the two places say at unlock, in words; empty where they agree. */
	headWarning(dataKey: Uint8Array): string {
		const last = this.#lastRow().seq
		if (last === 0) return ''
		const head = this.#headOnFile(dataKey)
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
const missing = (from: number, to: number) =>
	from === to
		? `Row ${from} is missing from the audit trail.`
		: `Rows ${from} to ${to} are missing from the audit trail.`
const hashOf = (previous: Uint8Array, seq: number, sealed: Uint8Array) =>
	createHash('sha256').update(previous).update(`|${seq}|`).update(sealed).digest()
const macOf = (dataKey: Uint8Array, seq: number, hash: Uint8Array) =>
	createHmac('sha256', Buffer.from(hkdfSync('sha256', dataKey, '', 'lastwright head', 32)))
		.update(`${seq}|`)
		.update(hash)
		.digest('hex')
const same = (a: Uint8Array, b: Uint8Array) => a.length === b.length && timingSafeEqual(a, b)
