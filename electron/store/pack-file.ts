/**
 * The one file that travels: a heading line in clear (what it is, its sums, its wrapped key), then
 * each entry sealed on a line of its own. Written in form 2; form 1 of program 0.1.0 is read for
 * ever, and a file of a later form as far as it can be.
 */
import { createHmac, randomBytes, randomUUID } from 'node:crypto'
import { rmSync } from 'node:fs'
import { open } from 'node:fs/promises'
import {
	type Carried,
	type CarriedDraft,
	type Manifest,
	manifestSchema,
} from '../../shared/desk/outreach/carried.ts'
import { putInPlace } from './files.ts'
import {
	type Entries,
	mostEntries,
	mostUnfolded,
	openEntries,
	sealEntry,
	sha256,
} from './pack-entries.ts'
import {
	boundVersion,
	type Heading,
	headingOf,
	keyOf,
	namesOnlyIn,
	newerWords,
	packSeal,
	packVersion,
	withSum,
} from './pack-heading.ts'
import { PackRefused } from './pack-refused.ts'
import { type PackWork, unwatched } from './pack-work.ts'
import { FileRefused, readPlainFile, startOfPlainFile } from './plain-file.ts'
import { passphraseBytes, seal, unseal, wrap } from './seal.ts'

export type { Unread } from './pack-entries.ts'
export { PackRefused } from './pack-refused.ts'

/** Longest file that is read or written: it stands in memory whole. A choice of this program. */
const longestFile = 512 * 2 ** 20
/** The first bytes of every pack, of whichever form. */
const begins = '{"format":"lastwright-pack"'

export interface OpenedPack extends Entries {
	manifest: Manifest
	/** proof, for the laptop, that just this file was read */
	receipt: string
	/** names of what a newer version wrote in heading and manifest, which was left out */
	unknown: string[]
}

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')
const receiptOf = (key: Uint8Array, bodySha256: string): string =>
	(
		createHmac('sha256', key)
			.update(`read ${bodySha256}`)
			.digest('hex')
			.slice(0, 12)
			.match(/.{4}/g) ?? []
	).join('-')

export type Unfinished = Omit<
	Manifest,
	'format' | 'version' | 'packId' | 'sha256' | 'records' | 'drafts' | 'counts'
>
/** What a pack carries, and what its manifest says besides. */
export interface PackContent {
	about: Unfinished
	records: readonly Carried[]
	drafts: readonly CarriedDraft[]
}
/** Bytes that are written between two looks at whether the work goes on. A choice of this program. */
const chunkBytes = 2 ** 20

/**
 * Writes a pack: a finished file or none.
 * @returns its manifest and receipt
 * @throws PackRefused where it would be larger than a pack may be; what `work` throws
 */
export async function writePack(
	file: string,
	passphrase: string,
	cost: number,
	{ about, records, drafts }: PackContent,
	work: PackWork = unwatched,
): Promise<{ manifest: Manifest; receipt: string; bytes: number }> {
	const packId = randomUUID()
	const key = randomBytes(32)
	const made = { version: packVersion, packId }
	const { sealed, sums } = await sealAll(key, made, [...records, ...drafts], work)
	const counts: Record<string, number> = {}
	for (const { kind } of records) counts[kind] = (counts[kind] ?? 0) + 1
	const manifest: Manifest = {
		format: 'lastwright-pack',
		...made,
		...about,
		counts,
		records: records.length,
		drafts: drafts.length,
		sha256: sums,
	}
	const body = Buffer.concat(sealed)
	const head = await headOf(key, passphrase, cost, { manifest, body })
	const whole = Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`, 'latin1'), body])
	if (whole.length > longestFile)
		throw new PackRefused(
			`The pack would have ${whole.length} bytes, more than one may have (${longestFile}). ` +
				'Choose fewer players or less history. No half pack was left there.',
		)
	await writeWhole(file, whole, work)
	return { manifest, receipt: receiptOf(key, head.bodySha256), bytes: whole.length }
}
/** @throws PackRefused where there is more than a pack may hold: it could not be read again */
async function sealAll(
	key: Uint8Array,
	made: Pick<Heading, 'version' | 'packId'>,
	carried: readonly unknown[],
	work: PackWork,
): Promise<{ sealed: Buffer[]; sums: string[] }> {
	const sealed: Buffer[] = []
	const sums: string[] = []
	let bytes = 0
	for (const [index, one] of carried.entries()) {
		const entry = Buffer.from(JSON.stringify(one), 'utf8')
		bytes += entry.length
		mustFit(carried.length, bytes)
		sums.push(sha256(entry))
		sealed.push(Buffer.from(sealEntry(key, made, entry, index), 'latin1'))
		await work.at('sealing', index + 1, carried.length)
	}
	return { sealed, sums }
}
function mustFit(count: number, bytes: number): void {
	if (count <= mostEntries && bytes <= mostUnfolded) return
	throw new PackRefused(
		`These are ${count} records with more than ${bytes} bytes; one pack carries ${mostEntries} ` +
			`records and ${mostUnfolded} bytes. Choose fewer players or less history. No half pack was ` +
			'left there.',
	)
}
async function headOf(
	key: Uint8Array,
	passphrase: string,
	cost: number,
	{ manifest, body }: { manifest: Manifest; body: Buffer },
): Promise<Heading> {
	const { packId, version } = manifest
	const bodySha256 = sha256(body)
	const wrapped = await wrap(key, packId, passphraseBytes(passphrase), cost)
	const text = Buffer.from(JSON.stringify(manifest), 'utf8')
	const bound = [body.length, bodySha256, ...boundVersion({ version })]
	return withSum({
		format: 'lastwright-pack',
		version,
		seal: packSeal,
		packId,
		cost,
		salt: base64(wrapped.salt),
		key: base64(wrapped.sealed),
		manifest: base64(seal(key, packId, 'manifest', text, bound)),
		bodyBytes: body.length,
		bodySha256,
	})
}
/** Whole or not there: a full stick, a fault or a stop in between leaves nothing. */
async function writeWhole(file: string, bytes: Uint8Array, work: PackWork): Promise<void> {
	const coming = `${file}.writing`
	const handle = await open(coming, 'wx', 0o600)
	try {
		try {
			for (let from = 0; from < bytes.length; from += chunkBytes) {
				await handle.writeFile(bytes.subarray(from, from + chunkBytes))
				await work.at('writing', Math.min(from + chunkBytes, bytes.length), bytes.length)
			}
			await handle.sync()
		} finally {
			await handle.close()
		}
		await work.at('writing', bytes.length, bytes.length)
		putInPlace(coming, file)
	} catch (error) {
		rmSync(coming, { force: true })
		throw error
	}
}
/** Whether a file says of itself that it is a pack; false too where it cannot be read. */
export function isPackFile(file: string): boolean {
	try {
		return startOfPlainFile(file, begins.length).toString('latin1') === begins
	} catch {
		return false
	}
}
/**
 * Reads a pack whole before anything of it is used.
 * @throws PackRefused in words; what `work` throws
 */
export async function readPack(
	file: string,
	passphrase: string,
	work: PackWork = unwatched,
): Promise<OpenedPack> {
	const bytes = bytesOf(file)
	const end = bytes.indexOf(10)
	const unknown = new Set<string>()
	const heading = headingOf(end < 0 ? '' : bytes.subarray(0, end).toString('latin1'), unknown)
	const body = bytes.subarray(end + 1)
	mustBeWhole(heading, body)
	const key = await keyOf(heading, passphrase)
	try {
		const manifest = manifestOf(heading, key, unknown)
		const entries = await openEntries(key, heading, body, manifest, work)
		const receipt = receiptOf(key, heading.bodySha256)
		return { manifest, ...entries, receipt, unknown: [...unknown].sort() }
	} catch (error) {
		if (error instanceof PackRefused) throw error
		if (heading.version > packVersion)
			throw new PackRefused(newerWords(heading), 'outreach.newer-pack')
		throw new PackRefused(
			'The pack is damaged. Copy it again from where it was made. Nothing was changed.',
			'outreach.pack-damaged',
		)
	}
}
/** @throws PackRefused where it is no plain file, longer than any pack, or cannot be read */
function bytesOf(file: string): Buffer {
	try {
		return readPlainFile(file, longestFile)
	} catch (error) {
		if (error instanceof FileRefused)
			throw new PackRefused(`${error.message} Nothing was changed.`, 'places.file-refused')
		throw error
	}
}
function mustBeWhole(heading: Heading, body: Uint8Array): void {
	if (body.length !== heading.bodyBytes)
		throw new PackRefused(
			`The pack is not whole: ${body.length} of ${heading.bodyBytes} bytes are there. Copy it ` +
				'again from the stick. Nothing was changed.',
			'outreach.pack-damaged',
		)
	if (sha256(body) !== heading.bodySha256)
		throw new PackRefused(
			'The pack is damaged: its SHA-256 is not the one it was made with. Copy it again. Nothing ' +
				'was changed.',
			'outreach.pack-damaged',
		)
}
/** @throws PackRefused where the manifest is none, or lists more than a pack may hold */
function manifestOf(heading: Heading, key: Uint8Array, unknown: Set<string>): Manifest {
	const { packId, bodyBytes, bodySha256 } = heading
	const sealed = Buffer.from(heading.manifest, 'base64')
	const bound = [bodyBytes, bodySha256, ...boundVersion(heading)]
	const found: unknown = JSON.parse(
		Buffer.from(unseal(key, packId, 'manifest', sealed, bound)).toString('utf8'),
	)
	const manifest = manifestSchema.parse(found)
	const { version, sha256: sums, records, drafts } = manifest
	namesOnlyIn(found, manifestSchema, 'manifest', unknown)
	if (version !== heading.version || manifest.packId !== packId || sums.length !== records + drafts)
		throw new PackRefused('The pack does not hold what its manifest lists. Nothing was changed.')
	if (sums.length > mostEntries)
		throw new PackRefused(
			`The pack lists ${sums.length} records; one holds ${mostEntries} at most. Nothing was changed.`,
		)
	return manifest
}
