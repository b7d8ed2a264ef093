/** What is remembered of outreach: the pack these records came in, and what was answered. */
import type { Manifest } from '../../../shared/desk/outreach/carried.ts'
import type { Remembered } from '../records/remember.ts'

/** What a laptop knows of the pack its records came in. */
export interface PackNote
	extends Pick<
		Manifest,
		| 'packId'
		| 'madeAt'
		| 'expires'
		| 'home'
		| 'recordsId'
		| 'players'
		| 'counts'
		| 'bases'
		| 'protocol'
		| 'shelf'
	> {
	/** of the pack's file; absent where program 0.1.0 opened it */
	form?: number
	/** the last day on which this laptop was at work, ISO 8601 */
	latestDay?: string
	personId: string
	by: string
	openedAt: string
	removedAt?: string
}
export class OutreachMemory {
	readonly #joined = new Set<string>()
	/** set where these records came in a pack */
	pack: PackNote | undefined

	/** Records that an answer after an outreach day put to rest. */
	get joined(): ReadonlySet<string> {
		return this.#joined
	}
	takeAnswer({ value }: Remembered): void {
		for (const recordId of (value as { joins: string[] }).joins) this.#joined.add(recordId)
	}
	clear(): void {
		this.#joined.clear()
		this.pack = undefined
	}
}
