/**
 * Sealing: AES-256-GCM over one record, and the data key wrapped by a passphrase or recovery key
 * (scrypt).
 */
import { createCipheriv, createDecipheriv, type KeyObject, randomBytes, scrypt } from 'node:crypto'

const nonceLong = 12
const tagLong = 16
/**
 * scrypt N, the cost the store asks for: 2^17 with r = 8, p = 1 takes 0.8 s on the machine it was
 * tried on.
 */
export const scryptCost = 2 ** 17

/** A sealed thing that cannot be opened: wrong key, or at least one bit differs. */
export class SealBroken extends Error {}

/**
 * Seals bytes; id and kind are bound in, so that a record cannot stand in for another; `also` binds
 * what else must not change.
 */
export function seal(
	key: Uint8Array,
	id: string,
	kind: string,
	clear: Uint8Array,
	also: readonly (string | number | null)[] = [],
): Uint8Array {
	const nonce = randomBytes(nonceLong)
	const cipher = createCipheriv('aes-256-gcm', key, nonce)
	cipher.setAAD(associated(id, kind, also))
	return Buffer.concat([nonce, cipher.update(clear), cipher.final(), cipher.getAuthTag()])
}
/**
 * Opens what seal() made; a key object spares making one for each of thousands of records. @throws
 * SealBroken
 */
export function unseal(
	key: KeyObject | Uint8Array,
	id: string,
	kind: string,
	sealed: Uint8Array,
	also: readonly (string | number | null)[] = [],
): Uint8Array {
	if (sealed.length < nonceLong + tagLong)
		throw new SealBroken(`record ${id} (${kind}) is cut short`)
	const end = sealed.length - tagLong
	try {
		const decipher = createDecipheriv('aes-256-gcm', key, sealed.subarray(0, nonceLong), {
			authTagLength: tagLong,
		})
		decipher.setAAD(associated(id, kind, also))
		decipher.setAuthTag(sealed.subarray(end))
		return Buffer.concat([decipher.update(sealed.subarray(nonceLong, end)), decipher.final()])
	} catch {
		throw new SealBroken(`record ${id} (${kind}) is damaged or was sealed with another key`)
	}
}
// Length-prefixed by JSON, so that no two pairs of id and kind read the same.
function associated(id: string, kind: string, also: readonly (string | number | null)[]): Buffer {
	return Buffer.from(JSON.stringify([id, kind, ...also]))
}

/** The data key as wrapped by one secret, as kept in the store. */
export interface Wrapped {
	cost: number
	salt: Uint8Array
	sealed: Uint8Array
}

/** A key from a secret; the same salt and cost give the same key. */
export async function stretch(
	secret: Uint8Array,
	salt: Uint8Array,
	cost: number,
): Promise<Uint8Array> {
	return new Promise((done, fail) =>
		scrypt(secret, salt, 32, { N: cost, r: 8, p: 1, maxmem: 256 * cost * 8 }, (error, key) =>
			error ? fail(error) : done(key),
		),
	)
}
/** Wraps the data key by a secret (`slot` names which one). */
export async function wrap(
	dataKey: Uint8Array,
	slot: string,
	secret: Uint8Array,
	cost = scryptCost,
	salt: Uint8Array = randomBytes(16),
): Promise<Wrapped> {
	const stretched = await stretch(secret, salt, cost)
	return { cost, salt, sealed: seal(stretched, slot, 'keyslot', dataKey) }
}
/** Unwraps the data key. @throws SealBroken where the secret is not the one. */
export async function unwrap(
	wrapped: Wrapped,
	slot: string,
	secret: Uint8Array,
): Promise<Uint8Array> {
	return unseal(await stretch(secret, wrapped.salt, wrapped.cost), slot, 'keyslot', wrapped.sealed)
}
/** The bytes of a passphrase: the same on every keyboard (Unicode NFKC). */
export function passphraseBytes(passphrase: string): Uint8Array {
	return Buffer.from(passphrase.normalize('NFKC'), 'utf8')
}
