/** A signed visit with its plan, or why it cannot be read. */
import type { SignedPlan } from '../../../shared/desk/players/plan-in-few.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { tryVisit } from '../visits/reading.ts'
import type { VisitLine } from '../visits/visits.ts'

export type ReadPlan = { visitId: string; signed: SignedPlan } | { trouble: string }
export function readPlan(deps: Deps, line: VisitLine): ReadPlan {
	const read = tryVisit(deps, line)
	if ('trouble' in read) return read
	const { visitId, visit, decisions } = read.visit
	try {
		return { visitId, signed: { visit, decisions, assessment: assessmentOf(read.visit) } }
	} catch (error) {
		if (!(error instanceof Refusal)) throw error
		return { trouble: error.message }
	}
}
