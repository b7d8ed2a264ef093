/**
 * Who wrote a record: each installation of the program has a key pair of its own (Ed25519) and signs
 * what it writes. Whoever holds the data key can read; only the installation can sign as itself.
 */
import {
	createPrivateKey,
	createPublicKey,
	generateKeyPairSync,
	type KeyObject,
	sign,
	verify,
} from 'node:crypto'
import { canonicalJson } from '../../shared/engine/plain/canonical.ts'

const spki = { type: 'spki', format: 'der' } as const
const pkcs8 = { type: 'pkcs8', format: 'der' } as const

/** What of a record its author signs: all of it, wherever it stands. */
export interface SignedContent {
	id: string
	kind: string
	version: number
	at: string
	follows?: string | undefined
	origin: string
	tick: number
	number: number
	about?: string | undefined
	thing?: string | undefined
	card?: unknown
	value: unknown
}
/** A new pair of keys, DER. */
export function makeAuthor(): { publicKey: Uint8Array; privateKey: Uint8Array } {
	const { publicKey, privateKey } = generateKeyPairSync('ed25519', {
		publicKeyEncoding: spki,
		privateKeyEncoding: pkcs8,
	})
	return { publicKey, privateKey }
}
/** @param der as makeAuthor() gave it. @throws Error where it is no such key */
export const signerOf = (der: Uint8Array): KeyObject =>
	createPrivateKey({ key: Buffer.from(der), ...pkcs8 })

const signedBytes = (content: SignedContent): Buffer => {
	const { id, kind, version, at, follows, origin, tick, number, about, thing, card, value } =
		content
	const whole = { id, kind, version, at, follows, origin, tick, number, about, thing, card, value }
	return Buffer.from(canonicalJson(whole), 'utf8')
}
/** @returns the signature, base64 */
export const signContent = (signer: KeyObject, content: SignedContent): string =>
	sign(null, signedBytes(content), signer).toString('base64')
/** @param publicKey base64 of the DER. Never throws: a key that is none verifies nothing */
export function isSignedBy(publicKey: string, content: SignedContent, signature: string): boolean {
	try {
		const key = createPublicKey({ key: Buffer.from(publicKey, 'base64'), ...spki })
		return verify(null, signedBytes(content), key, Buffer.from(signature, 'base64'))
	} catch {
		return false
	}
}
