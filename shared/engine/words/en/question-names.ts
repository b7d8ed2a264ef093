/** What the questions of a plan are called. */
import { term } from './format.ts'

const questionNames: Readonly<Record<string, string>> = {
	gate: 'safety',
	complaint: 'complaint and load',
	size: 'size',
	raise: 'heel raise',
	owned: 'pairs owned',
	insert: 'insert',
	changes: 'changes to footwear',
	lacing: 'lacing',
	review: 'review',
}
const purposes: Readonly<Record<string, string>> = { match: 'matches', everyday: 'everyday wear' }
export const pairFor = (role: string): string => `pair for ${purposes[role] ?? term(role)}`
/** What a question is called in a sentence: 'heel raise', 'pair for matches'. */
export const questionName = (id: string): string =>
	id.startsWith('pair.') ? pairFor(id.slice('pair.'.length)) : (questionNames[id] ?? id)
