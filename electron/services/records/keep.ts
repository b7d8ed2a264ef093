/**
 * The one way to write a record: it is held against the ledger and appended to the store; once it
 * is committed memory is extended by exactly that record, by the same table that reads it at unlock.
 */
import type { KindDefinition } from '../../../shared/desk/ledger/kind.ts'
import { isKind, type KindName, kinds, readAs } from '../../../shared/desk/ledger/ledger.ts'
import { putBack } from '../../../shared/desk/ledger/put-back.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import type { AuditFunction } from '../../../shared/desk/records/audit.ts'
import type { NewRecord, Store, StoredRecord } from '../../store/store.ts'
import { joinPlayers } from './join-players.ts'
import type { Memory } from './memory.ts'
import { isRemembered, remember } from './remember.ts'

/** A record to keep; without `at` it is written as of now. */
export interface KeptRecord extends Omit<NewRecord, 'at' | 'kind' | 'version'> {
	kind: KindName
	at?: string
}
export interface Keeper {
	/**
	 * Appends a record and remembers it; inside a transaction, once that is committed. Entries of the
	 * version it follows that are unknown here are put back.
	 * @returns its id
	 * @throws TypeError where its value is not what the ledger says of its kind
	 */
	keep: (record: KeptRecord) => string
	/** The same for several, all or none. @returns their ids */
	keepTogether: (records: readonly KeptRecord[]) => string[]
	/** Takes in a record of another store, as it came, and remembers it. */
	takeIn: (coming: Carried) => void
}
/** @param now the time of records that say none */
export function keeperOf(store: Store, memory: Memory, now: () => Date): Keeper {
	const rememberLater = (id: string, kind: string) => {
		if (isKind(kind) && !isRemembered(kind)) return
		store.afterCommit(() => rememberNow(memory, store, store.read(id)))
	}
	const keep = (record: KeptRecord): string => {
		const { version } = kinds[record.kind]
		const id = store.append({
			...record,
			at: record.at ?? now().toISOString(),
			version,
			value: wholeValue(store, record.kind, record),
			does: auditOf(record),
		})
		rememberLater(id, record.kind)
		return id
	}
	return {
		keep,
		keepTogether: (records) => store.together(() => records.map(keep)),
		takeIn(coming) {
			store.takeIn(coming)
			rememberLater(coming.id, coming.kind)
			if (changesVisits.has(coming.kind))
				store.afterCommit(() => coming.about && memory.players.visitsChanged(coming.about))
		},
	}
}
/** Kinds that change which visits of a player a list shows. */
const changesVisits: ReadonlySet<string> = new Set<KindName>(['visit', 'visit-note'])

function rememberNow(memory: Memory, store: Store, record: StoredRecord): void {
	remember(memory, record)
	if (record.kind === 'player' || record.kind === 'answer') joinPlayers(memory, store)
}
function auditOf({ kind, does, follows }: KeptRecord): AuditFunction {
	const { audit } = kinds[kind]
	return does ?? (audit === 'create' && follows !== undefined ? 'update' : audit)
}
/** The value with the entries of the version before it that only a newer program knows. */
function wholeValue<Kind extends KindName>(store: Store, kind: Kind, record: KeptRecord): unknown {
	const definition: KindDefinition<unknown> = kinds[kind]
	const checked = readAs(kind, definition.version, record.value)
	if (checked.state !== 'read') {
		const [problem] = checked.problems
		throw new TypeError(`ledger: not a ${kind}: ${problem?.path}: ${problem?.message}`)
	}
	const [extra] = checked.unknown
	if (extra) throw new TypeError(`ledger: not a ${kind}: ${extra.path}: no such entry`)
	const before = record.follows === undefined ? undefined : versionBefore(store, record.follows)
	const thing = definition.thingOf?.(checked.value)
	if (before?.kind !== kind || thing === undefined) return record.value
	const reading = readAs(kind, before.version, before.value)
	if (reading.state !== 'read' || definition.thingOf?.(reading.value) !== thing) return record.value
	return putBack(record.value, reading.value, reading.unknown)
}
/** Undefined where it is damaged: then nothing of it can be put back. */
function versionBefore(store: Store, id: string): StoredRecord | undefined {
	try {
		return store.read(id)
	} catch {
		return undefined
	}
}
