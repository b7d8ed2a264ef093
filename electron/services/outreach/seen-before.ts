/**
 * What takes long to find out of a record and does not change by taking in others: found with
 * pauses, before the transaction in which all of them are taken in.
 */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import type { PackWork } from '../../store/pack-work.ts'
import { isDamage } from '../../store/records.ts'
import type { Arrival } from './arrival.ts'
import { kindTrouble } from './check-kind.ts'
import type { Trouble } from './check-record.ts'

/** What was found of one record. */
export interface Seen {
	held: 'no' | 'same' | 'other'
	kind: Trouble | undefined
	/** the signature is of the installation that the record names */
	isSigned: boolean
}
/** @returns what was found, and the state of the store of which it is true */
export async function lookedAt(
	arrival: Arrival,
	work: PackWork,
): Promise<{ state: string; byRecord: ReadonlyMap<Carried, Seen> }> {
	const { deps, pack } = arrival
	const { state } = deps.store
	const byRecord = new Map<Carried, Seen>()
	for (const record of pack.records) {
		byRecord.set(record, see(arrival, record))
		await work.at('checking', byRecord.size, pack.records.length)
	}
	return { state, byRecord }
}
function see(arrival: Arrival, record: Carried): Seen {
	const { keys, deps } = arrival
	const held = heldAs(deps.store, record)
	if (held !== 'no') return { held, kind: undefined, isSigned: false }
	return {
		held,
		kind: kindTrouble(arrival, record),
		isSigned: deps.store.signatureOf(record, keys) === 'good',
	}
}
/** A record that is damaged here is another one than what comes. */
function heldAs(store: Arrival['deps']['store'], record: Carried): 'no' | 'same' | 'other' {
	try {
		return store.holds(record)
	} catch (error) {
		if (isDamage(error)) return 'other'
		throw error
	}
}
/** What a record is here. Of two with one id in a file the second meets the first. */
export function heldHere({ seen, deps: { store } }: Arrival, record: Carried): Seen['held'] {
	const before = seen?.get(record)
	if (before === undefined || before.held === 'other') return heldAs(store, record)
	return before.held === 'no' && store.has(record.id) ? heldAs(store, record) : before.held
}
/** As `kindTrouble`, which depends on the record alone. */
export function kindSeen(arrival: Arrival, record: Carried): Trouble | undefined {
	const before = arrival.seen?.get(record)
	return before?.held === 'no' ? before.kind : kindTrouble(arrival, record)
}
