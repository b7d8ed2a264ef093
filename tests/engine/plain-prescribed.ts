/**
 * What the gate holds and how the pairs are judged, read against a written plan: no held session,
 * no dangerous pair, none past its day, none in a match that is for training only.
 */
import type { Gate, OwnedPair } from '../../shared/engine/findings/assessment.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

export interface Prescribed {
	gate?: Gate
	owned?: readonly Pick<OwnedPair, 'id' | 'verdict' | 'by'>[]
}
type Broken = [rule: string, ...about: string[]]

const wornIn = ({ parts, pair }: PlanSession): string[] =>
	parts?.map((part) => part.pair) ?? (pair === undefined ? [] : [pair])
function heldBroken(ahead: readonly PlanSession[], gate: Gate): Broken[] {
	const held = gate.person.holds.map(({ what }) => what)
	const isAllHeld = held.includes('season') || held.includes('sport')
	return ahead
		.filter(({ kind }) => isAllHeld || (kind === 'match' && held.includes('match')))
		.map(({ date }) => ['held', date])
}
/** Minutes in a pair before a session, as the visit and the plan say. */
const minutesBefore = (
	{ footwear = [], visitDate }: Visit,
	plan: Plan,
	id: string,
	until: string,
) =>
	plan.sessions
		.filter(({ date }) => date >= visitDate && date < until)
		.flatMap(({ parts, pair, minutes }) => parts ?? (pair ? [{ pair, minutes }] : []))
		.reduce(
			(sum, { pair, minutes }) => sum + (pair === id ? minutes : 0),
			footwear.find((pair) => pair.id === id)?.minutesWorn ?? 0,
		)
/** Why a pair is not to be worn in a session, by its damage or how it was judged. */
function judgedBroken(
	visit: Visit,
	plan: Plan,
	{ date, kind }: PlanSession,
	id: string,
	{ owned = [] }: Prescribed,
): string[] {
	const recorded = visit.footwear?.find((pair) => pair.id === id)
	const judged = owned.find((pair) => pair.id === id)
	const isDangerous = recorded?.damage?.some((one) =>
		['stud-sharp', 'sole-separated'].includes(one),
	)
	// what is only not broken in plays once it is
	const isBrokenIn =
		recorded?.brokenIn === false &&
		(recorded.minutesWorn ?? 0) < 150 &&
		minutesBefore(visit, plan, id, date) >= 150
	return [
		...(isDangerous ? ['dangerous'] : []),
		...(judged?.verdict === 'stop-wearing' ? ['left-off'] : []),
		...(judged?.verdict === 'training-only' && kind === 'match' && !isBrokenIn
			? ['training-only']
			: []),
		...(judged?.verdict === 'replace' && judged.by && date > judged.by ? ['replaced'] : []),
	]
}
/** Every session ahead that the prescription forbids. */
export function prescribedBroken(visit: Visit, plan: Plan, prescribed: Prescribed): Broken[] {
	const ahead = plan.sessions.filter(({ past }) => !past)
	const pairs = ahead.flatMap((session) =>
		wornIn(session).flatMap((id) =>
			judgedBroken(visit, plan, session, id, prescribed).map(
				(rule): Broken => [rule, id, session.date],
			),
		),
	)
	return [...(prescribed.gate ? heldBroken(ahead, prescribed.gate) : []), ...pairs]
}
