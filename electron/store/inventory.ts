/**
 * The inventory: everything in the file that may be written over or taken away again (drafts,
 * settings, key slots), each with a digest, sealed. So that one that vanished, was altered or put
 * back from an older file is named.
 */
import { createHash } from 'node:crypto'
import { z } from 'zod'
import type { Around } from './database.ts'

const digestLong = 32

/** A digest of several parts, none of which can run into the next. */
export function digestOfBytes(...parts: (string | Uint8Array)[]): string {
	const hash = createHash('sha256')
	for (const part of parts) {
		const bytes = typeof part === 'string' ? Buffer.from(part, 'utf8') : part
		hash.update(`${bytes.length}:`).update(bytes)
	}
	return hash.digest('hex').slice(0, digestLong)
}
const inventorySchema = z.object({
	/** how often it was written: an older one stands out against the head */
	count: z.int().min(0),
	digests: z.record(z.string(), z.string()),
})
type Digests = Iterable<[name: string, digest: string]>

/** Where the inventory lies and what it lists. */
interface Outside {
	isOpen: () => boolean
	read: () => Uint8Array | undefined
	write: (bytes: Uint8Array) => void
	/** everything as it lies in the file */
	actual: () => Digests
}
export class Inventory implements Around {
	readonly #outside: Outside
	#digests = new Map<string, string>()
	#count = 0
	#known = false
	#changed = false
	constructor(outside: Outside) {
		this.#outside = outside
	}
	/** How often it was written. */
	get count(): number {
		return this.#count
	}
	touched(name: string, digest: string | undefined): void {
		if (digest === undefined) this.#digests.delete(name)
		else this.#digests.set(name, digest)
		this.#changed = true
	}
	ending(): void {
		if (!this.#changed || !this.#outside.isOpen() || !this.#known) return
		this.#changed = false
		this.#count++
		const whole = { count: this.#count, digests: Object.fromEntries(this.#digests) }
		this.#outside.write(Buffer.from(JSON.stringify(whole), 'utf8'))
	}
	undone(): void {
		this.#changed = false
		if (this.#known && this.#outside.isOpen()) this.#read()
	}
	/** Locked, or another file was opened: what was remembered is not so. */
	forget(): void {
		this.#digests.clear()
		this.#known = false
		this.#changed = false
		this.#count = 0
	}
	#read(): boolean {
		const bytes = this.#outside.read()
		if (!bytes) return false
		const { count, digests } = inventorySchema.parse(
			JSON.parse(Buffer.from(bytes).toString('utf8')),
		)
		this.#count = count
		this.#digests = new Map(Object.entries(digests))
		return true
	}
	/**
	 * Looks at the file once its key is there. From then on it is kept up.
	 * @returns what is missing, altered or too much, in words
	 */
	compare(): string[] {
		const listed = this.#listed()
		const actual = new Map(this.#outside.actual())
		this.#known = true
		// what is there now is listed from now on: what was found is said and kept by the caller
		this.#digests = actual
		this.#changed = true
		return listed ? differencesOf(listed, actual) : []
	}
	/** @returns undefined where there is none yet, or it cannot be read */
	#listed(): ReadonlyMap<string, string> | undefined {
		try {
			return this.#read() ? new Map(this.#digests) : undefined
		} catch {
			return undefined
		}
	}
	/** Whether an inventory was found that could be read. */
	get isThere(): boolean {
		return this.#count > 0
	}
}
function differencesOf(
	listed: ReadonlyMap<string, string>,
	actual: ReadonlyMap<string, string>,
): string[] {
	const names = new Set([...listed.keys(), ...actual.keys()])
	return [...names].sort().flatMap((name) => {
		const [before, now] = [listed.get(name), actual.get(name)]
		if (before === now) return []
		return [wordsOf(name, before === undefined ? 'much' : now === undefined ? 'gone' : 'other')]
	})
}
const sorts: Readonly<Record<string, string>> = {
	draft: 'The draft',
	setting: 'The setting',
	slot: 'The key slot',
	key: 'The older key of the records',
}
const happened = {
	gone: 'is gone from the records file.',
	other: 'is not as it was written last: it was altered, or put back from an older file.',
	much: 'was not written by this program.',
} as const
function wordsOf(name: string, what: keyof typeof happened): string {
	const space = name.indexOf(' ')
	const sort = sorts[name.slice(0, space)] ?? 'An entry'
	return `${sort} ${name.slice(space + 1)} ${happened[what]} Compare with a backup.`
}
