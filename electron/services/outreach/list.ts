/** What Outreach shows: the pack these records came in, packs that went out and came home. */
import type { OutputOf } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { latestDay } from './laptop.ts'
import type { PackNote } from './memory.ts'
import { type Duplicate, type MergedValue, type OutValue, packLog } from './pack-log.ts'
import { openQuestions } from './questions.ts'
import { recordsForHome } from './way-back.ts'
import { withOrigins } from './where-from.ts'

type Remembered = Pick<Memory, 'outreach' | 'people' | 'players' | 'drafts'>
type Listed = OutputOf<'outreach.list'>
/** Everything about packs, the newest first, with the questions that are open. */
export function listOutreach(memory: Remembered, deps: Deps): Listed {
	const { pack } = memory.outreach
	const { out, merged } = packLog(deps)
	const playerIds = [...new Set(merged.flatMap((value) => value.players))]
	return {
		...present({ carries: pack && carried(memory, deps, pack) }),
		out: out.map((value) => wentOut(value, merged)).reverse(),
		merged: merged.map((value) => cameHome(memory, value)).reverse(),
		questions: withOrigins(memory, deps, openQuestions(deps, playerIds)),
	}
}
/** On a laptop: what it carries, and how much was entered on it. */
function carried(memory: Remembered, deps: Deps, pack: PackNote): NonNullable<Listed['carries']> {
	return {
		packId: pack.packId,
		madeAt: pack.madeAt,
		by: pack.by,
		expires: pack.expires,
		ranOut: pack.expires < latestDay(pack, dayHere(deps.now())),
		players: pack.players,
		counts: pack.counts,
		shelf: pack.shelf,
		protocol: pack.protocol,
		...present({ removedAt: pack.removedAt }),
		newHere: newHere(memory, deps),
	}
}
function newHere(
	{ players, drafts }: Remembered,
	{ store }: Deps,
): { records: number; drafts: number } {
	return {
		records: recordsForHome({ players }, store).filter(
			({ origin, about }) => about !== undefined && origin === store.origin,
		).length,
		drafts: drafts.byId.size,
	}
}
function wentOut(
	{ packId, madeAt, by, expires, file, players }: OutValue,
	merged: readonly MergedValue[],
): Listed['out'][number] {
	return {
		packId,
		madeAt,
		by,
		expires,
		file,
		players: players.map((player) => player.name),
		home: merged.some((value) => value.answers === packId),
	}
}
function cameHome({ players, drafts }: Remembered, value: MergedValue): Listed['merged'][number] {
	const { packId, at, by, counts, receipt, quarantined, trailRows = 0 } = value
	return {
		packId,
		at,
		by,
		counts,
		trailRows,
		receipt,
		duplicates: value.duplicates.map((duplicate) => ({
			...duplicate,
			...present({ joined: joinedBy(players.merges, duplicate) }),
		})),
		quarantined,
		changes: value.changes ?? [],
		draftsBoth: value.draftsBoth.filter(
			(apart) => apart.drafts.filter((id) => drafts.byId.has(id)).length > 1,
		),
	}
}
/** The merge that made one player of the two; undefined where nobody did. */
function joinedBy(
	merges: Memory['players']['merges'],
	{ playerId, like }: Duplicate,
): string | undefined {
	return [...merges.values()].find(
		({ from, into }) =>
			(from === playerId && into === like) || (from === like && into === playerId),
	)?.mergeId
}
