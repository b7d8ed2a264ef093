/** What the records at home keep of packs: each that went out, each that came home. */
import type { CarriedDraft } from '../../../shared/desk/outreach/carried.ts'
import type { MergeCounts } from '../../../shared/desk/outreach/merge.ts'
import type { Store } from '../../store/store.ts'

export interface OutValue {
	what: 'out'
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
/** A record that came with other content than the one under its id here. */
export interface Clash {
	record: string
	kind: string
	says: string
}
export interface MergedValue {
	what: 'merged'
	/** rows of the laptop's audit trail that came with it; absent before they did */
	trailRows?: number
	packId: string
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
}
/** All packs, in order of writing. */
export function packLog(store: Store): { out: OutValue[]; merged: MergedValue[] } {
	const values = store
		.load(['pack'])
		.records.map((record) => record.value as OutValue | MergedValue)
	return {
		out: values.filter((value) => value.what === 'out'),
		merged: values.filter((value) => value.what === 'merged'),
	}
}
