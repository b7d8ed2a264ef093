/** What the Decide and Sign steps do to a draft. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import { metaOf } from '../../../../shared/desk/records/told.ts'
import { markedLines } from '../../../../shared/engine/report/marked.ts'
import {
	aboutOf,
	type DecidedOn,
	type Decision,
	type Decisions,
} from '../../../../shared/engine/visit/decisions.ts'
import { nameOfTyped } from '../flagsTyped.ts'
import { questionOfPath, titleOfQuestion } from './questionTitles.ts'

export type Choice = 'accept' | 'change' | 'drop'
/** Puts `patch` into the decisions; a key given as undefined is taken out. */
export function decide(
	draft: DraftContent,
	patch: { [K in keyof Decisions]?: Decisions[K] | undefined },
): DraftContent {
	const decisions = Object.fromEntries(
		Object.entries({ ...draft.decisions, ...patch }).filter(([, value]) => value !== undefined),
	)
	return { ...draft, decisions: decisions as Decisions }
}
export const lineOf = (draft: DraftContent, id: string): Decision | undefined =>
	draft.decisions.lines.find((line) => line.findingId === id)
function put(draft: DraftContent, id: string, line: Decision | undefined): DraftContent {
	const { lines } = draft.decisions
	if (!line) return decide(draft, { lines: lines.filter((other) => other.findingId !== id) })
	return decide(draft, {
		lines: lineOf(draft, id)
			? lines.map((other) => (other.findingId === id ? line : other))
			: [...lines, line],
	})
}
/**
 * Records a choice; null takes the decision back. @param on what is decided about: its words are
 * offered for changing unless the clinician wrote others before
 */
export function choose(
	draft: DraftContent,
	id: string,
	choice: Choice | null,
	on?: DecidedOn,
): DraftContent {
	if (!choice) return put(draft, id, undefined)
	const { why, says } = lineOf(draft, id) ?? {}
	return put(draft, id, {
		findingId: id,
		choice,
		...(choice === 'change' ? { says: says ?? on?.says ?? '' } : {}),
		...(why && choice !== 'accept' ? { why } : {}),
		...(on ? aboutOf(on) : {}),
	})
}
/** Changes the words of a line that is there. */
export function reword(
	draft: DraftContent,
	id: string,
	words: { says?: string; why?: string },
): DraftContent {
	const line = lineOf(draft, id)
	return line ? put(draft, id, { ...line, ...words }) : draft
}
export const removeLine = (draft: DraftContent, id: string): DraftContent =>
	put(draft, id, undefined)
export const ownLines = (draft: DraftContent): Decision[] =>
	draft.decisions.lines.filter((line) => line.choice === 'add')
/** Models and changes that an earlier version marked; now they are fields of an answer. */
export const earlierMarks = ({ decisions }: DraftContent): Decision[] =>
	(['model', 'work'] as const).flatMap((mark) => markedLines(decisions, mark))
/** Adds an empty line of the clinician's own, numbered after the highest there is. */
export function addOwn(draft: DraftContent): DraftContent {
	const highest = Math.max(
		0,
		...ownLines(draft).map((line) => Number(line.findingId.replace('own.', '')) || 0),
	)
	const id = `own.${highest + 1}`
	return put(draft, id, { findingId: id, choice: 'add', says: '' })
}
export type ActionRow = Decisions['actions'][number]
const actionPath = 'decisions.actions.'
/** The three rows of 'What to do now'; rows without a 'what' are kept as raw text. */
export function actionRows(draft: DraftContent): ActionRow[] {
	const rows = [...draft.decisions.actions]
	for (const at of ['1', '2', '3']) {
		const when = draft.raw[`${actionPath}${at}.when`] ?? '',
			who = draft.raw[`${actionPath}${at}.who`] ?? ''
		if (when || who) rows.push({ what: '', when, who })
	}
	while (rows.length < 3) rows.push({ what: '', when: '', who: '' })
	return rows.slice(0, 3)
}
export function setActions(draft: DraftContent, rows: readonly ActionRow[]): DraftContent {
	const raw = Object.fromEntries(
		Object.entries(draft.raw).filter(([path]) => !path.startsWith(actionPath)),
	)
	rows.forEach((row, index) => {
		if (row.what.trim()) return
		for (const key of ['when', 'who'] as const)
			if (row[key].trim()) raw[`${actionPath}${index + 1}.${key}`] = row[key]
	})
	return decide({ ...draft, raw }, { actions: rows.filter((row) => row.what.trim()) })
}

/** A field that is not a value yet, in words: its label and the text typed. */
export function rawWords(path: string, text: string): string {
	const said = text.trim() ? `'${text}'` : 'nothing is given'
	const onFlags = nameOfTyped(path)
	if (onFlags !== undefined) return `${onFlags}: ${said}`
	const side = /\.(left|right)(\.|$)/.exec(path)?.[1]
	const question = questionOfPath(path)
	const label = question
		? titleOfQuestion(question)
		: path.startsWith(actionPath)
			? `What to do now, row ${path.split('.')[2]}: say what, or clear the row`
			: titleOf(path)
	return `${label}${side ? `, ${side}` : ''}: ${said}`
}
// list rows and cards have paths the reader of single fields does not know
const titleOf = (path: string): string => metaOf(path)?.title ?? path
