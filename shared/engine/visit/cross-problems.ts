/** What no single field of a visit can say of itself: checks that span fields. */
import { birthProblems } from './birth.ts'
import { type Problem, problemOf } from './problems.ts'
import { bothSides } from './sides.ts'
import type { Side, Visit } from './visit.ts'

/** The lowest stature against each reading of sitting height. */
function bodyProblems({ body }: Visit): Problem[] {
	const statures = [body?.statureCm ?? []].flat()
	const sitting = [body?.sittingHeightCm ?? []].flat()
	if (statures.length === 0) return []
	const statureCm = Math.min(...statures)
	return sitting
		.filter((heightCm) => heightCm >= statureCm)
		.map((heightCm) =>
			problemOf('body.sittingHeightCm', 'not-below-stature', heightCm, { statureCm }),
		)
}
function bornBefore({ player: { birthDate }, visitDate }: Visit): Problem[] {
	const path = 'player.birthDate'
	return birthDate >= visitDate
		? [problemOf(path, 'not-before-visit', birthDate, { visitDate })]
		: birthProblems(birthDate, visitDate, path)
}
/** Heel to ball against each reading of heel to toe. */
function footProblems({ feet }: Visit, side: Side): Problem[] {
	const lengths = [feet?.[side]?.heelToToeMm ?? []].flat()
	const balls = [feet?.[side]?.heelToBallMm ?? []].flat()
	return lengths.flatMap((length, index) =>
		balls
			.filter((ball) => ball >= length)
			.map((ball) =>
				problemOf(`feet.${side}.heelToBallMm`, 'not-below-length', ball, {
					reading: index + 1,
					heelToToeMm: length,
				}),
			),
	)
}
function seasonProblems({ season }: Visit): Problem[] {
	if (!season) return []
	const { from, to, sessions = [] } = season
	const outside = sessions.flatMap(({ date }, index) =>
		date >= from && date <= to
			? []
			: [problemOf(`season.sessions.${index}.date`, 'outside-season', date, { from, to })],
	)
	return to < from ? [problemOf('season.to', 'before-start', to, { from }), ...outside] : outside
}
function pairProblems({ footwear = [], visitDate }: Visit): Problem[] {
	const seen = new Set<string>()
	return footwear.flatMap(({ id, acquired }, index) => {
		const problems: Problem[] = []
		if (seen.has(id))
			problems.push(problemOf(`footwear.${index}.id`, 'used-twice', id, { of: 'pair' }))
		seen.add(id)
		if (acquired !== undefined && acquired > visitDate)
			problems.push(problemOf(`footwear.${index}.acquired`, 'after-visit', acquired, { visitDate }))
		return problems
	})
}
function conditionProblems({ conditions = [], visitDate }: Visit): Problem[] {
	return conditions.flatMap(({ operationDate }, index) =>
		operationDate === undefined || operationDate <= visitDate
			? []
			: [
					problemOf(`conditions.${index}.operationDate`, 'after-visit', operationDate, {
						visitDate,
					}),
				],
	)
}
/** One problem for each check that fails, in the order of the visit file. */
export const crossProblems = (visit: Visit): Problem[] => [
	...bodyProblems(visit),
	...bornBefore(visit),
	...bothSides.flatMap((side) => footProblems(visit, side)),
	...seasonProblems(visit),
	...pairProblems(visit),
	...conditionProblems(visit),
]
