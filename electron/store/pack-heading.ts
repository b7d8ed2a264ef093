/**
 * The first line of a pack, in clear: what it is, its sums, and its key wrapped by the passphrase.
 * A later version may add keys; the ones that are needed keep their names.
 */
import { createHash } from 'node:crypto'
import { z } from 'zod'
import { canonicalJson } from '../../shared/engine/plain/canonical.ts'
import { PackRefused } from './pack-refused.ts'
import { passphraseBytes, SealBroken, unwrap, type Wrapped } from './seal.ts'

/** Form of the files that are written now; those of program 0.1.0 are of form 1. */
export const packVersion = 2
/** How a pack of this version is sealed. Another one would say so under the same name. */
export const packSeal = 'scrypt, aes-256-gcm'

const headSchema = z.object({
	format: z.literal('lastwright-pack'),
	version: z.int().min(1),
	/** absent in version 1, which knew no other */
	seal: z.string().default(packSeal),
	packId: z.string().min(1).max(80),
	cost: z.int().min(2),
	salt: z.string(),
	key: z.string(),
	manifest: z.string(),
	bodyBytes: z.int().min(0),
	bodySha256: z.string(),
	/**
	 * SHA-256 of all the others: whether the heading came whole is told before a passphrase is tried.
	 * All of it stands in clear, so that it says nothing of the passphrase. Absent before 0.6.0.
	 */
	headSha256: z.string().optional(),
})
export type Heading = z.infer<typeof headSchema>
/** scrypt cost that a file may ask for: a file from elsewhere must not stop the PC */
const mostCost = 2 ** 20

const sumOf = ({ headSha256: _, ...others }: Record<string, unknown>): string =>
	createHash('sha256').update(canonicalJson(others)).digest('hex')
/** A heading with its own sum. */
export const withSum = (heading: Heading): Heading => ({ ...heading, headSha256: sumOf(heading) })

/** What else is bound into the seals; version 1 bound nothing more, later ones their own number. */
export const boundVersion = ({ version }: Pick<Heading, 'version'>): number[] =>
	version === 1 ? [] : [version]

/**
 * @param unknown takes the names of keys that this version does not know
 * @throws PackRefused where it is no heading of a pack, or of one that is sealed in another way
 */
export function headingOf(line: string, unknown: Set<string>): Heading {
	let found: unknown
	try {
		found = JSON.parse(line)
	} catch {
		throw new PackRefused(notAPack, 'outreach.not-a-pack')
	}
	const read = headSchema.safeParse(found)
	if (!read.success || !Number.isInteger(Math.log2(read.data.cost)))
		throw new PackRefused(notAPack, 'outreach.not-a-pack')
	const heading = read.data
	mustBeItself(heading, found)
	if (heading.seal !== packSeal) throw new PackRefused(newerWords(heading), 'outreach.newer-pack')
	if (heading.cost > mostCost)
		throw new PackRefused(
			'The pack asks for more work than this program gives. It was not made by this version. ' +
				'Nothing was changed.',
		)
	namesOnlyIn(found, headSchema, 'heading', unknown)
	return heading
}
/** What was altered on the way is never taken for a wrong passphrase. */
function mustBeItself({ version, headSha256 }: Heading, found: unknown): void {
	// a later version may sum in another way
	if (version > packVersion || headSha256 === undefined) return
	if (headSha256 === sumOf(found as Record<string, unknown>)) return
	throw new PackRefused(
		'The pack is damaged: its first line is not the one it was made with. Copy it again from where ' +
			'it was made. Nothing was changed.',
		'outreach.pack-damaged',
	)
}
const notAPack =
	'This is not a whole Lastwright pack. Choose the file whose name ends in .lwpack, copied ' +
	'to its end. Nothing was changed.'

/** Adds the keys of an object that its schema does not know. */
export function namesOnlyIn(
	found: unknown,
	{ shape }: z.ZodObject,
	where: string,
	unknown: Set<string>,
): void {
	if (typeof found !== 'object' || found === null) return
	for (const key of Object.keys(found))
		if (!Object.hasOwn(shape, key)) unknown.add(`${where}.${key.slice(0, 40)}`)
}
/** The sentence for a pack that a later version made in a way that cannot be read here. */
export function newerWords({ version }: Pick<Heading, 'version'>): string {
	return (
		`The pack was made by a newer version of Lastwright (form ${version}; this version reads ` +
		`forms 1 to ${packVersion}). Bring this PC to that version, then choose the file again. ` +
		'Nothing was changed.'
	)
}
/** The key of the entries. @throws PackRefused on a wrong passphrase */
export async function keyOf(heading: Heading, passphrase: string): Promise<Uint8Array> {
	const wrapped: Wrapped = {
		cost: heading.cost,
		salt: Buffer.from(heading.salt, 'base64'),
		sealed: Buffer.from(heading.key, 'base64'),
	}
	try {
		return await unwrap(wrapped, heading.packId, passphraseBytes(passphrase))
	} catch (error) {
		if (error instanceof SealBroken)
			throw new PackRefused(
				heading.headSha256 === undefined ? passphraseOrDamage : wrongPassphrase,
				'outreach.pack-passphrase',
			)
		throw error
	}
}
const itsPassphrase =
	'A pack has a passphrase of its own: the one chosen when it was made; the file for the way back ' +
	'has the same one. If it is forgotten, make a new pack at home. Nothing was changed.'
const wrongPassphrase = `The passphrase is not the one of this pack. The file itself is whole. ${itsPassphrase}`
/** A heading without a sum does not tell the one from the other. */
const passphraseOrDamage =
	'Either the passphrase is not the one of this pack, or the file is damaged: a pack of an earlier ' +
	'version does not tell which. Type the passphrase again; if it stays, copy the file again from ' +
	`where it was made. ${itsPassphrase}`
