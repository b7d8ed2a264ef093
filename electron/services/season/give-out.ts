/** A plan given out: as a chart, a pocket table, a calendar. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { pocketKind } from '../../../shared/desk/visits/kept-pages.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { keptForm } from '../../../shared/engine/report/kept/keep.ts'
import { pocketTable } from '../../../shared/engine/report/pocket.ts'
import { type WornIn, wornIn } from '../../../shared/engine/report/season-chart/chart-input.ts'
import { seasonChart } from '../../../shared/engine/report/season-chart.ts'
import { state } from '../../../shared/engine/words/statement.ts'
import { writeCalendar } from '../../calendar/write.ts'
import { zoneHere } from '../../calendar/zones.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { draw, pdfOf } from '../visits/drawing.ts'
import { type Given, givenBefore, keepGiven, signedPageFrom } from '../visits/given.ts'
import { keptOrText, pageOf } from '../visits/page.ts'
import { type Basis, basisDigest, needBasis, stopped } from './basis.ts'
import { type KeptPlan, keepNext, lastCalendar, lastPlan } from './records.ts'
import { isUpToDate, madeFrom } from './standing.ts'

type Needs = Pick<Memory, 'clinic' | 'drafts' | 'people' | 'players'>

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
	if (blocked !== undefined) throw new Refusal('season.blocked', blocked)
	const planned = lastPlan(memory.players, deps, playerId)
	if (!planned) throw new Refusal('season.not-planned', state('season.not-planned'))
	if (!isUpToDate(memory, deps, playerId, planned, basisDigest(basis)))
		throw new Refusal('season.plan-is-old', state('season.out-of-date'))
	return { basis, planned }
}
/**
 * The chart or the pocket table of the plan. It is made once and kept when it is given out; the
 * same is given out again from then on.
 * @throws Refusal where there is no plan to give out, or the clinic is not set up
 */
export async function chartSeason(
	memory: Needs,
	deps: Deps,
	wanted: InputOf<'season.chart'>,
): Promise<OutputOf<'season.chart'>> {
	const { bytes, fileName } = await chartGiven(memory, deps, wanted)
	return pdfOf(bytes, fileName)
}
/** The same as one accessible page, from the document that was kept of it. */
export async function seasonPage(
	memory: Needs,
	deps: Deps,
	wanted: InputOf<'season.page'>,
): Promise<OutputOf<'season.page'>> {
	const { bytes, document, fileName } = await chartGiven(memory, deps, wanted)
	const frame = {
		title: fileName.replace(/\.pdf$/, ''),
		clinic: memory.clinic.needLetterhead(),
		subject: [],
		madeAt: deps.now().toISOString(),
		isNewer: document !== undefined,
	}
	return pageOf(await keptOrText(deps, { bytes, document }, frame), fileName)
}
interface ChartGiven extends Pick<Given, 'bytes' | 'document'> {
	fileName: string
}
async function chartGiven(
	memory: Needs,
	deps: Deps,
	{ playerId, paper }: InputOf<'season.chart'>,
): Promise<ChartGiven> {
	const { basis, planned } = planToGive(memory, deps, playerId)
	const clinic = memory.clinic.needLetterhead()
	const kind = paper === 'pocket' ? pocketKind : 'season-chart'
	const from = madeFrom(planned, paper, clinic)
	const before =
		givenBefore(memory.players, deps, playerId, { kind, from }) ??
		signedPageFrom(memory.players, deps, playerId, { kind, from })
	const on = before ? dayHere(new Date(before.at)) : dayHere(deps.now())
	const sheet = paper === 'A4' ? (clinic.paper ?? 'A4') : paper
	const fileName =
		sheet === 'pocket' ? `season-pocket-${on}.pdf` : `season-chart-${sheet}-${on}.pdf`
	if (before) return { bytes: before.bytes, document: before.document, fileName }
	const worn = wornIn({
		assessment: assess(basis.visit, basis.earlier, memory.clinic.protocol),
		decisions: basis.decisions,
	})
	const document = pageOfPlan(basis, planned, { clinic, sheet, on, worn })
	const bytes = await draw(deps, document)
	keepGiven(memory, deps, { kind, playerId, version: planned.version, from, document, bytes })
	return { bytes, document: keptForm(document), fileName }
}
interface PageOfPlan {
	clinic: Clinic
	sheet: 'A4' | 'Letter' | 'A3' | 'pocket'
	on: string
	worn: WornIn
}
function pageOfPlan(
	{ visit }: Basis,
	{ value: { plan }, version }: KeptPlan,
	{ clinic, sheet, on, worn }: PageOfPlan,
): LwDocument {
	return sheet === 'pocket'
		? pocketTable({ visit, clinic, plan, buying: worn.buying, on })
		: seasonChart({ ...worn, visit, clinic, plan, paper: sheet, version, draft: false, on })
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
