/** The records themselves: appended, read, never changed. */
import { createHash, randomUUID } from 'node:crypto'
import { present } from '../../shared/engine/plain/present.ts'
import { type SignedContent, signContent } from './author.ts'
import type { Cards } from './cards.ts'
import type { Database } from './database.ts'
import { isRuined } from './disk.ts'
import { envelopeForm } from './envelope.ts'
import type { Installation } from './installation.ts'
import type { Keyring } from './keyring.ts'
import type { Order } from './order.ts'
import {
	damagedWords,
	mustBeRecordId,
	type NewRecord,
	type RecordRow,
	type StoredRecord,
	sealRecord,
} from './record.ts'
import type { Roll, RollRow } from './roll.ts'
import { SealBroken } from './seal.ts'
import type { Trail } from './trail.ts'

/** The parts of a store that work on records together. */
export interface RecordParts {
	database: Database
	keyring: Keyring
	order: Order
	roll: Roll
	cards: Cards
	trail: Trail
	installation: Installation
}

export class Records {
	readonly #parts: RecordParts
	constructor(parts: RecordParts) {
		this.#parts = parts
	}
	get count(): number {
		return this.#parts.roll.count
	}
	has(id: string): boolean {
		return this.#parts.roll.byId(id) !== undefined
	}
	/**
	 * Appends one record with its card and its audit row.
	 * @returns its id
	 * @throws TypeError where the id given is no random UUID
	 */
	append(record: NewRecord): string {
		const { id = randomUUID(), kind, version = 1, at, follows, about, thing, card } = record
		mustBeRecordId(id)
		this.#parts.database.together(() => {
			const content: SignedContent = {
				...{ id, kind, version, at, ...this.#parts.order.next() },
				...present({ follows, about, thing, card }),
				value: record.value,
			}
			const signature = signContent(this.#parts.installation.signer(), content)
			this.insert({ ...content, signature })
			this.#parts.trail.note({
				function: record.does ?? (follows === undefined ? 'create' : 'update'),
				objectRef: `${kind}:${id}`,
				playerId: about ?? null,
			})
		})
		return id
	}
	/** Seals a record into its row and puts it on the roll; audit row and transaction are the caller's. */
	insert(record: SignedContent & { signature?: string | undefined }): void {
		const { database, keyring, roll, cards } = this.#parts
		const { id, kind, at, origin, tick, number } = record
		const follows = record.follows ?? null
		const bare: StoredRecord = {
			...{ id, kind, version: record.version, at, origin, tick, number, value: record.value },
			...present({
				follows: record.follows,
				about: record.about,
				thing: record.thing,
				card: record.card,
				signature: record.signature,
			}),
		}
		const seq = database.insert(
			'INSERT INTO record (id, kind, at, follows, sealed, form, origin, tick, number) VALUES ' +
				'(?, ?, ?, ?, ?, ?, ?, ?, ?)',
			...[id, kind, at, follows],
			sealRecord(keyring.opened().newest, bare),
			...[envelopeForm, origin, tick, number],
		)
		const place = { seq, id, kind, at, follows, origin, tick, number, form: envelopeForm }
		const { row, card } = cards.ofRecord(place, record)
		roll.add(row, card)
	}
	/** Takes a record away: only while the trigger that forbids it is lifted (destruction.ts). */
	drop(id: string): void {
		this.#parts.database.run('DELETE FROM record WHERE id = ?', id)
		this.#parts.roll.drop(id)
	}

	/** One record by id; undefined where there is none. @throws SealBroken where it is damaged */
	find(id: string): StoredRecord | undefined {
		return this.#parts.cards.find(id)
	}
	/** One record by id. @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		const record = this.find(id)
		if (!record) throw new Error('There is no such record.')
		return record
	}
	/** Whether a record is here whole. */
	isReadable(id: string): boolean {
		try {
			return this.#parts.database.isOpen && this.find(id) !== undefined
		} catch {
			return false
		}
	}
	/** The kinds of which there are records. */
	kinds(): string[] {
		return [...new Set(this.#parts.roll.all().map(({ kind }) => kind))].sort()
	}
	/** Records of the kinds in order of writing; damaged ones are named and the rest still load. */
	load(kinds: readonly string[]): { records: StoredRecord[]; damaged: string[] } {
		const records: StoredRecord[] = []
		const damaged: string[] = []
		this.each(
			kinds,
			(record) => {
				records.push(record)
			},
			damaged,
		)
		return { records, damaged }
	}
	/** The same one by one, so that the sealed bytes of many need not stand in memory together. */
	each(kinds: readonly string[], use: (record: StoredRecord) => void, damaged: string[]): void {
		this.#parts.keyring.opened()
		for (const kind of kinds)
			for (const row of this.#parts.roll.find('kind', kind)) {
				const record = this.#readable(row, damaged)
				if (record) use(record)
			}
	}
	#readable(row: RollRow, damaged: string[]): StoredRecord | undefined {
		try {
			return this.find(row.id)
		} catch (error) {
			if (!isDamage(error)) throw error
			damaged.push(damagedWords(row))
			return undefined
		}
	}

	/** Whether there are records of the first form, which bound neither time nor place. */
	hasUnbound(): boolean {
		return this.#parts.roll.all().some(({ form }) => form === 1)
	}
	/** The record that binds those of the first form as a whole; undefined where there is none. */
	anchorId(): string | undefined {
		return this.#parts.roll.find('kind', 'anchor')[0]?.id
	}
	/** Ids of the records of the first form, each with a digest of its whole row. */
	unboundDigests(): [string, string][] {
		return this.#parts.roll
			.all()
			.filter(({ form }) => form === 1)
			.flatMap(({ id }) => this.#rowOf(id) ?? [])
			.map((row) => [
				row.id,
				createHash('sha256')
					.update(JSON.stringify([row.id, row.kind, row.at, row.follows]))
					.update(row.sealed)
					.digest('hex')
					.slice(0, 32),
			])
	}
	#rowOf(id: string): RecordRow | undefined {
		try {
			return this.#parts.cards.row(id)
		} catch {
			return undefined
		}
	}
	/** Time of the newest of the records written last, as their clocks showed it. */
	newestOfLast(howMany: number): string | null {
		const times = this.#parts.roll.all().slice(-howMany)
		return times.reduce<string | null>(
			(newest, { at }) => (newest === null || at > newest ? at : newest),
			null,
		)
	}
}
/** Whether a failure is that of one record, not of the program: its seal, or its bytes on the disk. */
export const isDamage = (error: unknown): boolean =>
	error instanceof SealBroken || isRuined(error) || error instanceof SyntaxError
