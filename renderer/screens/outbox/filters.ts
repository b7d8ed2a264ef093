/** Which part of the queue is shown, and what waits for somebody. Pure. */

import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import {
	kindWords,
	type OutboxState,
	outboxStates,
	stateWords,
} from '../../../shared/desk/outbox/item.ts'
import { fits } from '../../parts/fits.ts'

interface Filter {
	title: string
	shows: (item: OutboxView) => boolean
}
const open: Filter = { title: 'All but closed', shows: (item) => item.state !== 'closed' }
const late: Filter = { title: 'Overdue', shows: (item) => item.overdue }
const ofState = (state: OutboxState): Filter => ({
	title: stateWords[state],
	shows: (item) => item.state === state,
})
const filters: readonly Filter[] = [open, late, ...outboxStates.map(ofState)]
/** In the order in which they are offered. */
export const filterTitles: readonly string[] = filters.map(({ title }) => title)
/** What the queue shows first, and where nothing is chosen. */
export const firstFilter = open.title

/** What of a row is looked through. */
const wordsIn = ({ number, playerName, recipient, kind }: OutboxView): string =>
	[number, playerName, recipient.name, recipient.email, kindWords[kind]].join(' ')
/**
 * The items that a filter shows, those due first. @param title empty where none is chosen
 * @param words looked for; empty for all
 */
export function shownItems(items: readonly OutboxView[], title: string, words = ''): OutboxView[] {
	const filter = filters.find((known) => known.title === title) ?? open
	return items
		.filter((item) => filter.shows(item) && fits(wordsIn(item), words))
		.toSorted((left, right) => {
			if (left.due === right.due) return 0
			return left.due < right.due ? -1 : 1
		})
}

interface Waits {
	filter: Filter
	words: string
	/** Whether something went wrong with it. */
	wrong: boolean
}
/** Shown over every page of the room; each count opens its part of the queue. */
const waits: readonly Waits[] = [
	{ filter: ofState('to-check'), words: 'to check', wrong: false },
	{ filter: ofState('ready'), words: 'ready', wrong: false },
	{ filter: ofState('uncertain'), words: 'uncertain', wrong: true },
	{ filter: ofState('returned'), words: 'returned', wrong: true },
	{ filter: late, words: 'overdue', wrong: true },
]
/** How many items wait for somebody, by what for; what none waits for is left out. */
export const waitingCounts = (items: readonly OutboxView[]) =>
	waits
		.map(({ filter, words, wrong }) => ({
			words,
			wrong,
			filter: filter.title,
			count: items.filter(filter.shows).length,
		}))
		.filter(({ count }) => count > 0)
