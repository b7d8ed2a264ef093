/** What changed between two plans, in words and in order of time. */

import { termWords } from '../visit/terms.ts'
import { fullDay } from './pattern.ts'
import type { Plan, PlanSession } from './plan-file.ts'

export interface Change {
	date: string
	says: string
}
/** A pair as a player knows it; its id where the plan has it no more. */
function calledIn(plan: Plan, id: string): string {
	const pair = plan.pairs.find((known) => known.id === id)
	return pair ? `${pair.letter} (${pair.name})` : id
}
function worn(plan: Plan, session: PlanSession): string {
	if (session.parts && session.parts.length > 1)
		return session.parts
			.map((part) => `${calledIn(plan, part.pair)} for ${part.minutes} minutes`)
			.join(', then ')
	return session.pair === undefined ? 'no pair' : calledIn(plan, session.pair)
}
const when = (session: PlanSession): string =>
	`${fullDay(session.date)}, ${session.start}, ${session.kind}`
const byThen = (date: string | undefined): string =>
	date === undefined ? 'not this season' : fullDay(date)
/** What a player would notice of a session, as people write it. */
const fields: readonly { label: string; shown: (session: PlanSession) => string }[] = [
	{ label: 'date', shown: ({ date }) => fullDay(date) },
	{ label: 'start', shown: ({ start }) => start },
	{ label: 'minutes', shown: ({ minutes }) => String(minutes) },
	{ label: 'surface', shown: ({ surface }) => termWords(surface) },
	{ label: 'ground', shown: ({ ground }) => ground },
]
function sessionChanges(before: Plan, after: Plan): Change[] {
	const was = new Map(before.sessions.map((session) => [session.id, session]))
	return after.sessions.flatMap((session): Change[] => {
		const { date } = session
		const old = was.get(session.id)
		if (!old) return [{ date, says: `${when(session)}: new, ${worn(after, session)}` }]
		const moved = [
			...fields.map(({ label, shown }) => ({ label, old: shown(old), now: shown(session) })),
			{ label: undefined, old: worn(before, old), now: worn(after, session) },
		]
			.filter(({ old: past, now }) => past !== now)
			.map(
				({ label, old: past, now }) =>
					`${label === undefined ? '' : `${label} `}${past} becomes ${now}`,
			)
		return moved.length > 0 ? [{ date, says: `${when(session)}: ${moved.join('; ')}` }] : []
	})
}
function sessionsGone(before: Plan, after: Plan): Change[] {
	const stays = new Set(after.sessions.map((session) => session.id))
	const off = new Map(after.off.map((session) => [session.id, session.status]))
	return before.sessions
		.filter((old) => !stays.has(old.id))
		.map((old) => ({
			date: old.date,
			says: `${when(old)}: ${off.get(old.id) ?? 'taken out'}`,
		}))
}
function pairChanges(before: Plan, after: Plan): Change[] {
	const was = new Map(before.pairs.map((pair) => [pair.id, pair]))
	return after.pairs.flatMap((pair): Change[] => {
		const called = `Pair ${pair.letter} (${pair.name})`
		const old = was.get(pair.id)
		if (!old) return [{ date: after.from, says: `${called} is new in the plan.` }]
		const date = pair.replaceBy ?? old.replaceBy
		if (date === undefined || old.replaceBy === pair.replaceBy) return []
		const says = `${called}: replace by ${byThen(old.replaceBy)} becomes ${byThen(pair.replaceBy)}`
		return [{ date, says }]
	})
}
function pairsGone(before: Plan, after: Plan): Change[] {
	const stays = new Set(after.pairs.map((pair) => pair.id))
	return before.pairs
		.filter((old) => !stays.has(old.id))
		.map((old) => ({
			date: after.from,
			says: `Pair ${old.letter} (${old.name}) is no longer in the plan.`,
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
