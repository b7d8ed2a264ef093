/** The clinician's answers to the questions of a prescription: found, judged and made. Pure. */
import type { Gate, Prescription, Question } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Answer, AnswerFields } from '../visit/answers.ts'
import type { Decisions } from '../visit/decisions.ts'

/** What is looked at of a question; one of a record as well. */
export type Asked = Pick<Question, 'id' | 'of' | 'because' | 'held' | 'unchanged'>
type Answers = Pick<Decisions, 'answers'>
/** What the answer to a question may put otherwise; those not named take none. */
const fieldsOf: Readonly<Record<string, readonly (keyof AnswerFields)[]>> = {
	complaint: ['load'],
	size: ['insideLengthMm'],
	raise: ['raise'],
	pair: ['sole', 'seek', 'avoid', 'models', 'buy'],
	owned: ['verdicts'],
	insert: ['keep', 'adjust', 'anew'],
	changes: ['keep'],
	lacing: ['keep'],
	review: ['reviewDate'],
}
const subjectOf = (id: string): string => id.split('.')[0] ?? id
/** The fields that a changed answer may hold: none where it can only be taken or set aside. */
export const changeableFields = (id: string): readonly (keyof AnswerFields)[] =>
	fieldsOf[subjectOf(id)] ?? []

/** The latest answer to a question, whatever proposal it was about. */
const lastAnswer = ({ answers = [] }: Answers, { id }: Pick<Asked, 'id'>): Answer | undefined =>
	answers.findLast(({ question }) => question === id)
/** The answer to a question as it is asked now; none where it was about another proposal. */
export function answerTo(
	decisions: Answers,
	question: Pick<Asked, 'id' | 'of'>,
): Answer | undefined {
	const answer = lastAnswer(decisions, question)
	return answer?.of === question.of ? answer : undefined
}
/** The answer to a proposal that is another now: it is shown, and asked again. */
export function overtakenAnswer(
	decisions: Answers,
	question: Pick<Asked, 'id' | 'of'>,
): Answer | undefined {
	const answer = lastAnswer(decisions, question)
	return answer !== undefined && answer.of !== question.of ? answer : undefined
}
/**
 * Whether an answer settles its question: changed fields are of that question, what is set aside
 * has its reason, and only what did not change may be left as it was.
 */
function settles({ choice, fields, why }: Answer, { id, unchanged }: Asked): boolean {
	if (choice === 'set-aside') return !!why?.trim()
	if (choice === 'unchanged') return unchanged && id !== 'gate'
	if (choice === 'as-proposed') return true
	const given = Object.keys(fields ?? {})
	const allowed: readonly string[] = changeableFields(id)
	return given.length > 0 && given.every((field) => allowed.includes(field))
}
/** Whether a question is settled: by an answer to this proposal. What is held is not asked. */
export function isSettled(decisions: Answers, question: Asked): boolean {
	const answer = answerTo(decisions, question)
	return answer !== undefined && settles(answer, question)
}
/**
 * Questions that are asked and not settled, in their order.
 * @internal
 */
export const openQuestions = <Each extends Asked>(
	decisions: Answers,
	{ questions }: { questions: readonly Each[] },
): Each[] => questions.filter((question) => !question.held && !isSettled(decisions, question))

const answer = (
	{ id, of, because }: Pick<Asked, 'id' | 'of' | 'because'>,
	choice: Answer['choice'],
	more: { fields?: AnswerFields | undefined; why?: string | undefined } = {},
): Answer => present({ question: id, choice, of, read: [...because].slice(0, 200), ...more })
/** The proposal stands, and what stands under it was read. */
export const asProposed = (question: Asked): Answer => answer(question, 'as-proposed')
/** Other fields stand. @param fields those of `changeableFields` */
export const changedTo = (question: Asked, fields: AnswerFields, why?: string): Answer =>
	answer(question, 'changed', { fields, why })
/** What was proposed stands nowhere. */
export const setAside = (question: Asked, why: string): Answer =>
	answer(question, 'set-aside', { why })
/** As at the last visit: only where `question.unchanged`. */
export const leftUnchanged = (question: Asked): Answer => answer(question, 'unchanged')
/** The decisions with this answer in place of an earlier one to the same question. */
export const withAnswer = (decisions: Decisions, given: Answer): Decisions => ({
	...decisions,
	answers: [
		...(decisions.answers ?? []).filter(({ question }) => question !== given.question),
		given,
	],
})
/** The decisions without an answer to a question. */
export function withoutAnswer(decisions: Decisions, id: string): Decisions {
	const { answers = [], ...others } = decisions
	const left = answers.filter(({ question }) => question !== id)
	return left.length > 0 ? { ...others, answers: left } : others
}
/**
 * The decisions with all that is open settled as proposed. A gate that is not established cannot
 * be: it is set aside. @param why the reason for that
 */
export const settleAll = (
	decisions: Decisions,
	{ questions, gate }: Pick<Prescription, 'questions' | 'gate'>,
	why: string,
): Decisions =>
	openQuestions(decisions, { questions }).reduce(
		(now, question) =>
			withAnswer(
				now,
				question.id === 'gate' && isNotEstablished(gate)
					? setAside(question, why)
					: asProposed(question),
			),
		decisions,
	)
const isNotEstablished = ({ person, left, right }: Gate): boolean =>
	[person, left, right].some(({ state }) => state === 'not-established')
