/**
 * What is typed on the Flags step and is no record yet: an outcome, and why a question was not
 * asked. It stays in the draft as typed until it is recorded or cleared. Pure.
 */
import type { DraftContent } from '../../../shared/contract.ts'
import { holdables } from '../../../shared/engine/visit/holdables.ts'
import type { Outcome } from '../../../shared/engine/visit/visit.ts'
import { coreQuestionNames, signInWords } from '../../../shared/engine/words/en/gate.ts'
import { capital } from '../../../shared/engine/words/words.ts'

/** The sign that an outcome is of. */
export type SignOf = Pick<Outcome, 'rule' | 'side'>
export type OutcomeTyped = Pick<Outcome, 'found' | 'how' | 'by' | 'on' | 'lifts'> & {
	result: Outcome['result'] | null
	clears: boolean
}
export const outcomeResults = ['excluded', 'confirmed', 'recovered'] as const
const outcomes = 'outcomes.'
const reasons = 'coreSetAside.'
const fields = ['result', 'found', 'how', 'by', 'on', 'lifts', 'clears'] as const
type Field = (typeof fields)[number]
const fieldNames: Readonly<Record<Field, string>> = {
	result: 'result',
	found: 'what was found or excluded',
	how: 'how',
	by: 'by whom',
	on: 'on which day',
	lifts: 'no longer held',
	clears: 'the treating doctor allows sport',
}

export const blankOutcome = ({ visit }: Pick<DraftContent, 'visit'>): OutcomeTyped => ({
	result: null,
	found: '',
	how: '',
	by: '',
	on: visit.visitDate,
	lifts: [],
	clears: false,
})
const asTexts = (typed: OutcomeTyped): Record<Field, string> => ({
	...typed,
	result: typed.result ?? '',
	lifts: typed.lifts.join(' '),
	clears: typed.clears ? 'yes' : '',
})
const outcomePath = ({ rule, side }: SignOf, field: Field): string =>
	`${outcomes}${rule}.${side}.${field}`
/** What was typed of the outcome of a sign; blank where nothing was. */
export function outcomeTyped(draft: DraftContent, sign: SignOf): OutcomeTyped {
	const blank = blankOutcome(draft)
	const text = (field: Field): string =>
		draft.raw[outcomePath(sign, field)] ?? asTexts(blank)[field]
	const lifted = text('lifts').split(' ')
	return {
		result: outcomeResults.find((result) => result === text('result')) ?? null,
		found: text('found'),
		how: text('how'),
		by: text('by'),
		on: text('on'),
		lifts: holdables.filter((what) => lifted.includes(what)),
		clears: text('clears') !== '',
	}
}
/** Keeps what was typed of an outcome; what is as in a blank form is not kept. */
export function withOutcomeTyped(
	draft: DraftContent,
	sign: SignOf,
	typed: OutcomeTyped,
): DraftContent {
	const raw = { ...draft.raw }
	const [texts, blank] = [asTexts(typed), asTexts(blankOutcome(draft))]
	for (const field of fields) {
		const path = outcomePath(sign, field)
		if (texts[field] === blank[field]) delete raw[path]
		else raw[path] = texts[field]
	}
	return { ...draft, raw }
}
/** A path of an outcome: its sign and field. The rule of a sign has dots of its own. */
function outcomeOf(path: string): { sign: SignOf; field: Field } | undefined {
	const parts = path.slice(outcomes.length).split('.')
	const field = fields.find((one) => one === parts.at(-1))
	const side = (['left', 'right', 'both', 'none'] as const).find((one) => one === parts.at(-2))
	if (!path.startsWith(outcomes) || !field || !side) return undefined
	return { sign: { rule: parts.slice(0, -2).join('.'), side }, field }
}
/** The signs of which an outcome was begun and is not recorded. */
export function outcomesBegun({ raw }: DraftContent): SignOf[] {
	const begun = new Map<string, SignOf>()
	for (const path of Object.keys(raw)) {
		const sign = outcomeOf(path)?.sign
		if (sign) begun.set(`${sign.rule} ${sign.side}`, sign)
	}
	return [...begun.values()]
}

/** Why a core question was not asked, as typed. @param id of the question */
export const reasonTyped = ({ raw }: DraftContent, id: string): string =>
	raw[`${reasons}${id}`] ?? ''
export function withReasonTyped(draft: DraftContent, id: string, why: string): DraftContent {
	const { [`${reasons}${id}`]: _, ...raw } = draft.raw
	return { ...draft, raw: why === '' ? raw : { ...raw, [`${reasons}${id}`]: why } }
}
/** The core questions of which a reason was begun. */
export const reasonsBegun = ({ raw }: DraftContent): string[] =>
	Object.keys(raw)
		.filter((path) => path.startsWith(reasons))
		.map((path) => path.slice(reasons.length))

export const nameOfSign = ({ rule, side }: SignOf): string =>
	`${capital(signInWords(rule.replace(/^screening\./, '')))}${side === 'none' ? '' : `, ${side}`}`
/** What a path of this step is called; undefined where it is of another. */
export function nameOfTyped(path: string): string | undefined {
	if (path.startsWith(reasons)) {
		const id = path.slice(reasons.length)
		return `Why not asked, on Flags: ${coreQuestionNames[id] ?? id}`
	}
	const of = outcomeOf(path)
	return of && `Outcome not recorded yet, on Flags: ${nameOfSign(of.sign)}, ${fieldNames[of.field]}`
}
