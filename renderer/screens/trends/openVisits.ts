/** The visits of a player in order of time, and what the engine makes of the course. */

import { assess } from '../../../shared/engine/assess.ts'
import type { Chart } from '../../../shared/engine/charts/chart.ts'
import { coursesOf } from '../../../shared/engine/charts/charts.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { call, HostRefusal } from '../../host.ts'
import { clinicProtocol, loadProtocol } from '../../parts/clinicProtocol.ts'

export interface Opened {
	name: string
	visits: readonly Visit[]
	draftDate: string | undefined
	/** visits that cannot be read, in words: the course lacks them */
	lacking: readonly string[]
}
/** A signed visit, or in words why it cannot be read. */
async function visitOf(visitId: string): Promise<{ visit: Visit } | { lacks: string }> {
	try {
		return { visit: (await call('visits.open', { visitId })).visit }
	} catch (error) {
		if (error instanceof HostRefusal) return { lacks: error.message }
		throw error
	}
}
/** Signed visits that count, and the open draft where there is one, in order of time. */
export async function openVisits({ playerId }: { playerId: string }): Promise<Opened> {
	await loadProtocol()
	const { player, visits, drafts } = await call('players.open', { playerId })
	const read = await Promise.all(
		visits.filter((visit) => !visit.inError).map(({ visitId }) => visitOf(visitId)),
	)
	const signed = read.flatMap((one) => ('visit' in one ? [one.visit] : []))
	const lacking = read.flatMap((one) => ('lacks' in one ? [one.lacks] : []))
	const [draft] = drafts
	const working = draft
		? [(await call('drafts.open', { playerId, visitDate: draft.visitDate })).draft.content.visit]
		: []
	// a draft that amends a visit of the same day stands for it
	const dates = new Set(working.map((visit) => visit.visitDate))
	const all = [...signed.filter((visit) => !dates.has(visit.visitDate)), ...working].sort(
		(former, latter) => (former.visitDate < latter.visitDate ? -1 : 1),
	)
	return {
		name: fullName(player),
		visits: all,
		draftDate: draft?.visitDate,
		lacking,
	}
}
export interface Course {
	charts: readonly Chart[]
	/** why nothing could be worked out */
	trouble: string
}
/** The latest visit assessed against those before, and the charts that have two visits or more. */
export function courseOf(visits: readonly Visit[]): Course {
	const latest = visits.at(-1)
	if (!latest) return { charts: [], trouble: '' }
	const earlier = visits.slice(0, -1)
	try {
		const assessment = assess(latest, earlier, clinicProtocol.file)
		const charts = coursesOf(latest, earlier, assessment, clinicProtocol)
		return { charts: charts.filter((chart) => chart.visits > 1), trouble: '' }
	} catch {
		return {
			charts: [],
			trouble:
				'The course cannot be worked out from these visits. The measures stand below as they ' +
				'were recorded.',
		}
	}
}
