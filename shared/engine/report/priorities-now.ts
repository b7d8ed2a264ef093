/** What is done first, as it stands after the answers: its pairs and its day are those of the plan. */
import type { Kept, OwnedPair, Priority } from '../findings/assessment.ts'
import { pairsLeftOff } from '../prescription/owned.ts'
import type { SettledPlan } from '../prescription/settled.ts'
import { type Statement, state } from '../words/statement.ts'
import { speakOf } from './base.ts'
import type { ReportInput } from './inputs.ts'
import { pairName } from './pair-names.ts'
import { planOf } from './plan-of.ts'

type Owned = readonly Kept<OwnedPair>[]
const withVerdict = ({ owned }: SettledPlan, verdict: OwnedPair['verdict']): Owned =>
	owned.filter((pair) => pair.verdict === verdict)
/** Priorities about pairs: which, and what is said of them. */
interface OfPairs {
	pairs: (plan: SettledPlan) => Owned
	says: (pairs: string[]) => Statement
}
const ofPairs: Readonly<Record<string, OfPairs>> = {
	'priority.stop-wearing': {
		pairs: (plan) => withVerdict(plan, 'stop-wearing'),
		says: (pairs) => state('priority.stop-wearing', { pairs }),
	},
	'priority.mend-first': {
		pairs: (plan) => {
			const leftOff = pairsLeftOff(withVerdict(plan, 'modify'))
			return plan.owned.filter(({ id }) => leftOff.includes(id))
		},
		says: (pairs) => state('priority.mend-first', { pairs }),
	},
	'priority.replace': {
		pairs: (plan) => withVerdict(plan, 'replace'),
		says: (pairs) => state('priority.replace', { pairs }),
	},
	'priority.modify': {
		pairs: (plan) => {
			const mended = withVerdict(plan, 'modify')
			const leftOff = pairsLeftOff(mended)
			return mended.filter(({ id }) => !leftOff.includes(id))
		},
		says: (pairs) => state('priority.modify', { pairs }),
	},
}
/** The day that the plan now names, never one before the visit. ISO date. */
function dayOf({ code, when }: Kept<Priority>, plan: SettledPlan, visitDate: string): string {
	const byPairs =
		code === 'priority.replace' ? withVerdict(plan, 'replace').flatMap(({ by }) => by ?? []) : []
	const [day = when] = code === 'priority.review' ? [plan.review?.date] : byPairs.toSorted()
	return day < visitDate ? visitDate : day
}
/** The priorities of the plan, without those of which no pair is left. */
export function prioritiesNow(input: ReportInput): Kept<Priority>[] {
	const plan = planOf(input)
	const t = speakOf(input.clinic)
	return plan.priorities.flatMap((priority) => {
		const when = dayOf(priority, plan, input.visit.visitDate)
		const about = ofPairs[priority.code ?? '']
		if (!about) return [{ ...priority, when }]
		const names = about.pairs(plan).map(({ id }) => pairName(id, input.visit, t))
		return names.length === 0 ? [] : [{ ...priority, ...about.says(names), when }]
	})
}
