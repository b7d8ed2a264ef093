/** What becomes of a pair that was got for the prescription, by the plan as it was settled. */
import type { Kept, OwnedPair } from '../findings/assessment.ts'
import { type Fit, fitOfPair } from '../onfoot/fit.ts'
import type { SettledPlan } from '../prescription/settled.ts'
import type { Visit } from '../visit/visit.ts'

/** Undefined for a pair that was there before, or was not tried on the foot at this visit. */
export function fitIn(
	{ id, verdict }: Pick<Kept<OwnedPair>, 'id' | 'verdict'>,
	visit: Visit,
	{ gate }: Pick<SettledPlan, 'gate'>,
): Fit | undefined {
	const pair = visit.footwear?.find((one) => one.id === id)
	return pair && fitOfPair(pair, visit, verdict, gate)
}
/** Whether a new pair stays off the foot. */
export const staysOff = (fit: Fit | undefined): boolean => fit === 'not-yet' || fit === 'take-back'
