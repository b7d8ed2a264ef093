/**
 * Where a backup comes from a time that went on by itself, the newest version of a thing may be the
 * backup's. What stood before the restore is then written once more, behind it.
 */

import { hasLeft } from '../../../shared/desk/backups/compare.ts'
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import type { PersonValue } from '../../../shared/desk/people/person-record.ts'
import { canonicalJson } from '../../../shared/engine/plain/canonical.ts'
import type { NewRecord } from '../../store/store.ts'
import { nextItem, nextVersion, type Protected } from './standing.ts'

interface Sides {
	before: Protected
	backup: Protected
	/** the backup with the records of before taken in again */
	now: Protected
}
interface Appending {
	append: (record: NewRecord) => string
}
const isSame = (first: unknown, second: unknown): boolean =>
	canonicalJson(first ?? null) === canonicalJson(second ?? null)

export function reconcile(file: Appending, at: string, sides: Sides): void {
	reconcilePeople(file, at, sides)
	reconcileConsents(file, at, sides)
	reconcileItems(file, at, sides)
}
/** People stand as before; whom only the backup knows is not let in. */
function reconcilePeople(file: Appending, at: string, { before, backup, now }: Sides): void {
	const put = (value: PersonValue) => {
		const follows = now.people.recordOf(value.personId)
		file.append(nextVersion(now, 'person', { at, follows, value }))
	}
	for (const person of before.people.all())
		if (!isSame(now.people.get(person.personId), person)) put(person)
	for (const person of backup.people.all())
		if (person.active && before.people.get(person.personId) === undefined)
			put({ ...person, active: false, pin: undefined })
}
/** A consent that was withdrawn on either side stays withdrawn. */
function reconcileConsents(file: Appending, at: string, { before, backup, now }: Sides): void {
	for (const { consentId, withdrawn } of now.consents.all()) {
		const value = [before, backup]
			.map(({ consents }) => consents.get(consentId))
			.find((known) => known?.withdrawn !== undefined)
		if (withdrawn !== undefined || value === undefined) continue
		file.append(
			nextVersion(now, 'consent', {
				at,
				follows: now.consents.recordOf(consentId),
				value,
				about: now.playerOf.get(consentId),
				thing: consentId,
			}),
		)
	}
}
/** Items stand as before, save that what left on either side has left. */
function reconcileItems(file: Appending, at: string, { before, backup, now }: Sides): void {
	for (const item of before.items.all()) {
		const there = backup.items.get(item.itemId)
		const stands: OutboxItem = there && hasLeft(there) && !hasLeft(item) ? there : item
		if (!isSame(now.items.get(item.itemId), stands)) file.append(nextItem(now, stands, at))
	}
}
