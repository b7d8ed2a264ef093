/** Wear of a pair along a planned season. */
import { daysInMonth } from '../../plain/days.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { PlanPair } from '../plan-file.ts'
import {
	minutesIn,
	pairAt,
	type Rotation,
	type SeasonProblem,
	type Slot,
	usesIn,
} from '../problem/problem.ts'

/** Minutes in a pair when a session has ended. */
interface Point {
	slot: Slot
	minutes: number
}
function courseOf(problem: SeasonProblem, rotation: Rotation, pair: number): Point[] {
	let minutes = pairAt(problem, pair).startMinutes
	return problem.slots.map((slot, place) => {
		if (slot.counts) minutes += minutesIn(usesIn(rotation, place), pair)
		return { slot, minutes }
	})
}
/** The last day of a month written '2027-02'. */
function monthEnd(month: string): string {
	const [year = 0, number = 1] = month.split('-').map(Number)
	return `${month}-${daysInMonth(year, number)}`
}
/**
 * Wear of a pair along the season: minutes at its end, the wear at each month's end as a share of
 * its life, and the dates at which it reaches the window of replacement.
 */
export function wearOf(
	problem: SeasonProblem,
	rotation: Rotation,
	pair: number,
	season: { from: string; to: string },
	protocol: Protocol,
): { minutes: number; wear: PlanPair['wear']; checkBy?: string; wornOutBy?: string } {
	const { startMinutes, lifeMinutes } = pairAt(problem, pair)
	const course = courseOf(problem, rotation, pair)
	const shortest = Math.min(...problem.slots.map((slot) => slot.minutes), lifeMinutes)
	const checkFrom = protocol.value('season.checkShare') * lifeMinutes
	const checkBy = course.find(({ minutes }) => minutes >= checkFrom)?.slot.date
	// worn out: what is left does not last the shortest session
	const wornOutBy =
		startMinutes >= lifeMinutes
			? season.from
			: course.find(({ minutes }) => minutes + shortest > lifeMinutes)?.slot.date
	const months = new Map(course.map(({ slot, minutes }) => [slot.date.slice(0, 7), minutes]))
	return present({
		minutes: course.at(-1)?.minutes ?? startMinutes,
		wear: [...months].map(([month, minutes]) => ({
			date: monthEnd(month),
			wearFraction: rounded(minutes / lifeMinutes, 4),
		})),
		checkBy,
		wornOutBy,
	})
}
