/**
 * Whether a record of a laptop may become one of ours: each is looked at by itself. What fails is
 * not taken in; it is kept aside, and said in words.
 */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import type { Outcome } from '../../../shared/desk/outreach/merge-counts.ts'
import type { Arrival } from './arrival.ts'
import { recordName } from './aside-words.ts'
import { authorTrouble } from './check-author.ts'
import { contentTrouble } from './check-content.ts'
import { placeTrouble } from './check-place.ts'
import { subjectTrouble } from './check-subject.ts'
import { heldHere, kindSeen } from './seen-before.ts'
import { readable } from './versions.ts'

/** What became of a record; `says` names it and why, empty where nothing is to be said. */
export interface Verdict {
	outcome: Outcome
	says: string
}
/** Why a record is not taken in, as the end of a sentence that begins with its name. */
export interface Trouble {
	outcome: 'refused' | 'waits'
	because: string
}
type Check = (arrival: Arrival, record: Carried) => Trouble | undefined
/** In this order: the first that finds something speaks. */
const checks: readonly Check[] = [
	placeTrouble,
	kindSeen,
	authorTrouble,
	subjectTrouble,
	contentTrouble,
]

/** @param gone ids of records that were destroyed here by the rule */
export function verdictOf(arrival: Arrival, record: Carried, gone: ReadonlySet<string>): Verdict {
	if (gone.has(record.id)) return { outcome: 'heldBack', says: '' }
	const held = heldHere(arrival, record)
	if (held === 'same') return { outcome: 'already', says: '' }
	if (held === 'other') return { outcome: 'clash', says: clashWords(arrival, record) }
	for (const check of checks) {
		const trouble = check(arrival, record)
		if (trouble) return spoken(arrival, record, trouble)
	}
	return { outcome: 'added', says: '' }
}
function spoken(arrival: Arrival, record: Carried, { outcome, because }: Trouble): Verdict {
	const name = recordName(arrival, record)
	return {
		outcome,
		says:
			outcome === 'waits'
				? `${name} waits until this PC has the newer version: it ${because}. It is kept ` +
					'aside; bring the file in again then.'
				: `${name} was not taken in: it ${because}. It is kept aside; ask who worked with the laptop.`,
	}
}
/** What stands under this id, and what came under it, in words. */
function clashWords({ deps: { store } }: Arrival, coming: Carried): string {
	const here = readable(store, coming.id)
	if (!here)
		return (
			`Record ${coming.id} (${coming.kind}, written ${coming.at}) is damaged here and came with the ` +
			'file. What came is kept beside it: restore the one here from a backup.'
		)
	return (
		`Record ${coming.id} (${coming.kind}, written ${coming.at}) came with other content ` +
		`than the one that stands here (${here.kind}, written ${here.at}). ` +
		'The one here was left as it is; the other is kept beside it. It was altered on the ' +
		'way, or two records share an id by mistake: ask who worked with the laptop.'
	)
}
