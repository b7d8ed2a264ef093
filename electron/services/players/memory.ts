/** What is remembered of the players: details, words to search, order, and who was merged. */
import type { Card } from '../../../shared/contract.ts'
import type { Player } from '../../../shared/engine/visit/visit.ts'
import { Refusal } from '../records/refusal.ts'
import type { Remembered } from '../records/remember.ts'
import { plain, wordsOfPlayer } from './names.ts'

/** A player as a record of the kind 'player' holds them. */
export interface PlayerValue {
	playerId: string
	player: Player
}
export interface PlayerEntry {
	card: Card
	player: Player
	recordId: string
	/** the words that the search looks at, each after a line break */
	hay: string
	/** what the list is ordered by */
	order: string
	/** whether the card's last visit was looked up since it may have changed */
	lastVisitKnown: boolean
}
/** A merge as a record of the kind 'merge' holds it. */
export interface MergeValue {
	mergeId: string
	from: string
	into: string
	undone: boolean
	reason: string
}
export interface MergeEntry {
	mergeId: string
	from: string
	into: string
	recordId: string
}
/** What finding the records of a player asks for: the player's ids. */
export type PlayerIds = Pick<PlayersMemory, 'idsOf'>

export class PlayersMemory {
	readonly #byId = new Map<string, PlayerEntry>()
	readonly #merges = new Map<string, MergeEntry>()
	#ordered: PlayerEntry[] | undefined

	get byId(): ReadonlyMap<string, PlayerEntry> {
		return this.#byId
	}
	/** the merges in force */
	get merges(): ReadonlyMap<string, MergeEntry> {
		return this.#merges
	}
	/** @throws Refusal where there is no such player */
	entry(playerId: string): PlayerEntry {
		const entry = this.#byId.get(playerId)
		if (!entry) throw new Refusal('This player is not in the records. Search again.')
		return entry
	}
	nameOf(playerId: string): string {
		const { player } = this.entry(playerId)
		return `${player.givenName} ${player.familyName}`
	}
	/** The player and all that were merged into it. */
	idsOf(playerId: string): string[] {
		const merged = [...this.#merges.values()].filter((merge) => merge.into === playerId)
		return [playerId, ...merged.flatMap((merge) => this.idsOf(merge.from))]
	}
	#mergeOf(playerId: string): MergeEntry | undefined {
		if (this.#merges.size === 0) return undefined
		return [...this.#merges.values()].find((merge) => merge.from === playerId)
	}
	mergedAway(playerId: string): boolean {
		return this.#mergeOf(playerId) !== undefined
	}
	/** The player this record was merged into, or the player itself. */
	rootOf(playerId: string): string {
		const merge = this.#mergeOf(playerId)
		return merge ? this.rootOf(merge.into) : playerId
	}
	/** The players that are shown, in the order of the list; the same array until one changes. */
	ordered(): PlayerEntry[] {
		this.#ordered ??= [...this.#byId.values()]
			.filter((entry) => !this.mergedAway(entry.card.playerId))
			.sort((left, right) => compareText(left.order, right.order))
		return this.#ordered
	}
	takePlayer({ id, value }: Remembered): void {
		const { playerId, player } = value as PlayerValue
		const known = this.#byId.get(playerId)
		const card: Card = {
			playerId,
			givenName: player.givenName,
			familyName: player.familyName,
			birthDate: player.birthDate,
			sex: player.sex,
			club: player.club,
			lastVisit: known?.card.lastVisit,
			openDraft: false,
		}
		this.#byId.set(playerId, {
			card,
			player,
			recordId: id,
			hay: `\n${wordsOfPlayer(card).join('\n')}`,
			order: `${plain(player.familyName)}\u0000${plain(player.givenName)}\u0000${player.birthDate}`,
			lastVisitKnown: known?.lastVisitKnown ?? false,
		})
		this.#ordered = undefined
	}
	takeMerge({ id, value }: Remembered): void {
		const { mergeId, from, into, undone } = value as MergeValue
		if (undone) this.#merges.delete(mergeId)
		else this.#merges.set(mergeId, { mergeId, from, into, recordId: id })
		this.#ordered = undefined
		for (const playerId of [from, into]) this.visitsChanged(playerId)
	}
	/** The last visit of a player, and of whoever is shown for it, has to be looked up again. */
	visitsChanged(playerId: string): void {
		for (const id of new Set([playerId, this.rootOf(playerId)])) {
			const entry = this.#byId.get(id)
			if (entry) entry.lastVisitKnown = false
		}
	}
	/** Notes the day of the last visit, undefined where there is none. */
	knowLastVisit(playerId: string, visitDate: string | undefined): void {
		const entry = this.entry(playerId)
		entry.card.lastVisit = visitDate
		entry.lastVisitKnown = true
	}
	/** Players whose records were destroyed, with the merges into them. */
	forget(playerIds: readonly string[]): void {
		for (const [mergeId, merge] of this.#merges)
			if (playerIds.includes(merge.into)) this.#merges.delete(mergeId)
		for (const playerId of playerIds) this.#byId.delete(playerId)
		this.#ordered = undefined
	}
	clear(): void {
		this.#byId.clear()
		this.#merges.clear()
		this.#ordered = undefined
	}
}
function compareText(left: string, right: string): number {
	if (left === right) return 0
	return left < right ? -1 : 1
}
