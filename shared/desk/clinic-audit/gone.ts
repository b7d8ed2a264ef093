/** Players who were not seen again: whether they were to be. */
import type { Look, Seen } from './seen.ts'

/** A visit whose review is still to come is not due; one without a day for it is missing. */
const isDue = ({ plan }: Seen, today: string): boolean =>
	plan.review === undefined || plan.review.date < today

/** Whether somebody was seen again, or was to be. */
export const goneCell = ({ then }: Look, today: string): string =>
	isDue(then, today) ? 'missing' : 'not-due'
