/** What is remembered of the players: details, words to search, order, and who was merged. */

import type { Card } from '../../../shared/contract.ts'
import type { MergeValue, PlayerValue } from '../../../shared/desk/players/player-record.ts'
import type { Player } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { isLater, Newest, type Taken } from '../records/newest.ts'
import { Refusal } from '../records/refusal.ts'
import { plain, wordsOfPlayer } from './names.ts'

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
export interface MergeEntry extends MergeValue {
	recordId: string
}
/** The versions of a player's details: those that stand last, and those that another follows. */
interface Line {
	heads: Map<string, Taken<PlayerValue>>
	followed: Set<string>
}
/** What finding the records of a player asks for: the player's ids. */
export type PlayerIds = Pick<PlayersMemory, 'idsOf'>

export class PlayersMemory {
	readonly #byId = new Map<string, PlayerEntry>()
	readonly #lines = new Map<string, Line>()
	/** players that stand at more than one version, not joined since one came */
	readonly #toJoin = new Set<string>()
	readonly #mergeWords = new Newest<MergeValue>()
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
		if (!entry)
			throw new Refusal('players.unknown', 'This player is not in the records. Search again.')
		return entry
	}
	nameOf(playerId: string): string {
		const { player } = this.entry(playerId)
		return fullName(player)
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
	takePlayer(taken: Taken<PlayerValue>): void {
		const { id, follows } = taken
		const { playerId, player } = taken.value
		const { heads, followed } = this.#lineOf(playerId)
		if (follows !== undefined) {
			heads.delete(follows)
			followed.add(follows)
		}
		if (followed.has(id)) return
		const isLast = [...heads.values()].every((head) => isLater(taken, head))
		heads.set(id, taken)
		if (heads.size > 1) this.#toJoin.add(playerId)
		if (isLast) this.#put(playerId, player, id)
	}
	#lineOf(playerId: string): Line {
		const line = this.#lines.get(playerId) ?? { heads: new Map(), followed: new Set() }
		this.#lines.set(playerId, line)
		return line
	}
	#put(playerId: string, player: Player, recordId: string): void {
		const known = this.#byId.get(playerId)
		const card: Card = {
			playerId,
			givenName: player.givenName,
			familyName: player.familyName,
			...(player.latinName && { latinName: player.latinName }),
			birthDate: player.birthDate,
			sex: player.sex,
			club: player.club,
			lastVisit: known?.card.lastVisit,
			openDraft: false,
		}
		this.#byId.set(playerId, {
			card,
			player,
			recordId,
			hay: `\n${wordsOfPlayer(player).join('\n')}`,
			order: [plain(player.familyName), plain(player.givenName), player.birthDate, playerId].join(
				'\u0000',
			),
			lastVisitKnown: known?.lastVisitKnown ?? false,
		})
		this.#ordered = undefined
	}
	/** The players whose versions are to be joined, each named once until another version comes. */
	toJoin(): string[] {
		const playerIds = [...this.#toJoin]
		this.#toJoin.clear()
		return playerIds
	}
	/** An answer came: whatever stands at more than one version is looked at anew. */
	joinAgain(): void {
		for (const [playerId, { heads }] of this.#lines) if (heads.size > 1) this.#toJoin.add(playerId)
	}
	/** Shows what two places recorded as one. @param recordId the version that the next one follows */
	showJoined(playerId: string, player: Player, recordId: string): void {
		this.#put(playerId, player, recordId)
	}
	takeMerge(taken: Taken<MergeValue>): void {
		const { mergeId, from, into } = taken.value
		this.#mergeWords.take(mergeId, taken)
		this.#mergesChanged()
		for (const playerId of [from, into]) this.visitsChanged(playerId)
	}
	/** Of merges that two places made both ways round, the one that stands first counts. */
	#mergesChanged(): void {
		this.#merges.clear()
		for (const { id: recordId, value } of this.#mergeWords.inOrder())
			if (!value.undone && this.rootOf(value.into) !== value.from)
				this.#merges.set(value.mergeId, { ...value, recordId })
		this.#ordered = undefined
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
	/** Forgets the players and merges that these records held. */
	forget(records: ReadonlySet<string>): void {
		this.#mergeWords.forget(records)
		this.#mergesChanged()
		for (const [playerId, { recordId }] of this.#byId) {
			if (!records.has(recordId)) continue
			this.#byId.delete(playerId)
			this.#lines.delete(playerId)
			this.#toJoin.delete(playerId)
		}
	}
	clear(): void {
		this.#byId.clear()
		this.#lines.clear()
		this.#toJoin.clear()
		this.#mergeWords.clear()
		this.#merges.clear()
		this.#ordered = undefined
	}
}
function compareText(left: string, right: string): number {
	if (left === right) return 0
	return left < right ? -1 : 1
}
