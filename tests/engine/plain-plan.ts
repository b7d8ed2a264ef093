/**
 * Reads a visit and its written plan as a careful person would, and knows nothing of the model, the
 * solver or their numbers:
 * every rule is worked out again from what was recorded. Sentences name what is broken; none: the
 * plan keeps its word.
 */
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import type { Pair, Visit } from '../../shared/engine/visit/visit.ts'

const drying = { dry: 20, damp: 24, wet: 48 }
const hoursOf = (one: PlanSession): number => Date.parse(`${one.date}T${one.start}:00Z`) / 3_600_000
const mondayOf = (date: string): string => {
	const day = new Date(`${date}T00:00:00Z`)
	day.setUTCDate(day.getUTCDate() - ((day.getUTCDay() + 6) % 7))
	return day.toISOString().slice(0, 10)
}
const daysBetween = (a: string, b: string): number => (Date.parse(b) - Date.parse(a)) / 86_400_000
const partsOf = (one: PlanSession): { pair: string; minutes: number }[] =>
	one.parts ?? (one.pair === undefined ? [] : [{ pair: one.pair, minutes: one.minutes }])
const isNew = (pair: Pair): boolean =>
	pair.newFrom !== undefined || (pair.minutesWorn !== undefined && pair.minutesWorn < 150)
const median = (list: number[]): number =>
	list.sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0

export function plainCheck(visit: Visit, plan: Plan): string[] {
	const broken: string[] = []
	const pairs = new Map(visit.footwear!.map((pair) => [pair.id, pair]))
	const minutes = new Map([...pairs].map(([id, pair]) => [id, pair.minutesWorn ?? 0]))
	const ahead = plan.sessions.filter((one) => !one.past)
	for (const [k, session] of plan.sessions.entries()) {
		const at = `${session.date} ${session.start}`
		const say = (text: string) => broken.push(`${at}: ${text}`)
		const parts = partsOf(session)
		if (session.past !== (session.date < plan.from ? true : undefined))
			say('past is not before the day of planning')
		for (const { pair: id, minutes: used } of parts) {
			const pair = pairs.get(id)
			if (!pair) {
				say(`pair ${id} is not recorded`)
				continue
			}
			const before = minutes.get(id)!
			if (session.date >= visit.visitDate) minutes.set(id, before + used)
			if (session.past) continue
			const code =
				[...(visit.season!.sessions ?? []), ...(visit.season!.pattern ?? [])].find(
					(one) => one.id === session.id || session.id.startsWith(`${one.id}:`),
				)?.code ?? visit.play?.code
			if (suitability[pair.sole!][session.surface][session.ground] === 'forbidden')
				say(`${id} on ${session.surface}`)
			if (code === 'rugby-union' && (pair.studHeightMm ?? 0) > 21)
				say(`${id} has studs of ${pair.studHeightMm} mm in rugby union`)
			if (pair.newFrom !== undefined && session.date < pair.newFrom) say(`${id} is not bought yet`)
			if (pair.unavailable?.some((one) => session.date >= one.from && session.date <= one.to))
				say(`${id} is not at hand`)
			if (isNew(pair) && used > 20 + before / 2 + 0.01)
				say(`${id} for ${used} minutes after ${before}`)
			if (isNew(pair) && session.kind === 'match' && before < 150)
				say(`${id} in a match after ${before} minutes`)
			if (parts.length > 1 && used < 10) say(`${id} for ${used} minutes only`)
			if (before + used > (pair.lifeMinutes ?? 7200) + 0.01) say(`${id} past its life`)
			const wet = plan.sessions
				.slice(0, k)
				.find(
					(one) =>
						one.ground === 'wet' &&
						partsOf(one).some((part) => part.pair === id) &&
						hoursOf(session) - hoursOf(one) - one.minutes / 60 <
							(pair.dryingHours ?? drying.wet) - 0.001,
				)
			if (wet) say(`${id} is soaked from ${wet.date}`)
			const moist = plan.sessions
				.slice(0, k)
				.find(
					(one) =>
						one.ground !== 'wet' &&
						partsOf(one).some((part) => part.pair === id) &&
						hoursOf(session) - hoursOf(one) - one.minutes / 60 <
							(pair.dryingHours ?? drying[one.ground]) - 0.001,
				)
			if (moist && !session.unmet.some((one) => one.includes('may not be dry')))
				say(`${id} is not aired since ${moist.date} and nobody is told`)
		}
		if (session.past) continue
		const total = parts.reduce((sum, part) => sum + part.minutes, 0)
		if (
			Math.abs(total - session.minutes) > 0.3 &&
			!session.unmet.some((one) => one.startsWith('no pair'))
		)
			say(`${total} of ${session.minutes} minutes and nobody is told`)
		const pin = visit.season!.sessions?.find((one) => one.id === session.id)?.pinned
		if (
			pin !== undefined &&
			pairs.has(pin) &&
			!parts.some((part) => part.pair === pin) &&
			!session.unmet.some((one) => one.startsWith('the pinned pair'))
		)
			say(`pinned ${pin} is not worn and nobody is told`)
		if (session.reasons.length === 0 && session.unmet.length === 0) say('no reason')
		if ([...session.reasons, ...session.unmet].some((one) => /\d{4}-\d\d-\d\d/.test(one)))
			say('a date is not in words')
	}
	for (const pair of pairs.values()) {
		const weeks = new Map<string, number>()
		for (const one of ahead)
			weeks.set(
				mondayOf(one.date),
				(weeks.get(mondayOf(one.date)) ?? 0) +
					partsOf(one).reduce((sum, part) => sum + (part.pair === pair.id ? part.minutes : 0), 0),
			)
		for (const [monday, used] of weeks)
			if (pair.weeklyMinutesMax !== undefined && used > pair.weeklyMinutesMax + 0.3)
				broken.push(`week of ${monday}: ${used} minutes in ${pair.id}`)
		const trainings = ahead.filter((one) => one.kind === 'training')
		const whole = trainings.reduce((sum, one) => sum + one.minutes, 0)
		const used = trainings
			.flatMap(partsOf)
			.reduce((sum, part) => sum + (part.pair === pair.id ? part.minutes : 0), 0)
		const told = plan.findings.some((one) => one.id === `season.share-${pair.id}`)
		const outside =
			(pair.shareMaxPercent !== undefined && used > (pair.shareMaxPercent / 100) * whole + 1) ||
			(pair.shareMinPercent !== undefined && used < (pair.shareMinPercent / 100) * whole - 1)
		if (outside && !told)
			broken.push(
				`${pair.id} is worn ${used} of ${whole} minutes of training, outside its share, and ` +
					'nobody is told',
			)
	}
	// back after four weeks injured or more: half of the middle week, then a tenth and 30 minutes
	// more each week
	const all = [
		...plan.sessions.map((one) => ({ date: one.date, off: undefined as string | undefined })),
		...plan.off.map((one) => ({ date: one.date, off: one.status as string | undefined })),
	].sort((a, b) => (a.date < b.date ? -1 : 1))
	const totals = new Map<string, number>()
	for (const one of plan.sessions)
		totals.set(
			mondayOf(one.date),
			(totals.get(mondayOf(one.date)) ?? 0) + (one.fullMinutes ?? one.minutes),
		)
	const usual = median([...totals.values()])
	let since: string | undefined
	for (const { date, off } of all) {
		if (off === 'injured') since ??= date
		if (off !== undefined) continue
		if (since !== undefined && daysBetween(since, date) >= 28) {
			for (let [week, most] = [0, usual / 2]; most < usual; week++, most = most * 1.1 + 30) {
				const monday = new Date(Date.parse(mondayOf(date)) + week * 7 * 86_400_000)
					.toISOString()
					.slice(0, 10)
				const planned = ahead
					.filter((one) => mondayOf(one.date) === monday && one.date >= date)
					.reduce((sum, one) => sum + one.minutes, 0)
				if (planned > most + 0.01)
					broken.push(`week of ${monday}: ${planned} minutes back after ${since}, at most ${most}`)
			}
		}
		since = undefined
	}
	return broken
}
