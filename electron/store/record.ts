/** A record as the services see it, how it lies in its row, and how it is sealed and opened. */
import { z } from 'zod'
import type { AuditFunction } from '../../shared/desk/records/audit.ts'
import { present } from '../../shared/engine/plain/present.ts'
import type { DataKey, DataKeys } from './data-keys.ts'
import { envelopeForm, open, shut } from './envelope.ts'
import { SealBroken, unseal } from './seal.ts'

export interface StoredRecord {
	id: string
	kind: string
	/** of the form of its value, from 1 */
	version: number
	at: string
	follows?: string
	/** the installation that wrote it */
	origin: string
	tick: number
	/** among the records of its origin, from 1; 0 in those of the first versions */
	number: number
	about?: string
	thing?: string
	card?: unknown
	value: unknown
	/** of its author, base64; records of the first versions have none */
	signature?: string
}
/**
 * `about` is the player, `thing` what the record is a version of; in the roll both stand as keyed
 * digests. `card` is the short form that lists need.
 */
export interface NewRecord {
	id?: string
	kind: string
	/** of the form of its value; 1 where it is not given */
	version?: number
	at: string
	follows?: string
	value: unknown
	about?: string
	thing?: string
	card?: unknown
	does?: AuditFunction
}
export interface RecordRow {
	seq: number
	id: string
	kind: string
	at: string
	follows: string | null
	sealed: Uint8Array
	form: number
	origin: string
	tick: number
	number: number
}
/** The columns of a RecordRow. */
export const recordColumns = 'seq, id, kind, at, follows, sealed, form, origin, tick, number'
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** Whether it is written like the id of a record: a random UUID. */
export const isRecordId = (id: string): boolean => uuid.test(id)
/** @throws TypeError where it is not written like the id of a record */
export function mustBeRecordId(id: string): void {
	if (!isRecordId(id)) throw new TypeError('store: a record id is a random UUID')
}
/** A value as the bytes that are sealed. */
export const encode = (value: unknown): Uint8Array => Buffer.from(JSON.stringify(value), 'utf8')
/** What encode() made bytes of. */
export const decode = (bytes: Uint8Array): unknown =>
	JSON.parse(Buffer.from(bytes).toString('utf8'))

/** What lies in the envelope: all of a record but its place in the order, which is bound to it. */
const contentSchema = z.looseObject({
	kind: z.string(),
	version: z.int().min(1),
	at: z.string(),
	follows: z.string().optional(),
	about: z.string().optional(),
	thing: z.string().optional(),
	card: z.unknown().optional(),
	value: z.unknown(),
	signature: z.string().optional(),
})
type Place = Pick<RecordRow, 'id' | 'origin' | 'tick' | 'number'>
const boundWith = ({ id, origin, tick, number }: Place) => ['record', id, origin, tick, number]

/** Seals a record: everything that it is, in one envelope that belongs to its place. */
export function sealRecord(key: DataKey, record: StoredRecord): Uint8Array {
	const { kind, version, at, follows, about, thing, card, value, signature } = record
	const content = { kind, version, at, follows, about, thing, card, signature, value }
	return shut(key, encode(content), boundWith(record))
}
/** What of an earlier form must not change besides id and kind; form 1 bound nothing more. */
const boundBefore = (row: RecordRow): (string | number | null)[] =>
	row.form === 1 ? [] : [row.at, row.follows, row.origin, row.tick, row.form]

/**
 * A row as the record it holds.
 * @throws SealBroken where the row or its place was altered
 */
export function openRecord(keys: DataKeys, row: RecordRow): StoredRecord {
	return row.form === envelopeForm ? openEnvelope(keys, row) : openBefore(keys, row)
}
function openBefore(keys: DataKeys, row: RecordRow): StoredRecord {
	const clear = unseal(keys.root.reader, row.id, row.kind, row.sealed, boundBefore(row))
	return {
		id: row.id,
		kind: row.kind,
		version: 1,
		at: row.at,
		...present({ follows: row.follows ?? undefined }),
		origin: row.origin,
		tick: row.tick,
		number: row.number,
		value: decode(clear),
	}
}
function openEnvelope(keys: DataKeys, row: RecordRow): StoredRecord {
	const content = contentSchema.parse(decode(open(keys, row.sealed, boundWith(row))))
	const { kind, version, at, follows, about, thing, card, value, signature } = content
	// the columns beside the envelope are for looking things up: they must say the same
	if (kind !== row.kind || at !== row.at || (follows ?? null) !== row.follows)
		throw new SealBroken(`record ${row.id} does not stand in its own row`)
	return {
		...{ id: row.id, kind, version, at },
		...present({ follows, about, thing, card, signature }),
		...{ origin: row.origin, tick: row.tick, number: row.number, value },
	}
}

/** A card belongs to one record, and to the player and thing that its row in the roll names. */
export interface CardPlace {
	id: string
	kind: string
	about: string | null
	thing: string | null
}
const cardBound = ({ id, kind, about, thing }: CardPlace) => ['card', id, kind, about, thing]
/** Seals the short form that lists need. */
export const sealCard = (key: DataKey, place: CardPlace, card: unknown): Uint8Array =>
	shut(key, encode(card ?? null), cardBound(place))
/** The short form of a record. @throws SealBroken where it is damaged or stands elsewhere */
export function openCard(
	keys: DataKeys,
	place: CardPlace & { cardForm: number },
	sealed: Uint8Array,
): unknown {
	return decode(
		place.cardForm === envelopeForm
			? open(keys, sealed, cardBound(place))
			: unseal(keys.root.reader, place.id, `card ${place.kind}`, sealed),
	)
}
/** The sentence that names a record which cannot be read. */
export const damagedWords = ({ id, kind, at }: Pick<RecordRow, 'id' | 'kind' | 'at'>): string =>
	`Record ${id} (${kind}, written ${at}) is damaged and cannot be read. All other ` +
	'records are unaffected; restore it from a backup.'
