/** The versions of what two places may have worked at, and what was answered about them. */
import type { KindName } from '../../../shared/desk/ledger/ledger.ts'
import type { Store, StoredRecord } from '../../store/store.ts'
import type { Deps } from '../records/deps.ts'
import type { Opened } from '../records/open.ts'

/** One record by id; undefined where there is none or it is damaged. */
export function readable(store: Store, id: string): StoredRecord | undefined {
	try {
		return store.read(id)
	} catch {
		return undefined
	}
}
/** The versions of a kind about a player that can be read, in order of writing. */
export function versionsAbout<Kind extends KindName>(
	{ openAbout }: Pick<Deps, 'openAbout'>,
	kind: Kind,
	playerId: string,
): Opened<Kind>[] {
	return openAbout(kind, playerId).records
}
/** Ids of the records that answers put to rest. */
export function joinedOf({ openAll }: Pick<Deps, 'openAll'>): Set<string> {
	const answers = openAll('answer').records
	return new Set(answers.flatMap(({ value }) => value.joins))
}
