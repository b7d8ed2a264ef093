import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { markPlayer, openSquad } from './board.ts'
import { listSquads } from './day.ts'
import { toFamilies } from './families.ts'
import { cancelReports, reportsProgress, startReports } from './reports.ts'
import { createSquad, importPlayers, previewRoster } from './roster.ts'
import { squadSummary, summaryPage } from './summary.ts'

/** The calls about screening days. */
export const squadCalls = (
	memory: Pick<
		Memory,
		'clinic' | 'drafts' | 'outbox' | 'outreach' | 'people' | 'players' | 'restored'
	>,
	deps: Deps,
) =>
	({
		'squad.list': () => listSquads(deps),
		'squad.previewRoster': (input) => previewRoster(memory, deps, input),
		'squad.create': (input) => createSquad(memory, deps, input),
		'squad.importPlayers': (input) => importPlayers(memory, deps, input),
		'squad.open': (input) => openSquad(memory, deps, input),
		'squad.mark': (input) => markPlayer(deps, input),
		'squad.reports': (input) => startReports(memory, deps, input),
		'squad.toFamilies': (input) => toFamilies(memory, deps, input),
		'squad.progress': (input) => reportsProgress(memory, input),
		'squad.cancel': (input) => cancelReports(memory, input),
		'squad.summary': (input) => squadSummary(memory, deps, input),
		'squad.summaryPage': (input) => summaryPage(memory, deps, input),
	}) satisfies Partial<Handlers>
