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

/** What asks to be seen for its own sake; other parts of the plan have items that name them. */
const ofDanger = ['gate', 'signs'] as const
const isInserted = ({ insert }: SettledPlan): boolean =>
	bothSides.some((side) => insert[side].state === 'proposed')
const isRaised = ({ raise }: SettledPlan): boolean =>
	raise.pairs.some((pair) => bothSides.some((side) => pair[side].addMm > 0))

/**
 * The day of the review: the plan's own. Where another item of that day names the appointment
 * already, or the question of the review was left out, the day that danger or a raise asks for: what
 * danger asks for is never left out.
 */
function reviewDay(plan: SettledPlan, others: readonly Due[]): string | undefined {
	const { review, reviewAsked } = plan
	const own = [...ofDanger, ...(isRaised(plan) ? ['raise' as const] : [])]
	if (review === undefined) return earliestBy(reviewAsked, ofDanger)
	const asked = (reviewAsked ?? []).filter(({ date }) => date === review.date)
	const isNamed =
		others.some(({ on }) => on === review.date) &&
		asked.length > 0 &&
		!asked.some(({ by }) => own.some((one) => one === by))
	return isNamed ? earliestBy(reviewAsked, own) : review.date
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
	return [...due('review', reviewDay(plan, others)), ...others]
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
