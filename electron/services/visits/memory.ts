/** What is remembered of open drafts. They are no records: they are saved over, and end. */
import { z } from 'zod'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

/** What makes a draft the next version of a signed visit. */
export interface Amends {
	visitId: string
	reason: string
}
/** A draft as the store keeps it. */
export interface DraftValue {
	playerId: string
	content: {
		visit: Visit
		raw: Record<string, string>
		decisions: unknown
		step?: string | undefined
	}
	amends?: Amends | undefined
}
/** As much of a draft as lists show, whichever version wrote it. */
export const draftOutlineSchema = z.object({
	playerId: z.string(),
	content: z.object({ visit: z.object({ visitDate: z.string() }) }),
	amends: z.object({ visitId: z.string(), reason: z.string() }).optional(),
})
type DraftOutline = z.infer<typeof draftOutlineSchema>
/** A draft as lists show it. */
export interface OpenDraft {
	playerId: string
	visitDate: string
	savedAt: string
	amends?: Amends | undefined
}
export class DraftsMemory {
	readonly #byId = new Map<string, OpenDraft>()
	readonly #loggedMs = new Map<string, number>()

	get byId(): ReadonlyMap<string, OpenDraft> {
		return this.#byId
	}
	/** The open drafts of a player, who may have several ids, each with its own id. */
	of(playerIds: readonly string[]): [draftId: string, draft: OpenDraft][] {
		return [...this.#byId].filter(([, draft]) => playerIds.includes(draft.playerId))
	}
	take(draftId: string, { playerId, content, amends }: DraftOutline, savedAt: string): void {
		const { visitDate } = content.visit
		this.#byId.set(draftId, { playerId, visitDate, savedAt, amends })
	}
	drop(draftId: string): void {
		this.#byId.delete(draftId)
	}
	/** When a person's changes of a draft were last written into the audit trail, in ms. */
	loggedMs(draftId: string, personId: string | undefined): number | undefined {
		return this.#loggedMs.get(`${draftId} ${personId}`)
	}
	logged(draftId: string, personId: string | undefined, atMs: number): void {
		this.#loggedMs.set(`${draftId} ${personId}`, atMs)
	}
	clear(): void {
		this.#byId.clear()
		this.#loggedMs.clear()
	}
}
