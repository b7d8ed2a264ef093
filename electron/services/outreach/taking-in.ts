/** Records of a laptop taken in one by one: added, there already, put beside, or held back. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { type MergeCounts, recordDigest } from '../../../shared/desk/outreach/merge.ts'
import type { StoredRecord } from '../../store/store.ts'
import { destroyedLines } from '../backups/retention.ts'
import type { Deps } from '../records/deps.ts'
import type { Clash } from './pack-log.ts'
import { idOfDigest } from './pack-words.ts'
import { readable } from './versions.ts'

interface TakenIn {
	counts: MergeCounts
	clashes: Clash[]
	/** kinds of the records that were destroyed here meanwhile and stay so */
	heldBack: string[]
}
/**
 * Union with the records here; nothing here is changed. The caller's transaction makes it whole.
 * `after` counts without what was put beside, so that it can be held against `before` and `added`.
 */
export function takeRecordsIn(deps: Deps, packId: string, records: readonly Carried[]): TakenIn {
	const { store } = deps
	const gone = new Set(destroyedLines(store).flatMap((line) => line.recordIds))
	const counts: MergeCounts = {
		in: records.length,
		added: 0,
		already: 0,
		quarantined: 0,
		heldBack: 0,
		before: store.recordCount,
		after: 0,
	}
	const clashes: Clash[] = []
	const heldBack = new Set<string>()
	let beside = 0
	for (const record of records) {
		const outcome = outcomeOf(deps, record, gone)
		counts[outcome]++
		if (outcome === 'added') deps.takeIn(record)
		if (outcome === 'heldBack') heldBack.add(record.kind)
		if (outcome !== 'quarantined') continue
		const says = clashWords(readable(store, record.id), record)
		clashes.push({ record: record.id, kind: record.kind, says })
		if (putBeside(deps, packId, record, says)) beside++
	}
	counts.after = store.recordCount - beside
	return { counts, clashes, heldBack: [...heldBack] }
}
function outcomeOf({ store }: Deps, record: Carried, gone: ReadonlySet<string>) {
	if (gone.has(record.id)) return 'heldBack'
	return ({ same: 'already', no: 'added', other: 'quarantined' } as const)[store.holds(record)]
}
/** Keeps what clashes as a record of its own. @returns whether it is new */
function putBeside({ store, keep }: Deps, packId: string, record: Carried, says: string): boolean {
	const id = idOfDigest(recordDigest(record))
	if (store.has(id)) return false
	keep({
		id,
		kind: 'quarantine',
		value: { packId, of: record.id, says, record },
		about: record.about,
	})
	return true
}
/** What stands under this id, and what came under it, in words. */
function clashWords(here: StoredRecord | undefined, coming: Carried): string {
	return (
		`Record ${coming.id} (${coming.kind}, written ${coming.at}) came with other content ` +
		`than the one that stands here${here ? ` (${here.kind}, written ${here.at})` : ''}. ` +
		'The one here was left as it is; the other is kept beside it. It was altered on the ' +
		'way, or two records share an id by mistake: ask who worked with the laptop.'
	)
}
