/**
 * Reads a visit and its written plan as a careful person would, and knows nothing of the model, the
 * solver or their numbers:
 * every rule is worked out again from what was recorded. Sentences name what is broken; none: the
 * plan keeps its word.
 */
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import type { Pair, Visit } from '../../shared/engine/visit/visit.ts'
import { returnBroken } from './plain-return.ts'
import { mondayOf } from './plain-week.ts'

const drying = { dry: 20, damp: 24, wet: 48 }
const hoursOf = ({ date, start }: PlanSession): number =>
	Date.parse(`${date}T${start}:00Z`) / 3_600_000
const partsOf = ({ parts, pair, minutes }: PlanSession): { pair: string; minutes: number }[] =>
	parts ?? (pair === undefined ? [] : [{ pair, minutes }])
const minutesIn = (session: PlanSession, id: string): number =>
	partsOf(session).reduce((sum, part) => sum + (part.pair === id ? part.minutes : 0), 0)
const isNew = (pair: Pair): boolean =>
	pair.newFrom !== undefined || (pair.minutesWorn !== undefined && pair.minutesWorn < 150)
type Say = (text: string) => void

/** The code of football a session is played in. */
const codeOf = (visit: Visit, { id }: PlanSession) =>
	[...(visit.season!.sessions ?? []), ...(visit.season!.pattern ?? [])].find(
		(written) => written.id === id || id.startsWith(`${written.id}:`),
	)?.code ?? visit.play?.code

/** A pair in a session, with the minutes in it before. */
interface Wear {
	session: PlanSession
	pair: Pair
	used: number
	before: number
}
function checkAllowed(visit: Visit, { session, pair }: Wear, say: Say): void {
	const { id, studHeightMm = 0, newFrom } = pair
	const { date, surface, ground } = session
	if (suitability[pair.sole!][surface][ground] === 'forbidden') say(`${id} on ${surface}`)
	if (codeOf(visit, session) === 'rugby-union' && studHeightMm > 21)
		say(`${id} has studs of ${studHeightMm} mm in rugby union`)
	if (newFrom !== undefined && date < newFrom) say(`${id} is not bought yet`)
	if (pair.unavailable?.some((away) => date >= away.from && date <= away.to))
		say(`${id} is not at hand`)
}
function checkMinutes({ session, pair, used, before }: Wear, say: Say): void {
	if (isNew(pair) && used > 20 + before / 2 + 0.01)
		say(`${pair.id} for ${used} minutes after ${before}`)
	if (isNew(pair) && session.kind === 'match' && before < 150)
		say(`${pair.id} in a match after ${before} minutes`)
	if (partsOf(session).length > 1 && used < 10) say(`${pair.id} for ${used} minutes only`)
	if (before + used > (pair.lifeMinutes ?? 7200) + 0.01) say(`${pair.id} past its life`)
}
function checkDry({ session, pair }: Wear, earlier: readonly PlanSession[], say: Say): void {
	const tooSoon = earlier.filter(
		(worn) =>
			partsOf(worn).some((part) => part.pair === pair.id) &&
			hoursOf(session) - hoursOf(worn) - worn.minutes / 60 <
				(pair.dryingHours ?? drying[worn.ground]) - 0.001,
	)
	const wet = tooSoon.find(({ ground }) => ground === 'wet')
	if (wet) say(`${pair.id} is soaked from ${wet.date}`)
	const moist = tooSoon.find(({ ground }) => ground !== 'wet')
	if (moist && !session.unmet.some((wish) => wish.includes('may not be dry')))
		say(`${pair.id} is not aired since ${moist.date} and nobody is told`)
}
/** A session ahead is worn to its end, in the pinned pair, with reasons in words. */
function checkWhole(visit: Visit, session: PlanSession, recorded: Recorded, say: Say): void {
	const { id, minutes, reasons, unmet } = session
	const parts = partsOf(session)
	const total = parts.reduce((sum, part) => sum + part.minutes, 0)
	const told = (beginning: string) => unmet.some((wish) => wish.startsWith(beginning))
	if (Math.abs(total - minutes) > 0.3 && !told('no pair'))
		say(`${total} of ${minutes} minutes and nobody is told`)
	const pin = visit.season!.sessions?.find((written) => written.id === id)?.pinned
	const missed = pin !== undefined && recorded.has(pin) && !parts.some((part) => part.pair === pin)
	if (missed && !told('the pinned pair')) say(`pinned ${pin} is not worn and nobody is told`)
	if (reasons.length === 0 && unmet.length === 0) say('no reason')
	if ([...reasons, ...unmet].some((sentence) => /\d{4}-\d\d-\d\d/.test(sentence)))
		say('a date is not in words')
}
type Recorded = ReadonlyMap<string, Pair>
/** A pair that is worn in a session, past or ahead; its minutes grow. */
function checkPart(
	visit: Visit,
	plan: Plan,
	place: number,
	{ pair, used, minutes }: { pair: Pair; used: number; minutes: Map<string, number> },
	say: Say,
): void {
	const session = plan.sessions[place]!
	const before = minutes.get(pair.id)!
	if (session.date >= visit.visitDate) minutes.set(pair.id, before + used)
	if (session.past) return
	const wear = { session, pair, used, before }
	checkAllowed(visit, wear, say)
	checkMinutes(wear, say)
	checkDry(wear, plan.sessions.slice(0, place), say)
}
/** Session by session, with the minutes of each pair as they grow. */
function checkSessions(visit: Visit, plan: Plan, recorded: Recorded, broken: string[]): void {
	const minutes = new Map([...recorded].map(([id, pair]) => [id, pair.minutesWorn ?? 0]))
	for (const [place, session] of plan.sessions.entries()) {
		const say: Say = (text) => broken.push(`${session.date} ${session.start}: ${text}`)
		if (session.past !== (session.date < plan.from ? true : undefined))
			say('past is not before the day of planning')
		for (const { pair: id, minutes: used } of partsOf(session)) {
			const pair = recorded.get(id)
			if (pair) checkPart(visit, plan, place, { pair, used, minutes }, say)
			else say(`pair ${id} is not recorded`)
		}
		if (!session.past) checkWhole(visit, session, recorded, say)
	}
}
function checkWeeks(pair: Pair, ahead: readonly PlanSession[], broken: string[]): void {
	const weeks = Map.groupBy(ahead, ({ date }) => mondayOf(date))
	for (const [monday, sessions] of weeks) {
		const used = sessions.reduce((sum, session) => sum + minutesIn(session, pair.id), 0)
		if (pair.weeklyMinutesMax !== undefined && used > pair.weeklyMinutesMax + 0.3)
			broken.push(`week of ${monday}: ${used} minutes in ${pair.id}`)
	}
}
function checkShare(
	{ id, shareMinPercent: least, shareMaxPercent: most }: Pair,
	plan: Plan,
	ahead: readonly PlanSession[],
	broken: string[],
): void {
	const trainings = ahead.filter(({ kind }) => kind === 'training')
	const whole = trainings.reduce((sum, training) => sum + training.minutes, 0)
	const used = trainings.reduce((sum, training) => sum + minutesIn(training, id), 0)
	const outside =
		(most !== undefined && used > (most / 100) * whole + 1) ||
		(least !== undefined && used < (least / 100) * whole - 1)
	if (outside && !plan.findings.some((finding) => finding.id === `season.share-${id}`))
		broken.push(
			`${id} is worn ${used} of ${whole} minutes of training, outside its share, and ` +
				'nobody is told',
		)
}

/** Every rule that a written plan breaks, in words. */
export function plainCheck(visit: Visit, plan: Plan): string[] {
	const broken: string[] = []
	const recorded: Recorded = new Map(visit.footwear!.map((pair) => [pair.id, pair]))
	const ahead = plan.sessions.filter((session) => !session.past)
	checkSessions(visit, plan, recorded, broken)
	for (const pair of recorded.values()) {
		checkWeeks(pair, ahead, broken)
		checkShare(pair, plan, ahead, broken)
	}
	return [...broken, ...returnBroken(plan)]
}
