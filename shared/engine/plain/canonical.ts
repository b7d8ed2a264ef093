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
	if (typeof value === 'object') return `{${fieldsOf(value as Record<string, unknown>)}}`
	throw new TypeError(`canonical JSON cannot carry a ${typeof value}`)
}
/** A plain loop: every question of a visit has its digest, and every record. */
function fieldsOf(value: Readonly<Record<string, unknown>>): string {
	let fields = ''
	for (const key of Object.keys(value).sort()) {
		const field = value[key]
		if (field === undefined) continue
		const comma = fields === '' ? '' : ','
		fields += `${comma}${JSON.stringify(key)}:${canonicalJson(field)}`
	}
	return fields
}
/** SHA-256 of the canonical JSON, hex. */
export function digestOf(value: unknown): string {
	return bytesToHex(sha256(utf8ToBytes(canonicalJson(value))))
}
