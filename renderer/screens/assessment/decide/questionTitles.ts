/** What each question is called, what kind it is of, and where what is typed into it stands. Pure. */
import { pairRoles } from '../../../../shared/engine/visit/terms.ts'
import { questionName } from '../../../../shared/engine/words/en/question-names.ts'
import { capital } from '../../../../shared/engine/words/words.ts'

export const titleOfQuestion = (id: string): string => capital(questionName(id))
const prefix = 'questions.'
/** Where what is typed into a question stands while it is no value yet. */
export const questionPath = (id: string, field?: string): string =>
	`${prefix}${id}${field === undefined ? '' : `.${field}`}`
/** The question that a path belongs to; undefined where it belongs to none. */
export function questionOfPath(path: string): string | undefined {
	if (!path.startsWith(prefix)) return undefined
	const rest = path.slice(prefix.length)
	const pairs = pairRoles.map((role) => `pair.${role}`)
	return pairs.find((id) => rest === id || rest.startsWith(`${id}.`)) ?? rest.split('.')[0]
}

const kinds = [
	'gate',
	'complaint',
	'size',
	'raise',
	'pair',
	'owned',
	'insert',
	'changes',
	'lacing',
	'review',
] as const
export type QuestionKind = (typeof kinds)[number] | 'other'
/** What a question is about, whichever role it is of; one of a later version is of another kind. */
export const kindOf = (id: string): QuestionKind =>
	kinds.find((kind) => kind === id.split('.')[0]) ?? 'other'
