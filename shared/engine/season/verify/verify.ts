/**
 * Checks a rotation against the rules in plain loops. It knows the problem and the rotation, and
 * nothing of the solver or its model.
 * Hard rules give `problems`; wishes that may go unmet are listed and counted by level.
 */
import { eachLevel } from '../problem/levels.ts'
import { MinutesWorn } from '../problem/minutes-worn.ts'
import {
	isTrainingAhead,
	minutesIn,
	type Rotation,
	type SeasonProblem,
	type Slot,
	totalMinutes,
	usesIn,
} from '../problem/problem.ts'
import type { Checked, PlannedSession } from './checked.ts'
import { changesReached, evenReached } from './last-levels.ts'
import { checkSession, checkSettled } from './session.ts'
import { checkLife, checkUse, wornPair } from './use.ts'

function plannedSessions(problem: SeasonProblem, rotation: Rotation): PlannedSession[] {
	return problem.slots.map((slot, index) => {
		const uses = usesIn(rotation, index)
		const settled = problem.fixed.filter((fixed) => fixed.slot === index)
		return {
			index,
			slot,
			at: { date: slot.date, start: slot.start },
			uses,
			settled,
			chosen: uses.filter((use) => minutesIn(settled, use.pair) === 0),
			freeMinutes: slot.minutes - totalMinutes(settled),
		}
	})
}
/** Session by session, with the minutes of each pair as they grow. */
function checkSessions(
	problem: SeasonProblem,
	sessions: readonly PlannedSession[],
	found: Checked,
): void {
	const worn = MinutesWorn.recorded(problem.pairs)
	for (const session of sessions) {
		const { index, slot, uses } = session
		const before = new MinutesWorn(worn.all())
		checkSettled(problem, session, found)
		if (!slot.past) checkSession(problem, session, found)
		for (const use of uses) {
			const checked = wornPair(problem, session, sessions.slice(0, index), use, before.in(use.pair))
			if (!slot.past) checkUse(problem, checked, found)
			if (slot.counts) worn.add(use)
			if (!slot.past) checkLife(checked, worn.in(use.pair), found)
		}
	}
	found.minutes = worn.all()
}
/** Hard: the weekly limits of groups of pairs. */
function checkWeeks(
	{ caps }: SeasonProblem,
	sessions: readonly PlannedSession[],
	found: Checked,
): void {
	for (const cap of caps)
		for (const week of cap.weeks) {
			const uses = sessions
				.filter(({ index }) => week.slots.includes(index))
				.flatMap((session) => session.uses)
			const sum = totalMinutes(uses.filter((use) => cap.pairs.includes(use.pair)))
			if (sum > week.minutes + 1e-2)
				found.problems.push({
					date: week.monday,
					is: 'week',
					minutes: sum,
					limit: cap.limit,
				})
		}
}
/** A wish: the share of the training time ahead that was asked for a pair. */
function checkShares(
	{ pairs }: SeasonProblem,
	sessions: readonly PlannedSession[],
	found: Checked,
): void {
	const trainings = sessions.filter(({ slot }) => isTrainingAhead(slot))
	const ahead = totalMinutes(trainings.map(({ slot }) => slot))
	for (const [pair, { shareMin, shareMax }] of pairs.entries()) {
		const used = trainings.reduce((sum, { uses }) => sum + minutesIn(uses, pair), 0)
		const over = shareMax === undefined ? 0 : used - shareMax * ahead
		const under = shareMin === undefined ? 0 : shareMin * ahead - used
		if (over > 1e-6) found.share.push({ pair, minutes: over })
		if (under > 1e-6) found.share.push({ pair, minutes: -under })
	}
}
/** What is reached on each level, counted from what was found. */
function reachedOf(
	problem: SeasonProblem,
	sessions: readonly PlannedSession[],
	found: Checked,
): Checked['reached'] {
	const { slots } = problem
	const without = (kind: Slot['kind']) =>
		found.noPair.filter((place) => slots[place]?.kind === kind).length
	return {
		matches: without('match'),
		pins: found.pinMissed.length,
		trainings: without('training'),
		suited: found.suitability,
		dry: found.notDry.length,
		familiar: found.unfamiliar.length,
		told: found.toldMissed.length,
		shares: found.share.reduce((sum, { minutes }) => sum + Math.abs(minutes), 0) / 60,
		even: evenReached(problem, sessions, found.noPair),
		changes: changesReached(problem, sessions),
	}
}

/** Everything that a rotation keeps and breaks; one of another length is not looked into. */
export function verify(problem: SeasonProblem, rotation: Rotation): Checked {
	const found: Checked = {
		problems: [],
		noPair: [],
		pinMissed: [],
		toldMissed: [],
		notDry: [],
		unfamiliar: [],
		changes: 0,
		share: [],
		suitability: 0,
		reached: eachLevel(() => 0),
		minutes: problem.pairs.map((pair) => pair.startMinutes),
	}
	const [planned, expected] = [rotation.uses.length, problem.slots.length]
	if (planned !== expected) {
		found.problems.push({ is: 'length', planned, expected })
		return found
	}
	const sessions = plannedSessions(problem, rotation)
	checkSessions(problem, sessions, found)
	checkWeeks(problem, sessions, found)
	checkShares(problem, sessions, found)
	found.reached = reachedOf(problem, sessions, found)
	return found
}
