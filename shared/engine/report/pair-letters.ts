/** The letters by which a player's pairs go on the chart, in the calendar and to the club. */
import { lettersOf } from '../season/problem/letters.ts'
import type { Visit } from '../visit/visit.ts'
import type { PlanView } from './inputs.ts'

/** Letters by the id of the pair, the same as in the plan. */
export const planLetters = (visit: Visit, plan: PlanView | undefined): Map<string, string> =>
	lettersOf(
		[...(visit.footwear ?? [])].sort((a, b) => (a.id < b.id ? -1 : 1)),
		(plan?.pairs ?? []).flatMap(({ id, letter }) => (letter === undefined ? [] : [{ id, letter }])),
	)
