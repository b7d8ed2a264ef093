/**
 * What is remembered while the records are open: short forms in memory, nothing else kept in clear.
 * Each room has a memory of its own; a service takes those it needs, as
 * `Pick<Memory, 'players' | 'people'>`.
 */
import { HoldsMemory, RestoredMemory } from '../backups/memory.ts'
import { ClinicMemory } from '../clinic/memory.ts'
import { OutboxMemory } from '../outbox/memory.ts'
import { OutreachMemory } from '../outreach/memory.ts'
import { PeopleMemory } from '../people/memory.ts'
import { PlayersMemory } from '../players/memory.ts'
import { SeasonMemory } from '../season/memory.ts'
import { ShelfMemory } from '../shelf/memory.ts'
import { DraftsMemory } from '../visits/memory.ts'

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
	/** what the person should know about the records, in words */
	warnings: string[] = []
	/** Adds a warning. */
	readonly warn = (...says: string[]): void => {
		this.warnings.push(...says)
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
		this.warnings = []
	}
}
