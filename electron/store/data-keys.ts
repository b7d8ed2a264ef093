/**
 * Data keys: what records are sealed with. There may be several, one after another: a new one seals
 * what is new, the older ones still open what is old.
 */
import {
	createHmac,
	createSecretKey,
	hkdfSync,
	type KeyObject,
	randomBytes,
	timingSafeEqual,
} from 'node:crypto'
import { need } from '../../shared/engine/plain/need.ts'
import { SealBroken, seal, unseal } from './seal.ts'

const keyLong = 32
const idLong = 8

export interface DataKey {
	/** 16 hex digits, told by the key itself */
	id: string
	/** 32 bytes */
	bytes: Uint8Array
	/** the same for the cipher, which is then spared making one for each of thousands of records */
	reader: KeyObject
}
/** An older data key as it lies in the file: sealed under the one after it. */
export interface OlderKeyRow {
	/** its place, from 1 */
	number: number
	sealed: Uint8Array
	/** this key's word that the next one was made by who held it */
	endorsement: Uint8Array
}
/** @param what the purpose, so that keys for two purposes have nothing in common */
const derive = (bytes: Uint8Array, what: string, long = keyLong): Buffer =>
	Buffer.from(hkdfSync('sha256', bytes, '', `lastwright ${what}`, long))

/** @param bytes 32 bytes; they are copied */
export function dataKeyOf(bytes: Uint8Array): DataKey {
	const own = Buffer.from(bytes)
	return {
		id: derive(own, 'key id', idLong).toString('hex'),
		bytes: own,
		reader: createSecretKey(own),
	}
}
export const freshDataKey = (): DataKey => dataKeyOf(randomBytes(keyLong))

/** The word of one data key for the next. */
const endorse = (key: DataKey, next: DataKey): Buffer =>
	createHmac('sha256', derive(key.bytes, 'next key')).update(next.bytes).digest()
/** How a key lies in the file once another one has taken over. */
export const olderKeyRow = (key: DataKey, next: DataKey, number: number): OlderKeyRow => ({
	number,
	sealed: seal(next.bytes, String(number), 'datakey', key.bytes),
	endorsement: endorse(key, next),
})

/** The data keys of these records, all of them open. */
export class DataKeys {
	readonly #byId = new Map<string, DataKey>()
	readonly #derived = new Map<string, Buffer>()
	readonly newest: DataKey
	/** the first one: records of the first versions know no other, and ids are digested with it */
	readonly root: DataKey
	/** @param keys oldest first, at least one */
	constructor(keys: readonly DataKey[]) {
		for (const key of keys) this.#byId.set(key.id, key)
		this.root = need(keys[0], 'a data key')
		this.newest = need(keys.at(-1), 'a data key')
	}
	byId(id: string): DataKey | undefined {
		return this.#byId.get(id)
	}
	/** Oldest first. */
	all(): DataKey[] {
		return [...this.#byId.values()]
	}
	/** A key for one purpose, from one data key; undefined where that data key is not here. */
	derived(id: string, what: string): Buffer | undefined {
		const name = `${id} ${what}`
		const known = this.#derived.get(name)
		const key = this.#byId.get(id)
		if (known || !key) return known
		const made = derive(key.bytes, what)
		this.#derived.set(name, made)
		return made
	}
	/** These keys and a newer one; copies, so that forgetting the ones leaves the others. */
	followedBy(next: DataKey): DataKeys {
		return new DataKeys([...this.all(), next].map(({ bytes }) => dataKeyOf(bytes)))
	}
	forget(): void {
		for (const { bytes } of this.#byId.values()) bytes.fill(0)
		for (const bytes of this.#derived.values()) bytes.fill(0)
	}
}
/**
 * Opens the older keys from the newest one.
 * @param rows the last one first
 * @throws SealBroken where one does not open or does not stand for the next
 */
export function openDataKeys(newest: Uint8Array, rows: readonly OlderKeyRow[]): DataKeys {
	const keys = [dataKeyOf(newest)]
	for (const row of rows) {
		const next = need(keys[0], 'a data key')
		const key = dataKeyOf(unseal(next.bytes, String(row.number), 'datakey', row.sealed))
		const expected = endorse(key, next)
		if (row.endorsement.length !== expected.length || !timingSafeEqual(row.endorsement, expected))
			throw new SealBroken(`data key ${row.number} does not stand for the one after it`)
		keys.unshift(key)
	}
	return new DataKeys(keys)
}
