/** What each question is called on the screen. Pure. */
const titles: Readonly<Record<string, string>> = {
	gate: 'Gate',
	complaint: 'Complaint and load',
	size: 'Size and shape',
	raise: 'Heel raise',
	'pair.match': 'Match pair',
	'pair.training': 'Training pair',
	'pair.running': 'Running pair',
	'pair.everyday': 'Everyday pair',
	owned: 'Pairs owned',
	insert: 'Insert',
	changes: 'Changes to the boot',
	lacing: 'Lacing',
	review: 'Review',
}
/** A question of a later version is called by its id. */
export const titleOfQuestion = (id: string): string => titles[id] ?? id.replaceAll(/[.-]/g, ' ')
const prefix = 'questions.'
/** Where what is typed into a question stands while it is no value yet. */
export const questionPath = (id: string, field?: string): string =>
	`${prefix}${id}${field === undefined ? '' : `.${field}`}`
/** The question that a path belongs to; undefined where it belongs to none. */
export function questionOfPath(path: string): string | undefined {
	if (!path.startsWith(prefix)) return undefined
	const rest = path.slice(prefix.length)
	const known = Object.keys(titles).find((id) => rest === id || rest.startsWith(`${id}.`))
	return known ?? rest.split('.')[0]
}

export type QuestionKind =
	| 'gate'
	| 'complaint'
	| 'size'
	| 'raise'
	| 'pair'
	| 'owned'
	| 'insert'
	| 'changes'
	| 'lacing'
	| 'review'
	| 'other'
/** What a question is about, whichever role or pair it is of. */
export const kindOf = (id: string): QuestionKind => {
	if (id.startsWith('pair.')) return 'pair'
	return id in titles ? (id as QuestionKind) : 'other'
}
