/**
 * The one plan that every document prints: what the clinician settled. A draft shows what is still
 * open as a proposal; a page that was signed, and a page for anybody else, does not.
 */
import type { OwnedPair, Prescription } from '../findings/assessment.ts'
import { type SettledPlan, settledPlan } from '../prescription/settled.ts'
import { gateBefore } from './gate-before.ts'
import type { ReportInput } from './inputs.ts'

/** What a plan is read from. `draft`: open questions show as proposed. */
export type PlanInput = Pick<ReportInput, 'assessment' | 'decisions'> &
	Partial<Pick<ReportInput, 'draft'>>

/** The plan as this document may print it. */
export function planOf({ assessment, decisions, draft = false }: PlanInput): SettledPlan {
	const plan = settledPlan(assessment, decisions)
	const whole = assessment.prescription
		? plan
		: { ...plan, gate: gateBefore(assessment, decisions) }
	return draft ? whole : withoutOpen(whole)
}
/** Whether a question was answered, and not set aside; what no question was asked about stands. */
export const isSettled = ({ open, setAside }: SettledPlan, question: string): boolean =>
	!open.includes(question) && !setAside.includes(question)

const nothing = { state: 'not-needed', elements: [], pairs: [] } as const
const noInsert = (): SettledPlan['insert'] => ({
	left: { ...nothing, elements: [], pairs: [] },
	right: { ...nothing, elements: [], pairs: [] },
})
/** What a question's part of the plan is while it is open; a gate and a size are no proposal. */
const whileOpen: Readonly<Record<string, (plan: SettledPlan) => Partial<Prescription | SettledPlan>>> =
	{
		raise: () => ({ raise: { aim: { kind: 'none', because: [] }, pairs: [], steps: [] } }),
		insert: ({ insert }) => ({ insert: heldOrNothing(insert) }),
		changes: () => ({ changes: [] }),
		lacing: () => ({ lacing: [] }),
		owned: ({ owned }) => ({ owned: owned.filter(isDanger) }),
		review: () => ({ review: undefined }),
	}
const heldOrNothing = ({ left, right }: SettledPlan['insert']): SettledPlan['insert'] => {
	const none = noInsert()
	return {
		left: left.state === 'held' ? left : none.left,
		right: right.state === 'held' ? right : none.right,
	}
}
/** What can hurt is said, decided or not. */
const isDanger = ({ verdict }: Pick<OwnedPair, 'verdict'>): boolean => verdict === 'stop-wearing'
/** The plan without what nobody answered yet. */
function withoutOpen(plan: SettledPlan): SettledPlan {
	const decided = plan.open.reduce<SettledPlan>(
		(sofar, question) => ({ ...sofar, ...(whileOpen[question]?.(sofar) as object | undefined) }),
		plan,
	)
	return {
		...decided,
		pairs: decided.pairs.filter(({ role }) => !plan.open.includes(`pair.${role}`)),
	}
}
