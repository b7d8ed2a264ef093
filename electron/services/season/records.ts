/** What is kept of a player's season: seasons, plans and calendars, each following the last. */
import { z } from 'zod'
import type { SeasonValue } from '../../../shared/desk/season/season-record.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { state } from '../../../shared/engine/words/statement.ts'
import type { PlayerIds } from '../players/memory.ts'
import { readCards } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

type What = SeasonValue['what']
type ValueOfSort<Sort extends What> = Extract<SeasonValue, { what: Sort }>
const cardSchema = z.object({ what: z.string() })

/**
 * The records of one sort in order of writing; where players were merged, those of the record that
 * stands come first.
 */
function recordsOf(players: PlayerIds, { store }: Deps, playerId: string, what: What): string[] {
	for (const id of players.idsOf(playerId)) {
		const found = readCards(cardSchema, store.cardsAbout('season', id))
			.filter(({ card }) => card.what === what)
			.map(({ record }) => record)
		if (found.length > 0) return found
	}
	return []
}
/** The record of one sort that was written last. */
export const lastRecord = (
	players: PlayerIds,
	deps: Deps,
	playerId: string,
	what: What,
): string | undefined => recordsOf(players, deps, playerId, what).at(-1)
/** Keeps a value as a record that follows the last of its sort. @returns its id */
export const keepNext = ({ keep }: Deps, value: SeasonValue, follows: string | undefined): string =>
	keep({
		kind: 'season',
		follows,
		value,
		about: value.playerId,
		card: { what: value.what },
		does: value.what === 'calendar' ? 'export' : undefined,
	})
/** @throws Refusal in words where the record cannot be read, or is of another sort */
function openSort<Sort extends What>(
	{ openRecord }: Deps,
	record: string,
	what: Sort,
): { value: ValueOfSort<Sort>; at: string } {
	const { value, at } = openRecord('season', record)
	const isSort = (any: SeasonValue): any is ValueOfSort<Sort> => any.what === what
	if (isSort(value)) return { value, at }
	throw new Refusal('season.other-record', state('season.wrong-record', { record, what }))
}
/** The season as it was saved last. */
export function lastSeason(
	players: PlayerIds,
	deps: Deps,
	playerId: string,
): { season: Season; record: string } | undefined {
	const record = lastRecord(players, deps, playerId, 'season')
	if (record === undefined) return undefined
	return { record, season: openSort(deps, record, 'season').value.season }
}
/** A plan as it was kept, with the number of plans so far as its version. */
export interface KeptPlan {
	value: ValueOfSort<'plan'>
	record: string
	at: string
	version: number
}
/** The plan that was made last. */
export function lastPlan(players: PlayerIds, deps: Deps, playerId: string): KeptPlan | undefined {
	const records = recordsOf(players, deps, playerId, 'plan')
	const record = records.at(-1)
	if (record === undefined) return undefined
	return { ...openSort(deps, record, 'plan'), record, version: records.length }
}
/** The calendar that was given out last. */
export function lastCalendar(
	players: PlayerIds,
	deps: Deps,
	playerId: string,
): { text: string; record: string } | undefined {
	const record = lastRecord(players, deps, playerId, 'calendar')
	if (record === undefined) return undefined
	return { record, text: openSort(deps, record, 'calendar').value.text }
}
