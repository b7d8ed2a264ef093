/** What a file that was put back or brought says of itself, until it is unlocked for the first time. */
import { DatabaseSync } from 'node:sqlite'
import { z } from 'zod'
import type { DataKeys } from './data-keys.ts'
import { isEnvelope, open, shut } from './envelope.ts'
import { bringUp, isOfFirstVersions } from './first-form.ts'
import type { Parts } from './parts.ts'
import { ownSetting } from './settings.ts'

/** Under this name a file says so: sealed where the key was open, else in clear. */
export const restoredSetting = 'restored'
const bound = ['setting', restoredSetting]

const markSchema = z.object({
	/** what was put back, in words */
	of: z.string(),
	/** time of its last record, ISO 8601; empty where it held none or that is not known */
	lastAt: z.string().default(''),
	/** whether it got a name of its own already */
	renewed: z.boolean().default(false),
	/** the number of the head that it takes the place of: after a newer one it is a replay */
	after: z.int().min(0).default(0),
})
export interface Restored extends z.infer<typeof markSchema> {
	/** whether who put it back had the key */
	isTrue: boolean
}
const encoded = (mark: z.input<typeof markSchema>): Buffer =>
	Buffer.from(JSON.stringify(mark), 'utf8')

/**
 * The mark of the open records; undefined where there is none. One that is older than the heads was
 * put there again, and is not believed.
 */
export function restoredOf(
	parts: Pick<Parts, 'settings' | 'keyring' | 'heads'>,
): Restored | undefined {
	const mark = markIn(parts)
	if (!mark?.isTrue) return mark
	parts.heads.read(parts.keyring.opened())
	return parts.heads.number <= mark.after ? mark : { ...mark, isTrue: false, renewed: false }
}
function markIn({ settings, keyring }: Pick<Parts, 'settings' | 'keyring'>): Restored | undefined {
	const bytes = settings.bytes(restoredSetting)
	if (!bytes) return undefined
	const keys = keyring.opened()
	const unknown = { of: 'unknown', lastAt: '', renewed: false, after: 0, isTrue: false }
	try {
		const isSealed = isEnvelope(keys, bytes)
		const clear = isSealed ? open(keys, bytes, bound) : bytes
		const mark = markSchema.parse(JSON.parse(Buffer.from(clear).toString('utf8')))
		return { ...mark, renewed: isSealed && mark.renewed, isTrue: isSealed }
	} catch {
		return unknown
	}
}
const sealedMark = (keys: DataKeys, of: string, after: number): Uint8Array =>
	shut(keys.newest, encoded({ of, after, renewed: true }), bound)

/** What a file is to know of the records whose place it takes. */
export interface KnownNames {
	/** of the records, the same for ever */
	recordsId: string
	/** of this installation until now */
	origin: string
	/** names that these records were written under, anywhere */
	former: readonly string[]
	/** those among them that this PC bore */
	own: readonly string[]
	/** the number of their newest head */
	head: number
}
/**
 * Gives an open copy a name and a key of its own, as what comes after it is not what came after the
 * backup.
 * @param at ISO 8601
 * @param of what was put back, in words
 */
export function becomeRestored(parts: Parts, at: string, of: string, names: KnownNames): void {
	const { database, settings, order, installation, records, keyring } = parts
	const isUpgrade = isOfFirstVersions(parts)
	database.together(() => {
		order.renew()
		settings.put('records', names.recordsId)
		settings.put('former', joined([...order.former, ...names.former, names.origin]))
		settings.put(ownSetting, joined([...names.own, names.origin]))
		records.append({ kind: 'installation', at, value: installation.make(at, 'restore') })
		bringUp(parts, at, isUpgrade)
		settings.put(restoredSetting, sealedMark(keyring.opened(), of, names.head))
		// the copy counts wrong tries anew
		settings.drop('tries')
	})
}
const joined = (names: readonly string[]): string => [...new Set(names)].filter(Boolean).join(' ')

/** Marks a file that is brought without its key: the first unlock makes it safe. */
export function markBrought(file: string, mark: { of: string; lastAt: string }): void {
	const db = new DatabaseSync(file)
	try {
		db.prepare(
			'INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
		).run(restoredSetting, encoded(mark))
		db.prepare("DELETE FROM setting WHERE name IN ('tries', ?)").run(ownSetting)
	} finally {
		db.close()
	}
}
