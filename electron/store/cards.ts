/** Cards: the short form of a record that lists need, found by player or by thing. */
import type { Database } from './database.ts'
import type { Keyring } from './keyring.ts'
import type { Kind } from './kinds.ts'
import { type NewRecord, openCard, sealCard } from './record.ts'
import { SealBroken } from './seal.ts'

export interface OpenCard {
	record: string
	kind: Kind
	card: unknown
}
/** What a card says of its record. */
export type CardOf = Pick<NewRecord, 'about' | 'thing' | 'card'>

export class Cards {
	readonly #database: Database
	readonly #keyring: Keyring
	constructor(database: Database, keyring: Keyring) {
		this.#database = database
		this.#keyring = keyring
	}
	/** Puts the card of a record: made with it, or made again from it. */
	put(id: string, kind: Kind, { about, thing, card }: CardOf): void {
		this.#database.run(
			'INSERT INTO card VALUES (?, ?, ?, ?, ?) ON CONFLICT (record) DO UPDATE SET about = ' +
				'excluded.about, thing = excluded.thing, sealed = excluded.sealed',
			id,
			kind,
			this.#keyring.digest('about', about),
			this.#keyring.digest('thing', thing),
			sealCard(this.#keyring.opened(), id, kind, card),
		)
	}
	/** Puts a card where the record is about someone or a version of something. */
	putWanted(id: string, kind: Kind, record: CardOf): void {
		if (record.about !== undefined || record.thing !== undefined) this.put(id, kind, record)
	}
	/** In order of writing. A damaged card is skipped: its record is the truth. */
	about(kind: Kind, playerId: string): OpenCard[] {
		return this.#find('about', kind, this.#keyring.digest('about', playerId))
	}
	/** Of the versions of a thing, in order of writing. */
	of(kind: Kind, thing: string): OpenCard[] {
		return this.#find('thing', kind, this.#keyring.digest('thing', thing))
	}
	#find(column: 'about' | 'thing', kind: Kind, digest: string | null): OpenCard[] {
		const key = this.#keyring.reader()
		return this.#database
			.all<{ record: string; sealed: Uint8Array }>(
				'SELECT card.record AS record, card.sealed AS sealed FROM card JOIN record ON record.id ' +
					`= card.record WHERE card.${column} = ? AND card.kind = ? ORDER BY record.tick, ` +
					'record.origin, record.seq',
				digest,
				kind,
			)
			.flatMap(({ record, sealed }) => {
				try {
					return [{ record, kind, card: openCard(key, record, kind, sealed) }]
				} catch (error) {
					if (error instanceof SealBroken) return []
					throw error
				}
			})
	}
	/** Ids of all records about a player. */
	recordsAbout(playerId: string): string[] {
		return this.#database
			.all<{ record: string }>(
				'SELECT record FROM card WHERE about = ?',
				this.#keyring.digest('about', playerId),
			)
			.map((row) => row.record)
	}
	/** Whom a record is about, as the keyed digest; null where it is about nobody. */
	aboutDigest(id: string): string | null {
		const row = this.#database.first<{ about: string | null }>(
			'SELECT about FROM card WHERE record = ?',
			id,
		)
		return row?.about ?? null
	}
	/** Time of the last entry about each player of the list, from the order columns alone. */
	lastEntries(playerIds: readonly string[]): Map<string, { first: string; last: string }> {
		const rows = this.#database.all<{ about: string; first: string; last: string }>(
			'SELECT card.about AS about, min(record.at) AS first, max(record.at) AS last FROM ' +
				'card JOIN record ON record.id = card.record WHERE card.about IS NOT NULL AND ' +
				"card.kind IN ('player', 'visit', 'visit-note') GROUP BY card.about",
		)
		const found = new Map(rows.map(({ about, first, last }) => [about, { first, last }]))
		return new Map(
			playerIds.flatMap((id) => {
				const entry = found.get(this.#keyring.digest('about', id) ?? '')
				return entry ? [[id, entry] as const] : []
			}),
		)
	}
	/** Records of a kind that have no card yet (written by an earlier version). */
	missing(kinds: readonly Kind[]): { id: string; kind: Kind; follows: string | undefined }[] {
		return kinds
			.filter((kind) => this.#recordsOf(kind) !== this.#cardsOf(kind))
			.flatMap((kind) =>
				this.#database
					.all<{ id: string; follows: string | null }>(
						'SELECT id, follows FROM record WHERE kind = ? AND NOT EXISTS (SELECT 1 FROM card ' +
							'WHERE card.record = record.id) ORDER BY tick, seq',
						kind,
					)
					.map((row) => ({ id: row.id, kind, follows: row.follows ?? undefined })),
			)
	}
	// counted from an index alone, however long the records are
	#recordsOf(kind: Kind): number {
		return this.#count(
			'SELECT count(*) AS total FROM record INDEXED BY record_order WHERE kind = ?',
			kind,
		)
	}
	#cardsOf(kind: Kind): number {
		return this.#count(
			'SELECT count(*) AS total FROM card INDEXED BY card_about WHERE kind = ?',
			kind,
		)
	}
	#count(sql: string, kind: Kind): number {
		return Number(this.#database.first<{ total: number }>(sql, kind)?.total)
	}
	drop(record: string): void {
		this.#database.run('DELETE FROM card WHERE record = ?', record)
	}
}
