/** Persons whose records were destroyed by the rule are destroyed again where they came back. */
import { z } from 'zod'
import type { Subject } from '../../../shared/desk/backups/came-back.ts'
import type { RegisterLine } from '../../../shared/desk/records/retention.ts'
import type { NewRecord, StoredRecord } from '../../store/store.ts'
import { dropTypedAbout } from '../players/typed.ts'
import { written } from './standing.ts'

const ofPlayer = z.object({ playerId: z.string() })

/** What destroying asks of the records. */
export interface Destroying {
	has: (id: string) => boolean
	/** @throws Error where it is damaged */
	read: (id: string) => StoredRecord
	recordsAbout: (playerId: string) => string[]
	draftIds: () => string[]
	draft: (id: string) => { at: string; value: unknown } | undefined
	append: (record: NewRecord) => string
	sealedSetting: (name: string) => unknown
	setSealedSetting: (name: string, value: unknown) => void
	destroy: (recordIds: readonly string[], draftIds: readonly string[], register: () => void) => void
}
/**
 * Destroys whatever of the destroyed records is there again, with all else that is about the same
 * players. What no line of the register names gets a line of its own.
 * @param at ISO 8601
 * @param gone ids of records that were destroyed
 * @param register the lines that name whose they were, as far as they are known
 * @returns what was destroyed again, by player
 */
export function destroyAgain(
	file: Destroying,
	at: string,
	gone: ReadonlySet<string>,
	register: readonly RegisterLine[],
): Subject[] {
	const back = [...gone].filter((id) => file.has(id))
	if (back.length === 0) return []
	const players = new Set(back.flatMap((id) => playerIn(file, id) ?? []))
	const ids = new Set([...back, ...[...players].flatMap((id) => file.recordsAbout(id))])
	const drafts = file.draftIds().filter((id) => players.has(playerOfDraft(file, id) ?? ''))
	const named = register.filter((line) => line.recordIds.some((id) => ids.has(id)))
	const unnamed = [...ids].filter((id) => !named.some((line) => line.recordIds.includes(id)))
	file.destroy([...ids], drafts, () => {
		if (unnamed.length > 0) file.append(unnamedLine(at, unnamed))
		dropTypedAbout(file, players)
	})
	return [
		...named.map((line): Subject => {
			const records = line.recordIds.filter((id) => ids.has(id)).length
			return { what: 'destroyed', playerId: line.playerId, records }
		}),
		...(unnamed.length > 0 ? [{ what: 'destroyed' as const, records: unnamed.length }] : []),
	]
}
function unnamedLine(at: string, recordIds: string[]): NewRecord {
	const value: RegisterLine = {
		playerId: '',
		name: 'Not known here',
		from: '',
		to: '',
		destroyedOn: at.slice(0, 10),
		by: 'Lastwright',
		rule: 'destroyed before',
		reason: 'They were destroyed by the rule before, and a backup from before brought them back.',
		recordIds,
	}
	return written('register', { at, value, does: 'destroy' })
}
/** Whose details a record holds; undefined for any other record. */
function playerIn(file: Destroying, id: string): string | undefined {
	try {
		const { kind, value } = file.read(id)
		return kind === 'player' ? ofPlayer.safeParse(value).data?.playerId : undefined
	} catch {
		return undefined
	}
}
function playerOfDraft(file: Destroying, id: string): string | undefined {
	try {
		return ofPlayer.safeParse(file.draft(id)?.value).data?.playerId
	} catch {
		return undefined
	}
}
