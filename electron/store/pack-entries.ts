/** The entries of a pack: each compressed, sealed on a line of its own, and read by itself. */
import { createHash } from 'node:crypto'
import { brotliCompressSync, brotliDecompressSync, constants } from 'node:zlib'
import type { z } from 'zod'
import {
	type Carried,
	carriedDraftSchema,
	carriedSchema,
} from '../../shared/desk/outreach/carried.ts'
import { boundVersion, type Heading } from './pack-heading.ts'
import { PackRefused } from './pack-refused.ts'
import type { PackWork } from './pack-work.ts'
import { seal, unseal } from './seal.ts'

/** Longest entry, in bytes of its JSON: far above a visit with its report. A choice of this program. */
const longestEntry = 32 * 2 ** 20
/** Most entries of one pack. A choice of this program. */
export const mostEntries = 400_000
/** Most bytes that all entries of a pack unfold to: they stand in memory together. */
export const mostUnfolded = 512 * 2 ** 20
/** Deepest nesting of an entry; no record comes near it, and reading a deeper one would not end well. */
const deepest = 64
/** First byte of an entry from version 2 on. */
const codecs = { none: 0, brotli: 1 } as const
/** common practice for text: at quality 4 brotli halves what zlib leaves, at its speed */
const brotliQuality = 4
/** shorter ones do not gain by it */
const shortestCompressed = 200

export const sha256 = (bytes: Uint8Array): string =>
	createHash('sha256').update(bytes).digest('hex')

/** An entry that this version cannot read; nothing of it is lost, `content` is what there is. */
export interface Unread {
	/** its number, from 1 */
	entry: number
	why: 'newer' | 'too-large' | 'unreadable'
	content: unknown
}
/** What a pack holds, as far as this version reads it. */
export interface Entries {
	records: Carried[]
	drafts: z.infer<typeof carriedDraftSchema>[]
	unread: Unread[]
}
type Sealing = Pick<Heading, 'version' | 'packId'>

/** One line of the body. @throws PackRefused where it is longer than a pack may carry */
export function sealEntry(
	key: Uint8Array,
	heading: Sealing,
	clear: Uint8Array,
	index: number,
): string {
	if (clear.length > longestEntry)
		throw new PackRefused(
			`Record ${index + 1} has ${clear.length} bytes, more than a pack carries in one ` +
				`(${longestEntry}). Leave this player's history out of the pack. No half pack was left there.`,
		)
	const sealed = seal(key, heading.packId, 'entry', encoded(clear), [
		index,
		...boundVersion(heading),
	])
	return `${Buffer.from(sealed).toString('base64')}\n`
}
function encoded(clear: Uint8Array): Uint8Array {
	if (clear.length < shortestCompressed) return Buffer.concat([Buffer.of(codecs.none), clear])
	const small = brotliCompressSync(clear, {
		params: {
			[constants.BROTLI_PARAM_QUALITY]: brotliQuality,
			[constants.BROTLI_PARAM_SIZE_HINT]: clear.length,
		},
	})
	return Buffer.concat([Buffer.of(codecs.brotli), small])
}
/**
 * The entries of a body, each held against its sum.
 * @param sums SHA-256 of each, records first
 * @param records how many of them are records; the rest are drafts
 * @throws PackRefused where an entry is not the one that is listed; SealBroken where it was altered;
 * what `work` throws
 */
export async function openEntries(
	key: Uint8Array,
	heading: Sealing,
	body: Buffer,
	{ sha256: sums, records }: { sha256: readonly string[]; records: number },
	work: PackWork,
): Promise<Entries> {
	const entries: Entries = { records: [], drafts: [], unread: [] }
	let unfolded = 0
	let from = 0
	let index = 0
	for (; from < body.length; index++) {
		const end = body.indexOf(10, from)
		if (end < 0 || index >= sums.length) break
		const line = body.subarray(from, end).toString('latin1')
		const sealed = Buffer.from(line, 'base64')
		const bytes = unseal(key, heading.packId, 'entry', sealed, [index, ...boundVersion(heading)])
		const place = { index, sum: sums[index] ?? '', isDraft: index >= records }
		const clear = clearOf(bytes, heading)
		unfolded += typeof clear === 'string' ? longestEntry : clear.length
		if (unfolded > mostUnfolded) throw new PackRefused(tooMuch)
		takeEntry(entries, clear, bytes, place)
		from = end + 1
		await work.at('opening', index + 1, sums.length)
	}
	if (index !== sums.length || from !== body.length)
		throw new PackRefused('The pack does not hold what its manifest lists. Nothing was changed.')
	return entries
}
const tooMuch =
	`The pack unfolds to more than ${mostUnfolded} bytes, which no pack of this program does. ` +
	'Nothing was changed.'
interface Place {
	index: number
	sum: string
	isDraft: boolean
}
function takeEntry(entries: Entries, clear: Clear, bytes: Uint8Array, place: Place): void {
	const found = contentOf(clear, bytes, place)
	const unread = 'why' in found ? found : takeContent(entries, found.content, place)
	if (unread) entries.unread.push({ entry: place.index + 1, ...unread })
}
type Why = Omit<Unread, 'entry'>
/** The content of an entry, or why there is none. */
function contentOf(
	clear: Clear,
	bytes: Uint8Array,
	{ index, sum }: Place,
): Why | { content: unknown } {
	if (clear === 'newer') return { why: clear, content: Buffer.from(bytes).toString('base64') }
	if (clear === 'too-large') return { why: clear, content: undefined }
	if (sha256(clear) !== sum)
		throw new PackRefused(
			`Entry ${index + 1} of the pack is not the one its manifest lists. Nothing was changed.`,
		)
	const content = jsonOf(clear)
	return content === undefined
		? { why: 'unreadable', content: Buffer.from(clear).toString('utf8') }
		: { content }
}
/** @returns why it cannot be taken; undefined where it was */
function takeContent(entries: Entries, content: unknown, { isDraft }: Place): Why | undefined {
	if (hasMore(content, isDraft ? carriedDraftSchema : carriedSchema))
		return { why: 'newer', content }
	if (isDraft) {
		const draft = carriedDraftSchema.safeParse(content)
		if (!draft.success) return { why: 'unreadable', content }
		entries.drafts.push(draft.data)
		return undefined
	}
	const record = carriedSchema.safeParse(content)
	if (!record.success) return { why: 'unreadable', content }
	entries.records.push(record.data)
	return undefined
}
/** Whether an entry says more than this version knows of: its signature covers that too. */
const hasMore = (found: unknown, { shape }: z.ZodObject): boolean =>
	typeof found === 'object' &&
	found !== null &&
	Object.keys(found).some((key) => !Object.hasOwn(shape, key))
/** The bytes of an entry's JSON, or why there are none. */
type Clear = Uint8Array | 'newer' | 'too-large'
function clearOf(bytes: Uint8Array, { version }: Sealing): Clear {
	if (version === 1) return bytes.length > longestEntry ? 'too-large' : bytes
	const packed = bytes.subarray(1)
	if (bytes[0] === codecs.none) return packed.length > longestEntry ? 'too-large' : packed
	if (bytes[0] !== codecs.brotli) return 'newer'
	try {
		return brotliDecompressSync(packed, { maxOutputLength: longestEntry })
	} catch {
		return 'too-large'
	}
}
/** Undefined where it is no JSON, or nested deeper than any record. */
function jsonOf(clear: Uint8Array): unknown {
	if (depthOf(clear) > deepest) return undefined
	try {
		return JSON.parse(Buffer.from(clear).toString('utf8'))
	} catch {
		return undefined
	}
}
const [quote, backslash] = [0x22, 0x5c]
/** What a byte of JSON outside of texts does to the depth: brackets open and close. */
const steps = new Map([
	[0x5b, 1],
	[0x7b, 1],
	[0x5d, -1],
	[0x7d, -1],
])
/** How deep groups and lists stand in each other, told without reading them. */
function depthOf(clear: Uint8Array): number {
	let depth = 0
	let most = 0
	for (let at = 0; at < clear.length; at++) {
		const byte = clear[at] ?? 0
		if (byte === quote) at = endOfText(clear, at)
		depth += steps.get(byte) ?? 0
		most = Math.max(most, depth)
	}
	return most
}
/** @param from the quotation mark that opens a text. @returns where the one that closes it stands */
function endOfText(clear: Uint8Array, from: number): number {
	let at = from + 1
	while (at < clear.length && clear[at] !== quote) at += clear[at] === backslash ? 2 : 1
	return at
}
