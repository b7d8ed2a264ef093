/**
 * A letter box for the locked store: anyone may drop in (a failed unlock), only the data key opens
 * it. X25519, then AES-256-GCM.
 */
import {
	createPrivateKey,
	createPublicKey,
	diffieHellman,
	generateKeyPairSync,
	hkdfSync,
} from 'node:crypto'
import { SealBroken, seal, unseal } from './seal.ts'

const spki = { type: 'spki', format: 'der' } as const
const pkcs8 = { type: 'pkcs8', format: 'der' } as const
/** DER length of an X25519 public key. */
const publicLong = 44

/** A new letter box: the key to drop in by, and the one to take out by, both DER. */
export function makeBox(): { publicKey: Uint8Array; privateKey: Uint8Array } {
	const { publicKey, privateKey } = generateKeyPairSync('x25519', {
		publicKeyEncoding: spki,
		privateKeyEncoding: pkcs8,
	})
	return { publicKey, privateKey }
}
const keyOf = (shared: Uint8Array) =>
	Buffer.from(hkdfSync('sha256', shared, '', 'lastwright box', 32))
/** Seals bytes so that only the box's private key opens them; id and kind are bound in. */
export function dropIn(
	publicKey: Uint8Array,
	id: string,
	kind: string,
	clear: Uint8Array,
): Uint8Array {
	const once = generateKeyPairSync('x25519')
	const shared = diffieHellman({
		privateKey: once.privateKey,
		publicKey: createPublicKey({ key: Buffer.from(publicKey), ...spki }),
	})
	return Buffer.concat([once.publicKey.export(spki), seal(keyOf(shared), id, kind, clear)])
}
/** Opens what dropIn() made. @throws SealBroken */
export function takeOut(
	privateKey: Uint8Array,
	id: string,
	kind: string,
	sealed: Uint8Array,
): Uint8Array {
	let shared: Uint8Array
	try {
		shared = diffieHellman({
			privateKey: createPrivateKey({ key: Buffer.from(privateKey), ...pkcs8 }),
			publicKey: createPublicKey({ key: Buffer.from(sealed.subarray(0, publicLong)), ...spki }),
		})
	} catch {
		throw new SealBroken(`record ${id} (${kind}) is damaged`)
	}
	return unseal(keyOf(shared), id, kind, sealed.subarray(publicLong))
}
