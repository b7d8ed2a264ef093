/** How each kind of record extends what is remembered, whether written now or read at unlock. */
import type { Kind, StoredRecord } from '../../store/store.ts'
import type { Memory } from './memory.ts'

/** As much of a record as memory is extended by. */
export type Remembered = Pick<StoredRecord, 'id' | 'kind' | 'value'>
type Extend = (memory: Memory, record: Remembered) => void

/**
 * In the order in which the kinds are read: merges and holds speak of players. Kinds that do not
 * stand here stay sealed until somebody opens them.
 */
const extend = new Map<Kind, Extend>([
	['clinic', ({ clinic }, record) => clinic.takeLetterhead(record)],
	['settings', ({ clinic, warn }, record) => clinic.takeSettings(record, warn)],
	['shelf', ({ shelf, warn }, record) => shelf.take(record, warn)],
	['protocol', ({ clinic, warn }, record) => clinic.takeProtocol(record, warn)],
	['person', ({ people }, record) => people.take(record)],
	['player', ({ players }, record) => players.takePlayer(record)],
	['merge', ({ players }, record) => players.takeMerge(record)],
	['hold', ({ holds }, record) => holds.take(record)],
	['restored', ({ restored }, record) => restored.take(record)],
	['outbox', ({ outbox }, record) => outbox.takeItem(record)],
	['contact', ({ outbox }, record) => outbox.takeContact(record)],
	['breach', ({ outbox }, record) => outbox.takeBreach(record)],
	['mail', ({ outbox }, record) => outbox.takeMail(record)],
	['sending-note', ({ outbox }, record) => outbox.takeNote(record)],
	['answer', ({ outreach }, record) => outreach.takeAnswer(record)],
])
/** The kinds that are read at unlock, in that order. */
export const rememberedKinds: readonly Kind[] = [...extend.keys()]

/** Extends memory by one record; a kind that is not remembered changes nothing. */
export function remember(memory: Memory, record: Remembered): void {
	extend.get(record.kind)?.(memory, record)
}
