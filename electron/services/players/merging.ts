/** Two records shown as one player, and that undone. Nothing is moved or lost. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { MergeValue } from '../../../shared/desk/players/player-record.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

/** @throws Refusal where the two cannot be shown as one */
export function mergePlayers(
	{ players, holds }: Pick<Memory, 'players' | 'holds'>,
	{ keep }: Deps,
	{ from, into, reason }: InputOf<'players.merge'>,
): OutputOf<'players.merge'> {
	players.entry(from)
	players.entry(into)
	if (from === into)
		throw new Refusal(
			'players.merge-with-itself',
			'A player cannot be merged with itself. Choose two records.',
		)
	if (players.mergedAway(from) || players.mergedAway(into))
		throw new Refusal(
			'players.merged-before',
			'One of the two was merged before. Undo that merge first, or merge into the player that ' +
				'is shown.',
		)
	if (players.idsOf(from).includes(into))
		throw new Refusal(
			'players.merged-the-other-way',
			'These two are merged the other way round already. Undo that merge first.',
		)
	if (holds.has(from) !== holds.has(into))
		throw new Refusal(
			'players.one-is-on-hold',
			'One of the two records is on hold. Put the hold on both, or release it, before merging.',
		)
	const value: MergeValue = { mergeId: randomUUID(), from, into, undone: false, reason }
	keep({ kind: 'merge', value, about: into })
	return { mergeId: value.mergeId }
}
/** @throws Refusal where the merge is not in force */
export function unmergePlayers(
	{ players }: Pick<Memory, 'players'>,
	{ keep }: Deps,
	{ mergeId, reason }: InputOf<'players.unmerge'>,
): OutputOf<'players.unmerge'> {
	const merge = players.merges.get(mergeId)
	if (!merge)
		throw new Refusal(
			'players.merge-not-in-force',
			'This merge is not in force any more. Open the player again.',
		)
	const { from, into, recordId } = merge
	const value: MergeValue = { mergeId, from, into, undone: true, reason }
	keep({ kind: 'merge', follows: recordId, value, about: into })
	return {}
}
