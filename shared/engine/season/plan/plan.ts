/** A solved rotation written as the Plan file, with its reasons, forecasts and findings. */
import { isHeld } from '../../facts/held.ts'
import type { Assessment } from '../../findings/assessment.ts'
import { type Finding, findingOf } from '../../findings/finding.ts'
import { need } from '../../plain/need.ts'
import { present } from '../../plain/present.ts'
import type { Suitability } from '../../protocol/norms/suitability.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Visit } from '../../visit/visit.ts'
import { type Said, StatedError } from '../../words/stated.ts'
import { type Statement, state } from '../../words/statement.ts'
import { ownRule } from '../finding.ts'
import type { Plan, PlanPair, PlanSession } from '../plan-file.ts'
import type { Built } from '../problem/build.ts'
import {
	type Owned,
	pairAt,
	type Rotation,
	type SeasonProblem,
	type Slot,
	slotAt,
	type Use,
	usesIn,
} from '../problem/problem.ts'
import type { Checked } from '../verify/checked.ts'
import { verify } from '../verify/verify.ts'
import { calendarFindings } from './calendar-findings.ts'
import type { Outcome } from './hindrance.ts'
import { breakInFindings, pairFindings } from './pair-findings.ts'
import { type Purchase, purchasesOf } from './purchases.ts'
import { reasonsOf } from './reasons.ts'
import { toeRoomOf } from './toe-room.ts'
import { type Unmet, unmetOf } from './unmet.ts'
import { wearOf } from './wear.ts'
import { wearChoices } from './wear-choice.ts'
import { shareFindings, unmetFindings } from './wish-findings.ts'

interface PlanInput {
	visit: Visit
	assessment: Pick<Assessment, 'growth' | 'screening'>
	protocol: Protocol
	suitability: Suitability
	built: Built
	rotation: Rotation
	status: Plan['status']
	gap: number
	/** how far each level was brought; left out by a caller that solved none */
	levels?: Plan['levels']
	from: string
}

/** The day its breaking in ends, where it is broken in within the season. */
function brokenInBy(problem: SeasonProblem, place: number): string | undefined {
	const last = problem.fixed.findLast((fixed) => fixed.pair === place && fixed.why === 'break-in')
	return last && slotAt(problem, last.slot).date
}
function planPair(
	input: PlanInput,
	pair: Owned,
	place: number,
	season: { from: string; to: string },
): PlanPair {
	const { visit, assessment, protocol, rotation } = input
	const { problem } = input.built
	const recorded = visit.footwear?.find(({ id }) => id === pair.id)
	const { minutes, wear, checkBy, wornOutBy } = wearOf(problem, rotation, place, season, protocol)
	const toe = toeRoomOf(need(recorded, 'the recorded pair'), visit, assessment.growth, protocol)
	// what was judged stands; the forecast alone speaks of a pair that was not
	const isJudged = input.built.judged.some(({ id }) => id === pair.id)
	const outgrownBy = isJudged ? pair.outgrownOn : toe.outgrownBy
	const [replaceBy] = [wornOutBy, outgrownBy, pair.lastDay]
		.filter((date) => date !== undefined)
		.filter((date) => date <= season.to)
		.sort()
	return present({
		id: pair.id,
		letter: pair.letter,
		name: pair.name,
		sole: pair.sole,
		minutes: rounded(minutes, 1),
		wearFraction: rounded(minutes / pair.lifeMinutes, 4),
		checkBy,
		replaceBy,
		wornOutBy: wornOutBy !== undefined && wornOutBy <= season.to ? wornOutBy : undefined,
		brokenInBy: brokenInBy(problem, place),
		wear,
		toeRoom: toe.toeRoom,
		outgrownBy,
		measureAgainBy: toe.measureAgainBy,
	})
}
/** The parts of a session, where it is shared or not worn in a pair to its end. */
function partsOf(
	problem: SeasonProblem,
	slot: Slot,
	uses: readonly Use[],
	main: Use | undefined,
): PlanSession['parts'] {
	const short = main !== undefined && main.minutes < slot.minutes - 0.01
	return uses.length > 1 || short
		? uses.map((use) => ({
				pair: pairAt(problem, use.pair).id,
				minutes: rounded(use.minutes, 1),
			}))
		: undefined
}
function planSession(
	outcome: Outcome,
	unmet: readonly Unmet[],
	slot: Slot,
	place: number,
): PlanSession {
	const { problem, rotation } = outcome
	const uses = usesIn(rotation, place)
	// compared as written, so that two equal parts name the same pair when the plan is read back
	const [main] = [...uses].sort(
		(left, right) => rounded(right.minutes, 1) - rounded(left.minutes, 1),
	)
	return present({
		id: slot.id,
		date: slot.date,
		start: slot.start,
		minutes: slot.minutes,
		fullMinutes: slot.fullMinutes,
		kind: slot.kind,
		surface: slot.surface,
		ground: slot.ground,
		team: slot.team,
		title: slot.title,
		past: slot.past || undefined,
		pair: main && pairAt(problem, main.pair).id,
		parts: partsOf(problem, slot, uses, main),
		...toldOf(
			main === undefined && !slot.past ? [] : reasonsOf(outcome, place),
			unmet.filter((wish) => wish.slot === place).map(({ said }) => said),
		),
	})
}
/** The sentences that readers outside have always read, and beside them what they say. */
const toldOf = (
	reasons: readonly Statement[],
	unmet: readonly Statement[],
): Pick<PlanSession, 'reasons' | 'unmet' | 'reasonCodes' | 'unmetCodes'> => ({
	reasons: reasons.map(({ says }) => says),
	unmet: unmet.map(({ says }) => says),
	reasonCodes: reasons.map(codeOf),
	unmetCodes: unmet.map(codeOf),
})
const codeOf = ({ code, params }: Statement): Said => ({ code, params })
const sessionsOff = ({ off }: Built): Plan['off'] =>
	off.map(({ id, date, start, kind, status, team, title }) =>
		present({
			id,
			date,
			start,
			kind,
			status: need(status, 'why a session is off'),
			team,
			title,
		}),
	)
/** The levels that the solver did not prove the best, with what is left of each. */
const openLevels = (levels: Plan['levels'] = []) =>
	levels.length === 0
		? {}
		: {
				open: levels
					.filter(({ proven }) => !proven)
					.map((each) => ({ level: each.level, gapPercent: rounded(100 * each.gap, 2) })),
			}
/** What the plan as a whole rests on: warning signs, the solver's time, sessions to plan. */
function wholePlanFindings({ assessment, built, status, gap, levels }: PlanInput): Finding[] {
	// with a plan the gate says what waits, and an outcome ends it
	const action = built.plan ? 'proceed' : assessment.screening.action
	const { slots } = built.problem
	const found: Finding[] = []
	if (action !== 'proceed' && action !== 'letter')
		found.push(
			findingOf(state('season.screening-first', { action }), {
				id: 'season.screening-first',
				side: 'none',
				level: 'stop',
				because: [{ measure: 'screeningAction', value: action }],
				basis: ownRule('screening before planning'),
			}),
		)
	const gapPercent = rounded(100 * gap, 2)
	if (status === 'time-limit')
		found.push(
			findingOf(state('season.time-limit', { gapPercent, ...openLevels(levels) }), {
				id: 'season.time-limit',
				side: 'none',
				level: 'note',
				because: [{ measure: 'solverGapPercent', value: gapPercent, unit: '%' }],
				basis: ownRule('time limit of the solver'),
			}),
		)
	if (slots.every((slot) => slot.past))
		found.push(
			findingOf(state('season.no-sessions'), {
				id: 'season.no-sessions',
				side: 'none',
				level: 'note',
				because: [{ measure: 'sessionsAhead', value: 0 }],
				basis: ownRule('a plan needs sessions'),
			}),
		)
	return found
}
const purchaseFindings = (purchases: readonly Purchase[], protocol: Protocol): Finding[] =>
	purchases.map(({ code, params, says, neededBy }, place) =>
		findingOf(
			{ code, params, says },
			{
				id: `season.buy-${place + 1}`,
				side: 'none',
				level: 'advise',
				because: [{ measure: 'neededBy', value: neededBy }],
				basis: protocol.basis(
					'a new pair is broken in before it is needed',
					'season.matchFromMinutes',
				),
			},
		),
	)
/** @throws StatedError naming the sessions where the rotation breaks a hard rule */
function soundly(problem: SeasonProblem, rotation: Rotation): Checked {
	const checked = verify(problem, rotation)
	if (checked.problems.length > 0)
		throw new StatedError(state('season.plan-unsound', { breaches: checked.problems }))
	return checked
}
/**
 * The Plan file of a solved season.
 * @throws StatedError naming the session where the rotation breaks a hard rule: such a plan is never
 * written
 */
export function composePlan(input: PlanInput): Plan {
	const { visit, protocol, suitability, built, rotation, from } = input
	const { problem } = built
	const checked = soundly(problem, rotation)
	const outcome: Outcome = { problem, rotation, minutesAtEnd: checked.minutes }
	const unmet = unmetOf(outcome, checked)
	const season = { from: visit.season?.from ?? from, to: visit.season?.to ?? from }
	const pairs = problem.pairs.map((pair, place) => planPair(input, pair, place, season))
	const mayBuy = !built.plan || !isHeld(built.plan.gate, 'purchase')
	const purchases = mayBuy
		? purchasesOf(problem, suitability, pairs, checked.noPair, from, protocol)
		: []
	return {
		format: 'lastwright-plan',
		version: 1,
		status: input.status,
		gap: rounded(input.gap, 6),
		...present({ levels: input.levels }),
		from,
		season,
		sessions: problem.slots.map((slot, place) => planSession(outcome, unmet, slot, place)),
		off: sessionsOff(built),
		pairs,
		purchases,
		findings: [
			...built.findings,
			...wholePlanFindings(input),
			...unmetFindings(problem, unmet, protocol),
			...shareFindings(problem, checked.share),
			...calendarFindings(problem, visit, protocol),
			...breakInFindings(problem, protocol),
			...pairs.flatMap((pair) => pairFindings(pair, protocol)),
			...(mayBuy ? wearChoices(outcome, checked.noPair, protocol) : []),
			...purchaseFindings(purchases, protocol),
		],
	}
}
