/** What answering a question of the prescription does to a draft. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import type { Assessment, Question } from '../../../../shared/engine/findings/assessment.ts'
import type { Finding } from '../../../../shared/engine/findings/finding.ts'
import { present } from '../../../../shared/engine/plain/present.ts'
import type { Answer, AnswerFields } from '../../../../shared/engine/visit/answers.ts'
import type { Decisions } from '../../../../shared/engine/visit/decisions.ts'
import { decide } from './decisions.ts'
import { kindOf, questionPath } from './questionTitles.ts'

export type AnswerChoice = Answer['choice']
/** overtaken: answered when something else was proposed, so that it is asked again. */
export type QuestionState = 'held' | 'open' | 'overtaken' | 'settled'

/** The answer to a question, whatever was proposed when it was given. */
export const lastAnswer = ({ answers }: Decisions, { id }: Question): Answer | undefined =>
	answers?.find(({ question }) => question === id)
/** The answer that stands: given about the proposal as it is now. */
export function standingAnswer(decisions: Decisions, question: Question): Answer | undefined {
	const answer = lastAnswer(decisions, question)
	return answer?.of === question.of ? answer : undefined
}
const typedInto = ({ id }: Question, { raw }: DraftContent): string[] =>
	Object.keys(raw).filter((path) => path.startsWith(`${questionPath(id)}.`))
export function stateOf(draft: DraftContent, question: Question): QuestionState {
	if (question.held) return 'held'
	if (typedInto(question, draft).length > 0) return 'open'
	if (standingAnswer(draft.decisions, question)) return 'settled'
	return lastAnswer(draft.decisions, question) ? 'overtaken' : 'open'
}
/** How many questions are settled, of those that are asked. */
export function countSettled(draft: DraftContent, questions: readonly Question[]) {
	const asked = questions.filter(({ held }) => !held)
	return {
		settled: asked.filter((question) => stateOf(draft, question) === 'settled').length,
		asked: asked.length,
	}
}
/** Danger is not set aside or changed here: a hold ends by an outcome, written on Flags. */
const fixed: readonly string[] = ['gate']
/** Those without fields are taken as proposed or set aside. */
const withoutFields: readonly string[] = ['gate', 'complaint', 'other']
/** What a question may be answered with. */
export function choicesFor(question: Question): readonly AnswerChoice[] {
	if (question.held) return []
	const kind = kindOf(question.id)
	return [
		'as-proposed',
		...(withoutFields.includes(kind) ? [] : (['changed'] as const)),
		...(fixed.includes(kind) ? [] : (['set-aside'] as const)),
		...(question.unchanged && !fixed.includes(kind) ? (['unchanged'] as const) : []),
	]
}
/** The findings that stand inside a question, in its order. */
export const findingsIn = (question: Question, { findings }: Assessment): Finding[] =>
	question.because.flatMap((id) => findings.filter((finding) => finding.id === id))
/** Findings that no question shows: they are read below the questions. */
export function findingsElsewhere({ findings, prescription }: Assessment): Finding[] {
	const shown = new Set(prescription.questions.flatMap(({ because }) => because))
	return findings.filter(({ id }) => !shown.has(id))
}

function withoutTyped(draft: DraftContent, question: Question): DraftContent {
	const typed = typedInto(question, draft)
	const raw = Object.entries(draft.raw).filter(([path]) => !typed.includes(path))
	return { ...draft, raw: Object.fromEntries(raw) }
}
function put(draft: DraftContent, question: Question, answer: Answer | undefined): DraftContent {
	const before = draft.decisions.answers ?? []
	const others = before.filter((other) => other.question !== question.id)
	const answers = answer ? [...others, answer] : others
	return decide(draft, { answers: answers.length > 0 ? answers : undefined })
}
interface Given {
	choice: AnswerChoice
	fields?: AnswerFields
	why?: string
}
/** An answer about the proposal as it stands, with the findings that are read under it. */
const answered = (question: Question, assessment: Assessment, given: Given): Answer => {
	const read = findingsIn(question, assessment).map(({ id }) => id)
	return present({ question: question.id, ...given, of: question.of, read })
}
/** As proposed leaves no change of an element of the insert behind. */
const asProposedToo = (
	draft: DraftContent,
	{ id }: Question,
	choice: AnswerChoice,
): DraftContent =>
	kindOf(id) === 'insert' && choice !== 'changed' ? decide(draft, { insert: undefined }) : draft
/** Settles one question, and no other. What was typed into it and is no value goes. */
export const settle = (
	draft: DraftContent,
	question: Question,
	assessment: Assessment,
	given: Given,
): DraftContent =>
	question.held
		? draft
		: put(
				asProposedToo(withoutTyped(draft, question), question, given.choice),
				question,
				answered(question, assessment, given),
			)
/** Sets a question aside once there is a reason; without one it is open again. */
export const setAside = (
	draft: DraftContent,
	question: Question,
	assessment: Assessment,
	why: string,
): DraftContent =>
	why.trim() === ''
		? takeBack(draft, question)
		: settle(draft, question, assessment, { choice: 'set-aside', why })
/** Opens a question again. */
export const takeBack = (draft: DraftContent, question: Question): DraftContent =>
	put(withoutTyped(draft, question), question, undefined)
/** Lets an answer stand that was given when something else was proposed. */
export function letStand(
	draft: DraftContent,
	question: Question,
	assessment: Assessment,
): DraftContent {
	const { choice, fields, why } = lastAnswer(draft.decisions, question) ?? {}
	return choice === undefined
		? draft
		: put(draft, question, answered(question, assessment, present({ choice, fields, why })))
}
/** What was changed in a question; empty where nothing was. */
export function changedIn(decisions: Decisions, question: Question): AnswerFields {
	return lastAnswer(decisions, question)?.fields ?? {}
}
/** Changes some fields of a question; those changed before stay. */
export function changeFields(
	draft: DraftContent,
	question: Question,
	assessment: Assessment,
	patch: AnswerFields,
): DraftContent {
	const last = lastAnswer(draft.decisions, question)
	return put(
		draft,
		question,
		answered(
			question,
			assessment,
			present({
				choice: 'changed' as const,
				fields: { ...changedIn(draft.decisions, question), ...patch },
				why: last?.choice === 'changed' ? last.why : undefined,
			}),
		),
	)
}
/** The reason of a change; a change may stand without one. */
export function sayWhy(draft: DraftContent, question: Question, why: string): DraftContent {
	const last = lastAnswer(draft.decisions, question)
	return last ? put(draft, question, present({ ...last, why: why || undefined })) : draft
}
/**
 * Keeps what is typed into fields that belong together: as values once all of them are, until then
 * as typed, so that nothing is lost. @param typed texts by field; @param fields what they say, or
 * undefined while one of them is no value
 */
export function typeFields(
	draft: DraftContent,
	question: Question,
	assessment: Assessment,
	typed: Readonly<Record<string, string>>,
	fields: AnswerFields | undefined,
): DraftContent {
	const raw = { ...draft.raw }
	for (const [field, text] of Object.entries(typed)) {
		const path = questionPath(question.id, field)
		if (fields) delete raw[path]
		else raw[path] = text
	}
	const kept = { ...draft, raw }
	return fields ? changeFields(kept, question, assessment, fields) : kept
}
/** The text of a field: as typed where it is no value yet. */
export const typedText = (
	{ raw }: DraftContent,
	{ id }: Question,
	field: string,
	value: number | string | undefined,
): string => raw[questionPath(id, field)] ?? (value === undefined ? '' : String(value))
/** The question after or before one among those that are asked. */
export function besideQuestion(
	questions: readonly Question[],
	id: string,
	step: 1 | -1,
): string | undefined {
	const asked = questions.filter((question) => !question.held)
	return asked[asked.findIndex((question) => question.id === id) + step]?.id
}
/** The next question that is not settled, looked for after `id` and then from the beginning. */
export function nextOpen(
	draft: DraftContent,
	questions: readonly Question[],
	id: string,
): string | undefined {
	const at = questions.findIndex((question) => question.id === id)
	return [...questions.slice(at + 1), ...questions.slice(0, Math.max(at, 0))].find((question) =>
		['open', 'overtaken'].includes(stateOf(draft, question)),
	)?.id
}
const keyed: Readonly<Record<string, AnswerChoice>> = {
	a: 'as-proposed',
	c: 'changed',
	s: 'set-aside',
	u: 'unchanged',
}
/** What a key answers, where the question may be answered so. */
export function choiceOfKey(key: string, question: Question): AnswerChoice | undefined {
	const choice = keyed[key.toLowerCase()]
	return choice && choicesFor(question).includes(choice) ? choice : undefined
}
