/**
 * The one way to write a record: it is appended to the store, and memory is extended by exactly
 * that record, by the same table that reads it at unlock.
 */
import type { NewRecord, Store } from '../../store/store.ts'
import type { Memory } from './memory.ts'
import { remember } from './remember.ts'

/** A record to keep; without `at` it is written as of now. */
export type KeptRecord = Omit<NewRecord, 'at'> & { at?: string }
export interface Keeper {
	/** Appends a record and remembers it. @returns its id */
	keep: (record: KeptRecord) => string
	/** The same for several, all or none; they are remembered once all of them are written. */
	keepTogether: (records: readonly KeptRecord[]) => string[]
}
/** @param now the time of records that say none */
export function keeperOf(store: Store, memory: Memory, now: () => Date): Keeper {
	const append = (record: KeptRecord) => {
		const whole: NewRecord = { ...record, at: record.at ?? now().toISOString() }
		return { ...whole, id: store.append(whole) }
	}
	return {
		keep(record) {
			const kept = append(record)
			remember(memory, kept)
			return kept.id
		},
		keepTogether(records) {
			const kept = store.together(() => records.map(append))
			for (const record of kept) remember(memory, record)
			return kept.map((record) => record.id)
		},
	}
}
