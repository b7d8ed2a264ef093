/** What a merge changes, in words, gathered inside its transaction. */

import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import {
	detailsLines,
	draftLine,
	newPlayerLine,
	type PlayerChanges,
	recordLine,
	toldChanges,
} from '../../../shared/desk/outreach/changes.ts'
import { joinFields } from '../../../shared/desk/outreach/heads.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { type Arrival, isOwn } from './arrival.ts'
import { playerName } from './aside-words.ts'
import type { DraftNews } from './drafts-home.ts'
import { joinedOf, versionsAbout } from './versions.ts'

/**
 * @param added the records that are ours now, in the order of writing
 * @returns player by player what is new, as far as it is told
 */
export function whatChanged(
	arrival: Arrival,
	added: readonly Carried[],
	drafts: readonly DraftNews[],
): { players: PlayerChanges[]; more: number } {
	const joined = joinedOf(arrival.deps)
	const records = Map.groupBy(added, ({ about }) => about)
	const news = Map.groupBy(drafts, ({ playerId }) => playerId)
	const ids = new Set([...records.keys(), ...news.keys()])
	return toldChanges(
		[...ids].flatMap((playerId) => {
			if (playerId === undefined) return []
			const own = records.get(playerId) ?? []
			const isNew = !arrival.memory.players.byId.has(playerId)
			const details = detailsOf(arrival, playerId, own, joined)
			const lines = [
				...details.lines,
				...own.flatMap(({ kind, value }) => recordLine(kind, value) ?? []),
				...(news.get(playerId) ?? []).map(({ step, visitDate }) => draftLine(step, visitDate)),
			]
			return [{ playerId, name: details.name, isNew, lines }]
		}),
	)
}
/** The player's name as it is then, and a line for each of the details that changes. */
function detailsOf(
	arrival: Arrival,
	playerId: string,
	own: readonly Carried[],
	joined: ReadonlySet<string>,
): { name: string; lines: string[] } {
	const { memory, deps } = arrival
	const name = playerName(arrival, playerId) || 'A player'
	if (!own.some(({ kind }) => kind === 'player')) return { name, lines: [] }
	const versions = versionsAbout(deps, 'player', playerId)
	const { value, questions } = joinFields(versions, ({ player }) => player, joined)
	const after = playerSchema.safeParse(value).data
	if (!after) return { name, lines: [] }
	const before = memory.players.byId.get(playerId)?.player
	const lines = before
		? detailsLines(
				before,
				after,
				questions.map(({ field, values }) => ({
					field,
					values: values.map(({ origin, value: said }) => ({
						isHere: isOwn(deps.store, origin),
						value: said,
					})),
				})),
			)
		: [newPlayerLine(after.birthDate)]
	return { name: fullName(after), lines }
}
