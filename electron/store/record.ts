/** A record as the services see it, how it lies in its row, and how it is sealed and opened. */
import type { KeyObject } from 'node:crypto'
import type { AuditFunction } from '../../shared/desk/records/audit.ts'
import { present } from '../../shared/engine/plain/present.ts'
import type { Kind } from './kinds.ts'
import { seal, unseal } from './seal.ts'

export interface StoredRecord {
	id: string
	kind: Kind
	at: string
	follows?: string
	origin: string
	tick: number
	/** of the kind that the value was written by */
	version: number
	value: unknown
}
/**
 * `about` is the player, `thing` what the record is a version of; both are kept only as keyed
 * digests. `card` is the short form that lists need.
 */
export interface NewRecord {
	id?: string
	kind: Kind
	at: string
	follows?: string
	/** of the kind; 1 where nothing is said */
	version?: number
	value: unknown
	about?: string
	thing?: string
	card?: unknown
	does?: AuditFunction
}
export interface RecordRow {
	id: string
	kind: Kind
	at: string
	follows: string | null
	sealed: Uint8Array
	form: number
	origin: string
	tick: number
}
/** The columns of a RecordRow. */
export const recordColumns = 'id, kind, at, follows, sealed, form, origin, tick'
const boundForm = 2
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

/** What must not change besides id and kind; rows of form 1 bound nothing more. */
const boundWith = (row: Omit<RecordRow, 'sealed'>): (string | number | null)[] =>
	row.form === 1 ? [] : [row.at, row.follows, row.origin, row.tick, row.form]

/** Seals a record's value into its row, in the form that binds its time, author and place. */
export function sealRecord(
	key: Uint8Array,
	place: Omit<RecordRow, 'sealed' | 'form'>,
	value: unknown,
): RecordRow {
	const row = { ...place, form: boundForm }
	return { ...row, sealed: seal(key, row.id, row.kind, encode(value), boundWith(row)) }
}
/** The bytes of a record's value. @throws SealBroken where the row or its place was altered */
export function unsealRow(key: KeyObject | Uint8Array, row: RecordRow): Uint8Array {
	return unseal(key, row.id, row.kind, row.sealed, boundWith(row))
}
/** A row as the record it holds. @throws SealBroken where the row or its place was altered */
export function openRecord(key: KeyObject | Uint8Array, row: RecordRow): StoredRecord {
	return {
		id: row.id,
		kind: row.kind,
		at: row.at,
		...present({ follows: row.follows ?? undefined }),
		origin: row.origin,
		tick: row.tick,
		version: 1,
		value: decode(unsealRow(key, row)),
	}
}
/** Seals the short form that lists need; it belongs to one record of one kind. */
export function sealCard(key: Uint8Array, id: string, kind: Kind, card: unknown): Uint8Array {
	return seal(key, id, `card ${kind}`, encode(card ?? null))
}
/** The short form of a record. @throws SealBroken where it is damaged */
export function openCard(
	key: KeyObject | Uint8Array,
	id: string,
	kind: Kind,
	sealed: Uint8Array,
): unknown {
	return decode(unseal(key, id, `card ${kind}`, sealed))
}
/** The sentence that names a record which cannot be read. */
export const damagedWords = (row: RecordRow): string =>
	`Record ${row.id} (${row.kind}, written ${row.at}) is damaged and cannot be read. All other ` +
	'records are unaffected; restore it from a backup.'
