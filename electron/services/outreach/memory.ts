/** What is remembered of outreach: the pack these records came in, and what was answered. */
import { z } from 'zod'
import type { ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import { manifestSchema } from '../../../shared/desk/outreach/carried.ts'
import type { Taken } from '../records/newest.ts'

/** What a laptop knows of the pack its records came in; keys of a newer version are passed over. */
export const packNoteSchema = z.object({
	...manifestSchema.pick({
		packId: true,
		madeAt: true,
		expires: true,
		home: true,
		recordsId: true,
		players: true,
		counts: true,
		bases: true,
		protocol: true,
		shelf: true,
	}).shape,
	/** of the pack's file; absent where program 0.1.0 opened it */
	form: z.number().optional(),
	/** the last day on which this laptop was at work, ISO 8601 */
	latestDay: z.string().optional(),
	personId: z.string(),
	by: z.string(),
	openedAt: z.string(),
	removedAt: z.string().optional(),
})
export type PackNote = z.infer<typeof packNoteSchema>

export class OutreachMemory {
	/** by the record of the answer: the records that it put to rest */
	readonly #joins = new Map<string, readonly string[]>()
	/** set where these records came in a pack */
	pack: PackNote | undefined

	/** Records that an answer after an outreach day put to rest. */
	get joined(): ReadonlySet<string> {
		return new Set([...this.#joins.values()].flat())
	}
	takeAnswer({ id, value }: Taken<ValueOf<'answer'>>): void {
		this.#joins.set(id, value.joins)
	}
	forget(records: ReadonlySet<string>): void {
		for (const id of records) this.#joins.delete(id)
	}
	clear(): void {
		this.#joins.clear()
		this.pack = undefined
	}
}
