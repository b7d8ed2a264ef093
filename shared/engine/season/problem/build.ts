/** A visit's season and pairs made into the numbers of the rotation. */
import { isHeld } from '../../facts/held.ts'
import { ownedOnly } from '../../facts/planned-pairs.ts'
import type { Finding } from '../../findings/finding.ts'
import { present } from '../../plain/present.ts'
import type { Suitability } from '../../protocol/norms/suitability.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Visit } from '../../visit/visit.ts'
import { type SeasonSession, seasonSessions } from '../pattern.ts'
import { stopBefore } from './before.ts'
import { barredFindings } from './code-rules.ts'
import { type EarlierPlan, settledBefore } from './earlier.ts'
import { type Judged, limitFindings, toReplace } from './judged-pairs.ts'
import { layLadders } from './ladder.ts'
import { easeIn, usualWeekMinutes } from './lay-off.ts'
import { weeklyLimits } from './limits.ts'
import { ownedPairs } from './pairs.ts'
import { pointsOf, weightsOf } from './points.ts'
import { heldSeason, matchesHeld, type SeasonPlan, waitingFindings } from './prescribed.ts'
import type { SeasonProblem } from './problem.ts'
import { keepShortened, markPins, markShared, markTold, timelineOf } from './slots.ts'

interface BuildInput {
	visit: Visit
	protocol: Protocol
	suitability: Suitability
	/** Sessions before this date stay as they were. Absent: the day of the visit. */
	from?: string
	earlier?: EarlierPlan
	/** an insert is started together with the new pairs: every step of their ladder is shortened */
	newInsert?: boolean
	/** The pairs as they are judged today: read where there is no plan. */
	judged?: Judged
	/** The settled plan of the visit; absent for a record of before 0.4. */
	plan?: SeasonPlan
}
export interface Built {
	problem: SeasonProblem
	findings: Finding[]
	sessions: SeasonSession[]
	off: SeasonSession[]
	/** The settled plan it was built with; none for a record of before 0.4. */
	plan?: SeasonPlan
	/** The pairs as they were judged. */
	judged: Judged
}

function breakInOf({ protocol, newInsert }: BuildInput): SeasonProblem['breakIn'] {
	// the first step alone is shortened: each later one grows out of it and is then the same share of
	// the usual one
	return {
		firstMinutes:
			(newInsert ? protocol.value('season.newInsertShare') : 1) *
			protocol.value('season.breakInFirstMinutes'),
		share: protocol.value('season.breakInShare'),
		roundMinutes: protocol.value('season.roundMinutes'),
	}
}
/**
 * Lays the ladders of the new pairs: their steps are settled, no session with one is shared, and
 * until a ladder ends its pair is worn nowhere else.
 */
function breakIn(problem: SeasonProblem): void {
	const { steps, freeFrom } = layLadders(problem)
	problem.fixed.push(...steps)
	for (const [session, slot] of problem.slots.entries())
		if (steps.some((step) => step.slot === session)) slot.split = false
	problem.cost = problem.cost.map((row, session) =>
		row.map((points, pair) => {
			const free = freeFrom[pair]
			const isFree = free !== undefined && session >= free
			return typeof points === 'number' && problem.pairs[pair]?.isNew && !isFree
				? ({ why: 'breaking-in' } as const)
				: points
		}),
	)
}

/** The sessions that take place: a match ahead does not while the gate holds matches. */
function playable(
	all: readonly SeasonSession[],
	from: string,
	plan: SeasonPlan | undefined,
): { sessions: SeasonSession[]; held: SeasonSession[] } {
	const sessions = all.filter((session) => session.status === undefined)
	const waits = plan !== undefined && matchesHeld(plan)
	const isHeld = ({ kind, date }: SeasonSession) => waits && kind === 'match' && date >= from
	return {
		sessions: sessions.filter((session) => !isHeld(session)),
		held: sessions.filter(isHeld),
	}
}
/**
 * Builds the rotation problem. What keeps a pair or the whole season out of it is said in the
 * findings.
 */
export function buildProblem(input: BuildInput): Built {
	const { visit, protocol, earlier, plan } = input
	const from = input.from ?? visit.visitDate
	const all = visit.season ? seasonSessions(visit.season) : []
	const { sessions, held } = playable(all, from, plan)
	const timeline = timelineOf(sessions, protocol, from, visit)
	const slots = timeline.map(({ slot }) => slot)
	const usualWeek = usualWeekMinutes(slots)
	keepShortened(slots, earlier)
	// a match that waits is not played: it ends no lay-off
	const passed = all.filter((session) => !held.includes(session))
	const eased = easeIn(slots, passed, usualWeek, protocol)
	const judged = plan?.owned ?? input.judged ?? []
	// nothing is bought while buying is held
	const mayBuy = !plan || !isHeld(plan.gate, 'purchase')
	const footwear = ownedPairs(mayBuy ? visit : ownedOnly(visit), earlier, protocol, judged)
	const recorded = footwear.pairs.map((pair) => pair.recorded)
	const pairs = footwear.pairs.map((pair) => pair.owned)
	const stop = plan ? heldSeason(plan) : stopBefore(visit)
	const replaced = toReplace(judged)
	const unknownPins = markPins(timeline, pairs)
	markTold(slots, pairs, earlier)
	const limits = weeklyLimits(visit, recorded, slots, usualWeek, protocol, plan)
	if (limits.caps.length > 0) markShared(slots, protocol)
	const problem: SeasonProblem = {
		slots,
		pairs,
		cost: slots.map((slot) =>
			footwear.pairs.map((pair) =>
				stop ? { why: 'stopped' } : pointsOf(pair, slot, { ...input, replaced }),
			),
		),
		fixed: settledBefore(timeline, pairs, earlier),
		caps: [...limits.caps, ...eased.caps([...pairs.keys()])],
		matchFromMinutes: protocol.value('season.matchFromMinutes'),
		breakIn: breakInOf(input),
		shortestPartMinutes: protocol.value('season.shortestPartMinutes'),
		weights: weightsOf(protocol),
		...(held.length > 0 ? { matchesHeld: true as const } : {}),
	}
	breakIn(problem)
	const findings = [
		...eased.findings,
		...footwear.findings,
		...(stop ? [stop] : []),
		...(plan ? waitingFindings(plan, held) : []),
		...limitFindings(pairs),
		...unknownPins,
		...limits.findings,
		...barredFindings(recorded, slots, footwear.letters, protocol),
	]
	const off = all.filter(({ status }) => status !== undefined)
	return present({ problem, findings, sessions, off, plan, judged })
}
