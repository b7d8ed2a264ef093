/** What a signed visit and the season say is due. Pure: only dates that they hold, none made up. */
import type { ReviewAsked } from '../../engine/findings/assessment.ts'
import { laterDay } from '../../engine/plain/days.ts'
import type { SettledPlan } from '../../engine/prescription/settled.ts'
import { planOf } from '../../engine/report/plan-of.ts'
import { bothSides } from '../../engine/visit/sides.ts'
import { lastDays, type SignedPlan } from '../players/plan-in-few.ts'
import type { Due } from './item.ts'

type Asked = SettledPlan['reviewAsked']
const earliestBy = (asked: Asked, by: readonly ReviewAsked['by'][]): string | undefined =>
	asked
		?.filter((one) => by.includes(one.by))
		.map(({ date }) => date)
		.toSorted()[0]

/** What danger asks for is asked again whatever became of the question of the review. */
const ofDanger = ['gate', 'signs'] as const
const isInserted = ({ insert }: SettledPlan): boolean =>
	bothSides.some((side) => insert[side].state === 'proposed')
const isRaised = ({ raise }: SettledPlan): boolean =>
	raise.pairs.some((pair) => bothSides.some((side) => pair[side].addMm > 0))

/** The day of the review: the plan's own; without one, what danger asks for. */
const reviewDay = (plan: SettledPlan): string | undefined =>
	plan.review?.date ?? earliestBy(plan.reviewAsked, ofDanger)

/**
 * Whether other items of the same day name the appointment already. A day that the clinician set, or
 * that danger or a raise asks for, stands as a review of its own.
 */
function isNamed(day: string, plan: SettledPlan, others: readonly Due[]): boolean {
	const asked = (plan.reviewAsked ?? []).filter(({ date }) => date === day)
	const own = [...ofDanger, ...(isRaised(plan) ? ['raise' as const] : [])]
	return (
		others.some(({ on }) => on === day) &&
		asked.length > 0 &&
		asked.every(({ by }) => !own.some((one) => one === by))
	)
}
/**
 * What the newest signed visit of a player holds dates for.
 * @param visitId of that visit
 */
export function duesOfVisit(visitId: string, signed: SignedPlan): Due[] {
	const plan = planOf(signed)
	const { visit, assessment } = signed
	const due = (kind: Due['kind'], on: string | undefined, pair?: string): Due[] =>
		on === undefined
			? []
			: [
					{
						kind,
						from: visitId,
						...(pair !== undefined && { pair }),
						on: laterDay(on, visit.visitDate),
					},
				]
	const again = earliestBy(plan.reviewAsked, ['growth']) ?? assessment.growth?.measureAgainBy
	const others = [
		...due('measure', again),
		...due('insert', isInserted(plan) ? earliestBy(plan.reviewAsked, ['insert']) : undefined),
		...lastDays(signed).flatMap(({ id, until }) => due('pair', until, id)),
	]
	const day = reviewDay(plan)
	return [...(day !== undefined && isNamed(day, plan, others) ? [] : due('review', day)), ...others]
}
/** The plan of a season that stands on record. */
export interface StandingPlan {
	/** its record */
	record: string
	/** the last day of the season, ISO date */
	to: string
	/** whether it still rests on what the newest signed visit holds */
	isUpToDate: boolean
	/** whether danger holds the season: then nothing of it is planned */
	isHeld: boolean
}
/** What the season asks for. @param visitDate of the newest signed visit */
export function duesOfSeason(plan: StandingPlan | undefined, visitDate: string | undefined): Due[] {
	if (!plan || plan.isHeld) return []
	const { record: from, to, isUpToDate } = plan
	if (!isUpToDate && visitDate !== undefined && visitDate <= to)
		return [{ kind: 'season', from, on: visitDate }]
	// the season that ended before the newest visit was spoken of there
	return visitDate !== undefined && visitDate > to ? [] : [{ kind: 'season', from, on: to }]
}
