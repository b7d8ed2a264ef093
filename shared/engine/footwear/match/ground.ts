/**
 * Does the sole suit the ground played on? Dry ground only: which pair on which wet day is for the
 * season's plan.
 */
import type { MatchReason } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import { type Basis, type Because, commonPractice } from '../../protocol/basis.ts'
import { suitabilityBasis } from '../../protocol/norms/suitability.table.ts'
import { suitability } from '../../protocol/norms/suitability.ts'
import type { ThresholdKey } from '../../protocol/protocol.ts'
import type { Model } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import type { PairRole, Sole, Surface } from '../../visit/terms.ts'
import { type Statement, state } from '../../words/statement.ts'
import { roleRows } from '../roles.table.ts'
import type { Answer } from './answer.ts'
import type { Needs } from './needs.ts'

/** Ground on which lugs of a few mm do not hold a push. */
const slippery: Surface = 'natural-soft'
const roleBasis: Basis = { rule: 'sole for a role', ...commonPractice }

/** How a mean cost above 0 is told; the costs are those of the suitability table. */
function suitsAt(meanCost: number): 'poor' | 'second' | 'near-best' {
	if (meanCost > 1.5) return 'poor'
	return meanCost > 0.5 ? 'second' : 'near-best'
}

/**
 * The sole that a model is judged as: long studs press and hold as those of a soft-ground sole do,
 * whatever it is sold as. @param longMm from this length of the longest stud, mm
 */
export const soleJudged = ({ sole, studs = [] }: Model, longMm: number): Sole =>
	sole === 'firm-ground' && studs.some(({ heightMm }) => heightMm >= longMm) ? 'soft-ground' : sole
/** A sole that is not for the role, whatever the ground. */
function unfitFor(
	sole: Sole,
	surfaces: readonly Surface[],
	role: PairRole | undefined,
	scrum: readonly string[],
): Answer | undefined {
	const stop = (statement: Statement, because: Because[]): Answer => ({
		stops: [{ rule: 'sole-role', ...statement, because, basis: roleBasis }],
	})
	if (role !== undefined && !roleRows[role].soles.includes(sole))
		return stop(state('match.sole-role', { sole, role }), [])
	if (sole === 'trail' && role !== 'training' && scrum.length > 0 && surfaces.includes(slippery))
		return stop(state('match.sole-scrum', { sole, surface: slippery }), [
			...scrum.map((value) => ({ measure: 'position', value })),
			{ measure: 'surfaces', value: slippery },
		])
	return undefined
}
/** Nothing is answered where no surface is recorded. */
export function askGround(
	sole: Sole,
	{ surfaces, role, scrum }: Pick<Needs, 'surfaces' | 'role' | 'scrum'>,
	value: (key: ThresholdKey) => number,
): Answer {
	const unfit = unfitFor(sole, surfaces, role, scrum)
	if (unfit) return unfit
	if (surfaces.length === 0) return {}
	const grounds = surfaces.map((surface) => ({ surface, cost: suitability[sole][surface].dry }))
	const because = grounds.map(({ surface, cost }) => ({
		measure: `${sole}-on-${surface}`,
		value: cost,
	}))
	const reason = (rule: string, statement: Statement, points?: number): MatchReason =>
		present({
			rule,
			...statement,
			points: points === undefined ? undefined : rounded(points, 2),
			because,
			basis: suitabilityBasis,
		})
	const banned = grounds.filter(({ cost }) => cost === 'forbidden').map(({ surface }) => surface)
	const costs = grounds.flatMap(({ cost }) => (cost === 'forbidden' ? [] : [cost]))
	if (costs.length === 0) return { stops: [reason('sole', state('match.sole', { sole, banned }))] }
	const meanCost = costs.reduce((sum, cost) => sum + cost, 0) / costs.length
	const against: MatchReason[] = []
	if (banned.length > 0)
		against.push(
			reason(
				'sole-part',
				state('match.sole-part', { banned }),
				banned.length * value('footwear.pointsForbidden'),
			),
		)
	if (meanCost > 0)
		against.push(
			reason(
				'surface',
				state('match.surface', { sole, suits: suitsAt(meanCost) }),
				meanCost * value('footwear.pointsSurface'),
			),
		)
	const suited = grounds
		.filter(({ cost }) => cost !== 'forbidden' && cost <= 0.5)
		.map(({ surface }) => surface)
	return {
		for:
			suited.length > 0
				? [reason('surface-fit', state('match.surface-fit', { sole, suited }))]
				: [],
		against,
	}
}
