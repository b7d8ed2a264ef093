/**
 * The verdict on a pair that was got for the prescription, as it is said of a new one. It follows
 * from the verdict on the pair, so that one pair has one verdict, and what is held is never worn in.
 */
import { isHeld } from '../facts/held.ts'
import type { Gate } from '../findings/gate.ts'
import type { OwnedVerdict } from '../findings/prescription-result.ts'
import type { Holdable } from '../visit/holdables.ts'
import type { PairRole } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'

/** From the mildest to the gravest. @internal */
export const fits = ['wear', 'wear-changed', 'not-yet', 'take-back'] as const
export type Fit = (typeof fits)[number]
const fitOf: Readonly<Record<OwnedVerdict, Fit>> = {
	keep: 'wear',
	'training-only': 'wear',
	modify: 'wear-changed',
	replace: 'take-back',
	'stop-wearing': 'take-back',
}
/** What keeps a new pair from being worn in: a foot that waits is not fitted either. */
const waitsFor: readonly Holdable[] = ['sport', 'match', 'impact', 'purchase', 'shelf', 'weight']

/** The role of the prescription that a pair was got for; undefined for one that was there before. */
export function gotFor(
	{ id, onFoot }: Pair,
	{ since }: Pick<Visit, 'since'>,
): PairRole | undefined {
	const bought = since?.bought?.find(({ pair, answer }) => pair === id && answer === 'bought')
	return onFoot?.role ?? bought?.role
}
/** Whether anything was seen or told of it on the foot at this visit. */
const isTriedOn = ({ onFoot }: Pair, visitDate: string): boolean => {
	const { left, right, comfortFirst, comfortLater, tried = visitDate } = onFoot ?? {}
	const told = [left, right, comfortLater, tried === visitDate ? comfortFirst : undefined]
	return told.some((one) => one !== undefined)
}
/**
 * What becomes of a new pair; undefined for one that was there before, or was not tried.
 * @param verdict on the pair, as it was settled
 */
export function fitOfPair(
	pair: Pair,
	visit: Pick<Visit, 'since' | 'visitDate'>,
	verdict: OwnedVerdict,
	gate: Gate,
): Fit | undefined {
	if (gotFor(pair, visit) === undefined || !isTriedOn(pair, visit.visitDate)) return undefined
	// a swollen foot condemns no pair: with a hold it waits, unless it must not be worn anyway
	if (verdict !== 'stop-wearing' && waitsFor.some((what) => isHeld(gate, what))) return 'not-yet'
	return fitOf[verdict]
}
