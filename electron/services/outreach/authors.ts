/** Who wrote a record, as far as the store can tell. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
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
export const wordOf = (store: Store, record: Carried, further: ReadonlyMap<string, string>): Word =>
	signing(store).signatureOf?.(record, further) ?? 'unsigned'
/** A record that is not in the store, with this installation's signature where it has one. */
export function signed(store: Store, record: Carried): Carried {
	const signature = signing(store).sign?.(record)
	return signature === undefined ? record : { ...record, signature }
}
