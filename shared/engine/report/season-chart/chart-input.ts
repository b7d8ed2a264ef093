/** What the season chart is made of. */
import type { Decisions } from '../../visit/decisions.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Clinic } from '../clinic.ts'
import { insertDecided } from '../decided.ts'
import { type Pattern, patternOfLetter } from '../document.ts'
import type { PlanView } from '../inputs.ts'
import { planLetters } from '../pair-letters.ts'

export interface ChartInput {
	visit: Visit
	decisions: Decisions
	clinic: Clinic
	plan: PlanView
	paper: 'A4' | 'A3'
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
/** Letters as in the plan, else as the pairs of the visit have them, else the id. */
export function letteringOf({ visit, decisions, plan }: ChartInput): Lettering {
	const ownLetters = planLetters(visit, plan)
	const letterOf = (pairId: string): string =>
		plan.pairs.find((pair) => pair.id === pairId)?.letter ?? ownLetters.get(pairId) ?? pairId
	const patterns = new Map(plan.pairs.map(({ id }) => [id, patternOfLetter(letterOf(id))]))
	return {
		letterOf,
		patternOf: (pairId) => patterns.get(pairId) ?? 'plain',
		insert: insertDecided(decisions) ? '+' : '',
	}
}
