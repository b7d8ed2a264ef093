/**
 * Reads a visit and its written plan as a careful person would, and knows nothing of the model, the
 * solver or their numbers:
 * every rule is worked out again from what was recorded. Codes name what is broken; none: the plan
 * keeps its word.
 */
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import type { Pair, Visit } from '../../shared/engine/visit/visit.ts'
import { type Prescribed, prescribedBroken } from './plain-prescribed.ts'
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
	pair.newFrom !== undefined ||
	((pair.minutesWorn !== undefined || pair.brokenIn === false) && (pair.minutesWorn ?? 0) < 150)
/** A rule that a plan breaks, and what it is about. */
type Broken = readonly [rule: string, ...about: (string | number)[]]
type Say = (...broken: Broken) => void

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
	if (suitability[pair.sole!][surface][ground] === 'forbidden') say('surface', id, surface)
	if (codeOf(visit, session) === 'rugby-union' && studHeightMm > 21) say('studs', id, studHeightMm)
	if (newFrom !== undefined && date < newFrom) say('not-bought', id)
	if (pair.unavailable?.some((away) => date >= away.from && date <= away.to)) say('not-at-hand', id)
}
function checkMinutes({ session, pair, used, before }: Wear, say: Say): void {
	if (isNew(pair) && used > 20 + before / 2 + 0.01) say('break-in', pair.id, used, before)
	if (isNew(pair) && session.kind === 'match' && before < 150)
		say('match-too-early', pair.id, before)
	if (partsOf(session).length > 1 && used < 10) say('short-part', pair.id, used)
	if (before + used > (pair.lifeMinutes ?? 7200) + 0.01) say('life', pair.id)
}
function checkDry({ session, pair }: Wear, earlier: readonly PlanSession[], say: Say): void {
	const tooSoon = earlier.filter(
		(worn) =>
			partsOf(worn).some((part) => part.pair === pair.id) &&
			hoursOf(session) - hoursOf(worn) - worn.minutes / 60 <
				(pair.dryingHours ?? drying[worn.ground]) - 0.001,
	)
	const wet = tooSoon.find(({ ground }) => ground === 'wet')
	if (wet) say('soaked', pair.id, wet.date)
	const moist = tooSoon.find(({ ground }) => ground !== 'wet')
	if (moist && !tells(session, 'season.unmet-not-dry'))
		say('not-aired-and-not-told', pair.id, moist.date)
}
/** Whether a session says that one of these wishes went unmet. */
const tells = ({ unmetCodes = [] }: PlanSession, ...codes: string[]): boolean =>
	unmetCodes.some(({ code }) => codes.includes(code))
/** A session ahead is worn to its end, in the pinned pair, with reasons. */
function checkWhole(visit: Visit, session: PlanSession, recorded: Recorded, say: Say): void {
	const { id, minutes, reasons, unmet, reasonCodes, unmetCodes } = session
	const parts = partsOf(session)
	const total = parts.reduce((sum, part) => sum + part.minutes, 0)
	if (
		Math.abs(total - minutes) > 0.3 &&
		!tells(session, 'season.unmet-no-pair', 'season.unmet-none-recorded')
	)
		say('short-and-not-told', total, minutes)
	const pin = visit.season!.sessions?.find((written) => written.id === id)?.pinned
	const missed = pin !== undefined && recorded.has(pin) && !parts.some((part) => part.pair === pin)
	if (missed && !tells(session, 'season.unmet-pin', 'season.unmet-pin-barred'))
		say('pin-missed-and-not-told', pin)
	if (reasons.length === 0 && unmet.length === 0) say('no-reason')
	if (reasonCodes?.length !== reasons.length || unmetCodes?.length !== unmet.length)
		say('sentences-without-codes')
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
function checkSessions(visit: Visit, plan: Plan, recorded: Recorded, broken: Broken[]): void {
	const minutes = new Map([...recorded].map(([id, pair]) => [id, pair.minutesWorn ?? 0]))
	for (const [place, session] of plan.sessions.entries()) {
		const say: Say = (...found) => broken.push([...found, session.date, session.start])
		if (session.past !== (session.date < plan.from ? true : undefined)) say('past')
		for (const { pair: id, minutes: used } of partsOf(session)) {
			const pair = recorded.get(id)
			if (pair) checkPart(visit, plan, place, { pair, used, minutes }, say)
			else say('not-recorded', id)
		}
		if (!session.past) checkWhole(visit, session, recorded, say)
	}
}
function checkWeeks(pair: Pair, ahead: readonly PlanSession[], broken: Broken[]): void {
	const weeks = Map.groupBy(ahead, ({ date }) => mondayOf(date))
	for (const [monday, sessions] of weeks) {
		const used = sessions.reduce((sum, session) => sum + minutesIn(session, pair.id), 0)
		if (pair.weeklyMinutesMax !== undefined && used > pair.weeklyMinutesMax + 0.3)
			broken.push(['week', pair.id, used, monday])
	}
}
function checkShare(
	{ id, shareMinPercent: least, shareMaxPercent: most }: Pair,
	plan: Plan,
	ahead: readonly PlanSession[],
	broken: Broken[],
): void {
	const trainings = ahead.filter(({ kind }) => kind === 'training')
	const whole = trainings.reduce((sum, training) => sum + training.minutes, 0)
	const used = trainings.reduce((sum, training) => sum + minutesIn(training, id), 0)
	const outside =
		(most !== undefined && used > (most / 100) * whole + 1) ||
		(least !== undefined && used < (least / 100) * whole - 1)
	if (outside && !plan.findings.some((finding) => finding.id === `season.share-${id}`))
		broken.push(['share-and-not-told', id, used, whole])
}

/** Every rule that a written plan breaks. @param prescribed what the gate and the pairs ask, if known */
export function plainCheck(visit: Visit, plan: Plan, prescribed: Prescribed = {}): Broken[] {
	const broken: Broken[] = []
	const recorded: Recorded = new Map(visit.footwear!.map((pair) => [pair.id, pair]))
	const ahead = plan.sessions.filter((session) => !session.past)
	checkSessions(visit, plan, recorded, broken)
	for (const pair of recorded.values()) {
		checkWeeks(pair, ahead, broken)
		checkShare(pair, plan, ahead, broken)
	}
	return [...broken, ...returnBroken(plan), ...prescribedBroken(visit, plan, prescribed)]
}
