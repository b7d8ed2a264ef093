/** Seasons with a plan made by hand, for what the rotation reads of it. */
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Hold, Holdable, OwnedVerdict } from '../../shared/engine/findings/assessment.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { SeasonPlan } from '../../shared/engine/season/problem/prescribed.ts'
import type { Pair, Session, Visit } from '../../shared/engine/visit/visit.ts'
import { seasonVisit } from './random-season.ts'

export const protocol = openProtocol()
export const boots = (id: string, more: Partial<Pair> = {}): Pair => ({
	id,
	name: id,
	sole: 'firm-ground',
	minutesWorn: 3000,
	heelToForefootOffsetMm: 0,
	...more,
})
export const on = (date: string, kind: Session['kind']): Session => ({
	date,
	start: '18:00',
	minutes: 60,
	kind,
	surface: 'natural-firm',
})
export const sessions = [
	on('2027-02-02', 'training'),
	on('2027-02-04', 'training'),
	on('2027-02-06', 'match'),
	on('2027-03-02', 'training'),
	on('2027-03-06', 'match'),
]
export const hold = (what: Holdable, until: Hold['until'] = 'outcome'): Hold => ({
	what,
	rule: 'screening.nightPain',
	until,
	since: '2027-01-04',
})
const nothing = { state: 'not-needed', elements: [], pairs: [] } as const
export const planWith = (more: Partial<SeasonPlan> = {}): SeasonPlan => ({
	gate: openGate,
	owned: [],
	insert: {
		left: { ...nothing, elements: [], pairs: [] },
		right: { ...nothing, elements: [], pairs: [] },
	},
	raise: { aim: { kind: 'none', because: [] }, pairs: [], steps: [] },
	open: [],
	...more,
})
export const holding = (...holds: Hold[]) =>
	planWith({ gate: { ...openGate, person: { ...openGate.person, state: 'held', holds } } })
export const judged = (id: string, verdict: OwnedVerdict, by?: string) =>
	planWith({
		owned: [{ id, verdict, because: [], work: [], says: '', ...(by ? { by } : {}) }],
	})
export const built = (visit: Visit, plan: SeasonPlan | undefined) =>
	buildProblem({ visit, protocol, suitability, ...(plan ? { plan } : {}) })
/** What keeps a pair out of each session: a reason, or nothing where it may be worn. */
export const barred = (visit: Visit, plan: SeasonPlan | undefined, pair = 0) =>
	built(visit, plan).problem.cost.map((row) => {
		const cost = row[pair]!
		return typeof cost === 'number' ? undefined : cost.why
	})
export const two = seasonVisit([boots('a'), boots('b')], sessions)
