/** Who wrote a record, as far as the store can tell. */
import { createPublicKey, verify } from 'node:crypto'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { canonicalJson } from '../../../shared/engine/plain/canonical.ts'
import type { Store } from '../../store/store.ts'

export type Word = 'good' | 'wrong' | 'unsigned' | 'unknown-author'
interface Signing {
	recordsId?: string
	formerOrigins?: readonly string[]
	sign?: (record: Carried) => string
	signatureOf?: (record: Carried, further: ReadonlyMap<string, string>) => Word
}
const signing = (store: Store): Signing => store as Signing
export const recordsIdOf = (store: Store): string => signing(store).recordsId ?? store.origin
export const formerOriginsOf = (store: Store): readonly string[] =>
	signing(store).formerOrigins ?? []
export const signs = (store: Store): boolean => signing(store).signatureOf !== undefined
export function wordOf(store: Store, record: Carried, further: ReadonlyMap<string, string>): Word {
	const own = signing(store)
	if (own.signatureOf) return own.signatureOf(record, further)
	if (record.signature === undefined) return 'unsigned'
	const publicKey = further.get(record.origin)
	if (publicKey === undefined) return 'unknown-author'
	const { id, kind, version, at, follows, origin, tick, number, about, thing, card, value } = record
	const whole = { id, kind, version, at, follows, origin, tick, number, about, thing, card, value }
	const key = createPublicKey({
		key: Buffer.from(publicKey, 'base64'),
		type: 'spki',
		format: 'der',
	})
	const signature = Buffer.from(record.signature, 'base64')
	return verify(null, Buffer.from(canonicalJson(whole)), key, signature) ? 'good' : 'wrong'
}
/** A record that is not in the store, with this installation's signature where it has one. */
export function signed(store: Store, record: Carried): Carried {
	const signature = signing(store).sign?.(record)
	return signature === undefined ? record : { ...record, signature }
}
