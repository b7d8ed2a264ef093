/**
 * The questions in the order in which one bears on the next: a changed answer turns what is
 * proposed to those after it, and what was answered about another proposal is asked again.
 */
import type { Assessment, Kept, Prescription, Question } from '../findings/assessment.ts'
import { canonicalJson, digestOf } from '../plain/canonical.ts'
import type { Answer } from '../visit/answers.ts'
import type { Decisions } from '../visit/decisions.ts'
import { answerTo, isSettled } from './answers.ts'
import { changeOf } from './change-plan.ts'
import { lineOf, type Named } from './lines.ts'
import { earliestReview, reviewsOfPairs } from './review.ts'
import type { PlannedFrom, SettledPlan } from './settled.ts'
import { changesWithLacing, subjectOf } from './subjects.ts'
import { takeOut } from './take-out.ts'

/** Those not named stand between the pairs owned and the review. */
const first = ['gate', 'complaint', 'size', 'owned', 'raise', 'insert']
const placeOf = (id: string): number => {
	const place = first.indexOf(id)
	if (place >= 0) return place
	return id === 'review' ? first.length + 1 : first.length
}
/** A question as it is asked once those before it are answered. */
interface Turn {
	question: Kept<Question>
	/** What is proposed to it. */
	plan: SettledPlan
	/** Questions whose answers turned its proposal. */
	changedBy: string[]
	answer: Answer | undefined
}
/** Nothing that is asked before them turns these. */
const isFirst = (id: string): boolean => ['gate', 'complaint', 'size'].includes(id)
const contentIn = (id: string, plan: SettledPlan): string => {
	const withLacing = id === 'changes' && !plan.questions.some((one) => one.id === 'lacing')
	const content = withLacing ? changesWithLacing(plan) : subjectOf(id, plan)
	return canonicalJson(content?.content ?? null)
}
/** What of the review is left once raise, insert and pairs are answered. */
function withReviewLeft(plan: SettledPlan, { visitDate }: PlannedFrom): SettledPlan {
	const { reviewAsked, ...rest } = plan
	if (reviewAsked === undefined) return plan
	const isRaised = plan.raise.pairs.some(({ left, right }) => left.addMm > 0 || right.addMm > 0)
	const isInserted = [plan.insert.left, plan.insert.right].some(({ state }) => state === 'proposed')
	const stands = { gate: true, signs: true, growth: true, raise: isRaised, insert: isInserted }
	const left = reviewAsked.filter(({ by }) => by !== 'owned' && stands[by])
	const earliest = earliestReview([...left, ...reviewsOfPairs({ owned: plan.owned, visitDate })])
	if (earliest?.date === plan.review?.date) return plan
	const { review: _, ...without } = rest
	return { ...without, reviewAsked, ...(earliest && { review: earliest }) }
}
function settle(plan: SettledPlan, answer: Answer, from: PlannedFrom): SettledPlan {
	const { question, choice, fields } = answer
	if (choice === 'set-aside')
		return { ...takeOut(plan, question), setAside: [...plan.setAside, question] }
	return choice === 'changed' && fields ? changeOf(question)(plan, fields, from) : plan
}
const turns = ({ choice }: Answer): boolean => choice === 'changed' || choice === 'set-aside'
/** An answer to the proposal of the rooms, or to what others made of it: both were read. */
function answerOf(
	decisions: Decisions,
	proposed: Kept<Question>,
	now: Kept<Question>,
): Answer | undefined {
	if (proposed.held) return undefined
	return [now, proposed].flatMap((question) =>
		isSettled(decisions, question) ? (answerTo(decisions, question) ?? []) : [],
	)[0]
}
/** @param plan as proposed, without an answer */
export function inTurn(
	plan: SettledPlan,
	decisions: Decisions,
	from: PlannedFrom,
): { plan: SettledPlan; turns: Turn[] } {
	const proposed = plan
	// without a change of the clinician's nothing turns, and nothing is compared
	const mayTurn = (decisions.answers ?? []).some(turns)
	const ordered = plan.questions.toSorted((one, other) => placeOf(one.id) - placeOf(other.id))
	const turnedBy = new Map<string, string[]>()
	const asked: Turn[] = []
	let now = plan
	for (const [at, question] of ordered.entries()) {
		if (question.id === 'review' && mayTurn) now = withReviewLeft(now, from)
		const turn = turnOf(question, now, proposed, decisions, mayTurn)
		asked.push({ ...turn, changedBy: turnedBy.get(question.id) ?? [] })
		const next = turn.answer ? settle(now, turn.answer, from) : now
		for (const id of turnedIn(ordered.slice(at + 1), now, next, from))
			turnedBy.set(id, [...(turnedBy.get(id) ?? []), question.id])
		now = next
	}
	return { plan: now, turns: asked }
}
/** Those of the questions whose proposal is another one now. */
const turnedIn = (
	questions: readonly Kept<Question>[],
	before: SettledPlan,
	after: SettledPlan,
	from: PlannedFrom,
): string[] =>
	before === after
		? []
		: questions.flatMap(({ id }) => (isTurned(id, before, after, from) ? [id] : []))
function isTurned(id: string, before: SettledPlan, after: SettledPlan, from: PlannedFrom): boolean {
	if (id !== 'review') return contentIn(id, before) !== contentIn(id, after)
	return contentIn(id, withReviewLeft(before, from)) !== contentIn(id, withReviewLeft(after, from))
}
function turnOf(
	question: Kept<Question>,
	plan: SettledPlan,
	proposed: SettledPlan,
	decisions: Decisions,
	mayTurn: boolean,
): Omit<Turn, 'changedBy'> {
	const { id } = question
	const isOther =
		mayTurn && !question.held && !isFirst(id) && contentIn(id, plan) !== contentIn(id, proposed)
	const now = isOther ? { ...question, of: digestOf({ id, now: contentIn(id, plan) }) } : question
	return { question: now, plan, answer: answerOf(decisions, question, now) }
}

/** A question as it is put now, with what is proposed to it. */
export interface AskedNow extends Question {
	/** Questions whose answers turned this proposal; empty where it is as the rooms proposed it. */
	changedBy: string[]
	/** What is proposed to it. */
	prescription: Prescription
	/** What its line said before the answers of others. */
	before?: string
}
/** The questions of a draft in the order of the plan, each as it is put once others are answered. */
export function askedNow(
	assessment: Assessment,
	proposed: SettledPlan,
	decisions: Decisions,
	named: Named,
): AskedNow[] {
	const { turns: asked } = inTurn(proposed, decisions, assessment)
	const { questions } = assessment.prescription
	const withLacing = !questions.some(({ id }) => id === 'lacing')
	return questions.map((question) => {
		const turn = asked.find((one) => one.question.id === question.id)
		const isOther = turn !== undefined && turn.question.of !== question.of
		if (!isOther)
			return { ...question, changedBy: [], prescription: planIn(assessment, turn?.plan) }
		return {
			...question,
			...lineOf(question.id, turn.plan, named, withLacing),
			of: turn.question.of,
			unchanged: false,
			changedBy: turn.changedBy,
			prescription: planIn(assessment, turn.plan),
			before: question.says,
		}
	})
}
/** What was proposed by this version: every statement has its code. */
const planIn = ({ prescription }: Assessment, plan: SettledPlan | undefined): Prescription =>
	plan === undefined ? prescription : { ...prescription, ...(plan as unknown as Prescription) }
