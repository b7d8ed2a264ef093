/**
 * The prescription as the clinician settled it: what documents, season and squad read. A record of
 * before 0.4 has no prescription: its plan is made of what its rooms proposed (before.ts).
 */
import type { Kept, KeptAssessment, Prescription, Span } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Answer } from '../visit/answers.ts'
import type { Decisions } from '../visit/decisions.ts'
import { answerTo, isSettled, openQuestions } from './answers.ts'
import { planOfBefore } from './before.ts'
import { changeOf } from './change-plan.ts'
import { stillUrgent } from './still-urgent.ts'
import { takeOut } from './take-out.ts'

/** The inside length to look for, mm; absent where there is none, or it was set aside. */
interface SettledSize {
	boots?: Span
	trainers?: Span
}
/** A prescription with the answers put in. */
export interface SettledPlan extends Kept<Prescription> {
	size: SettledSize
	/** Questions set aside: what they proposed stands nowhere, and the plan no longer holds it. */
	setAside: readonly string[]
	/** Questions not answered, or answered about another proposal: a draft still shows them. */
	open: readonly string[]
}
/** What of the assessment the plan is made of. */
export type PlannedFrom = Pick<KeptAssessment, 'sizing' | 'footwear'>

/** The plan that stands: proposals, changed or taken out as the clinician answered. */
export function settledPlan(assessment: KeptAssessment, decisions: Decisions): SettledPlan {
	const { prescription, sizing } = assessment
	if (!prescription) return planOfBefore(assessment, decisions)
	const proposed: SettledPlan = {
		...prescription,
		size: present({
			boots: sizing.insideLengthMm,
			trainers: sizing.trainers?.insideLengthMm,
		}),
		setAside: [],
		open: openQuestions(decisions, prescription).map(({ id }) => id),
	}
	const answers = prescription.questions.flatMap((question) => {
		const answer = answerTo(decisions, question)
		return !question.held && answer && isSettled(decisions, question) ? [answer] : []
	})
	const plan = answers.reduce((now, answer) => settle(now, answer, assessment), proposed)
	return stillUrgent(withDecided(plan, decisions))
}
function settle(plan: SettledPlan, answer: Answer, from: PlannedFrom): SettledPlan {
	const { question, choice, fields } = answer
	if (choice === 'set-aside')
		return { ...takeOut(plan, question), setAside: [...plan.setAside, question] }
	return choice === 'changed' && fields ? changeOf(question)(plan, fields, from) : plan
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
