/** What the records call a thing, in the words of the other screens. */
import type { OutputOf } from '../../../shared/contract.ts'
import { type Purpose, purposes } from '../../../shared/desk/records/consent.ts'
import { metaOf } from '../../../shared/desk/records/told.ts'
import { playerSchema, visitSchema } from '../../../shared/engine/visit/visit.ts'

type Question = OutputOf<'outreach.list'>['questions'][number]
/** Kinds of records as a person calls them: one, several. */
const kinds: Record<string, readonly [string, string]> = {
	clinic: ['letterhead', 'letterheads'],
	settings: ['set of settings', 'sets of settings'],
	person: ['person of the clinic', 'people of the clinic'],
	player: ['entry of player details', 'entries of player details'],
	visit: ['visit', 'visits'],
	report: ['report', 'reports'],
	'visit-note': ['note on a visit', 'notes on visits'],
	consent: ['consent', 'consents'],
	hold: ['hold', 'holds'],
	merge: ['joined player', 'joined players'],
	season: ['season', 'seasons'],
	answer: ['answer', 'answers'],
	squad: ['entry of a screening day', 'entries of screening days'],
	'sending-note': ['note on sending', 'notes on sending'],
	shelf: ['shelf', 'shelves'],
	protocol: ['protocol', 'protocols'],
}
export const kindWords = (kind: string, count: number): string =>
	`${count} ${kinds[kind]?.[count === 1 ? 0 : 1] ?? kind}`
const spaced = (path: string): string => {
	const text = path
		.replaceAll('.', ' ')
		.replace(/([a-z])([A-Z])/g, '$1 $2')
		.toLowerCase()
	return text.charAt(0).toUpperCase() + text.slice(1)
}
function titled(
	schema: typeof visitSchema | typeof playerSchema,
	path: string,
): string | undefined {
	const meta = metaOf(path, schema)
	if (!meta || meta.title === path) return undefined
	const side = /\.(left|right)\./.exec(path)?.[1]
	return `${meta.title}${side ? `, ${side}` : ''}${meta.unit ? ` (${meta.unit})` : ''}`
}
/** A path of a draft as the assessment calls the field. */
export function draftField(path: string): string {
	const [group = '', ...rest] = path.split('.')
	const inner = rest.join('.')
	if (group === 'notMeasured')
		return `${titled(visitSchema, inner) ?? spaced(inner)}, why not measured`
	if (group === 'raw') return `${titled(visitSchema, inner) ?? spaced(inner)}, as typed`
	if (group === 'decisions') return `Decision: ${spaced(inner).toLowerCase()}`
	return titled(visitSchema, path) ?? spaced(path)
}
const decided: Record<string, string> = { permit: 'given', deny: 'refused', withdrawn: 'withdrawn' }
/** The field of a question, and one of its values. */
export function questionField({ what }: Question, field: string): string {
	if (what === 'consent') return `Consent to ${purposes[field as Purpose]?.says ?? field}`
	return what === 'details' ? (titled(playerSchema, field) ?? spaced(field)) : spaced(field)
}
export const questionValue = ({ what }: Question, shown: string): string =>
	what === 'consent' ? (decided[shown] ?? shown) : shown
/** The sentence over a question. */
export const questionWords = (question: Question): string =>
	question.says.replace(/ to ([a-z-]+)(?= for | was recorded)/, (whole, purpose: string) =>
		question.what === 'consent' && purpose in purposes
			? ` to ${purposes[purpose as Purpose].says}`
			: whole,
	)
