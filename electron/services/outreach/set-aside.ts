/** What came and was not taken in, kept as a record of its own: nothing that came is lost. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import type { AsideWhy } from '../../../shared/desk/outreach/merge-counts.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import type { Unread } from '../../store/pack-file.ts'
import type { Deps } from '../records/deps.ts'
import { idOfDigest } from './pack-words.ts'

export interface Aside {
	/** the id it bears, or which entry of the file it was */
	of: string
	kind: string
	says: string
	why: AsideWhy
	/** as it came */
	record: unknown
	about?: string | undefined
}
/**
 * @param digest tells it from every other: the same thing is kept once, however often it comes
 * @returns whether it is new
 */
export function setAside(
	{ store, keep }: Deps,
	packId: string,
	aside: Aside,
	digest: string,
): boolean {
	const id = idOfDigest(digest)
	if (store.has(id)) return false
	const { of, says, why, record, about } = aside
	keep({
		id,
		kind: 'quarantine',
		value: { packId, of, says, why, record },
		about,
		does: 'merge',
	})
	return true
}
const whyUnread: Record<Unread['why'], { why: AsideWhy; because: string }> = {
	newer: {
		why: 'waits',
		because:
			'was written by a newer version and waits until this PC has it. It is kept aside; bring the file ' +
			'in again then.',
	},
	'too-large': {
		why: 'refused',
		because:
			'is larger than anything the program writes. It stays in the file and was not taken in.',
	},
	unreadable: {
		why: 'refused',
		because: 'is not a record as the program writes them. It was not taken in and is kept aside.',
	},
}
/** An entry of the file that this version cannot read. */
export function unreadAside({ entry, why, content }: Unread): { aside: Aside; digest: string } {
	const reason = whyUnread[why]
	const record = typeof content === 'string' || content === undefined ? (content ?? '') : content
	return {
		aside: {
			of: `entry ${entry}`,
			kind: 'unknown',
			says: `Entry ${entry} of the file ${reason.because}`,
			why: reason.why,
			record,
		},
		digest: digestOf({ entry: content ?? entry }),
	}
}
export const asideOf = (record: Carried, why: AsideWhy, says: string): Aside => ({
	of: record.id,
	kind: record.kind,
	says,
	why,
	record,
	about: record.about,
})
