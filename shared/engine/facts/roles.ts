/** For what this player needs footwear: few roles, and only where something recorded asks for one. */
import { hasCondition } from '../conditions/query.ts'
import type { PairRole } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { soreEveryDay } from './roles.table.ts'
import { isTrainer } from './trainer.ts'

const wornFor = ({ footwear = [] }: Visit, holds: (pair: Pair) => boolean): boolean =>
	footwear.some(holds)
const isFor =
	(role: PairRole) =>
	({ roles }: Pair): boolean =>
		roles?.includes(role) === true
/** Matches unless none are played; where play was not asked, it is taken for granted. */
function plays({ play }: Visit): boolean {
	if (play?.matchesPerWeek !== undefined) return play.matchesPerWeek > 0
	return play?.code !== undefined || play?.trainingsPerWeek === undefined
}
/** A trainer for which no role was recorded is taken for a running shoe. */
const runs = (visit: Visit): boolean =>
	visit.play?.surfaces?.includes('road') === true ||
	wornFor(visit, isFor('running')) ||
	wornFor(visit, (pair) => pair.roles === undefined && isTrainer(pair))
/** Roles in the order in which they are read. @param atRisk either foot may lose its skin */
export function rolesOf(visit: Visit, atRisk: boolean): PairRole[] {
	const trains = visit.play?.trainingsPerWeek !== 0
	const daily = atRisk || wornFor(visit, isFor('everyday')) || hasCondition(visit, soreEveryDay)
	const roles: [PairRole, boolean][] = [
		['match', plays(visit) || wornFor(visit, isFor('match'))],
		['training', trains || wornFor(visit, isFor('training'))],
		['running', runs(visit)],
		['everyday', daily],
	]
	return roles.filter(([, needed]) => needed).map(([role]) => role)
}
