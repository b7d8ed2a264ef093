/** Records that cannot be read, or not wholly, by this version: named in words. */
import type { UnknownEntry, Unreadable } from '../../../shared/desk/ledger/read.ts'
import { kindWords, unknownWords, unreadableWords } from '../../../shared/desk/ledger/words.ts'
import type { StoredRecord } from '../../store/store.ts'

type Named = Pick<StoredRecord, 'id' | 'kind' | 'at'>
type Why = Unreadable | { state: 'unknown-kind' }
/** Sentences of one kind at most; the rest are counted. A choice of this program. */
const mostOfAKind = 20

export class Unread {
	readonly #unread = new Map<string, { kind: string; says: string }>()
	/** by kind: the records that hold entries unknown here, and where those stand */
	readonly #partly = new Map<string, { records: Set<string>; paths: Set<string> }>()

	take(record: Named, why: Why): void {
		this.#unread.set(record.id, { kind: record.kind, says: unreadableWords(record, why) })
	}
	takePartly({ id, kind }: Pick<Named, 'id' | 'kind'>, unknown: readonly UnknownEntry[]): void {
		const known = this.#partly.get(kind) ?? { records: new Set(), paths: new Set() }
		known.records.add(id)
		for (const { path } of unknown) known.paths.add(path)
		this.#partly.set(kind, known)
	}
	/** A sentence for each record, the last of many for how many more there are. */
	words(): string[] {
		const byKind = Map.groupBy(this.#unread.values(), ({ kind }) => kind)
		const unread = [...byKind].flatMap(([kind, records]) => {
			const more = records.length - mostOfAKind
			const named = records.slice(0, mostOfAKind).map(({ says }) => says)
			return more > 0
				? [...named, `${more} more records (${kindWords(kind)}) cannot be read either.`]
				: named
		})
		const partly = [...this.#partly].map(([kind, { records, paths }]) =>
			unknownWords(kind, records.size, [...paths].sort()),
		)
		return [...unread, ...partly]
	}
	forget(records: ReadonlySet<string>): void {
		for (const id of records) this.#unread.delete(id)
		for (const [kind, partly] of this.#partly) {
			for (const id of records) partly.records.delete(id)
			if (partly.records.size === 0) this.#partly.delete(kind)
		}
	}
	clear(): void {
		this.#unread.clear()
		this.#partly.clear()
	}
}
