/** What is remembered of open drafts. They are no records: they are saved over, and end. */
import { z } from 'zod'
import type { Seen, Stamps } from '../../../shared/desk/outreach/stamps.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import type { KeptDraft } from './kept-draft.ts'
import { type Ended, Presence } from './presence.ts'

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
	/** when and where its entries were typed; absent in drafts of version 0.1.0 */
	stamps?: Stamps | undefined
	seen?: Seen | undefined
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
	readonly #kept = new Map<string, KeptDraft>()
	readonly #byId = new Map<string, OpenDraft>()
	readonly #loggedMs = new Map<string, number>()
	/** which windows have which draft open */
	readonly presence = new Presence()

	get byId(): ReadonlyMap<string, OpenDraft> {
		return this.#byId
	}
	/** The open drafts of a player, who may have several ids, each with its own id. */
	of(playerIds: readonly string[]): [draftId: string, draft: OpenDraft][] {
		return [...this.#byId].filter(([, draft]) => playerIds.includes(draft.playerId))
	}
	/** The draft as this program saved it last; undefined where something else may have since. */
	kept(draftId: string): KeptDraft | undefined {
		return this.#kept.get(draftId)
	}
	/** Remembers what was just saved, after it was taken. */
	keep(draftId: string, kept: KeptDraft): void {
		this.#kept.set(draftId, kept)
	}
	take(draftId: string, { playerId, content, amends }: DraftOutline, savedAt: string): void {
		const { visitDate } = content.visit
		this.#kept.delete(draftId)
		this.#byId.set(draftId, { playerId, visitDate, savedAt, amends })
	}
	/** @param ended how it ended, for windows that still have it open */
	drop(draftId: string, ended: Ended = { how: 'gone' }): void {
		if (this.#byId.delete(draftId)) this.presence.ends(draftId, ended)
		this.#kept.delete(draftId)
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
		this.#kept.clear()
		this.#loggedMs.clear()
		this.presence.clear()
	}
}
