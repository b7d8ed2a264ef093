/**
 * The rotation as a mixed-integer programme: a pure function of the problem, in a fixed order. Its
 * goals are solved level by level (`problem/levels.ts`).
 */
import { eachLevel } from '../problem/levels.ts'
import { fixedUses, type SeasonProblem } from '../problem/problem.ts'
import { cellOf, choicesOf, isChoosable, settledUse } from './choices.ts'
import { restUntilDry } from './drying.ts'
import { wishFamiliar } from './familiar.ts'
import { limitWeeks, wishShares } from './limits.ts'
import type { Model } from './programme.ts'
import { coverSessions } from './sessions.ts'
import { avoidSwitches, evenOutWear } from './wear.ts'

/** The programme of a problem. */
export function buildModel(problem: SeasonProblem): Model {
	const sessions = choicesOf(problem)
	const model: Model = {
		rows: [],
		goals: eachLevel(() => []),
		binaries: [],
		bounds: [],
		uses: [],
		fixed: fixedUses(problem),
		variables: new Map(),
	}
	coverSessions(model, sessions, problem)
	for (const [place, pair] of problem.pairs.entries()) {
		const touched = sessions
			.map((session) => cellOf(session, place))
			.filter((cell) => isChoosable(cell) || settledUse(cell) > 0)
		restUntilDry(model, touched, pair, place)
		wishFamiliar(model, touched, place, problem)
	}
	limitWeeks(model, sessions, problem)
	wishShares(model, sessions, problem)
	evenOutWear(model, sessions, problem)
	avoidSwitches(model, sessions, problem)
	return model
}
