/** How each kind of record extends what is remembered, whether written now or read at unlock. */
import { isKind, type KindName, readAs, type ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import type { StoredRecord } from '../../store/store.ts'
import type { Memory } from './memory.ts'
import type { Taken } from './newest.ts'

type Extend<Kind extends KindName> = (memory: Memory, taken: Taken<ValueOf<Kind>>) => void

/**
 * In the order in which the kinds are read: merges and holds speak of players. Kinds that do not
 * stand here stay sealed until somebody opens them.
 */
const extend: { readonly [Kind in KindName]?: Extend<Kind> } = {
	clinic: ({ clinic }, taken) => clinic.takeLetterhead(taken),
	settings: ({ clinic }, taken) => clinic.takeSettings(taken),
	shelf: ({ shelf }, taken) => shelf.take(taken),
	protocol: ({ clinic }, taken) => clinic.takeProtocol(taken),
	person: ({ people }, taken) => people.take(taken),
	player: ({ players }, taken) => players.takePlayer(taken),
	merge: ({ players }, taken) => players.takeMerge(taken),
	hold: ({ holds }, taken) => holds.take(taken),
	restored: ({ restored }, taken) => restored.take(taken),
	outbox: ({ outbox }, taken) => outbox.takeItem(taken),
	contact: ({ outbox }, taken) => outbox.takeContact(taken),
	breach: ({ outbox }, taken) => outbox.takeBreach(taken),
	mail: ({ outbox }, taken) => outbox.takeMail(taken),
	'sending-note': ({ outbox }, taken) => outbox.takeNote(taken),
	recall: ({ recall }, taken) => recall.takeAnswer(taken),
	'follow-up': ({ recall }, taken) => recall.takeFollowUp(taken),
	answer: ({ outreach, players }, taken) => {
		outreach.takeAnswer(taken)
		players.joinAgain()
	},
}
/**
 * Where the newest version of a thing cannot be read, what the version before it permitted does not
 * count on.
 */
const supersede: { readonly [Kind in KindName]?: (memory: Memory, before: string) => void } = {
	outbox: ({ outbox }, before) => outbox.items.forget(new Set([before])),
	contact: ({ outbox }, before) => outbox.contacts.forget(new Set([before])),
	person: ({ people }, before) => people.withoutPin(before),
}
/** The kinds that are read at unlock, in that order. */
export const rememberedKinds: readonly KindName[] = Object.keys(extend).filter(isKind)
export const isRemembered = (kind: string): kind is KindName =>
	isKind(kind) && Object.hasOwn(extend, kind)

/** Extends memory by one record; one that cannot be read is named and stops nothing. */
export function remember(memory: Memory, record: StoredRecord): void {
	if (!isKind(record.kind)) memory.unread.take(record, { state: 'unknown-kind' })
	else if (isRemembered(record.kind)) extendBy(memory, record.kind, record)
}
function extendBy<Kind extends KindName>(memory: Memory, kind: Kind, record: StoredRecord): void {
	const { id, origin, tick, follows } = record
	const reading = readAs(kind, record.version, record.value)
	if (reading.state === 'unreadable') {
		memory.unread.take(record, reading)
		if (follows !== undefined) supersede[kind]?.(memory, follows)
		return
	}
	if (reading.unknown.length > 0) memory.unread.takePartly(record, reading.unknown)
	extend[kind]?.(memory, { id, origin, tick, follows, value: reading.value })
}
/** Forgets what records held that are gone. */
export function forget(memory: Memory, records: ReadonlySet<string>): void {
	for (const room of [
		memory.clinic,
		memory.shelf,
		memory.people,
		memory.players,
		memory.holds,
		memory.restored,
		memory.outbox,
		memory.outreach,
		memory.recall,
		memory.clinicAudit,
		memory.unread,
	])
		room.forget(records)
}
