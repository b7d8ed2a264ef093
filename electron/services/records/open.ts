/** Records as the values they hold: the one way in which a service reads one. */
import { type KindName, readAs, type ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import type { Reading, UnknownEntry } from '../../../shared/desk/ledger/read.ts'
import { unreadableWords } from '../../../shared/desk/ledger/words.ts'
import { isDamage } from '../../store/records.ts'
import type { Store, StoredRecord } from '../../store/store.ts'
import { Refusal } from './refusal.ts'

/** As much of a record as reading its value asks for; without a version it is of the first. */
type Sealed = Pick<StoredRecord, 'id' | 'kind' | 'at' | 'value'> & { version?: number | undefined }
/** A record with the value that it holds. */
export interface Opened<Kind extends KindName> extends Omit<StoredRecord, 'kind' | 'value'> {
	kind: Kind
	value: ValueOf<Kind>
}
/** The records of a kind that can be read, and a sentence for each that cannot. */
interface Readable<Kind extends KindName> {
	records: Opened<Kind>[]
	unread: string[]
}
/** How services open records. A record that cannot be read stops nothing but what asks for it. */
export interface Opener {
	/** @throws Refusal in words where the record cannot be read by this version */
	open: <Kind extends KindName>(kind: Kind, record: Sealed) => ValueOf<Kind>
	/** The same by its id. @throws Refusal also where it is damaged, gone, or of another kind */
	openRecord: <Kind extends KindName>(kind: Kind, id: string) => Opened<Kind>
	/** All that are about a player, in order of writing. */
	openAbout: <Kind extends KindName>(kind: Kind, playerId: string) => Readable<Kind>
	/** All of a kind, in order of writing. */
	openAll: <Kind extends KindName>(kind: Kind) => Readable<Kind>
}

/** The value of a record with what of it is unknown here. Never throws. */
export function readRecord<Kind extends KindName>(
	kind: Kind,
	{ version = 1, value }: Sealed,
): Reading<ValueOf<Kind>> {
	return readAs(kind, version, value)
}
/** Who is told of what could not be read. */
interface Told {
	/** the sentence of each record that a list had to go on without */
	unread: (...says: string[]) => void
	/** a record that was read, but for some entries */
	partly: (record: Sealed, unknown: readonly UnknownEntry[]) => void
}
const nobody: Told = { unread: () => {}, partly: () => {} }

export function openerOf(store: Store, told: Told = nobody): Opener {
	const open = <Kind extends KindName>(kind: Kind, record: Sealed): ValueOf<Kind> => {
		const reading = readRecord(kind, record)
		if (reading.state !== 'read')
			throw new Refusal('records.unreadable', unreadableWords(record, reading))
		if (reading.unknown.length > 0) told.partly(record, reading.unknown)
		return reading.value
	}
	const opened = <Kind extends KindName>(kind: Kind, record: StoredRecord): Opened<Kind> => ({
		...record,
		kind,
		value: open(kind, record),
	})
	return {
		open,
		openRecord: (kind, id) => opened(kind, sealedRecord(store, kind, id)),
		openAbout(kind, playerId) {
			const ids = store.recordsAbout(playerId, kind)
			const found = readable(ids, (id) => opened(kind, sealedRecord(store, kind, id)))
			told.unread(...found.unread)
			return found
		},
		openAll(kind) {
			const { records, damaged } = store.load([kind])
			const found = readable(records, (record) => opened(kind, record))
			found.unread.unshift(...damaged)
			told.unread(...found.unread)
			return found
		},
	}
}
/** @throws Refusal where it is damaged, gone, or of another kind */
function sealedRecord(store: Store, kind: KindName, id: string): StoredRecord {
	const named = `Record ${id} (${kind})`
	let record: StoredRecord
	try {
		record = store.read(id)
	} catch (error) {
		if (isDamage(error))
			throw new Refusal(
				'records.damaged',
				`${named} is damaged and cannot be read. All other records are unaffected; restore it ` +
					'from a backup.',
			)
		if (store.has(id)) throw error
		throw new Refusal('records.gone', `${named} is not in the records. Restore it from a backup.`)
	}
	if (record.kind === kind) return record
	throw new Refusal(
		'records.other-kind',
		`${named} is of another kind, "${record.kind}". Restore it from a backup.`,
	)
}
/** @param opened gets the record; a Refusal of it is one that cannot be read */
function readable<Kind extends KindName, Given>(
	given: readonly Given[],
	opened: (item: Given) => Opened<Kind>,
): Readable<Kind> {
	const found: Readable<Kind> = { records: [], unread: [] }
	for (const item of given)
		try {
			found.records.push(opened(item))
		} catch (error) {
			if (!(error instanceof Refusal)) throw error
			found.unread.push(error.message)
		}
	return found
}
