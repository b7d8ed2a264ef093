/** What answering a question of the prescription does to a draft. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import type { Assessment, Gate, Question } from '../../../../shared/engine/findings/assessment.ts'
import type { Finding } from '../../../../shared/engine/findings/finding.ts'
import {
	answerTo,
	asProposed,
	changeableFields,
	changedTo,
	isSettled,
	leftUnchanged,
	overtakenAnswer,
	setAside,
	withAnswer,
	withoutAnswer,
} from '../../../../shared/engine/prescription/answers.ts'
import type { Answer, AnswerFields } from '../../../../shared/engine/visit/answers.ts'
import type { Decisions } from '../../../../shared/engine/visit/decisions.ts'
import { decide } from './decisions.ts'
import { questionPath } from './questionTitles.ts'

export type AnswerChoice = Answer['choice']
/** overtaken: answered when something else was proposed, so that it is asked again. */
export type QuestionState = 'held' | 'open' | 'overtaken' | 'settled'

/** The answer to a question, whatever was proposed when it was given. */
export const lastAnswer = (decisions: Decisions, question: Question): Answer | undefined =>
	answerTo(decisions, question) ?? overtakenAnswer(decisions, question)
const typedInto = ({ id }: Question, { raw }: DraftContent): string[] =>
	Object.keys(raw).filter((path) => path.startsWith(`${questionPath(id)}.`))
export function stateOf(draft: DraftContent, question: Question): QuestionState {
	if (question.held) return 'held'
	if (typedInto(question, draft).length > 0) return 'open'
	if (isSettled(draft.decisions, question)) return 'settled'
	return overtakenAnswer(draft.decisions, question) ? 'overtaken' : 'open'
}
/** How many questions are settled, of those that are asked. */
export function countSettled(draft: DraftContent, questions: readonly Question[]) {
	const asked = questions.filter(({ held }) => !held)
	return {
		settled: asked.filter((question) => stateOf(draft, question) === 'settled').length,
		asked: asked.length,
	}
}
const parts = ['person', 'left', 'right'] as const
export const isNotEstablished = (gate: Gate): boolean =>
	parts.some((part) => gate[part].state === 'not-established')
/**
 * What a question may be answered with. Danger is neither changed nor set aside here: a hold ends by
 * an outcome. A gate that is not established is asked first, or set aside with why.
 */
export function choicesFor(question: Question, gate: Gate): readonly AnswerChoice[] {
	const { id, held, unchanged } = question
	if (held) return []
	if (id === 'gate') return [isNotEstablished(gate) ? 'set-aside' : 'as-proposed']
	return [
		'as-proposed',
		...(changeableFields(id).length > 0 ? (['changed'] as const) : []),
		'set-aside',
		...(unchanged ? (['unchanged'] as const) : []),
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
/** What an earlier version kept by itself, and the elements that a change of the insert holds. */
const keptBeside: Readonly<Record<string, readonly (keyof Decisions)[]>> = {
	raise: ['heelRaiseMm', 'heelRaiseWhy'],
	review: ['reviewDate'],
	insert: ['insert'],
}
function withoutBeside(draft: DraftContent, { question, choice }: Answer): DraftContent {
	// the elements are what was changed
	if (question === 'insert' && choice === 'changed') return draft
	const gone = (keptBeside[question] ?? []).map((key) => [key, undefined])
	return gone.length > 0 ? decide(draft, Object.fromEntries(gone)) : draft
}
const put = (draft: DraftContent, answer: Answer): DraftContent => {
	const kept = withoutBeside(draft, answer)
	return { ...kept, decisions: withAnswer(kept.decisions, answer) }
}
/** Settles one question, and no other. What was typed into it and is no value goes. */
export function settle(
	draft: DraftContent,
	question: Question,
	choice: 'as-proposed' | 'unchanged',
): DraftContent {
	if (question.held) return draft
	const given = choice === 'unchanged' ? leftUnchanged(question) : asProposed(question)
	return put(withoutTyped(draft, question), given)
}
/** Sets a question aside once there is a reason; without one it is open again. */
export const putAside = (draft: DraftContent, question: Question, why: string): DraftContent =>
	why.trim() === ''
		? takeBack(draft, question)
		: put(withoutTyped(draft, question), setAside(question, why))
/** Opens a question again. */
export function takeBack(draft: DraftContent, question: Question): DraftContent {
	const { decisions, ...rest } = withoutTyped(draft, question)
	return { ...rest, decisions: withoutAnswer(decisions, question.id) }
}
/** Lets an answer stand that was given when something else was proposed. */
export function letStand(draft: DraftContent, question: Question): DraftContent {
	const last = lastAnswer(draft.decisions, question)
	return last ? put(draft, { ...last, of: question.of, read: [...question.because] }) : draft
}
/** What was changed in a question; empty where nothing was. */
export function changedIn(decisions: Decisions, question: Question): AnswerFields {
	return lastAnswer(decisions, question)?.fields ?? {}
}
/** Changes some fields of a question; those changed before stay, and so does the reason. */
export function changeFields(
	draft: DraftContent,
	question: Question,
	patch: AnswerFields,
): DraftContent {
	const last = lastAnswer(draft.decisions, question)
	const fields = { ...changedIn(draft.decisions, question), ...patch }
	return put(draft, changedTo(question, fields, last?.choice === 'changed' ? last.why : undefined))
}
/** The reason of a change; a change may stand without one. */
export function sayWhy(draft: DraftContent, question: Question, why: string): DraftContent {
	const last = lastAnswer(draft.decisions, question)
	if (last?.choice !== 'changed' || !last.fields) return draft
	return put(draft, changedTo(question, last.fields, why || undefined))
}
/**
 * Keeps what is typed into fields that belong together: as values once all of them are, until then
 * as typed, so that nothing is lost. @param typed texts by field; @param fields what they say, or
 * undefined while one of them is no value
 */
export function typeFields(
	draft: DraftContent,
	question: Question,
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
	return fields ? changeFields(kept, question, fields) : kept
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
/** The key of an answer, as it is written on it. */
export const keyOf = (choice: AnswerChoice): string => choice.charAt(0).toUpperCase()
/** What a key answers, where the question may be answered so. */
export function choiceOfKey(key: string, question: Question, gate: Gate): AnswerChoice | undefined {
	return choicesFor(question, gate).find((choice) => keyOf(choice) === key.toUpperCase())
}
