/**
 * Ids of records that were destroyed by the rule, kept outside the folder of the records: random, of
 * nobody. A backup from before that is put back is then known to hold them. Each line is keyed, so
 * that nobody without the key can have other records destroyed by it.
 */
import { createHmac, timingSafeEqual } from 'node:crypto'
import { appendFileSync, mkdirSync, readFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { z } from 'zod'
import type { DataKeys } from './data-keys.ts'

const lineSchema = z.object({ id: z.string(), key: z.string(), mac: z.string() })

export class DestroyedFile {
	readonly #file: string
	constructor(file: string) {
		this.#file = file
	}
	#text(): string {
		try {
			return readFileSync(this.#file, 'utf8')
		} catch {
			return ''
		}
	}
	/** The ids; a line that is damaged or was made without the key tells nothing. */
	read(keys: DataKeys): string[] {
		return this.#text()
			.split('\n')
			.flatMap((line) => idIn(keys, line) ?? [])
	}
	/** Adds ids that are not there yet. A disk that refuses refuses nobody's work: it is done anew. */
	add(keys: DataKeys, ids: readonly string[]): void {
		const known = new Set(this.read(keys))
		const fresh = [...new Set(ids)].filter((id) => !known.has(id))
		if (fresh.length === 0) return
		const key = keys.newest.id
		const lines = fresh.map((id) => JSON.stringify({ id, key, mac: macOf(keys, key, id) }))
		try {
			mkdirSync(dirname(this.#file), { recursive: true, mode: 0o700 })
			// a torn last line of before must not swallow the first of these
			appendFileSync(this.#file, `\n${lines.join('\n')}\n`, { mode: 0o600 })
		} catch {
			/* noted again at the next unlock, from the register */
		}
	}
}
function macOf(keys: DataKeys, keyId: string, id: string): string {
	const key = keys.derived(keyId, 'destroyed')
	return key ? createHmac('sha256', key).update(id).digest('hex') : ''
}
function idIn(keys: DataKeys, line: string): string | undefined {
	try {
		const { id, key, mac } = lineSchema.parse(JSON.parse(line))
		const expected = Buffer.from(macOf(keys, key, id), 'hex')
		const given = Buffer.from(mac, 'hex')
		const isTrue = given.length > 0 && given.length === expected.length
		return isTrue && timingSafeEqual(given, expected) ? id : undefined
	} catch {
		return undefined
	}
}
