/** What the season chart is made of. */
import { present } from '../../plain/present.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Clinic } from '../clinic.ts'
import { type Pattern, patternOfLetter } from '../document.ts'
import type { PlanView } from '../inputs.ts'
import { insertWorn } from '../insert-of.ts'
import { planLetters } from '../pair-letters.ts'
import { type PlanInput, planOf } from '../plan-of.ts'
import { buyingWaits } from '../waits.ts'

/** What a chart reads of the settled plan. */
export interface WornIn {
	/** Whether an insert or a raise is worn. */
	insert: boolean
	/** Whether a pair to be bought may be named. */
	buying: boolean
	/** ISO date of the review. */
	reviewDate?: string
}
/** Read from what was settled: a proposal is worn by nobody. */
export function wornIn({ assessment, decisions }: PlanInput): WornIn {
	const plan = planOf({ assessment, decisions })
	return present({
		insert: insertWorn(plan),
		buying: !buyingWaits(plan.gate),
		reviewDate: plan.review?.date,
	})
}
export interface ChartInput extends WornIn {
	visit: Visit
	clinic: Clinic
	plan: PlanView
	paper: 'A4' | 'Letter' | 'A3'
	version?: number
	/** Left out for the privacy of a changing room where false. */
	showName?: boolean
	draft: boolean
	/** ISO date of making. */
	on: string
}
/** How a pair is named on the wall: its letter, its pattern, and '+' where an insert is worn. */
export interface Lettering {
	letterOf(pairId: string): string
	/** Plain for a pair that the plan does not have. */
	patternOf(pairId: string): Pattern
	insert: '+' | ''
}
/** A pair that has no letter has the pattern of its place in the plan: no two have the same. */
const patternOf = (letter: string, place: number): Pattern =>
	patternOfLetter(/^[A-Z]$/.test(letter) ? letter : String.fromCharCode(65 + place))
/** Letters as in the plan, else as the pairs of the visit have them, else the id. */
export function letteringOf({ visit, plan, insert }: ChartInput): Lettering {
	const ownLetters = planLetters(visit, plan)
	const letterOf = (pairId: string): string =>
		plan.pairs.find((pair) => pair.id === pairId)?.letter ?? ownLetters.get(pairId) ?? pairId
	const patterns = new Map(plan.pairs.map(({ id }, place) => [id, patternOf(letterOf(id), place)]))
	return {
		letterOf,
		patternOf: (pairId) => patterns.get(pairId) ?? 'plain',
		insert: insert ? '+' : '',
	}
}
