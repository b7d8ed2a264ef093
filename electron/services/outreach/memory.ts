/** What is remembered of outreach: the pack these records came in, and what was answered. */
import type { Manifest } from '../../../shared/desk/outreach/carried.ts'
import type { Remembered } from '../records/remember.ts'

/** What a laptop knows of the pack its records came in. */
export interface PackNote
	extends Pick<
		Manifest,
		'packId' | 'madeAt' | 'expires' | 'home' | 'players' | 'counts' | 'bases' | 'protocol' | 'shelf'
	> {
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
