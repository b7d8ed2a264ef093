/** The signed visits of one player as the audit looks at them. Pure. */
import { longerFootMm } from '../../engine/growth/velocity.ts'
import { daysBetween } from '../../engine/plain/days.ts'
import type { SettledPlan } from '../../engine/prescription/settled.ts'
import type { Protocol } from '../../engine/protocol/protocol.ts'
import { planOf } from '../../engine/report/plan-of.ts'
import type { SignedPlan } from '../players/plan-in-few.ts'
import type { FollowUp } from '../recall/referral.ts'

/** A signed visit with its plan as it was settled. */
export interface Seen extends SignedPlan {
	visitId: string
	plan: SettledPlan
}
export const seenOf = (visitId: string, signed: SignedPlan): Seen => ({
	visitId,
	...signed,
	plan: planOf(signed),
})
/** The days whose visits are looked at, both included; ISO dates. */
export interface Period {
	from: string
	to: string
}
/** What is looked for. */
export interface Asking extends Period {
	today: string
	protocol: Protocol
	/** names of the models on the clinic's shelf, by name and by id */
	models: ReadonlyMap<string, string>
}
/** One player: visits oldest first, and what was written of referrals besides. */
export interface Course {
	visits: readonly Seen[]
	written: readonly FollowUp[]
}
/** A visit of the period, and those after it. */
export interface Look {
	then: Seen
	later: readonly Seen[]
}
/** The visits of the period in their order, each with what came after it, whenever that was. */
export const looksOf = ({ visits }: Course, { from, to }: Period): Look[] =>
	visits.flatMap((then, at) =>
		then.visit.visitDate >= from && then.visit.visitDate <= to
			? [{ then, later: visits.slice(at + 1).filter((one) => daysAfter(then, one) > 0) }]
			: [],
	)
/** Feet that were measured at a visit: figures taken over from the visit before are none. */
export const measuredFootMm = ({ visit }: Seen): number | undefined =>
	visit.since?.unchanged?.includes('feet') ? undefined : longerFootMm(visit)
export const daysAfter = (then: Seen, later: Seen): number =>
	daysBetween(then.visit.visitDate, later.visit.visitDate)

/** What one player adds to a row: the cells the player is counted in, and values told. */
export interface Mark {
	table: TableId
	row: string
	/** the cells at the end of sums; their wholes follow */
	cells: readonly string[]
	values?: Readonly<Record<string, number>>
}
export type TableId =
	| 'condition'
	| 'measure'
	| 'advice'
	| 'reason'
	| 'referral'
	| 'label'
	| 'forecast'
	| 'stage'
	| 'size'
