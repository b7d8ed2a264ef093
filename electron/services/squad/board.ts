/** The board of a screening day: where each player is, and what is still to do. */

import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type BoardInput, boardRow, doubledNumbers } from '../../../shared/desk/squad/board.ts'
import type { MarkValue, MemberValue } from '../../../shared/desk/squad/squad-record.ts'
import { stations } from '../../../shared/desk/squad/stations.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { storedContent } from '../visits/drafts.ts'
import { visitsOf } from '../visits/visits.ts'
import { type Day, dayOf } from './day.ts'

/** What the board looks at. */
export type BoardNeeds = Pick<Memory, 'drafts' | 'players'>

function inputOf(
	{ players, drafts }: BoardNeeds,
	deps: Deps,
	day: Day,
	{ playerId, number }: MemberValue,
): BoardInput | undefined {
	const card = players.byId.get(playerId)?.card
	if (!card) return undefined
	const mark = day.marks.get(playerId)
	const [draftId] = drafts.of(players.idsOf(playerId))[0] ?? []
	const content = draftId === undefined ? undefined : storedContent(deps, draftId)
	const signed = visitsOf(players, deps, playerId).find(
		(line) => line.card.visitDate === day.day && !line.inError,
	)
	return {
		playerId,
		number,
		name: fullName(card),
		birthDate: card.birthDate,
		presence: mark?.presence ?? 'expected',
		...(mark?.reason && { reason: mark.reason }),
		...(mark?.at && { at: mark.at }),
		...(mark && { since: mark.time }),
		...(content && { draft: content.visit }),
		...(signed && { signedVisitId: signed.card.visitId }),
		consentNoted: content?.decisions.consentNoted === true,
	}
}
export function openSquad(
	memory: BoardNeeds,
	deps: Deps,
	{ squadId }: InputOf<'squad.open'>,
): OutputOf<'squad.open'> {
	const day = dayOf(deps, squadId)
	const rows = day.members
		.flatMap((member) => {
			const input = inputOf(memory, deps, day, member)
			return input ? [boardRow(input)] : []
		})
		.sort((left, right) => Number(left.number) - Number(right.number))
	return {
		squadId,
		team: day.team,
		day: day.day,
		rows,
		doubled: doubledNumbers(rows),
		stations: stations.map(({ id, name }) => ({ id, name })),
	}
}
/** The players of a day whose visit is signed. */
export const signedRows = (memory: BoardNeeds, deps: Deps, squadId: string) =>
	openSquad(memory, deps, { squadId }).rows.flatMap((row) =>
		row.signedVisitId ? [{ ...row, visitId: row.signedVisitId }] : [],
	)
/** Where a player is now: append only, the last mark counts. */
export function markPlayer(
	deps: Deps,
	{ squadId, playerId, presence, at, reason }: InputOf<'squad.mark'>,
): OutputOf<'squad.mark'> {
	const day = dayOf(deps, squadId)
	if (!day.members.some((member) => member.playerId === playerId))
		throw new Refusal('squad.not-on-board', 'This player is not on the board of this day.')
	if (presence === 'refused' && !reason)
		throw new Refusal('squad.refusal-without-words', 'Say in a few words what was refused.', [
			{ path: 'reason', message: 'missing, given nothing, allowed: who refused, and what' },
		])
	const time = deps.now().toISOString()
	const value: MarkValue = {
		what: 'mark',
		squadId,
		playerId,
		presence,
		...(at && { at }),
		...(reason && { reason }),
		time,
	}
	deps.keep({ kind: 'squad', at: time, value, about: playerId })
	return {}
}
