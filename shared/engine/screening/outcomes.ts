/** What a recorded outcome ends. Being sent, advised or written about ends nothing. */
import { saidConditions, unclearedSurgery } from '../conditions/query.ts'
import { addMonths } from '../plain/days.ts'
import { holdRows } from '../protocol/holds.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Outcome, Side, Visit } from '../visit/visit.ts'
import type { OpenHold, OpenSign } from './signs-of.ts'

/** A sign of no place is ended for one limb by that limb, for the player only as a whole. */
function coversSide(outcome: Outcome, side: Side | undefined, limb: Side | undefined): boolean {
	if (outcome.side === 'both') return true
	if (side !== undefined) return outcome.side === side
	return outcome.side === 'none' || (limb !== undefined && outcome.side === limb)
}
/** How long what is there for good stays reviewed, in months; undefined where it is not asked. */
function standsMonths(rule: string, protocol: Protocol): number | undefined {
	const key = holdRows.find((row) => row.rule === rule)?.standsMonths
	return key && protocol.value(key)
}
/** Whether the day of an outcome lets it be about this sign, at a visit. */
function isOfSign(
	{ on }: Outcome,
	{ rule, from }: OpenSign,
	{ visitDate }: Visit,
	protocol: Protocol,
): boolean {
	if (on > visitDate) return false
	const months = standsMonths(rule, protocol)
	return months === undefined ? on >= from : addMonths(on, months) >= visitDate
}
const names = (outcome: Outcome, sign: OpenSign, visit: Visit, protocol: Protocol): boolean =>
	outcome.rule === sign.rule && isOfSign(outcome, sign, visit, protocol)

/** Whether an outcome ends a hold: it names rule and side, and lifts just this. */
function endsHold(outcome: Outcome, sign: OpenSign, { what, until, limb }: OpenHold): boolean {
	if (!coversSide(outcome, sign.side, limb) || !outcome.lifts.includes(what)) return false
	return until !== 'treating-doctor' || outcome.treatingDoctorClears === true
}
/** A surgeon's clearance recorded with the operation is the surgeon's own word. */
function isCleared({ rule, side }: OpenSign, visit: Visit): boolean {
	if (rule !== 'uncleared-surgery' || side === undefined) return false
	const cleared = saidConditions(visit).some(
		(recorded) =>
			recorded.condition === 'foot-or-ankle-surgery' &&
			recorded.clearedBySurgeon === true &&
			[side, 'both', 'none'].includes(recorded.side),
	)
	return cleared && unclearedSurgery(visit, { side }).length === 0
}
/**
 * What is still open of a sign after these outcomes; undefined where nothing is. A sign that holds
 * nothing ends where it was excluded or is over.
 */
export function afterOutcomes(
	sign: OpenSign,
	outcomes: readonly Outcome[],
	visit: Visit,
	protocol: Protocol,
): OpenSign | undefined {
	if (isCleared(sign, visit)) return undefined
	const named = outcomes.filter((outcome) => names(outcome, sign, visit, protocol))
	if (sign.holds.length === 0)
		return named.some(
			({ result, ...outcome }) =>
				result !== 'confirmed' && coversSide({ result, ...outcome }, sign.side, undefined),
		)
			? undefined
			: sign
	const holds = sign.holds.filter((hold) => !named.some((outcome) => endsHold(outcome, sign, hold)))
	return holds.length > 0 ? { ...sign, holds } : undefined
}
/** Whether an outcome of this visit says that a sign on this limb is excluded or over. */
export const isOver = (rule: string, side: Side, { outcomes = [], visitDate }: Visit): boolean =>
	outcomes.some(
		(outcome) =>
			outcome.rule === rule &&
			outcome.result !== 'confirmed' &&
			outcome.on <= visitDate &&
			outcome.lifts.includes('test') &&
			[side, 'both', 'none'].includes(outcome.side),
	)
/** Whether an outcome ends anything of these signs: one that does not is said beside it. */
export const endsAnything = (
	outcome: Outcome,
	signs: readonly OpenSign[],
	visit: Visit,
	protocol: Protocol,
): boolean =>
	signs.some(
		(sign) =>
			names(outcome, sign, visit, protocol) &&
			(sign.holds.length === 0 || sign.holds.some((hold) => endsHold(outcome, sign, hold))),
	)
