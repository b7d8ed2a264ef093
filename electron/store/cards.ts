/** Cards: the short form of a record that lists need, found by player or by thing. */
import type { Database } from './database.ts'
import { envelopeForm } from './envelope.ts'
import type { Keyring } from './keyring.ts'
import {
	type NewRecord,
	openCard,
	openRecord,
	type RecordRow,
	recordColumns,
	type StoredRecord,
	sealCard,
} from './record.ts'
import { isDamage } from './records.ts'
import type { Roll, RollKey, RollRow } from './roll.ts'
import { SealBroken } from './seal.ts'

export interface OpenCard {
	record: string
	kind: string
	card: unknown
}
/** What a card says of its record. */
export type CardOf = Pick<NewRecord, 'about' | 'thing' | 'card'>
/**
 * The card of a record of the first versions, which does not hold it itself; undefined where such a
 * record has none.
 */
export type RemakeCard = (
	record: StoredRecord,
	find: (id: string) => StoredRecord | undefined,
) => CardOf | undefined
/** Kinds whose records count as an entry about a player. */
const entries: readonly string[] = ['player', 'visit', 'visit-note', 'follow-up']

export class Cards {
	readonly #database: Database
	readonly #keyring: Keyring
	readonly #roll: Roll
	readonly #remake: RemakeCard
	constructor(database: Database, keyring: Keyring, roll: Roll, remake: RemakeCard) {
		this.#database = database
		this.#keyring = keyring
		this.#roll = roll
		this.#remake = remake
	}
	/** What of a record stands in the roll, with its card sealed. */
	ofRecord(
		place: Omit<RollRow, 'about' | 'thing' | 'cardForm'>,
		{ about, thing, card }: CardOf,
	): { row: RollRow; card: Uint8Array | null } {
		const subject = {
			about: this.#keyring.digest('about', about),
			thing: this.#keyring.digest('thing', thing),
		}
		if (about === undefined && thing === undefined)
			return { row: { ...place, ...subject, cardForm: 0 }, card: null }
		const row = { ...place, ...subject, cardForm: envelopeForm }
		return { row, card: sealCard(this.#keyring.opened().newest, row, card) }
	}
	/**
	 * Cards of a kind about a player, in order of writing.
	 * @param damaged gets the row of each that cannot be read, nor its record: it is left out
	 */
	about(kind: string, playerId: string, damaged: (row: RollRow) => void): OpenCard[] {
		return this.#rows('about', kind, this.#keyring.digest('about', playerId)).flatMap((row) => {
			try {
				return [{ record: row.id, kind, card: this.open(row) }]
			} catch (error) {
				if (!isDamage(error)) throw error
				damaged(row)
				return []
			}
		})
	}
	/** Of the versions of a thing, in order of writing. */
	of(kind: string, thing: string): OpenCard[] {
		const rows = this.#rows('thing', kind, this.#keyring.digest('thing', thing))
		return rows.map((row) => ({ record: row.id, kind, card: this.open(row) }))
	}
	#rows(key: RollKey, kind: string, digest: string | null): RollRow[] {
		return this.#roll.find(key, digest).filter((row) => row.kind === kind)
	}
	/**
	 * A card; a damaged one is read from its record, which is the truth.
	 * @throws SealBroken where the record is damaged too
	 */
	open(row: RollRow): unknown {
		const sealed = this.#roll.cardOf(row.seq)
		if (sealed)
			try {
				return openCard(this.#keyring.opened(), row, sealed)
			} catch (error) {
				if (!(error instanceof SealBroken)) throw error
			}
		return this.#fromRecord(row)?.card ?? null
	}
	/** Whether the card in the roll opens. */
	isWhole(row: RollRow): boolean {
		const sealed = this.#roll.cardOf(row.seq)
		try {
			if (sealed) openCard(this.#keyring.opened(), row, sealed)
			return Boolean(sealed)
		} catch {
			return false
		}
	}
	#fromRecord(row: RollRow): CardOf | undefined {
		const record = this.find(row.id)
		if (!record) throw new SealBroken(`record ${row.id} is gone`)
		return this.cardOf(record, row.form)
	}
	/** What a record itself says for its card; undefined where one of the first versions does not. */
	cardOf(record: StoredRecord, form: number): CardOf | undefined {
		if (form === envelopeForm) return record
		return this.#remake(record, (id) => this.find(id))
	}
	/** One record by id; undefined where there is none. @throws SealBroken where it is damaged */
	find(id: string): StoredRecord | undefined {
		const row = this.row(id)
		return row && openRecord(this.#keyring.opened(), row)
	}
	/** The sealed row of a record, found by its place in the table. */
	row(id: string): RecordRow | undefined {
		const listed = this.#roll.byId(id)
		if (!listed) return undefined
		const row = this.#database.first<RecordRow>(
			`SELECT ${recordColumns} FROM record WHERE seq = ?`,
			listed.seq,
		)
		if (row?.id !== id) throw new SealBroken(`record ${id} is not in its place`)
		return row
	}
	/** Ids of all records about a player, of one kind where it is given, in the common order. */
	recordsAbout(playerId: string, kind?: string): string[] {
		return this.#roll
			.find('about', this.#keyring.digest('about', playerId))
			.filter((row) => kind === undefined || row.kind === kind)
			.map(({ id }) => id)
	}
	/** Time of the first and last entry about each player of the list. */
	lastEntries(playerIds: readonly string[]): Map<string, { first: string; last: string }> {
		const found = new Map<string, { first: string; last: string }>()
		for (const id of playerIds) {
			const times = this.#roll
				.find('about', this.#keyring.digest('about', id))
				.filter(({ kind }) => entries.includes(kind))
				.map(({ at }) => at)
				.sort()
			const [first, last] = [times[0], times.at(-1)]
			if (first !== undefined && last !== undefined) found.set(id, { first, last })
		}
		return found
	}
}
