/**
 * The prescription as the clinician settled it: what documents, season and squad read. A record of
 * before 0.4 has no prescription: its plan is made of what its rooms proposed (before.ts).
 */
import type {
	Assessment,
	Kept,
	KeptAssessment,
	Prescription,
	Question,
} from '../findings/assessment.ts'
import type { Decisions } from '../visit/decisions.ts'
import { isSettled } from './answers.ts'
import { planOfBefore } from './before.ts'
import { type AskedNow, askedNow, inTurn } from './in-turn.ts'
import type { Named } from './lines.ts'
import { type SettledSize, sizeToBuyBy } from './settled-size.ts'
import { stillUrgent } from './still-urgent.ts'
import { takeOut } from './take-out.ts'

/** A prescription with the answers put in. */
export interface SettledPlan extends Kept<Prescription> {
	size: SettledSize
	/** Questions set aside: what they proposed stands nowhere, and the plan no longer holds it. */
	setAside: readonly string[]
	/** Questions not answered, or answered about another proposal: a draft still shows them. */
	open: readonly string[]
}
/** What of the assessment the plan is made of. */
export type PlannedFrom = Pick<KeptAssessment, 'sizing' | 'footwear' | 'visitDate'>

/** The plan as proposed, before any answer. */
const proposedPlan = (
	prescription: Kept<Prescription>,
	sizing: PlannedFrom['sizing'],
): SettledPlan => ({
	...prescription,
	size: sizeToBuyBy(sizing),
	setAside: [],
	open: [],
})
/** The plan that stands: proposals, changed or taken out as the clinician answered. */
export function settledPlan(assessment: KeptAssessment, decisions: Decisions): SettledPlan {
	const { prescription, sizing } = assessment
	if (!prescription) return planOfBefore(assessment, decisions)
	const { plan, turns } = inTurn(proposedPlan(prescription, sizing), decisions, assessment)
	const setAside = inOrder(plan.setAside, prescription)
	const open = turns.flatMap(({ question: { id, held }, answer }) => (held || answer ? [] : [id]))
	return stillUrgent(
		withDecided({ ...plan, setAside, open: inOrder(open, prescription) }, decisions),
	)
}
const inOrder = (ids: readonly string[], { questions }: Kept<Prescription>): string[] =>
	questions.flatMap(({ id }) => (ids.includes(id) ? [id] : []))
/** The questions of a draft as they are put now; what others' answers turned is asked again. */
export const questionsNow = (
	assessment: Assessment,
	decisions: Decisions,
	named: Named,
): AskedNow[] =>
	askedNow(assessment, proposedPlan(assessment.prescription, assessment.sizing), decisions, named)
/** Questions without an answer to what is put now: with one the visit may be signed. */
export function openNow(assessment: Assessment, decisions: Decisions): Question[] {
	const { prescription, sizing } = assessment
	const { turns } = inTurn(proposedPlan(prescription, sizing), decisions, assessment)
	const open = turns.filter(({ question }) => !question.held && !isSettled(decisions, question))
	return prescription.questions.filter(({ id }) => open.some(({ question }) => question.id === id))
}
/** What is decided element by element, and a day for the review that was set by itself. */
function withDecided(plan: SettledPlan, { insert = {}, reviewDate }: Decisions): SettledPlan {
	const elementsOf = (side: 'left' | 'right'): SettledPlan['insert']['left'] => {
		const proposed = plan.insert[side]
		const decided = insert[side] ?? []
		if (proposed.state === 'held' || plan.setAside.includes('insert') || decided.length === 0)
			return proposed
		const chosen = (choice: string) =>
			decided.filter((one) => one.choice === choice).map(({ element }) => element)
		const dropped = chosen('drop')
		const elements = [
			...new Set([
				...proposed.elements.filter((element) => !dropped.includes(element)),
				...chosen('add'),
			]),
		]
		return { ...proposed, state: elements.length > 0 ? 'proposed' : 'not-needed', elements }
	}
	const review =
		reviewDate === undefined
			? plan.review
			: { date: reviewDate, because: plan.review?.because ?? [] }
	return {
		...plan,
		insert: { left: elementsOf('left'), right: elementsOf('right') },
		...(review && { review }),
	}
}
/**
 * The plan of what is settled alone: for a record that was signed at once behind a stop, while
 * other questions stay open. Stop wearing a pair is a warning and stays.
 */
export const settledAlone = (plan: SettledPlan): SettledPlan =>
	stillUrgent(plan.open.reduce(takeOut, plan))
