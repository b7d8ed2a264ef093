/** What an entry of a draft is called, and what stands in it, for who has to choose between two. */

import { decisionsSchema } from '../../visit/decisions.ts'
import type { Entry, Tree } from '../../visit/entries.ts'
import { type FieldMeta, fieldMeta } from '../../visit/field-meta.ts'
import { heldTogether } from '../../visit/row-lists.table.ts'
import { rowListAt } from '../../visit/rows.ts'
import { termWords } from '../../visit/terms.ts'
import { visitSchema } from '../../visit/visit.ts'
import { amount, capital } from './format.ts'
import { coreQuestionNames } from './gate.ts'
import { questionHeadings } from './question-headings.table.ts'
import { questionName } from './question-names.ts'

type Node = Entry | Tree | null
const isEntry = (node: Node): node is Entry => Array.isArray(node)

const isGroup = (keys: readonly string[]): boolean => heldTogether.includes(keys.join('.'))
/** A group that is taken out or kept as one. */
function groupName([part, head = '', key = '']: readonly string[]): string {
	if (part === 'decisions') return decided[head] ?? head
	return key === '' ? 'The season' : `Flags: ${questionHeadings[key] ?? key}`
}
/** The field of the visit at the keys; undefined where they name an item of a list, or a group. */
function fieldAt(path: readonly string[]): FieldMeta | undefined {
	const [part, head = '', ...rest] = path
	if (part === 'typedTwice' || isGroup(path)) return undefined
	if (part === 'decisions') return decisionAt([head, ...rest])
	const isRow = head === 'conditions' || head === 'footwear'
	const keys = isRow ? [head, '0', ...rest.slice(1)] : [head, ...rest]
	if (isRow && rest.length < 2) return undefined
	try {
		return fieldMeta(visitSchema, keys.join('.'))
	} catch (error) {
		if (error instanceof RangeError) return undefined
		throw error
	}
}
/** What was decided in a field with a name of its own. */
function decisionAt(keys: readonly string[]): FieldMeta | undefined {
	if (keys.length < 2 || rowListAt(`decisions.${keys[0]}`)) return undefined
	try {
		const field = fieldMeta(decisionsSchema, keys.join('.'))
		return field.title === keys.join('.') ? undefined : field
	} catch (error) {
		if (error instanceof RangeError) return undefined
		throw error
	}
}
const decided: Readonly<Record<string, string>> = {
	heelRaiseMm: 'Heel raise',
	heelRaiseWhy: 'Why the heel raise',
	actions: 'What to do now',
	warningSigns: 'Warning signs',
	reviewDate: 'Review',
	referralDone: 'What was done about the referral',
	consentNoted: 'Consent',
	released: 'Told to the guardian',
	screeningDone: 'What was done about the warning signs',
	lines: 'Note on a finding',
	insert: 'Insert',
	agreement: 'Agreement',
}
function decisionName(keys: readonly string[]): string {
	const [, key = '', ...rest] = keys
	const field = fieldAt(keys)
	if (field) return field.title
	if (key === 'answers') return `Decide: ${questionName(rest[0] ?? '')}`
	const name = decided[key] ?? capital(termWords(key))
	const side = key === 'insert' || key === 'heelRaiseMm' ? rest[0] : undefined
	const element = key === 'insert' ? rest[1] : undefined
	return [name, side, element && termWords(element)].filter(Boolean).join(', ')
}
/** A condition as recorded: the number that tells two of one name stays. */
function conditionName(row: string): string {
	const [, term = row, number = ''] = /^(.*?)( \d+)?$/.exec(row) ?? []
	return capital(`${termWords(term)}${number}`)
}
function visitName(keys: readonly string[], pairName: string | undefined): string {
	const [, head = '', row = ''] = keys
	const field = fieldAt(keys)
	const side = keys.find((key) => key === 'left' || key === 'right')
	if (row === '' && !field) return capital(termWords(head))
	if (head === 'coreSetAside')
		return `Not asked: ${coreQuestionNames[row as keyof typeof coreQuestionNames] ?? row}`
	if (head === 'outcomes') return 'What was found about a warning sign'
	const of =
		head === 'conditions'
			? conditionName(row)
			: head === 'footwear'
				? capital(pairName ?? `pair ${row}`)
				: undefined
	if (!field) return of ?? capital(termWords(keys.at(-1) ?? ''))
	return `${of === undefined ? '' : `${of}: `}${field.title}${side ? `, ${side}` : ''}`
}
/**
 * 'Ball width, left', 'Calcaneal apophysitis: Note'.
 * @param pairName what the pair is called that the entry is of
 */
export function entryName(keys: readonly string[], pairName?: string): string {
	if (isGroup(keys)) return groupName(keys)
	if (keys[0] === 'visit') return visitName(keys, pairName)
	if (keys[0] === 'decisions') return decisionName(keys)
	return 'Text that is no value yet'
}
const choices: Readonly<Record<string, string>> = {
	'as-proposed': 'as proposed',
	changed: 'changed',
	'set-aside': 'set aside',
	unchanged: 'unchanged',
	accept: 'accepted',
	change: 'changed',
	drop: 'dropped',
	add: 'added',
}
/** Of an answer these tell nothing to a person. */
const unsaid = ['of', 'read', 'about', 'question', 'findingId', 'element']
function valueWords(value: unknown, field: FieldMeta | undefined): string {
	if (typeof value === 'boolean') return value ? 'yes' : 'no'
	if (typeof value === 'number') return amount(value, field?.unit ?? '', 3)
	if (typeof value === 'string') return field?.kind === 'choice' ? termWords(value) : value
	if (Array.isArray(value)) return value.map((item) => valueWords(item, field)).join(', ')
	if (typeof value !== 'object' || value === null) return 'nothing'
	return Object.entries(value)
		.filter(([key]) => !unsaid.includes(key))
		.map(([key, inner]) =>
			key === 'choice' ? (choices[String(inner)] ?? String(inner)) : valueWords(inner, field),
		)
		.join(', ')
}
/** Texts are no longer than a line of a button. */
const longest = 60
const short = (words: string): string =>
	words.length > longest ? `${words.slice(0, longest - 1)}…` : words
/** An item of a list, or a group, is there or not. */
const isPart = (keys: readonly string[]): boolean =>
	isGroup(keys) || (keys.length === 3 && (keys[1] === 'conditions' || keys[1] === 'footwear'))
/** What an entry holds, in so many words that it can stand on a button; null is nothing. */
export function entryWords(node: Node, keys: readonly string[]): string {
	if (node === null) return isPart(keys) ? 'taken out' : 'nothing'
	if (!isEntry(node)) return 'kept'
	const [value, text, reason] = node
	if (typeof text === 'string') return short(`'${text}', no value yet`)
	if (typeof reason === 'string') return short(`not measured: ${reason}`)
	return short(valueWords(value, fieldAt(keys)))
}
