import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { State } from '../records/state.ts'
import {
	cancelPlan,
	chartSeason,
	openSeason,
	planPlayer,
	planProgress,
	previewSeasonImport,
	saveSeason,
	seasonCalendar,
} from './season.ts'

/** The calls about a player's season. */
export const seasonCalls = (state: State, deps: Deps) =>
	({
		'season.open': (input) => openSeason(state, deps, input),
		'season.save': (input) => saveSeason(state, deps, input),
		'season.previewImport': (input) => previewSeasonImport(state, deps, input),
		'season.plan': (input) => planPlayer(state, deps, input),
		'season.cancel': (input) => cancelPlan(state, input),
		'season.progress': (input) => planProgress(state, input),
		'season.chart': (input) => chartSeason(state, deps, input),
		'season.ics': (input) => seasonCalendar(state, deps, input),
	}) satisfies Partial<Handlers>
