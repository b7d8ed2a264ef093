/** The versions of what two places may have worked at, and what was answered about them. */
import type { Kind, Store, StoredRecord } from '../../store/store.ts'

/** One record by id; undefined where there is none or it is damaged. */
export function readable(store: Store, id: string): StoredRecord | undefined {
	try {
		return store.read(id)
	} catch {
		return undefined
	}
}
/** The versions of a kind about a player that can be read, in order of writing. */
export function versionsAbout(store: Store, kind: Kind, playerId: string): StoredRecord[] {
	return store.cardsAbout(kind, playerId).flatMap(({ record }) => readable(store, record) ?? [])
}
/** Ids of the records that answers put to rest. */
export function joinedOf(store: Store): Set<string> {
	return new Set(
		store.load(['answer']).records.flatMap((record) => (record.value as { joins: string[] }).joins),
	)
}
