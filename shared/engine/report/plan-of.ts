/**
 * The one plan that every document prints: what the clinician settled. A draft shows what is still
 * open as a proposal; a page that was signed, and a page for a club or a list, does not.
 */
import { type SettledPlan, settledAlone, settledPlan } from '../prescription/settled.ts'
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
		: { ...plan, gate: gateBefore(assessment, plan.gate) }
	// a day that was set by hand is decided, whether its question was answered or not
	const isDated = decisions.reviewDate !== undefined
	const asked = isDated ? { ...whole, open: whole.open.filter((id) => id !== 'review') } : whole
	return draft ? asked : settledAlone(asked)
}
/** The questions of a subject that are still open: `raise`, or `pair` for each of them. */
export const isOpen = ({ open }: Pick<SettledPlan, 'open'>, subject: string): boolean =>
	open.some((id) => id === subject || id.startsWith(`${subject}.`))
