/** The head of the audit chain, kept a second time in a file beside the store. */
import { createHmac, hkdfSync, timingSafeEqual } from 'node:crypto'
import {
	closeSync,
	existsSync,
	ftruncateSync,
	openSync,
	readFileSync,
	rmSync,
	writeSync,
} from 'node:fs'

/** bytes of the file, however long the text in it is: it is written over in place */
const headLong = 256

/** A link of the chain: the row's number and its hash. */
export interface Link {
	seq: number
	hash: Uint8Array
}
/** Whether two digests are the same, in a time that tells nothing. */
export const sameBytes = (first: Uint8Array, second: Uint8Array): boolean =>
	first.length === second.length && timingSafeEqual(first, second)
const macOf = (dataKey: Uint8Array, { seq, hash }: Link) =>
	createHmac('sha256', Buffer.from(hkdfSync('sha256', dataKey, '', 'lastwright head', 32)))
		.update(`${seq}|`)
		.update(hash)
		.digest('hex')

export class ChainHead {
	readonly #file: string
	#handle: number | undefined
	constructor(file: string) {
		this.#file = file
	}
	/**
	 * Writes the head; called once the row is committed. A head that lags by the last row after a
	 * power cut is no fault.
	 */
	note(dataKey: Uint8Array, last: Link): void {
		const text = JSON.stringify({
			seq: last.seq,
			hash: Buffer.from(last.hash).toString('hex'),
			mac: macOf(dataKey, last),
		})
		this.#handle ??= openSync(this.#file, existsSync(this.#file) ? 'r+' : 'w+', 0o600)
		writeSync(this.#handle, text.padEnd(headLong), 0)
		ftruncateSync(this.#handle, headLong)
	}
	/** What the file says; undefined where it is missing, damaged or made with another key. */
	read(dataKey: Uint8Array): { seq: number; hash: string } | undefined {
		try {
			const { seq, hash, mac } = JSON.parse(readFileSync(this.#file, 'utf8')) as {
				seq: number
				hash: string
				mac: string
			}
			const expected = macOf(dataKey, { seq, hash: Buffer.from(hash, 'hex') })
			return sameBytes(Buffer.from(mac, 'hex'), Buffer.from(expected, 'hex'))
				? { seq, hash }
				: undefined
		} catch {
			return undefined
		}
	}
	close(): void {
		if (this.#handle !== undefined) closeSync(this.#handle)
		this.#handle = undefined
	}
	/** Takes the file away: the records that it belonged to were replaced. */
	remove(): void {
		this.close()
		rmSync(this.#file, { force: true })
	}
}
