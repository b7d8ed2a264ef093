/** Records on their way between stores: given out as they stand, taken in as they are. */
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import { canonicalJson } from '../../shared/engine/plain/canonical.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { envelopeForm } from './envelope.ts'
import { mustBeRecordId, type StoredRecord } from './record.ts'
import { isDamage, type RecordParts, type Records } from './records.ts'
import { inCommonOrder, type RollRow } from './roll.ts'

export type Wanted = (kind: string, about: string | undefined) => boolean
export type Damaged = (row: RollRow) => void
type CarryAsked = [playerIds: readonly string[], wanted: Wanted, damaged?: Damaged]
export class Travelling {
	readonly #parts: RecordParts
	readonly #records: Records
	constructor(parts: RecordParts, records: Records) {
		this.#parts = parts
		this.#records = records
	}
	/**
	 * Records as they travel, in the common order. `wanted` gets the kind and the player it is about;
	 * players are known by `playerIds`. One that is damaged stays here.
	 * @param damaged gets the row of each such record
	 */
	carry(...asked: CarryAsked): Carried[] {
		return [...this.carrying(...asked)].flat()
	}
	/** The same, a step for each record here; what does not travel is an empty one. */
	*carrying(
		playerIds: readonly string[],
		wanted: Wanted,
		damaged: Damaged = () => {},
	): Generator<Carried[]> {
		const { roll, keyring } = this.#parts
		keyring.opened()
		const known = new Map(playerIds.map((id) => [keyring.digest('about', id), id]))
		for (const row of roll.all().toSorted(inCommonOrder)) {
			const about = row.about === null ? undefined : known.get(row.about)
			const isAnothers = row.about !== null && about === undefined
			const goes = !isAnothers && wanted(row.kind, about)
			yield goes ? this.#carried(row, about, damaged) : []
		}
	}
	/** One record as it travels; undefined where it is damaged and stays here. */
	one(row: RollRow, about: string | undefined): Carried | undefined {
		return this.#carried(row, about, () => {})[0]
	}
	#carried(row: RollRow, about: string | undefined, damaged: (row: RollRow) => void): Carried[] {
		let record: StoredRecord | undefined
		try {
			record = this.#records.find(row.id)
		} catch (error) {
			if (!isDamage(error)) throw error
		}
		if (!record) {
			damaged(row)
			return []
		}
		if (row.form === envelopeForm) return [record]
		const thing = row.thing === null ? undefined : this.#thingOf(record.value, row)
		const card = row.cardForm === 0 ? undefined : this.#parts.cards.open(row)
		return [{ ...record, ...present({ about, thing, card }) }]
	}
	/** The id in a record's value whose digest the roll holds. */
	#thingOf(value: unknown, { thing }: RollRow): string | undefined {
		if (typeof value !== 'object' || value === null) return undefined
		return Object.values(value)
			.filter((field): field is string => typeof field === 'string')
			.find((field) => this.#parts.keyring.digest('thing', field) === thing)
	}
	/** Whether a record that comes in is here already, whole and the same. */
	holds(coming: Carried): 'no' | 'same' | 'other' {
		const { roll, keyring } = this.#parts
		const here = this.#records.find(coming.id)
		if (!here) return 'no'
		const isSame =
			bareJson(here) === bareJson(coming) &&
			(roll.byId(coming.id)?.about ?? null) === keyring.digest('about', coming.about)
		return isSame ? 'same' : 'other'
	}
	/**
	 * Takes in a record of another store: author, time and place in the order stay as they are.
	 * @throws TypeError where its id is no random UUID
	 */
	takeIn(coming: Carried): void {
		const { database, order, trail } = this.#parts
		const { id, kind, tick, about, version = 1, number = 0 } = coming
		mustBeRecordId(id)
		database.together(() => {
			this.#records.insert({ ...coming, version, number })
			order.standBehind(tick)
			trail.note({ function: 'merge', objectRef: `${kind}:${id}`, playerId: about ?? null })
		})
	}
}
/** What makes a record the same wherever it stands: all of it but its card. */
const bareJson = ({ id, kind, version = 1, at, follows, origin, tick, value }: Carried) =>
	canonicalJson({ id, kind, version, at, follows, origin, tick, value })
