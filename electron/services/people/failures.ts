/** Failed tries of getting in since the owner last unlocked, from the audit trail. */
import type { FailedTry, FailureKind } from '../../../shared/desk/people/failures.ts'
import { gatherFailures } from '../../../shared/desk/people/failures.ts'
import type { AuditRow } from '../../../shared/desk/records/audit.ts'
import type { Store } from '../../store/store.ts'
import type { PeopleMemory } from './memory.ts'

/** What the rows of the trail call a try, for ever; and what it was. */
export const triedAs = {
	unlock: 'unlock',
	pin: 'PIN',
	'own-passphrase': 'passphrase of a person',
} as const satisfies Record<FailureKind, string>
const kindOf = new Map<string, FailureKind>([
	[triedAs.unlock, 'unlock'],
	[triedAs.pin, 'pin'],
	[triedAs['own-passphrase'], 'own-passphrase'],
])
/** How a row names a person. */
export const aimedAt = (personId: string): string => `person:${personId}`

/** Rows that are read at once, and at most: a trail that long without the owner is told in part. */
const pageLong = 500
const mostPages = 40

/**
 * To be asked before the owner's own row of this unlock is written.
 * @param ownerId whose last unlocking by passphrase they are counted from
 */
export function failuresSinceOwner(store: Store, people: PeopleMemory, ownerId: string) {
	const tries: FailedTry[] = []
	let before = Number.MAX_SAFE_INTEGER
	for (let page = 0; page < mostPages; page++) {
		const rows = store.auditPage(before, pageLong)
		for (const row of rows) {
			if (row.function === 'unlock' && row.personId === ownerId) return gatherFailures(tries)
			if (row.function === 'unlock-failed') tries.push(failedTry(row, people))
		}
		const last = rows.at(-1)
		if (!last || rows.length < pageLong) break
		before = last.seq
	}
	return gatherFailures(tries)
}
function failedTry(row: AuditRow, people: PeopleMemory): FailedTry {
	const what = kindOf.get(row.purpose) ?? 'unlock'
	const personId = row.objectRef.startsWith(aimedAt(''))
		? row.objectRef.slice(aimedAt('').length)
		: null
	return { what, whom: people.nameOf(personId), at: row.utcTime }
}
