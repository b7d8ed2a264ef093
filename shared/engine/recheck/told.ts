/** What was told of troubles on a re-check, and the warning questions that it answers. */
import type { Trouble } from '../visit/terms.ts'
import type { Since, Visit } from '../visit/visit.ts'
import { troubleRows } from './troubles.table.ts'

type Told = NonNullable<NonNullable<Since['worn']>[number]['trouble']>
/** Troubles in a list; 'none' is none. */
export const troublesIn = (told: Told = []): Trouble[] =>
	told.filter((trouble): trouble is Trouble => trouble !== 'none')
/** Every trouble of a re-check, each once. */
export const troublesTold = ({ since }: Pick<Visit, 'since'>): Trouble[] => [
	...new Set(
		[...(since?.worn ?? []), ...(since?.bought ?? [])].flatMap(({ trouble }) =>
			troublesIn(trouble),
		),
	),
]
/**
 * The visit with the warning questions that a trouble answers with yes: numbness told of an insert
 * counts whatever the question itself was answered. The same visit where none was told.
 */
export function withToldSigns(visit: Visit): Visit {
	const flags = troublesTold(visit).flatMap((trouble) => troubleRows[trouble].flag ?? [])
	if (flags.length === 0) return visit
	const yes = Object.fromEntries(flags.map((flag) => [flag, true]))
	return { ...visit, screening: { ...visit.screening, ...yes } }
}
