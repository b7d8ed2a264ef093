/**
 * What a player who comes back has as on the visit before: taken over on demand, never by itself.
 * Nothing that is asked or measured anew goes with it. Pure.
 */
import type { DraftContent } from '../../../shared/contract.ts'
import type { Pair, Visit } from '../../../shared/engine/visit/visit.ts'

type Lists = Pick<Visit, 'play' | 'conditions' | 'footwear' | 'means'>
type Recorded = NonNullable<Visit['conditions']>[number]
/** How a pair feels and how far it is worn is of its day. */
function asOwned(pair: Pair): Pair {
	const { comfort: _comfort, hurts: _hurts, damage: _damage, minutesWorn: _worn, ...kept } = pair
	return kept
}
/**
 * A condition comes without status, pain and clearance: they are asked again, and nothing follows
 * from it nor is signed before. What is past stays past.
 */
function toBeAsked(recorded: Recorded): Recorded {
	const { status, painWorst: _pain, note: _note, clearedBySurgeon: _cleared, ...kept } = recorded
	return status === 'past' ? { ...kept, status } : kept
}
/** What there is to take over; empty where the visit before held none of it. */
export function toTakeOver(last: Visit): Partial<Lists> {
	const { play, conditions = [], footwear = [], means } = last
	// one that was only planned may never have been bought
	const pairs = footwear.filter(({ plannedAs }) => plannedAs === undefined)
	return {
		...(play && { play }),
		...(conditions.length > 0 && { conditions: conditions.map(toBeAsked) }),
		...(pairs.length > 0 && { footwear: pairs.map(asOwned) }),
		...(means && { means }),
	}
}
/** Nothing of it was typed yet, so that nothing is written over. */
export const isUntouched = ({ visit, raw }: DraftContent): boolean =>
	visit.play === undefined &&
	(visit.conditions ?? []).length === 0 &&
	(visit.footwear ?? []).length === 0 &&
	!Object.keys(raw).some((path) => /^(play|conditions|footwear)\./.test(path))
export const withTakenOver = (draft: DraftContent, last: Visit): DraftContent =>
	isUntouched(draft) ? { ...draft, visit: { ...draft.visit, ...toTakeOver(last) } } : draft
