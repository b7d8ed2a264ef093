/** Screening days as they stand in the records: who is on the board, and where each was last. */
import type { OutputOf } from '../../../shared/contract.ts'
import type { MarkValue, MemberValue } from '../../../shared/desk/squad/squad-record.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

export interface Day {
	squadId: string
	team: string
	day: string
	members: MemberValue[]
	/** the last mark of each player */
	marks: Map<string, MarkValue>
}
function daysOf({ openAll }: Deps): Map<string, Day> {
	const days = new Map<string, Day>()
	const values = openAll('squad').records.map((record) => record.value)
	for (const value of values) if (value.what === 'member') addMember(days, value)
	for (const value of values)
		if (value.what === 'mark') days.get(value.squadId)?.marks.set(value.playerId, value)
	return days
}
function addMember(days: Map<string, Day>, member: MemberValue): void {
	const { squadId, team, day: date } = member
	const day: Day = days.get(squadId) ?? { squadId, team, day: date, members: [], marks: new Map() }
	const others = day.members.filter((other) => other.playerId !== member.playerId)
	days.set(squadId, { ...day, members: [...others, member] })
}
/** @throws Refusal where there is no such day */
export function dayOf(deps: Deps, squadId: string): Day {
	const day = daysOf(deps).get(squadId)
	if (!day) throw new Refusal('squad.day-unknown', 'This screening day is not in the records.')
	return day
}
export function listSquads(deps: Deps): OutputOf<'squad.list'> {
	return {
		days: [...daysOf(deps).values()]
			.sort((left, right) => (left.day < right.day ? 1 : -1))
			.map(({ squadId, team, day, members }) => ({ squadId, team, day, players: members.length })),
	}
}
