/** Whether a copy of the records is whole: everything in it is opened with the keys. */
import type { Damage } from '../../shared/desk/backups/words.ts'
import type { Parts } from './parts.ts'
import { inCommonOrder, type RollRow } from './roll.ts'
import { type RollFault, walkRoll } from './roll-repair.ts'

/** Records looked at before other work gets its turn. */
const atATime = 200

const whatOf: Record<RollFault['what'], Damage['what']> = {
	'record-damaged': 'record',
	'record-gone': 'gone',
	'card-damaged': 'short-form',
	'row-gone': 'list',
	'row-other': 'list',
	'row-stray': 'list',
}
/** Opens every record, card and draft of an open copy. */
export async function damageIn(parts: Parts): Promise<Damage[]> {
	const found: Damage[] = []
	let looked = 0
	for (const fault of walkRoll(parts)) {
		if (fault) found.push({ ...nameOf(fault), what: whatOf[fault.what] })
		if (++looked % atATime === 0) await new Promise((resolve) => setImmediate(resolve))
	}
	return [...found, ...draftsDamagedIn(parts)]
}
const nameOf = ({ id, kind, at }: Pick<RollRow, 'id' | 'kind' | 'at'>) => ({ id, kind, at })

function draftsDamagedIn({ drafts }: Parts): Damage[] {
	return drafts.ids().flatMap((id): Damage[] => {
		try {
			drafts.read(id)
			return []
		} catch {
			return [{ id, kind: 'draft', at: '', what: 'draft' }]
		}
	})
}
/**
 * What a copy lacks of the records as they were when it was begun: a damaged file may lose rows on
 * the way without a word.
 * @param expected the roll as it stood
 */
export function lacksOf({ roll }: Parts, expected: readonly RollRow[], digest: string): Damage[] {
	if (roll.count === expected.length && roll.digest === digest) return []
	return [...expected].sort(inCommonOrder).flatMap((row): Damage[] => {
		const there = roll.byId(row.id)
		if (!there) return [{ ...nameOf(row), what: 'gone' }]
		return sameRow(row, there) ? [] : [{ ...nameOf(row), what: 'list' }]
	})
}
const sameRow = (first: RollRow, second: RollRow): boolean =>
	JSON.stringify(Object.entries({ ...first, cardForm: 0 }).sort()) ===
	JSON.stringify(Object.entries({ ...second, cardForm: 0 }).sort())
