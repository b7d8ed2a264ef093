/**
 * The one file that travels: a heading line in clear (what it is, its sums, its wrapped key), then
 * each entry sealed on a line of its own.
 */
import { createHash, createHmac, randomBytes, randomUUID } from 'node:crypto'
import { closeSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs'
import { z } from 'zod'
import {
	type Carried,
	type CarriedDraft,
	carriedDraftSchema,
	carriedSchema,
	type Manifest,
	manifestSchema,
} from '../../shared/desk/outreach/carried.ts'
import { putInPlace } from './files.ts'
import { passphraseBytes, SealBroken, seal, unseal, unwrap, wrap } from './seal.ts'

const headSchema = z.strictObject({
	format: z.literal('lastwright-pack'),
	version: z.literal(1),
	packId: z.string(),
	cost: z.int().min(2),
	salt: z.string(),
	key: z.string(),
	manifest: z.string(),
	bodyBytes: z.int().min(0),
	bodySha256: z.string(),
})
type Head = z.infer<typeof headSchema>
/** scrypt cost that a file may ask for: a file from elsewhere must not stop the PC */
const mostCost = 2 ** 20
/** A pack that cannot be used, in words. */
export class PackRefused extends Error {}
export interface OpenedPack {
	manifest: Manifest
	records: Carried[]
	drafts: CarriedDraft[]
	/** proof, for the laptop, that just this file was read */
	receipt: string
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
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
/** Writes a pack: a finished file or none. @returns its manifest and receipt */
export async function writePack(
	file: string,
	passphrase: string,
	cost: number,
	about: Unfinished,
	records: readonly Carried[],
	drafts: readonly CarriedDraft[],
): Promise<{ manifest: Manifest; receipt: string; bytes: number }> {
	const packId = randomUUID()
	const key = randomBytes(32)
	const entries = [...records, ...drafts].map((record) =>
		Buffer.from(JSON.stringify(record), 'utf8'),
	)
	const counts: Record<string, number> = {}
	for (const { kind } of records) counts[kind] = (counts[kind] ?? 0) + 1
	const manifest: Manifest = {
		format: 'lastwright-pack',
		version: 1,
		packId,
		...about,
		counts,
		records: records.length,
		drafts: drafts.length,
		sha256: entries.map(sha256),
	}
	const body = Buffer.from(
		entries
			.map((entry, index) => `${base64(seal(key, packId, 'entry', entry, [index]))}\n`)
			.join(''),
		'latin1',
	)
	const bodySha256 = sha256(body)
	const wrapped = await wrap(key, packId, passphraseBytes(passphrase), cost)
	const head = {
		format: 'lastwright-pack',
		version: 1,
		packId,
		cost,
		salt: base64(wrapped.salt),
		key: base64(wrapped.sealed),
		manifest: base64(
			seal(key, packId, 'manifest', Buffer.from(JSON.stringify(manifest), 'utf8'), [
				body.length,
				bodySha256,
			]),
		),
		bodyBytes: body.length,
		bodySha256,
	}
	const whole = Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`, 'latin1'), body])
	writeWhole(file, whole)
	return { manifest, receipt: receiptOf(key, bodySha256), bytes: whole.length }
}
function writeWhole(file: string, bytes: Uint8Array): void {
	const coming = `${file}.writing`
	try {
		const handle = openSync(coming, 'wx', 0o600)
		try {
			let written = 0
			while (written < bytes.length) written += writeSync(handle, bytes, written)
		} finally {
			closeSync(handle)
		}
		putInPlace(coming, file)
	} catch (error) {
		rmSync(coming, { force: true })
		throw error
	}
}
/** Reads a pack whole before anything of it is used. @throws PackRefused in words */
export async function readPack(file: string, passphrase: string): Promise<OpenedPack> {
	const bytes = bytesOf(file)
	const end = bytes.indexOf(10)
	const head = headOf(end < 0 ? '' : bytes.subarray(0, end).toString('latin1'))
	const body = bytes.subarray(end + 1)
	mustBeWhole(head, body)
	const key = await keyOf(head, passphrase)
	try {
		return contentOf(head, body, key)
	} catch (error) {
		if (error instanceof PackRefused) throw error
		throw new PackRefused(
			'The pack is damaged or was made by another version. Nothing was changed.',
		)
	}
}
function bytesOf(file: string): Buffer {
	try {
		return readFileSync(file)
	} catch {
		throw new PackRefused(
			`The file ${file} cannot be read. Check the path and that the stick is plugged in.`,
		)
	}
}
function headOf(line: string): Head {
	try {
		const head = headSchema.parse(JSON.parse(line))
		if (!Number.isInteger(Math.log2(head.cost))) throw new RangeError('cost')
		return head
	} catch {
		throw new PackRefused(
			'This is not a whole Lastwright pack. Choose the file whose name ends in .lwpack, copied ' +
				'to its end. Nothing was changed.',
		)
	}
}
function mustBeWhole(head: Head, body: Uint8Array): void {
	if (body.length !== head.bodyBytes)
		throw new PackRefused(
			`The pack is not whole: ${body.length} of ${head.bodyBytes} bytes are there. Copy it ` +
				'again from the stick. Nothing was changed.',
		)
	if (sha256(body) !== head.bodySha256)
		throw new PackRefused(
			'The pack is damaged: its SHA-256 is not the one it was made with. Copy it again. Nothing ' +
				'was changed.',
		)
}
async function keyOf(head: Head, passphrase: string): Promise<Uint8Array> {
	if (head.cost > mostCost)
		throw new PackRefused(
			'The pack asks for more work than this program gives. It was not made by this version. ' +
				'Nothing was changed.',
		)
	const wrapped = {
		cost: head.cost,
		salt: Buffer.from(head.salt, 'base64'),
		sealed: Buffer.from(head.key, 'base64'),
	}
	try {
		return await unwrap(wrapped, head.packId, passphraseBytes(passphrase))
	} catch (error) {
		if (error instanceof SealBroken)
			throw new PackRefused(
				'The passphrase does not open this pack. It has a passphrase of its own: the one chosen ' +
					'when it was made. Nothing was changed.',
			)
		throw error
	}
}
/** What is sealed in a pack, each entry held against the manifest. */
function contentOf(head: Head, body: Buffer, key: Uint8Array): OpenedPack {
	const read = (kind: string, sealed: string, also: (string | number)[]) =>
		Buffer.from(unseal(key, head.packId, kind, Buffer.from(sealed, 'base64'), also))
	const manifest = manifestSchema.parse(
		JSON.parse(read('manifest', head.manifest, [head.bodyBytes, head.bodySha256]).toString('utf8')),
	)
	const lines = body.toString('latin1').split('\n').slice(0, -1)
	if (
		lines.length !== manifest.sha256.length ||
		lines.length !== manifest.records + manifest.drafts
	)
		throw new PackRefused('The pack does not hold what its manifest lists. Nothing was changed.')
	const entries = lines.map((line, index) => {
		const clear = read('entry', line, [index])
		if (sha256(clear) !== manifest.sha256[index])
			throw new PackRefused(
				`Entry ${index + 1} of the pack is not the one its manifest lists. Nothing was changed.`,
			)
		return JSON.parse(clear.toString('utf8')) as unknown
	})
	return {
		manifest,
		records: entries.slice(0, manifest.records).map((entry) => carriedSchema.parse(entry)),
		drafts: entries.slice(manifest.records).map((entry) => carriedDraftSchema.parse(entry)),
		receipt: receiptOf(key, head.bodySha256),
	}
}
