/** Records of a laptop taken in one by one, each after it was checked; the rest is set aside. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { type MergeCounts, recordDigest } from '../../../shared/desk/outreach/merge.ts'
import { destroyedLines } from '../backups/retention.ts'
import type { Arrival } from './arrival.ts'
import { verdictOf } from './check-record.ts'
import { type Aside, asideOf, setAside, unreadAside } from './set-aside.ts'

interface TakenIn {
	counts: MergeCounts & { refused: number; waits: number }
	/** the records that are ours now, in the order in which they came */
	added: Carried[]
	asides: Aside[]
	/** kinds of the records that were destroyed here meanwhile and stay so */
	heldBack: string[]
}
/**
 * Union with the records here; nothing here is changed. The caller's transaction makes it whole.
 * `after` counts without what was set aside, so that it can be held against `before` and `added`.
 */
export function takeRecordsIn(arrival: Arrival): TakenIn {
	const { deps, pack } = arrival
	const { store } = deps
	const { packId } = pack.manifest
	const gone = new Set(destroyedLines(store).flatMap((line) => line.recordIds))
	const taken: TakenIn = {
		counts: {
			in: pack.records.length + pack.unread.length,
			added: 0,
			already: 0,
			quarantined: 0,
			heldBack: 0,
			refused: 0,
			waits: 0,
			before: store.recordCount,
			after: 0,
		},
		added: [],
		asides: [],
		heldBack: [],
	}
	const heldBack = new Set<string>()
	let beside = 0
	const put = (aside: Aside, digest: string): void => {
		taken.counts.quarantined++
		if (aside.why !== 'clash') taken.counts[aside.why]++
		taken.asides.push(aside)
		if (setAside(deps, packId, aside, digest)) beside++
	}
	for (const record of pack.records) {
		const { outcome, says } = verdictOf(arrival, record, gone)
		if (outcome === 'clash' || outcome === 'refused' || outcome === 'waits') {
			put(asideOf(record, outcome, says), recordDigest(record))
			continue
		}
		taken.counts[outcome]++
		if (outcome === 'heldBack') heldBack.add(record.kind)
		if (outcome !== 'added') continue
		deps.takeIn(record)
		taken.added.push(record)
	}
	for (const unread of pack.unread) {
		const { aside, digest } = unreadAside(unread)
		put(aside, digest)
	}
	taken.counts.after = store.recordCount - beside
	return { ...taken, heldBack: [...heldBack] }
}
