/** What no single field of a visit can say of itself: checks that span fields. */
import type { Problem } from './problems.ts'
import { bothSides } from './sides.ts'
import type { Side, Visit } from './visit.ts'

/** The oldest player that a birth date is taken for, by calendar years. */
const oldestYears = 110
const yearOf = (isoDate: string): number => Number(isoDate.slice(0, 4))

function bodyProblems({ body }: Visit): Problem[] {
	const { statureCm, sittingHeightCm } = body ?? {}
	if (statureCm === undefined || sittingHeightCm === undefined || sittingHeightCm < statureCm)
		return []
	return [
		{
			path: 'body.sittingHeightCm',
			message:
				`not below stature, given ${sittingHeightCm}, allowed: less than the stature of ` +
				`${statureCm} cm (take off the height of the stool)`,
		},
	]
}
function birthProblems({ player: { birthDate }, visitDate }: Visit): Problem[] {
	const path = 'player.birthDate'
	if (birthDate >= visitDate)
		return [
			{
				path,
				message: `not before the visit, given "${birthDate}", allowed: a date before ${visitDate}`,
			},
		]
	if (yearOf(visitDate) - yearOf(birthDate) <= oldestYears) return []
	return [
		{
			path,
			message:
				`more than ${oldestYears} years before the visit, given "${birthDate}", ` +
				`allowed: a birth date within ${oldestYears} years of ${visitDate}`,
		},
	]
}
/** Heel to ball against each reading of heel to toe. */
function footProblems({ feet }: Visit, side: Side): Problem[] {
	const lengths = [feet?.[side]?.heelToToeMm ?? []].flat()
	const balls = [feet?.[side]?.heelToBallMm ?? []].flat()
	return lengths.flatMap((length, index) =>
		balls
			.filter((ball) => ball >= length)
			.map((ball) => ({
				path: `feet.${side}.heelToBallMm`,
				message:
					`not below heel to toe (reading ${index + 1}), given ${ball}, allowed: ` +
					`less than ${length} mm`,
			})),
	)
}
function seasonProblems({ season }: Visit): Problem[] {
	if (!season) return []
	const { from, to, sessions = [] } = season
	const turnedRound = {
		path: 'season.to',
		message: `before the start, given "${to}", allowed: ${from} or later`,
	}
	const outside = sessions.flatMap(({ date }, index) =>
		date >= from && date <= to
			? []
			: [
					{
						path: `season.sessions.${index}.date`,
						message: `outside the season, given "${date}", allowed: ${from} to ${to}`,
					},
				],
	)
	return to < from ? [turnedRound, ...outside] : outside
}
function pairProblems({ footwear = [], visitDate }: Visit): Problem[] {
	const seen = new Set<string>()
	return footwear.flatMap(({ id, acquired }, index) => {
		const problems: Problem[] = []
		if (seen.has(id))
			problems.push({
				path: `footwear.${index}.id`,
				message: `used twice, given "${id}", allowed: an id of its own for each pair`,
			})
		seen.add(id)
		if (acquired !== undefined && acquired > visitDate)
			problems.push({
				path: `footwear.${index}.acquired`,
				message: `after the visit, given "${acquired}", allowed: ${visitDate} or earlier`,
			})
		return problems
	})
}
function conditionProblems({ conditions = [], visitDate }: Visit): Problem[] {
	return conditions.flatMap(({ operationDate }, index) =>
		operationDate === undefined || operationDate <= visitDate
			? []
			: [
					{
						path: `conditions.${index}.operationDate`,
						message: `after the visit, given "${operationDate}", allowed: ${visitDate} or earlier`,
					},
				],
	)
}
/** One problem for each check that fails, in the order of the visit file. */
export const crossProblems = (visit: Visit): Problem[] => [
	...bodyProblems(visit),
	...birthProblems(visit),
	...bothSides.flatMap((side) => footProblems(visit, side)),
	...seasonProblems(visit),
	...pairProblems(visit),
	...conditionProblems(visit),
]
