import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { chartSeason, seasonCalendar, seasonPage } from './give-out.ts'
import { previewSeasonImport } from './import.ts'
import { cancelPlan, leavePlan, planPlayer, planProgress, takePlan } from './planning.ts'
import { openSeason, saveSeason } from './season.ts'

type Needs = Pick<Memory, 'clinic' | 'drafts' | 'people' | 'players' | 'season'>

/** The calls about a player's season. */
export const seasonCalls = (memory: Needs, deps: Deps) =>
	({
		'season.open': (input) => openSeason(memory, deps, input),
		'season.save': (input) => saveSeason(memory, deps, input),
		'season.previewImport': (input) => previewSeasonImport(memory, deps, input),
		'season.plan': (input) => planPlayer(memory, deps, input),
		'season.take': (input) => takePlan(memory, deps, input),
		'season.leave': (input) => leavePlan(memory, input),
		'season.cancel': (input) => cancelPlan(memory, input),
		'season.progress': (input) => planProgress(memory, input),
		'season.chart': (input) => chartSeason(memory, deps, input),
		'season.page': (input) => seasonPage(memory, deps, input),
		'season.ics': (input) => seasonCalendar(memory, deps, input),
	}) satisfies Partial<Handlers>
