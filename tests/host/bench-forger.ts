/** A laptop that lies: files for the way back with whatever it likes in them, well sealed and signed. */
import {
	createHash,
	generateKeyPairSync,
	type KeyObject,
	randomBytes,
	randomUUID,
	sign,
} from 'node:crypto'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { readPack, type Unfinished, writePack } from '../../electron/store/pack-file.ts'
import { passphraseBytes, seal, wrap } from '../../electron/store/seal.ts'
import type { Carried, CarriedDraft, Manifest } from '../../shared/desk/outreach/carried.ts'
import { canonicalJson, digestOf } from '../../shared/engine/plain/canonical.ts'
import { packPassphrase, stick } from './bench-pack.ts'

/** Signs as an installation does: over the canonical JSON of all of a record. */
export function signedWith(key: KeyObject, record: Carried): Carried {
	const { id, kind, version, at, follows, origin, tick, number, about, thing, card, value } = record
	const whole = { id, kind, version, at, follows, origin, tick, number, about, thing, card, value }
	return {
		...record,
		signature: sign(null, Buffer.from(canonicalJson(whole)), key).toString('base64'),
	}
}
export function installation(origin = randomBytes(6).toString('hex')) {
	const { publicKey, privateKey } = generateKeyPairSync('ed25519')
	return {
		origin,
		privateKey,
		publicKey: publicKey.export({ type: 'spki', format: 'der' }).toString('base64'),
	}
}
export type Forger = ReturnType<typeof forgerOf>
/** What a forger has in hand: what came with a true file, and an installation of their own. */
function forgerOf(true_: { manifest: Manifest; records: Carried[]; drafts: CarriedDraft[] }) {
	const maker = installation()
	let number = 0
	const lastTick = Math.max(...true_.records.map(({ tick }) => tick))
	/** A record of the forger's own, whole and signed. */
	const written = (
		kind: string,
		value: unknown,
		over: Partial<Carried> = {},
		key = maker.privateKey,
	): Carried => {
		number++
		return signedWith(key, {
			id: randomUUID(),
			kind,
			version: 1,
			at: true_.manifest.madeAt,
			origin: maker.origin,
			tick: lastTick + number,
			number,
			value,
			...over,
		})
	}
	return { ...true_, maker, written }
}
/** The digest that stands in a signed visit. */
export function resealed<Visit extends object>(visit: Visit): Visit & { digest: string } {
	const { digest: _, ...frozen } = visit as Visit & { digest?: string }
	return { ...visit, digest: digestOf(frozen) }
}
/** The forger's version of a record that the laptop wrote. */
export const rewritten = (
	{ written }: Forger,
	record: Carried,
	value: unknown = record.value,
	over: Partial<Carried> = {},
): Carried => {
	const { about, thing, card, follows, kind } = record
	return written(kind, value, { about, thing, card, follows, ...over })
}
interface Forged {
	records?: Carried[]
	drafts?: CarriedDraft[]
	manifest?: Partial<Unfinished>
}
/** @param file a true file for the way back. @returns the path of the forged one */
export async function forged(
	file: string,
	make: (forger: Forger) => Forged | Promise<Forged>,
): Promise<string> {
	const opened = await readPack(file, packPassphrase)
	const forger = forgerOf(opened)
	const { format, version, packId, sha256, records, drafts, counts, ...about } = opened.manifest
	const made = await make(forger)
	const { origin, publicKey } = forger.maker
	const path = join(stick(), 'forged.lwpack')
	await writePack(path, packPassphrase, 1024, {
		about: { ...about, installation: { origin, publicKey }, ...made.manifest },
		records: made.records ?? [],
		drafts: made.drafts ?? [],
	})
	return path
}
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')
const forVersion1 = ['recordsId', 'installation', 'turn', 'people']
/** A pack as program 0.1.0 wrote it: form 1, nothing compressed, nothing signed. */
export async function packOfVersion1(
	about: Unfinished,
	records: readonly Carried[],
	drafts: readonly CarriedDraft[],
): Promise<string> {
	const packId = randomUUID()
	const key = randomBytes(32)
	const plain = records.map(({ version: _, number: __, signature: ___, ...record }) => record)
	const entries = [...plain, ...drafts].map((entry) => Buffer.from(JSON.stringify(entry)))
	const counts: Record<string, number> = {}
	for (const { kind } of records) counts[kind] = (counts[kind] ?? 0) + 1
	const manifest = {
		format: 'lastwright-pack',
		version: 1,
		packId,
		...Object.fromEntries(Object.entries(about).filter(([name]) => !forVersion1.includes(name))),
		counts,
		records: records.length,
		drafts: drafts.length,
		sha256: entries.map(sha256),
	}
	const body = Buffer.from(
		entries
			.map((entry, index) => `${base64(seal(key, packId, 'entry', entry, [index]))}\n`)
			.join(''),
	)
	const wrapped = await wrap(key, packId, passphraseBytes(packPassphrase), 1024)
	const text = Buffer.from(JSON.stringify(manifest))
	const head = {
		format: 'lastwright-pack',
		version: 1,
		packId,
		cost: 1024,
		salt: base64(wrapped.salt),
		key: base64(wrapped.sealed),
		manifest: base64(seal(key, packId, 'manifest', text, [body.length, sha256(body)])),
		bodyBytes: body.length,
		bodySha256: sha256(body),
	}
	const path = join(stick(), 'first.lwpack')
	writeFileSync(path, Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), body]))
	return path
}
