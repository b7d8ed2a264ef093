/** The public keys of the installations that wrote these records. */
import { z } from 'zod'
import { isSignedBy } from './author.ts'
import type { StoredRecord } from './record.ts'
import type { Records } from './records.ts'

/** The kind of record that tells an installation's public key. */
const installationKind = 'installation'
const installationSchema = z.looseObject({ origin: z.string(), publicKey: z.string() })

/** What a record of an installation tells; undefined for any other record. */
export function installationIn({
	kind,
	value,
	origin,
}: Pick<StoredRecord, 'kind' | 'value' | 'origin'>):
	| z.infer<typeof installationSchema>
	| undefined {
	if (kind !== installationKind) return undefined
	const read = installationSchema.safeParse(value)
	// nobody introduces another one
	return read.success && read.data.origin === origin ? read.data : undefined
}
/** Public keys by origin, base64. */
export function knownAuthors(records: Records): Map<string, string> {
	const known = new Map<string, string>()
	for (const record of records.load([installationKind]).records) {
		const installation = installationIn(record)
		// the first word counts: a second key for one origin is no installation of ours
		if (installation && !known.has(installation.origin))
			known.set(installation.origin, installation.publicKey)
	}
	return known
}
/** Whether a record was written by the installation that it names. */
export type Signature = 'good' | 'wrong' | 'unsigned' | 'unknown-author'
export function signatureOf(
	record: Omit<StoredRecord, 'signature'> & { signature?: string | undefined },
	authors: ReadonlyMap<string, string>,
): Signature {
	if (record.signature === undefined) return 'unsigned'
	const key = authors.get(record.origin)
	if (key === undefined) return 'unknown-author'
	return isSignedBy(key, record, record.signature) ? 'good' : 'wrong'
}
