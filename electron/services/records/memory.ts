/**
 * What is remembered while the records are open: short forms in memory, nothing else kept in clear.
 * Each room has a memory of its own; a service takes those it needs, as
 * `Pick<Memory, 'players' | 'people'>`.
 */
import { HoldsMemory, RestoredMemory } from '../backups/memory.ts'
import { ClinicMemory } from '../clinic/memory.ts'
import { ClinicAuditMemory } from '../clinic-audit/memory.ts'
import { OutboxMemory } from '../outbox/memory.ts'
import { OutreachMemory } from '../outreach/memory.ts'
import { PeopleMemory } from '../people/memory.ts'
import { PlayersMemory } from '../players/memory.ts'
import { RecallMemory } from '../recall/memory.ts'
import { SeasonMemory } from '../season/memory.ts'
import { ShelfMemory } from '../shelf/memory.ts'
import { DraftsMemory } from '../visits/memory.ts'
import { Unread } from './unread.ts'

export class Memory {
	readonly clinic = new ClinicMemory()
	readonly shelf = new ShelfMemory()
	readonly people = new PeopleMemory()
	readonly players = new PlayersMemory()
	readonly holds = new HoldsMemory()
	readonly restored = new RestoredMemory()
	readonly drafts = new DraftsMemory()
	readonly season = new SeasonMemory()
	readonly outbox = new OutboxMemory()
	readonly outreach = new OutreachMemory()
	readonly recall = new RecallMemory()
	readonly clinicAudit = new ClinicAuditMemory()
	/** records that cannot be read, or not wholly */
	readonly unread = new Unread()
	readonly #warnings = new Set<string>()
	/** What the person should know about the records, in words. */
	get warnings(): string[] {
		return [...new Set([...this.#warnings, ...this.unread.words()])]
	}
	/** Adds a warning. */
	readonly warn = (...says: string[]): void => {
		for (const sentence of says) this.#warnings.add(sentence)
	}
	/** Takes back warnings that a person has looked into. */
	settled(said: ReadonlySet<string>): void {
		for (const sentence of said) this.#warnings.delete(sentence)
	}
	/** Forgets everything, as locking does, save which plans are being solved. */
	clear(): void {
		this.clinic.clear()
		this.shelf.clear()
		this.people.clear()
		this.players.clear()
		this.holds.clear()
		this.restored.clear()
		this.drafts.clear()
		this.outbox.clear()
		this.outreach.clear()
		this.recall.clear()
		this.clinicAudit.clear()
		this.unread.clear()
		this.#warnings.clear()
	}
}
