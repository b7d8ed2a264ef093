/**
 * The guarded state after a restore: what protects people is taken in again from what stood before,
 * nothing that waited to be sent leaves by itself, and what came back or was kept is listed.
 */
import { randomUUID } from 'node:crypto'
import {
	type CameBack,
	type CameBackLine,
	lineOf,
	type Subject,
} from '../../../shared/desk/backups/came-back.ts'
import { mustBeChecked, whatCameBack, whoCanOpen } from '../../../shared/desk/backups/compare.ts'
import { toCheckWords } from '../../../shared/desk/backups/words.ts'
import { moved, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { type Carried, inOrder } from '../../../shared/desk/outreach/carried.ts'
import { type Destroying, destroyAgain } from './destroy-again.ts'
import { reconcile } from './reconcile.ts'
import {
	nextItem,
	type PlayerOf,
	type Protected,
	protectedIn,
	type ReadableRecords,
	standingOf,
	written,
} from './standing.ts'

/** The records that a restore or a move has brought, while they are made safe. */
export interface BroughtRecords extends ReadableRecords, Destroying {
	takeIn: (coming: Carried) => void
	cardsOf: (kind: string, thing: string) => { record: string }[]
	together: <T>(work: () => T) => T
}
/** What stood before a restore. */
export interface Before {
	/** the records of the kinds that protect people */
	carried: readonly Carried[]
	/** the newest versions of what is compared */
	protects: Protected
	/** people whose passphrase was changed since the backup */
	passphrases: readonly string[]
}
/** What is said of the restore itself. */
type Arrival = Omit<CameBack, 'restoreId' | 'lines'>
interface Safety {
	arrival: Arrival
	/** whom a consent is about */
	playerOf: PlayerOf
	destroyed: ReadonlySet<string>
	before?: Before | undefined
	done?: () => void
}

/**
 * Makes brought records safe before anybody works with them.
 * @param destroyed ids of records that were destroyed by the rule, as far as they are known
 * @param before what stood before the restore; undefined where nothing is known, after a move
 * @param done what else belongs to it: all of it or none of it
 * @returns the list that was kept in the records; without lines where there is nothing to decide
 */
export function makeSafe(
	file: BroughtRecords,
	{ arrival, playerOf, destroyed, before, done }: Safety,
): CameBack {
	const backup = protectedIn(file, playerOf)
	const register = [...(before?.protects.register ?? []), ...backup.register]
	const gone = new Set([...destroyed, ...register.flatMap((line) => line.recordIds)])
	// by itself, as its last step overwrites the freed bytes; done twice it finds nothing
	const destroyedAgain = destroyAgain(file, arrival.at, gone, register)
	return file.together(() => {
		if (before) {
			takeInAgain(file, before.carried, gone)
			const now = protectedIn(file, playerOf)
			reconcile(file, arrival.at, { before: before.protects, backup, now })
		}
		const list: CameBack = {
			restoreId: randomUUID(),
			...arrival,
			lines: [
				...(before
					? whatCameBack(standingOf(before.protects), standingOf(backup), before.passphrases)
					: []),
				// a copied folder is as it was: nobody is in it who was not there before
				...(arrival.how === 'move' ? whoCanOpen(backup.people.all()) : []),
				...destroyedAgain.map((subject) => lineOf(subject)),
				...holdOutbox(file, arrival, protectedIn(file, playerOf)),
			],
		}
		if (list.lines.length > 0)
			file.append(written('restored', { ...listRecord(list), at: arrival.at }))
		done?.()
		return list
	})
}
/** The record of a list, or of its next version. */
export const listRecord = (list: CameBack, follows?: string) => ({
	kind: 'restored' as const,
	follows,
	value: list,
	thing: list.restoreId,
	does: 'restore' as const,
})
function takeInAgain(
	file: BroughtRecords,
	carried: readonly Carried[],
	gone: ReadonlySet<string>,
): void {
	for (const record of [...carried].sort(inOrder))
		if (!gone.has(record.id) && !file.has(record.id)) file.takeIn(record)
}
/** Whatever waited to be sent, or may just have left, is for a person to check. */
function holdOutbox(file: BroughtRecords, { at, how }: Arrival, now: Protected): CameBackLine[] {
	return now.items.all().flatMap((item) => {
		const stood = mustBeChecked(item)
		if (stood === undefined) return []
		const { itemId, playerId, documentId } = item
		const says = toCheckWords(stood, {
			how,
			hasDocument: file.cardsOf('document', documentId).length > 0,
		})
		file.append(nextItem(now, backToCheck(item, at, says), at))
		const subject: Subject = { what: 'to-check', itemId, playerId, stood }
		return [lineOf(subject)]
	})
}
const backToCheck = (item: OutboxItem, at: string, says: string): OutboxItem => ({
	...moved(item, 'to-check', { at, by: 'Lastwright', says }),
	released: undefined,
	handing: undefined,
	notBefore: undefined,
	taken: undefined,
})
