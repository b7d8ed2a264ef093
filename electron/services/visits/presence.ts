/** Which windows have a draft open, and how those ended that are open no more; in memory only. */
import type { OutputOf } from '../../../shared/contract.ts'

export type OtherWindow = OutputOf<'drafts.look'>['others'][number]
export type Ended = NonNullable<OutputOf<'drafts.look'>['ended']>
interface Here {
	personId: string
	by: string
	/** ISO 8601 */
	since: string
	typedAt?: string
	lookedMs: number
}
/**
 * A window that was not heard of for so long is gone: a page that is out of sight may look only
 * once a minute.
 */
const goneAfterMs = 150_000
/** Who looks, from which window, and when. */
interface Looking {
	window: string
	personId: string
	by: string
	at: Date
}
export class Presence {
	readonly #windows = new Map<string, Map<string, Here>>()
	readonly #ended = new Map<string, Ended>()

	/** Notes that a window has the draft open. @returns whether this person had it not before */
	looks(draftId: string, { window, personId, by, at }: Looking): boolean {
		const windows = this.#windows.get(draftId) ?? new Map<string, Here>()
		this.#windows.set(draftId, windows)
		const before = windows.get(window)
		const known = before?.personId === personId
		windows.set(window, {
			...(known ? before : { since: at.toISOString() }),
			personId,
			by,
			lookedMs: at.getTime(),
		})
		return !known
	}
	/** Notes that something was typed there. */
	types(draftId: string, looking: Looking): void {
		this.looks(draftId, looking)
		const here = this.#windows.get(draftId)?.get(looking.window)
		if (here) here.typedAt = looking.at.toISOString()
	}
	leaves(draftId: string, window: string): void {
		this.#windows.get(draftId)?.delete(window)
	}
	/** The other windows that have it open, those open longest first. */
	others(draftId: string, window: string | undefined, at: Date): OtherWindow[] {
		const windows = this.#windows.get(draftId) ?? new Map<string, Here>()
		for (const [name, { lookedMs }] of windows)
			if (Math.abs(at.getTime() - lookedMs) > goneAfterMs) windows.delete(name)
		return [...windows]
			.filter(([name]) => name !== window)
			.map(([, { by, since, typedAt }]) => ({ by, since, ...(typedAt && { typedAt }) }))
			.sort((one, other) => (one.since < other.since ? -1 : 1))
	}
	/** Notes how a draft ended. */
	ends(draftId: string, ended: Ended): void {
		this.#windows.delete(draftId)
		this.#ended.set(draftId, ended)
	}
	/** How a draft ended that is not open; not known where it was before this program started. */
	endOf(draftId: string): Ended {
		return this.#ended.get(draftId) ?? { how: 'gone' }
	}
	clear(): void {
		this.#windows.clear()
		this.#ended.clear()
	}
}
