/**
 * What a player who comes back has as on the visit before: taken over on demand, never by itself.
 * Nothing that is asked or measured anew goes with it. Pure.
 */
import type { DraftContent } from '../../../shared/contract.ts'
import { carriedLists } from '../../../shared/engine/recheck/take-over.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

type Lists = Pick<Visit, 'play' | 'conditions' | 'footwear' | 'means'>
/** What there is to take over; empty where the visit before held none of it. */
export function toTakeOver(last: Visit): Partial<Lists> {
	const { play, means } = last
	return { ...(play && { play }), ...carriedLists(last), ...(means && { means }) }
}
/** Nothing of it was typed yet, so that nothing is written over. */
export const isUntouched = ({ visit, raw }: DraftContent): boolean =>
	visit.play === undefined &&
	(visit.conditions ?? []).length === 0 &&
	(visit.footwear ?? []).length === 0 &&
	!Object.keys(raw).some((path) => /^(play|conditions|footwear)\./.test(path))
export const withTakenOver = (draft: DraftContent, last: Visit): DraftContent =>
	isUntouched(draft) ? { ...draft, visit: { ...draft.visit, ...toTakeOver(last) } } : draft
