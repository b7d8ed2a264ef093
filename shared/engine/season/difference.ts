/** What changed between two plans, in order of time. */
import { present } from '../plain/present.ts'
import type { NamedPair } from '../words/en/season/wearing.ts'
import { type Statement, state } from '../words/statement.ts'
import type { Plan, PlanSession } from './plan-file.ts'

export interface Change extends Statement {
	date: string
}
const called = ({ letter, name }: NamedPair): NamedPair => ({ letter, name })
/** A pair as a player knows it; its id where the plan has it no more. */
function calledIn(plan: Plan, id: string): NamedPair | string {
	const pair = plan.pairs.find((known) => known.id === id)
	return pair ? called(pair) : id
}
/** What is worn in a session, in order; nothing where no pair is. */
function worn(plan: Plan, { parts, pair, minutes }: PlanSession) {
	if (parts && parts.length > 1)
		return parts.map((part) => ({ pair: calledIn(plan, part.pair), minutes: part.minutes }))
	return pair === undefined ? [] : [{ pair: calledIn(plan, pair), minutes }]
}
type Worn = ReturnType<typeof worn>
const nameOf = (pair: NamedPair | string): string =>
	typeof pair === 'string' ? pair : `${pair.letter} ${pair.name}`
/** The same pairs in the same order; of one pair alone the minutes are the session's. */
const isSame = (before: Worn, after: Worn): boolean =>
	before.length === after.length &&
	before.every((was, place) => {
		const now = after[place]
		return (
			now !== undefined &&
			nameOf(was.pair) === nameOf(now.pair) &&
			(before.length === 1 || was.minutes === now.minutes)
		)
	})
const occasion = ({ date, start, kind }: PlanSession) => ({ date, start, kind })
/** What a player would notice of a session. */
const fields = ['date', 'start', 'minutes', 'surface', 'ground'] as const

function sessionChange(before: Plan, after: Plan, old: PlanSession, session: PlanSession) {
	const moved = fields
		.filter((field) => old[field] !== session[field])
		.map((field) => ({ field, before: old[field], after: session[field] }))
	const [was, now] = [worn(before, old), worn(after, session)]
	if (moved.length === 0 && isSame(was, now)) return undefined
	return state('season.change-moved', {
		...occasion(session),
		moved,
		...present({ worn: isSame(was, now) ? undefined : { before: was, after: now } }),
	})
}
function sessionChanges(before: Plan, after: Plan): Change[] {
	const known = new Map(before.sessions.map((session) => [session.id, session]))
	return after.sessions.flatMap((session): Change[] => {
		const old = known.get(session.id)
		const said = old
			? sessionChange(before, after, old, session)
			: state('season.change-new', { ...occasion(session), worn: worn(after, session) })
		return said ? [{ date: session.date, ...said }] : []
	})
}
function sessionsGone(before: Plan, after: Plan): Change[] {
	const stays = new Set(after.sessions.map((session) => session.id))
	const off = new Map(after.off.map((session) => [session.id, session.status]))
	return before.sessions
		.filter((old) => !stays.has(old.id))
		.map((old) => ({
			date: old.date,
			...state('season.change-off', {
				...occasion(old),
				...present({ status: off.get(old.id) }),
			}),
		}))
}
function pairChanges(before: Plan, after: Plan): Change[] {
	const was = new Map(before.pairs.map((pair) => [pair.id, pair]))
	return after.pairs.flatMap((pair): Change[] => {
		const old = was.get(pair.id)
		if (!old) return [{ date: after.from, ...state('season.change-pair-new', called(pair)) }]
		const date = pair.replaceBy ?? old.replaceBy
		if (date === undefined || old.replaceBy === pair.replaceBy) return []
		const dates = present({ before: old.replaceBy, after: pair.replaceBy })
		return [{ date, ...state('season.change-pair-date', { ...called(pair), ...dates }) }]
	})
}
function pairsGone(before: Plan, after: Plan): Change[] {
	const stays = new Set(after.pairs.map((pair) => pair.id))
	return before.pairs
		.filter((old) => !stays.has(old.id))
		.map((old) => ({
			date: after.from,
			...state('season.change-pair-gone', called(old)),
		}))
}
/** Sessions are matched by id. A day changes only where something a player would notice changed. */
export function planDifference(before: Plan, after: Plan): Change[] {
	return [
		...sessionChanges(before, after),
		...sessionsGone(before, after),
		...pairChanges(before, after),
		...pairsGone(before, after),
	].sort((left, right) => {
		if (left.date === right.date) return 0
		return left.date < right.date ? -1 : 1
	})
}
