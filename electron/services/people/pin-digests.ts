/** PINs as they are kept: stretched anew where an earlier version stretched them less. */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'
import type { PinDigest } from '../../../shared/desk/people/pin-digest.ts'

/** scrypt N of the first form. */
const firstCost = 2 ** 14
const long = 32
const blockSize = 8

/**
 * scrypt N of a new digest: half of what a passphrase takes, 2^16 as a rule, which took 0.2 s on the
 * machine it was tried on. A PIN is typed many times a day.
 */
const costOfPin = (costOfPassphrase: number) => Math.max(2, costOfPassphrase / 2)

function stretch(pin: string, salt: string, cost: number): Promise<Buffer> {
	const options = { N: cost, r: blockSize, p: 1, maxmem: 256 * cost * blockSize + 2 ** 20 }
	return new Promise((done, fail) =>
		scrypt(pin, salt, long, options, (error, key) => (error ? fail(error) : done(key))),
	)
}
/** @param costOfPassphrase scrypt N of the store */
export async function digestOfPin(pin: string, costOfPassphrase: number): Promise<PinDigest> {
	const [salt, cost] = [randomBytes(16).toString('hex'), costOfPin(costOfPassphrase)]
	return { version: 2, cost, salt, hash: (await stretch(pin, salt, cost)).toString('hex') }
}
export async function isPin(pin: string, { cost = firstCost, salt, hash }: PinDigest) {
	const kept = Buffer.from(hash, 'hex')
	return kept.length === long && timingSafeEqual(await stretch(pin, salt, cost), kept)
}
/** Whether a digest was stretched less than a new one would be. */
export const isCheap = ({ cost = firstCost, version }: PinDigest, costOfPassphrase: number) =>
	version === undefined || cost < costOfPin(costOfPassphrase)
