/** The wishes of a season that its rotation could not meet. */
import { need } from '../../plain/need.ts'
import { rounded } from '../../visit/sides.ts'
import { endHour, pairAt, pointsAt, slotAt, usesIn } from '../problem/problem.ts'
import type { Cell, Checked } from '../verify/checked.ts'
import { dayOf, hindrance, lastMoist, type Outcome } from './hindrance.ts'

export type UnmetKind = 'no-pair' | 'not-dry' | 'unfamiliar' | 'pin'
export interface Unmet {
	kind: UnmetKind
	slot: number
	says: string
}
const whyNot = (outcome: Outcome, slot: number, pair: number): string =>
	hindrance(outcome, slot, pair) ?? `${pairAt(outcome.problem, pair).name} are needed elsewhere`

function noPairAt(outcome: Outcome, slot: number): Unmet {
	const { problem, rotation } = outcome
	if (problem.pairs.length === 0)
		return {
			kind: 'no-pair',
			slot,
			says: 'no pair to wear: none is recorded with its sole',
		}
	const begun = usesIn(rotation, slot).length > 0
	const reasons = problem.pairs.map((_, pair) => whyNot(outcome, slot, pair))
	return {
		kind: 'no-pair',
		slot,
		says: `no pair ${begun ? 'for the rest of the session' : 'to wear'}: ${reasons.join('; ')}`,
	}
}
function notDryAt(outcome: Outcome, { slot, pair }: Cell): Unmet {
	const { problem } = outcome
	const owned = pairAt(problem, pair)
	const moist = need(lastMoist(outcome, slot, pair), 'the session the pair has not dried from')
	const before = slotAt(problem, moist)
	const hours = slotAt(problem, slot).startHour - endHour(before)
	return {
		kind: 'not-dry',
		slot,
		says:
			`${owned.name} may not be dry: worn ${dayOf(outcome, moist, slot)}, ` +
			`${rounded(hours, 0)} h before, ${owned.dryingHours[before.ground]} h wanted`,
	}
}
const unfamiliarAt = ({ problem }: Outcome, { slot, pair }: Cell): Unmet => ({
	kind: 'unfamiliar',
	slot,
	says:
		`no training in ${pairAt(problem, pair).name} in the ` +
		`${problem.weights.familiarDays} days before this match`,
})
function pinMissedAt(outcome: Outcome, slot: number): Unmet {
	const pin = need(slotAt(outcome.problem, slot).pin, 'the pinned pair')
	return {
		kind: 'pin',
		slot,
		says: `the pinned pair could not be worn. ${whyNot(outcome, slot, pin)}`,
	}
}
/** Pins on a pair that may not be worn there, and is not. */
const forbiddenPins = (outcome: Outcome): Unmet[] =>
	outcome.problem.slots.flatMap(({ past, pin }, slot): Unmet[] => {
		if (past || pin === undefined) return []
		if (typeof pointsAt(outcome.problem, slot, pin) !== 'string') return []
		if (usesIn(outcome.rotation, slot).some((use) => use.pair === pin)) return []
		const says = `the pinned pair may not be worn. ${whyNot(outcome, slot, pin)}`
		return [{ kind: 'pin', slot, says }]
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
