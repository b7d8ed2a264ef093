/**
 * The envelope of everything that is sealed: form, codec and key in front, then AES-256-GCM. Form,
 * codec, key and what `bound` names cannot be changed without breaking it.
 */
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto'
import { brotliCompressSync, brotliDecompressSync, constants } from 'node:zlib'
import type { DataKey, DataKeys } from './data-keys.ts'
import { SealBroken, unseal } from './seal.ts'

/** The number of this form; forms 1 and 2 had nothing in front. */
export const envelopeForm = 3
const codecs = { none: 0, brotli: 1 } as const
const keyIdLong = 8
const headLong = 2 + keyIdLong
const nonceLong = 12
const tagLong = 16
/** Shorter ones are not made shorter by compressing them. */
const leastCompressed = 512
/** Of 92.9 kB this quality leaves 16.3 kB in 1.3 ms; the next ones take several times as long. */
const quality = 4
/** What a sealed thing may unfold to: a damaged length must not take all memory. */
const mostBytes = 512 * 2 ** 20

/** What stands for a thing besides its content: its sort, its id, its place. */
export type Bound = readonly (string | number | null)[]

const associated = (head: Uint8Array, bound: Bound): Buffer =>
	Buffer.from(JSON.stringify([Buffer.from(head).toString('hex'), ...bound]))
function compressed(clear: Uint8Array): { codec: number; bytes: Uint8Array } {
	if (clear.length < leastCompressed) return { codec: codecs.none, bytes: clear }
	const bytes = brotliCompressSync(clear, {
		params: {
			[constants.BROTLI_PARAM_QUALITY]: quality,
			[constants.BROTLI_PARAM_SIZE_HINT]: clear.length,
		},
	})
	return bytes.length < clear.length
		? { codec: codecs.brotli, bytes }
		: { codec: codecs.none, bytes: clear }
}
/** Seals bytes with a data key, compressed where that helps. */
export function shut(key: DataKey, clear: Uint8Array, bound: Bound): Uint8Array {
	const { codec, bytes } = compressed(clear)
	const head = Buffer.concat([Buffer.from([envelopeForm, codec]), Buffer.from(key.id, 'hex')])
	const nonce = randomBytes(nonceLong)
	const cipher = createCipheriv('aes-256-gcm', key.reader, nonce)
	cipher.setAAD(associated(head, bound))
	return Buffer.concat([head, nonce, cipher.update(bytes), cipher.final(), cipher.getAuthTag()])
}
/** The id of the key that an envelope names. */
export const keyIdOf = (sealed: Uint8Array): string =>
	Buffer.from(sealed.subarray(2, headLong)).toString('hex')
/** @throws SealBroken where the key is not here, or at least one bit differs */
export function open(keys: DataKeys, sealed: Uint8Array, bound: Bound): Uint8Array {
	const key = keys.byId(keyIdOf(sealed))
	if (!key || sealed[0] !== envelopeForm || sealed.length < headLong + nonceLong + tagLong)
		throw new SealBroken('an envelope is damaged, or was sealed with a key that is not here')
	const end = sealed.length - tagLong
	try {
		const nonce = sealed.subarray(headLong, headLong + nonceLong)
		const decipher = createDecipheriv('aes-256-gcm', key.reader, nonce, {
			authTagLength: tagLong,
		})
		decipher.setAAD(associated(sealed.subarray(0, headLong), bound))
		decipher.setAuthTag(sealed.subarray(end))
		const bytes = Buffer.concat([
			decipher.update(sealed.subarray(headLong + nonceLong, end)),
			decipher.final(),
		])
		return sealed[1] === codecs.brotli
			? brotliDecompressSync(bytes, { maxOutputLength: mostBytes })
			: bytes
	} catch {
		throw new SealBroken('an envelope is damaged')
	}
}
/** Whether bytes are an envelope of a key that is here, and not of the forms before. */
export const isEnvelope = (keys: DataKeys, sealed: Uint8Array): boolean =>
	sealed[0] === envelopeForm && keys.byId(keyIdOf(sealed)) !== undefined
/**
 * Opens an envelope, or what the first versions sealed with the first key.
 * @param before id, sort and binding as they sealed it
 * @throws SealBroken
 */
export function openAny(
	keys: DataKeys,
	sealed: Uint8Array,
	bound: Bound,
	before: { id: string; kind: string; also?: Bound },
): Uint8Array {
	return isEnvelope(keys, sealed)
		? open(keys, sealed, bound)
		: unseal(keys.root.reader, before.id, before.kind, sealed, before.also)
}
