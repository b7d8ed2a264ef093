/** What protects people, read out of the records of a store or of a backup. */
import type { Standing, StandingConsent } from '../../../shared/desk/backups/compare.ts'
import { type KindName, kinds, readAs, type ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import { putBack } from '../../../shared/desk/ledger/put-back.ts'
import type { UnknownEntry } from '../../../shared/desk/ledger/read.ts'
import type { RegisterLine } from '../../../shared/desk/records/retention.ts'
import type { NewRecord, StoredRecord } from '../../store/store.ts'
import { Newest, type Taken } from '../records/newest.ts'

/** What is asked of a store, or of a file that is to take its place. */
export interface ReadableRecords {
	each: (kinds: readonly string[], use: (record: StoredRecord) => void, damaged: string[]) => void
}
/** The newest versions, each with the record that holds it. */
export interface Protected {
	people: Newest<ValueOf<'person'>>
	consents: Newest<ValueOf<'consent'>>
	items: Newest<ValueOf<'outbox'>>
	/** the player each consent is about, by the consent's id */
	playerOf: Map<string, string>
	register: RegisterLine[]
	/** what of a record this version does not know, by the record's id: its next version keeps it */
	unknown: Map<string, { value: unknown; entries: UnknownEntry[] }>
}
/** The kinds whose records since the backup are taken in again: what protects people. */
export const protectiveKinds: readonly string[] = [
	'person',
	'consent',
	'register',
	'hold',
	'outbox',
	'sending',
	'sending-note',
	'breach',
	'restored',
	// who wrote them: their signatures are checked by it
	'installation',
] satisfies KindName[]

/** The player a record is about, as far as it is known. */
export type PlayerOf = (record: StoredRecord) => string | undefined

type Take<Kind extends KindName> = (
	found: Protected,
	taken: Taken<ValueOf<Kind>>,
	playerId: string | undefined,
) => void
const takers: { readonly [Kind in KindName]?: Take<Kind> } = {
	person: ({ people }, taken) => people.take(taken.value.personId, taken),
	consent: ({ consents, playerOf }, taken, playerId) => {
		const { consentId } = taken.value
		consents.take(consentId, taken)
		if (playerId !== undefined) playerOf.set(consentId, playerId)
	},
	outbox: ({ items }, taken) => items.take(taken.value.itemId, taken),
	register: ({ register }, { value }) => void register.push(value),
}
const comparedKinds: readonly KindName[] = ['person', 'consent', 'outbox', 'register']

/**
 * Reads what protects people. A record that this version cannot read is left out; it is named where
 * the store is loaded.
 */
export function protectedIn(store: ReadableRecords, playerOf: PlayerOf): Protected {
	const found: Protected = {
		people: new Newest(),
		consents: new Newest(),
		items: new Newest(),
		playerOf: new Map(),
		register: [],
		unknown: new Map(),
	}
	for (const kind of comparedKinds)
		store.each([kind], (record) => take(found, kind, record, playerOf(record)), [])
	return found
}
function take<Kind extends KindName>(
	found: Protected,
	kind: Kind,
	record: StoredRecord,
	playerId: string | undefined,
): void {
	const reading = readAs(kind, record.version, record.value)
	if (reading.state !== 'read') return
	const { id, origin, tick, follows } = record
	takers[kind]?.(found, { id, origin, tick, follows, value: reading.value }, playerId)
	if (reading.unknown.length > 0)
		found.unknown.set(id, { value: reading.value, entries: reading.unknown })
}
/** As the comparison looks at it. */
export const standingOf = ({ people, consents, items, playerOf }: Protected): Standing => ({
	people: people.all(),
	items: items.all(),
	consents: consents.all().flatMap((consent): StandingConsent[] => {
		const playerId = playerOf.get(consent.consentId)
		const record = consents.recordOf(consent.consentId)
		return playerId === undefined || record === undefined ? [] : [{ playerId, record, consent }]
	}),
})
/** A record of a kind in the form that this version writes. */
export const written = <Kind extends KindName>(
	kind: Kind,
	record: Omit<NewRecord, 'kind' | 'version' | 'value'> & { value: ValueOf<Kind> },
): NewRecord => ({ ...record, kind, version: kinds[kind].version })

/** The next version of a thing; what of the one before it is unknown here stays in it. */
export function nextVersion<Kind extends KindName>(
	{ unknown }: Pick<Protected, 'unknown'>,
	kind: Kind,
	record: Omit<NewRecord, 'kind' | 'version' | 'value'> & { value: ValueOf<Kind> },
): NewRecord {
	const before = record.follows === undefined ? undefined : unknown.get(record.follows)
	const next = written(kind, record)
	return before ? { ...next, value: putBack(next.value, before.value, before.entries) } : next
}
/** The next version of an outbox item. */
export const nextItem = (now: Protected, item: ValueOf<'outbox'>, at: string): NewRecord =>
	nextVersion(now, 'outbox', {
		at,
		follows: now.items.recordOf(item.itemId),
		value: item,
		about: item.playerId,
		thing: item.itemId,
	})
