/** What the records call a thing, in the words of the other screens. */
import type { OutputOf } from '../../../shared/contract.ts'
import { ledger } from '../../../shared/desk/ledger/ledger.ts'
import { type Purpose, purposes } from '../../../shared/desk/records/consent.ts'
import { metaOf } from '../../../shared/desk/records/told.ts'
import { dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import { decisionsSchema } from '../../../shared/engine/visit/decisions.ts'
import { playerSchema, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { timeInWords } from '../../parts/dates.ts'

type Question = OutputOf<'outreach.list'>['questions'][number]
export function kindWords(kind: string, count: number): string {
	const words = ledger.get(kind)?.words
	return `${count} ${words?.[count === 1 ? 'one' : 'many'] ?? kind}`
}
/** What is damaged and did not go along, behind a sentence; empty where all went. */
export const leftWords = (left: readonly string[]): string =>
	left.length === 0 ? '' : ` Not in the file: ${left.join(' ')}`
const spaced = (path: string): string => {
	const text = path
		.replaceAll('.', ' ')
		.replace(/([a-z])([A-Z])/g, '$1 $2')
		.toLowerCase()
	return text.charAt(0).toUpperCase() + text.slice(1)
}
function titled(
	schema: typeof visitSchema | typeof playerSchema | typeof decisionsSchema,
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
	if (group === 'decisions')
		return titled(decisionsSchema, inner) ?? `Decision: ${spaced(inner).toLowerCase()}`
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

type From = Question['fields'][number]['values'][number]['from']
/** Such as "At home, 12 May 2027, 10:04, by Imke Darrow". @param at when it was written */
export function fromWords(from: From, at: string): string {
	const by = from?.by ? `, by ${from.by}` : ''
	const when = timeInWords(at)
	if (!from) return when
	if (from.home) return `At home, ${when}${by}`
	const pack = from.packOf ? ` with the pack of ${dayOfMoment(from.packOf)}` : ''
	return `Away, ${when}${by}, on the laptop${pack}`
}
