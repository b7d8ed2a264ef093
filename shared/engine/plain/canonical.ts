/**
 * One text for one value: keys sorted, no spaces, so that a digest means the content and not its
 * order.
 */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'

/**
 * Canonical JSON. Keys with undefined are left out. @throws TypeError on a number that JSON cannot
 * carry.
 */
export function canonicalJson(value: unknown): string {
	if (value === null || typeof value === 'boolean' || typeof value === 'string')
		return JSON.stringify(value)
	if (typeof value === 'number') {
		if (!Number.isFinite(value))
			throw new TypeError(`canonical JSON cannot carry the number ${value}`)
		return JSON.stringify(value)
	}
	if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`
	if (typeof value === 'object') {
		const fields = Object.entries(value)
			.filter(([, field]) => field !== undefined)
			.sort(([key], [other]) => (key < other ? -1 : 1))
			.map(([key, field]) => `${JSON.stringify(key)}:${canonicalJson(field)}`)
		return `{${fields.join(',')}}`
	}
	throw new TypeError(`canonical JSON cannot carry a ${typeof value}`)
}
/** SHA-256 of the canonical JSON, hex. */
export function digestOf(value: unknown): string {
	return bytesToHex(sha256(utf8ToBytes(canonicalJson(value))))
}
