/** Records on their way between stores: given out as they stand, taken in as they are. */
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import { canonicalJson } from '../../shared/engine/plain/canonical.ts'
import { present } from '../../shared/engine/plain/present.ts'
import type { Kind } from './kinds.ts'
import { mustBeRecordId, openCard, openRecord, type RecordRow, recordColumns } from './record.ts'
import type { RecordParts, Records } from './records.ts'

interface TravellingRow extends RecordRow {
	about: string | null
	thing: string | null
	card: Uint8Array | null
}
const withCard = `SELECT ${recordColumns
	.split(', ')
	.map((column) => `record.${column} AS ${column}`)
	.join(', ')}, card.about AS about, card.thing AS thing, card.sealed AS card FROM record \
LEFT JOIN card ON card.record = record.id ORDER BY record.tick, record.origin, record.seq`

export class Travelling {
	readonly #parts: RecordParts
	readonly #records: Records
	constructor(parts: RecordParts, records: Records) {
		this.#parts = parts
		this.#records = records
	}
	/**
	 * Records as they travel, in the common order. `wanted` gets the kind and the player it is about;
	 * players are known by `playerIds`.
	 */
	carry(
		playerIds: readonly string[],
		wanted: (kind: Kind, about: string | undefined) => boolean,
	): Carried[] {
		const { database, keyring } = this.#parts
		keyring.opened()
		const known = new Map(playerIds.map((id) => [keyring.digest('about', id), id]))
		const found: Carried[] = []
		for (const row of database.iterate<TravellingRow>(withCard)) {
			const about = row.about === null ? undefined : known.get(row.about)
			const isAnothers = row.about !== null && about === undefined
			if (!isAnothers && wanted(row.kind, about)) found.push(this.#carried(row, about))
		}
		return found
	}
	#carried(row: TravellingRow, about: string | undefined): Carried {
		const key = this.#parts.keyring.opened()
		const record = openRecord(key, row)
		const thing = row.thing === null ? undefined : this.#thingOf(record.value, row.thing)
		const card = row.card === null ? undefined : openCard(key, row.id, row.kind, row.card)
		return { ...record, ...present({ about, thing, card }) }
	}
	/** The id in a record's value whose digest its card holds. */
	#thingOf(value: unknown, digest: string): string | undefined {
		if (typeof value !== 'object' || value === null) return undefined
		return Object.values(value)
			.filter((field): field is string => typeof field === 'string')
			.find((field) => this.#parts.keyring.digest('thing', field) === digest)
	}
	/** Whether a record that comes in is here already, whole and the same. */
	holds(coming: Carried): 'no' | 'same' | 'other' {
		const { cards, keyring } = this.#parts
		const here = this.#records.find(coming.id)
		if (!here) return 'no'
		const isSame =
			bareJson(here) === bareJson(coming) &&
			cards.aboutDigest(coming.id) === keyring.digest('about', coming.about)
		return isSame ? 'same' : 'other'
	}
	/**
	 * Takes in a record of another store: author, time and place in the order stay as they are.
	 * @throws TypeError where its id is no random UUID
	 */
	takeIn(coming: Carried): void {
		const { database, cards, order, trail } = this.#parts
		const { id, at, follows, origin, tick, value, about } = coming
		const kind = coming.kind as Kind
		mustBeRecordId(id)
		database.together(() => {
			this.#records.insert({ id, kind, at, follows: follows ?? null, origin, tick }, value)
			order.standBehind(tick)
			cards.putWanted(id, kind, coming)
			trail.note({ function: 'merge', objectRef: `${kind}:${id}`, playerId: about ?? null })
		})
	}
}
/** What makes a record the same wherever it stands: all of it but its card. */
const bareJson = ({ id, kind, at, follows, origin, tick, value }: Carried) =>
	canonicalJson({ id, kind, at, follows, origin, tick, value })
