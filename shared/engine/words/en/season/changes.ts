/** What differs between two plans, and what a list would change of a session. */
import { alsoTo, sentence } from '../../sentence.ts'
import { amount, fullDay, term } from '../format.ts'
import { called, type NamedPair } from './wearing.ts'

/** Minutes in a pair; its id alone where the plan has it no more. */
interface Worn {
	pair: NamedPair | string
	minutes: number
}
type Occasion = {
	date: string
	start: string
	kind: string
}
/** A field of a session before and after, as the file holds it. */
interface Moved {
	field: 'date' | 'start' | 'minutes' | 'surface' | 'ground'
	before: string | number
	after: string | number
}
/** The same of a list, which may leave a field out. */
interface Listed {
	field: Moved['field'] | 'kind' | 'status' | 'title' | 'place' | 'team'
	before?: string | number
	after?: string | number
}
const nameOf = (pair: NamedPair | string): string =>
	typeof pair === 'string' ? pair : called(pair)
/** In the order of wear; one pair alone without its minutes. */
function wornWords(worn: readonly Worn[]): string {
	const [first, ...others] = worn
	if (!first) return 'no pair'
	if (others.length === 0) return nameOf(first.pair)
	return worn
		.map(({ pair, minutes }) => `${nameOf(pair)} for ${amount(minutes, 'minutes')}`)
		.join(', then ')
}
const occasionWords = ({ date, start, kind }: Occasion): string =>
	`${fullDay(date)}, ${start}, ${kind}`
/** A field that is missing means that the session takes place, or that there is nothing. */
function valueWords(field: Listed['field'], value: string | number | undefined): string {
	if (value === undefined) return field === 'status' ? 'on' : 'none'
	if (field === 'date') return fullDay(String(value))
	return field === 'surface' ? term(String(value)) : String(value)
}
const movedWords = ({ field, before, after }: Moved): string =>
	`${field} ${valueWords(field, before)} becomes ${valueWords(field, after)}`
const byThen = (date: string | undefined): string =>
	date === undefined ? 'not this season' : fullDay(date)

export const seasonChangeSentences = {
	'season.change-new': alsoTo(
		sentence<Occasion & { worn: readonly Worn[] }>({
			clinician: ({ worn, ...occasion }) => `${occasionWords(occasion)}: new, ${wornWords(worn)}`,
		}),
		'player',
		'coach',
	),
	'season.change-moved': alsoTo(
		sentence<
			Occasion & {
				moved: readonly Moved[]
				worn?: { before: readonly Worn[]; after: readonly Worn[] }
			}
		>({
			clinician: ({ moved, worn, ...occasion }) =>
				`${occasionWords(occasion)}: ${[
					...moved.map(movedWords),
					...(worn ? [`${wornWords(worn.before)} becomes ${wornWords(worn.after)}`] : []),
				].join('; ')}`,
		}),
		'player',
		'coach',
	),
	'season.change-off': alsoTo(
		sentence<Occasion & { status?: 'cancelled' | 'bye' | 'injured' }>({
			clinician: ({ status, ...occasion }) =>
				`${occasionWords(occasion)}: ${status ?? 'taken out'}`,
			coach: ({ status, ...occasion }) =>
				`${occasionWords(occasion)}: ${status === 'injured' ? 'not playing' : (status ?? 'taken out')}`,
		}),
		'player',
	),
	'season.change-pair-new': alsoTo(
		sentence<NamedPair>({
			clinician: (pair) => `Pair ${called(pair)} is new in the plan.`,
		}),
		'player',
		'coach',
	),
	'season.change-pair-date': alsoTo(
		sentence<NamedPair & { before?: string; after?: string }>({
			clinician: ({ before, after, ...pair }) =>
				`Pair ${called(pair)}: replace by ${byThen(before)} becomes ${byThen(after)}`,
		}),
		'player',
	),
	'season.change-pair-gone': alsoTo(
		sentence<NamedPair>({
			clinician: (pair) => `Pair ${called(pair)} is no longer in the plan.`,
		}),
		'player',
		'coach',
	),
	'season.list-change': sentence<{ date: string; changed: readonly Listed[] }>({
		clinician: ({ date, changed }) =>
			`${fullDay(date)}: ${
				changed
					.map(
						({ field, before, after }) =>
							`${field}: ${valueWords(field, before)} becomes ${valueWords(field, after)}`,
					)
					.join('; ') || 'details of the list'
			}`,
	}),
}
