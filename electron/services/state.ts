/** What the services share while the records are open: cards in memory, nothing else kept in clear. */
import type { Card } from '../../shared/contract.ts'
import type { Clinic } from '../../shared/clinic.ts'
import type { Player, Visit } from '../../shared/visit/visit.ts'
import type { Store } from '../store/store.ts'
import type { LwDocument } from '../../shared/report/document.ts'

/** A refusal in words for the person; anything else thrown is a fault of ours. */
export class Refusal extends Error {
	readonly problems: { path: string; message: string }[] | undefined
	constructor(message: string, problems?: { path: string; message: string }[]) { super(message); this.problems = problems }
}
export interface PlayerEntry { card: Card; player: Player; recordId: string; visits: { visitId: string; recordId: string; visitDate: string; signedAt: string }[] }
export interface Deps { store: Store; renderPdf: (document: LwDocument) => Promise<Uint8Array>; now: () => Date; demo: boolean; version: string }
export interface DraftValue { playerId: string; content: { visit: Visit; raw: Record<string, string>; decisions: unknown; step?: string | undefined } }
export class State {
	clinic: Clinic | undefined
	clinicRecord: string | undefined
	players = new Map<string, PlayerEntry>()
	/** visit record id by visit id, and report record id by visit id */
	visitRecord = new Map<string, string>()
	reportRecord = new Map<string, string>()
	drafts = new Map<string, { playerId: string; visitDate: string; savedAt: string }>()
	warnings: string[] = []
	clear(): void { this.clinic = undefined; this.players.clear(); this.visitRecord.clear(); this.reportRecord.clear(); this.drafts.clear(); this.warnings = [] }
	entry(playerId: string): PlayerEntry {
		const entry = this.players.get(playerId)
		if (!entry) throw new Refusal('This player is not in the records. Search again.')
		return entry
	}
}
