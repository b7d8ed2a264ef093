/** Records as the values they hold: the one way in which a service reads one. */
import { type KindName, readAs, type ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import type { Reading } from '../../../shared/desk/ledger/read.ts'
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
/** @throws Refusal in words where the record cannot be read by this version */
function open<Kind extends KindName>(kind: Kind, record: Sealed): ValueOf<Kind> {
	const reading = readRecord(kind, record)
	if (reading.state === 'read') return reading.value
	throw new Refusal(unreadableWords(record, reading))
}
/** @param tell gets the sentence of each record that a list had to go on without */
export function openerOf(store: Store, tell: (...says: string[]) => void = () => {}): Opener {
	const telling = <Kind extends KindName>(found: Readable<Kind>): Readable<Kind> => {
		tell(...found.unread)
		return found
	}
	return {
		open,
		openRecord: (kind, id) => openRecord(store, kind, id),
		openAbout: (kind, playerId) =>
			telling(
				readable(kind, store.recordsAbout(playerId, kind), (id) => sealedRecord(store, kind, id)),
			),
		openAll(kind) {
			const { records, damaged } = store.load([kind])
			const { records: opened, unread } = readable(kind, records, (record) => record)
			return telling({ records: opened, unread: [...damaged, ...unread] })
		},
	}
}
function openRecord<Kind extends KindName>(store: Store, kind: Kind, id: string): Opened<Kind> {
	const record = sealedRecord(store, kind, id)
	return { ...record, kind, value: open(kind, record) }
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
				`${named} is damaged and cannot be read. All other records are unaffected; restore it ` +
					'from a backup.',
			)
		if (store.has(id)) throw error
		throw new Refusal(`${named} is not in the records. Restore it from a backup.`)
	}
	if (record.kind === kind) return record
	throw new Refusal(`${named} is of another kind, "${record.kind}". Restore it from a backup.`)
}
/** @param sealed gets the record; a Refusal of it is one that cannot be read */
function readable<Kind extends KindName, Given>(
	kind: Kind,
	given: readonly Given[],
	sealed: (item: Given) => StoredRecord,
): Readable<Kind> {
	const found: Readable<Kind> = { records: [], unread: [] }
	for (const item of given)
		try {
			const record = sealed(item)
			found.records.push({ ...record, kind, value: open(kind, record) })
		} catch (error) {
			if (!(error instanceof Refusal)) throw error
			found.unread.push(error.message)
		}
	return found
}
