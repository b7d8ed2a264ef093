/** The wishes of a season that its rotation could not meet. */
import { need } from '../../plain/need.ts'
import { rounded } from '../../visit/sides.ts'
import type { Hindrance } from '../../words/en/season/wearing.ts'
import { type Statement, state } from '../../words/statement.ts'
import { barredAt, endHour, pairAt, slotAt, usesIn } from '../problem/problem.ts'
import type { Cell, Checked } from '../verify/checked.ts'
import { hindrance, lastMoist, type Outcome, seenFrom } from './hindrance.ts'

export type UnmetKind = 'no-pair' | 'not-dry' | 'unfamiliar' | 'pin'
export interface Unmet {
	kind: UnmetKind
	slot: number
	/** the pair it is about; undefined where none may be worn */
	pair?: number
	said: Statement
}
const whyNot = (outcome: Outcome, slot: number, pair: number): Hindrance =>
	hindrance(outcome, slot, pair) ?? { is: 'elsewhere', pair: pairAt(outcome.problem, pair).name }

function noPairAt(outcome: Outcome, slot: number): Unmet {
	const { problem, rotation } = outcome
	if (problem.pairs.length === 0)
		return { kind: 'no-pair', slot, said: state('season.unmet-none-recorded') }
	const begun = usesIn(rotation, slot).length > 0
	const hindrances = problem.pairs.map((_, pair) => whyNot(outcome, slot, pair))
	return { kind: 'no-pair', slot, said: state('season.unmet-no-pair', { begun, hindrances }) }
}
/** Hours from the end of a session to the beginning of a later one. */
const hoursBetween = ({ problem }: Outcome, earlier: number, later: number): number =>
	rounded(slotAt(problem, later).startHour - endHour(slotAt(problem, earlier)), 0)
function notDryAt(outcome: Outcome, { slot, pair }: Cell): Unmet {
	const { problem } = outcome
	const { name, dryingHours } = pairAt(problem, pair)
	const moist = need(lastMoist(outcome, slot, pair), 'the session the pair has not dried from')
	return {
		kind: 'not-dry',
		slot,
		pair,
		said: state('season.unmet-not-dry', {
			pair: name,
			worn: seenFrom(outcome, moist, slot),
			hoursSince: hoursBetween(outcome, moist, slot),
			hoursWanted: dryingHours[slotAt(problem, moist).ground],
		}),
	}
}
const unfamiliarAt = ({ problem }: Outcome, { slot, pair }: Cell): Unmet => ({
	kind: 'unfamiliar',
	slot,
	pair,
	said: state('season.unmet-unfamiliar', {
		pair: pairAt(problem, pair).name,
		days: problem.weights.familiarDays,
	}),
})
function pinMissedAt(outcome: Outcome, slot: number): Unmet {
	const pair = need(slotAt(outcome.problem, slot).pin, 'the pinned pair')
	const said = state('season.unmet-pin', { hindrance: whyNot(outcome, slot, pair) })
	return { kind: 'pin', slot, pair, said }
}
/** Pins on a pair that may not be worn there, and is not. */
const forbiddenPins = (outcome: Outcome): Unmet[] =>
	outcome.problem.slots.flatMap(({ past, pin }, slot): Unmet[] => {
		if (past || pin === undefined) return []
		if (barredAt(outcome.problem, slot, pin) === undefined) return []
		if (usesIn(outcome.rotation, slot).some((use) => use.pair === pin)) return []
		const said = state('season.unmet-pin-barred', { hindrance: whyNot(outcome, slot, pin) })
		return [{ kind: 'pin', slot, pair: pin, said }]
	})
/** Every wish of the season that the rotation could not meet, in order of time. */
export function unmetOf(outcome: Outcome, checked: Checked): Unmet[] {
	return [
		...checked.noPair.map((slot) => noPairAt(outcome, slot)),
		...checked.notDry.map((cell) => notDryAt(outcome, cell)),
		...checked.unfamiliar.map((cell) => unfamiliarAt(outcome, cell)),
		...checked.pinMissed.map((slot) => pinMissedAt(outcome, slot)),
		...forbiddenPins(outcome),
	].sort((left, right) => left.slot - right.slot)
}
