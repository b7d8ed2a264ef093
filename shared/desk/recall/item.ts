/** One thing that a player is due for: by the date that the signed prescription or the season holds. */
import { z } from 'zod'
import { id } from '../workplace/shapes.ts'

/** In the order in which they stand on a line. */
export const dueKinds = ['review', 'measure', 'insert', 'pair', 'season'] as const
export type DueKind = (typeof dueKinds)[number]
/** What kind of appointment it is: nothing of why, for anybody at the desk. */
export const dueWords: Readonly<Record<DueKind, string>> = {
	review: 'Review',
	measure: 'Measure the feet again',
	insert: 'Check the insert',
	pair: 'A pair runs out',
	season: 'Plan the season again',
}
/**
 * What an answer is about. A newer visit, a newer plan or another day is another item: what was
 * answered before does not silence it.
 */
export const dueSchema = z.strictObject({
	kind: z.enum(dueKinds),
	/** the visit that holds the date, or the record of the plan */
	from: id,
	/** the pair, by its id in the visit */
	pair: z.string().min(1).max(80).optional(),
	/** the day by which, ISO date */
	on: z.iso.date(),
})
export type Due = z.infer<typeof dueSchema>

/** Tells an item from every other one of the same player. */
export const keyOf = ({ kind, from, pair = '', on }: Due): string =>
	[kind, from, pair, on].join(' ')
