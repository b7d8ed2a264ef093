/** A player's complaints over the signed visits, read from the records. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { courseTold } from '../../../shared/desk/players/course.ts'
import { courseOf } from '../../../shared/engine/course/course.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { insertAfter } from '../../../shared/engine/recheck/insert-worn.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { visitsOf } from '../visits/visits.ts'
import { readPlan } from './read-plan.ts'

export function playerCourse(
	{ players, clinic }: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	{ playerId }: InputOf<'players.course'>,
): OutputOf<'players.course'> {
	players.entry(playerId)
	const read = visitsOf(players, deps, playerId)
		.filter(({ inError }) => !inError)
		.map((line) => readPlan(deps, line))
	const signed = read.flatMap((one) => ('signed' in one ? [one.signed] : []))
	const protocol = openProtocol(clinic.protocol)
	// the newest alone tells what is worn: an older one would tell of another insert
	const [last] = read
	const worn = last && 'signed' in last ? insertAfter(last.signed, protocol) : undefined
	return {
		...courseTold(courseOf(signed, protocol), worn),
		troubles: read.flatMap((one) => ('trouble' in one ? [one.trouble] : [])),
	}
}
