/** What is kept of a player's season: seasons, plans and calendars, each following the last. */
import type { Change } from '../../../shared/engine/season/difference.ts'
import { type Plan, planSchema } from '../../../shared/engine/season/plan-file.ts'
import { type Season, seasonSchema } from '../../../shared/engine/visit/visit.ts'
import type { PlayerIds } from '../players/memory.ts'
import type { Deps } from '../records/deps.ts'

interface SeasonValue {
	what: 'season'
	playerId: string
	season: Season
}
interface PlanValue {
	what: 'plan'
	playerId: string
	/** record of the season it was made for */
	season: string
	/** digest of what of the visit it rests on */
	basis: string
	plan: Plan
	changes: Change[]
}
interface CalendarValue {
	what: 'calendar'
	playerId: string
	text: string
}
type Value = SeasonValue | PlanValue | CalendarValue

/**
 * The records of one sort in order of writing; where players were merged, those of the record that
 * stands come first.
 */
function recordsOf(
	players: PlayerIds,
	{ store }: Deps,
	playerId: string,
	what: Value['what'],
): string[] {
	for (const id of players.idsOf(playerId)) {
		const found = store
			.cardsAbout('season', id)
			.filter(({ card }) => (card as { what: Value['what'] }).what === what)
			.map((card) => card.record)
		if (found.length > 0) return found
	}
	return []
}
/** The record of one sort that was written last. */
export const lastRecord = (
	players: PlayerIds,
	deps: Deps,
	playerId: string,
	what: Value['what'],
): string | undefined => recordsOf(players, deps, playerId, what).at(-1)
/** Keeps a value as a record that follows the last of its sort. @returns its id */
export const keepNext = ({ keep }: Deps, value: Value, follows: string | undefined): string =>
	keep({
		kind: 'season',
		follows,
		value,
		about: value.playerId,
		card: { what: value.what },
		does: value.what === 'calendar' ? 'export' : undefined,
	})
/** The season as it was saved last. */
export function lastSeason(
	players: PlayerIds,
	deps: Deps,
	playerId: string,
): { season: Season; record: string } | undefined {
	const record = lastRecord(players, deps, playerId, 'season')
	if (record === undefined) return undefined
	const { season } = deps.store.read(record).value as SeasonValue
	return { record, season: seasonSchema.parse(season) }
}
/** A plan as it was kept, with the number of plans so far as its version. */
export interface KeptPlan {
	value: PlanValue
	record: string
	at: string
	version: number
}
/** The plan that was made last. */
export function lastPlan(players: PlayerIds, deps: Deps, playerId: string): KeptPlan | undefined {
	const records = recordsOf(players, deps, playerId, 'plan')
	const record = records.at(-1)
	if (record === undefined) return undefined
	const stored = deps.store.read(record)
	const value = stored.value as PlanValue
	return {
		value: { ...value, plan: planSchema.parse(value.plan) },
		record,
		at: stored.at,
		version: records.length,
	}
}
/** The calendar that was given out last. */
export function lastCalendar(
	players: PlayerIds,
	deps: Deps,
	playerId: string,
): { text: string; record: string } | undefined {
	const record = lastRecord(players, deps, playerId, 'calendar')
	if (record === undefined) return undefined
	return { record, text: (deps.store.read(record).value as CalendarValue).text }
}
