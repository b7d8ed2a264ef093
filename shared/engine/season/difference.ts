/** What changed between two plans, in words and in order of time. */

import { termWords } from '../visit/terms.ts'
import { fullDay } from './pattern.ts'
import type { Plan, PlanSession } from './plan-file.ts'

export interface Change {
	date: string
	says: string
}
const worn = (plan: Plan, session: PlanSession): string => {
	const named = (id: string) => {
		const pair = plan.pairs.find((one) => one.id === id)
		return pair ? `${pair.letter} (${pair.name})` : id
	}
	if (session.parts && session.parts.length > 1)
		return session.parts
			.map((part) => `${named(part.pair)} for ${part.minutes} minutes`)
			.join(', then ')
	return session.pair === undefined ? 'no pair' : named(session.pair)
}
const when = (session: PlanSession): string =>
	`${fullDay(session.date)}, ${session.start}, ${session.kind}`
/** As people write it: days with their weekday, surfaces in words. */
const shown = { date: fullDay, surface: termWords } as Partial<
	Record<string, (value: string) => string>
>
const byThen = (date: string | undefined): string =>
	date === undefined ? 'not this season' : fullDay(date)
const fields = [
	['date', 'date'],
	['start', 'start'],
	['minutes', 'minutes'],
	['surface', 'surface'],
	['ground', 'ground'],
] as const
/** Sessions are matched by id. A day changes only where something a player would notice changed. */
export function planDifference(before: Plan, after: Plan): Change[] {
	const was = new Map(before.sessions.map((session) => [session.id, session]))
	const is = new Map(after.sessions.map((session) => [session.id, session]))
	const off = new Map(after.off.map((one) => [one.id, one.status]))
	const changes: Change[] = []
	for (const session of after.sessions) {
		const old = was.get(session.id)
		if (!old) {
			changes.push({ date: session.date, says: `${when(session)}: new, ${worn(after, session)}` })
			continue
		}
		const moved = fields.flatMap(([field, label]) =>
			old[field] === session[field]
				? []
				: [
						`${label} ${shown[field]?.(String(old[field])) ?? old[field]} becomes ` +
							`${shown[field]?.(String(session[field])) ?? session[field]}`,
					],
		)
		if (worn(before, old) !== worn(after, session))
			moved.push(`${worn(before, old)} becomes ${worn(after, session)}`)
		if (moved.length > 0)
			changes.push({ date: session.date, says: `${when(session)}: ${moved.join('; ')}` })
	}
	for (const old of before.sessions)
		if (!is.has(old.id))
			changes.push({ date: old.date, says: `${when(old)}: ${off.get(old.id) ?? 'taken out'}` })
	for (const pair of after.pairs) {
		const old = before.pairs.find((one) => one.id === pair.id)
		if (!old)
			changes.push({
				date: after.from,
				says: `Pair ${pair.letter} (${pair.name}) is new in the plan.`,
			})
		else if (old.replaceBy !== pair.replaceBy)
			changes.push({
				date: pair.replaceBy ?? old.replaceBy!,
				says:
					`Pair ${pair.letter} (${pair.name}): replace by ${byThen(old.replaceBy)} becomes ` +
					`${byThen(pair.replaceBy)}`,
			})
	}
	for (const old of before.pairs)
		if (!after.pairs.some((pair) => pair.id === old.id))
			changes.push({
				date: after.from,
				says: `Pair ${old.letter} (${old.name}) is no longer in the plan.`,
			})
	return changes.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
}
