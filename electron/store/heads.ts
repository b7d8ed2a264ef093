/**
 * The heads: how far the records had come when they were last written, kept in a file beside them and
 * in one outside the folder, keyed. They tell a cut tail, an older file put back, an altered row.
 */
import { createHmac, timingSafeEqual } from 'node:crypto'
import { z } from 'zod'
import type { DataKeys } from './data-keys.ts'
import { HeadFile } from './head-file.ts'

const headSchema = z.object({
	form: z.literal(2),
	recordsId: z.string(),
	/** grows with each writing: the newest of several counts */
	number: z.int().min(0),
	/** records and the running digest over their roll */
	rows: z.int().min(0),
	digest: z.string(),
	/** last row of the audit trail */
	audit: z.object({ seq: z.int().min(0), hash: z.string() }),
	/** how often the inventory was written */
	inventory: z.int().min(0),
	/** id of the data key that the mac is made with */
	key: z.string(),
	mac: z.string(),
})
export type Head = z.infer<typeof headSchema>
/** What of the head the records themselves tell. */
export type HeadState = Pick<Head, 'recordsId' | 'rows' | 'digest' | 'audit' | 'inventory'>

/** What is known of one of the two files. */
export interface ReadHead {
	/** whether it is the one beside the records, and not the one outside their folder */
	isInside: boolean
	/** whether there is such a file at all */
	isThere: boolean
	/** undefined where it is missing, damaged or was made with another key */
	head: Head | undefined
}
function macOf(keys: DataKeys, { mac: _, ...head }: Head): string {
	const key = keys.derived(head.key, 'head 2')
	if (!key) return ''
	const { form, recordsId, number, rows, digest, audit, inventory } = head
	return createHmac('sha256', key)
		.update(
			JSON.stringify([form, recordsId, number, rows, digest, audit.seq, audit.hash, inventory]),
		)
		.digest('hex')
}
function isTrue(keys: DataKeys, head: Head): boolean {
	const expected = Buffer.from(macOf(keys, head), 'hex')
	const given = Buffer.from(head.mac, 'hex')
	return expected.length > 0 && expected.length === given.length && timingSafeEqual(expected, given)
}
function headIn(keys: DataKeys, text: string): Head | undefined {
	try {
		const read = headSchema.safeParse(JSON.parse(text))
		return read.success && isTrue(keys, read.data) ? read.data : undefined
	} catch {
		return undefined
	}
}
const newer = (first: Head, second: Head) => (first.number >= second.number ? first : second)

export class Heads {
	readonly #files: { isInside: boolean; file: HeadFile }[]
	#number = 0
	/** Whether the heads disagree with the records: they are not written over then. */
	held = false
	/** @param outside the file outside the folder */
	constructor(inside: string, outside: string) {
		this.#files = [
			{ isInside: true, file: new HeadFile(inside) },
			{ isInside: false, file: new HeadFile(outside) },
		]
	}
	/** What the two files say. */
	read(keys: DataKeys): ReadHead[] {
		return this.#files.map(({ isInside, file }) => {
			const heads = file.texts().flatMap((text) => headIn(keys, text) ?? [])
			const head = heads.length > 0 ? heads.reduce(newer) : undefined
			this.#number = Math.max(this.#number, head?.number ?? 0)
			return { isInside, isThere: file.isThere, head }
		})
	}
	/** The number of the newest one, written or read. */
	get number(): number {
		return this.#number
	}
	/** Writes both; called once the rows are committed. A disk that refuses refuses nobody's work. */
	note(keys: DataKeys, state: HeadState): void {
		if (this.held) return
		this.#number++
		this.#write(keys, state)
	}
	#write(keys: DataKeys, state: HeadState): void {
		const bare: Head = { form: 2, ...state, number: this.#number, key: keys.newest.id, mac: '' }
		const text = JSON.stringify({ ...bare, mac: macOf(keys, bare) })
		for (const { file } of this.#files) file.write(this.#number, text)
	}
	/** What stands in the file beside the records where it is none of this form. */
	oldText(): string | undefined {
		return this.#files[0]?.file.firstText()
	}
	/**
	 * The records were replaced by others on purpose: both say how far those have come, under the number
	 * that they have. What is written next is counted on, so that a file which was replaced cannot be put
	 * back as the newer one; a crash before that leaves heads that agree.
	 */
	restate(keys: DataKeys, state: HeadState): void {
		this.held = false
		this.#write(keys, state)
	}
	close(): void {
		for (const { file } of this.#files) file.close()
	}
}
