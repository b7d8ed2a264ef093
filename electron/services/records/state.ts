/**
 * The old door to what is remembered, for rooms that do not take their memories yet. New code takes
 * `Pick<Memory, ...>` from memory.ts.
 */
import type { Memory } from './memory.ts'

export type { PackNote } from '../outreach/memory.ts'
export type { DraftValue } from '../visits/memory.ts'
export { acting } from './acting.ts'
export type { Deps, Settings } from './deps.ts'
export { Refusal } from './refusal.ts'

export class State {
	readonly memory: Memory
	constructor(memory: Memory) {
		this.memory = memory
	}
	get clinic() {
		return this.memory.clinic.letterhead
	}
	get clinicRecord() {
		return this.memory.clinic.recordIds.letterhead
	}
	get settings() {
		return this.memory.clinic.settings
	}
	get settingsRecord() {
		return this.memory.clinic.recordIds.settings
	}
	get shelf() {
		return this.memory.shelf.shelf
	}
	get shelfRecord() {
		return this.memory.shelf.recordId
	}
	get protocol() {
		return this.memory.clinic.protocol
	}
	get protocolVersions() {
		return this.memory.clinic.protocolVersions
	}
	get person() {
		return this.memory.people.atWork
	}
	get people() {
		return this.memory.people.byId
	}
	get players() {
		return this.memory.players.byId
	}
	get merges() {
		return this.memory.players.merges
	}
	get holds() {
		return this.memory.holds.byPlayer
	}
	get drafts() {
		return this.memory.drafts.byId
	}
	get pack() {
		return this.memory.outreach.pack
	}
	clear() {
		this.memory.clear()
	}
	entry(playerId: string) {
		return this.memory.players.entry(playerId)
	}
	idsOf(playerId: string) {
		return this.memory.players.idsOf(playerId)
	}
	mergedAway(playerId: string) {
		return this.memory.players.mergedAway(playerId)
	}
	ordered() {
		return this.memory.players.ordered()
	}
	draftsOf(playerId: string) {
		return this.memory.drafts.of(this.idsOf(playerId))
	}
	acts() {
		return this.memory.people.acts()
	}
}
