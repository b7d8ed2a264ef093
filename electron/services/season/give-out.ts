/** A plan given out: as a chart, a pocket table, a calendar. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { pocketTable } from '../../../shared/engine/report/pocket.ts'
import { seasonChart } from '../../../shared/engine/report/season-chart.ts'
import { writeCalendar } from '../../calendar/write.ts'
import { zoneHere } from '../../calendar/zones.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { draw, pdfOf } from '../visits/drawing.ts'
import { type Basis, basisDigest, needBasis, stopped } from './basis.ts'
import { type KeptPlan, keepNext, lastCalendar, lastPlan, lastSeason } from './records.ts'

type Needs = Pick<Memory, 'clinic' | 'drafts' | 'players'>

/**
 * The plan that may leave the room.
 * @throws Refusal where there is none, it is stopped or out of date
 */
function planToGive(
	memory: Needs,
	deps: Deps,
	playerId: string,
): { basis: Basis; planned: KeptPlan } {
	const basis = needBasis(memory, deps, playerId)
	const blocked = stopped(basis, memory.clinic.protocol)
	if (blocked !== undefined) throw new Refusal(blocked)
	const planned = lastPlan(memory.players, deps, playerId)
	if (!planned) throw new Refusal('The season is not planned yet. Plan it first.')
	if (
		planned.value.season !== lastSeason(memory.players, deps, playerId)?.record ||
		planned.value.basis !== basisDigest(basis)
	)
		throw new Refusal(
			'The sessions, pairs or findings changed since this plan was made. Plan the season again ' +
				'first.',
		)
	return { basis, planned }
}
/** @throws Refusal where there is no plan to give out, or the clinic is not set up */
export async function chartSeason(
	memory: Needs,
	deps: Deps,
	{ playerId, paper }: InputOf<'season.chart'>,
): Promise<OutputOf<'season.chart'>> {
	const {
		basis: { visit, decisions },
		planned,
	} = planToGive(memory, deps, playerId)
	const clinic = memory.clinic.needLetterhead()
	const on = dayHere(deps.now())
	const { plan } = planned.value
	if (paper === 'pocket')
		return pdfOf(
			await draw(deps, pocketTable({ visit, clinic, plan, on })),
			`season-pocket-${on}.pdf`,
		)
	const chart = seasonChart({
		visit,
		decisions,
		clinic,
		plan,
		paper,
		version: planned.version,
		draft: false,
		on,
	})
	return pdfOf(await draw(deps, chart), `season-chart-${paper}-${on}.pdf`)
}
const withoutStamp = (text: string): string => text.replace(/^DTSTAMP:.*$/gm, '')
/**
 * The player's calendar. What was given out before is kept, so that changed events are told from
 * new ones.
 */
export function seasonCalendar(
	memory: Needs,
	deps: Deps,
	{ playerId }: InputOf<'season.ics'>,
): OutputOf<'season.ics'> {
	const { planned } = planToGive(memory, deps, playerId)
	const last = lastCalendar(memory.players, deps, playerId)
	const text = writeCalendar(
		planned.value.plan,
		present({ zone: zoneHere(), stamp: deps.now(), previous: last?.text }),
	)
	if (last === undefined || withoutStamp(last.text) !== withoutStamp(text))
		keepNext(deps, { what: 'calendar', playerId, text }, last?.record)
	return { text, fileName: 'season.ics' }
}
