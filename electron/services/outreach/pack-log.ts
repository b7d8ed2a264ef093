/** What the records at home keep of packs: each that went out, each that came home. */
import type { CarriedDraft } from '../../../shared/desk/outreach/carried.ts'
import type { PlayerChanges } from '../../../shared/desk/outreach/changes.ts'
import type { AsideWhy, MergeCounts } from '../../../shared/desk/outreach/merge.ts'
import type { Store } from '../../store/store.ts'

export interface OutValue {
	what: 'out'
	/** of the pack's file; absent in records of program 0.1.0, whose packs were of form 1 */
	form?: number
	packId: string
	madeAt: string
	by: string
	expires: string
	file: string
	players: { playerId: string; name: string }[]
	counts: Record<string, number>
	/** as they stood when the pack went out; absent in packs of earlier versions */
	drafts?: CarriedDraft[]
}
/** Two players who may be one person, of whom one came home. */
export interface Duplicate {
	playerId: string
	name: string
	like: string
	likeName: string
	why: 'same-person' | 'twin'
}
/** What came and was not taken in: its id, and why in words. */
export interface Clash {
	record: string
	kind: string
	says: string
	/** absent in records of program 0.1.0, which put beside only what clashed */
	why?: AsideWhy
}
export interface MergedValue {
	what: 'merged'
	/** rows of the laptop's audit trail that came with it; absent before they did */
	trailRows?: number
	packId: string
	/** the laptop's installation; absent where it is not known */
	origin?: string
	/** when the file was made, and its number among those of the laptop */
	madeAt?: string
	turn?: number
	answers?: string | undefined
	at: string
	by: string
	counts: MergeCounts
	receipt: string
	players: string[]
	/** id and digest of each draft that came, so that it is not taken twice */
	taken: string[]
	draftsBoth: { playerId: string; name: string; drafts: string[] }[]
	duplicates: Duplicate[]
	quarantined: Clash[]
	/** kinds of the records that were destroyed here meanwhile and stay so */
	heldBack: string[]
	/** what it changed, player by player, in words; absent in records of program 0.1.0 */
	changes?: PlayerChanges[]
}
export interface PackLog {
	out: OutValue[]
	merged: MergedValue[]
}
/** All packs, in order of writing. */
export function packLog(store: Store): PackLog {
	const values = store
		.load(['pack'])
		.records.map((record) => record.value as OutValue | MergedValue)
	return {
		out: values.filter((value) => value.what === 'out'),
		merged: values.filter((value) => value.what === 'merged'),
	}
}
