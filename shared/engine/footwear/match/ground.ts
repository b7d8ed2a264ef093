/**
 * Does the sole suit the ground played on? Dry ground only: which pair on which wet day is for the
 * season's plan.
 */
import type { MatchReason } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import { suitabilityBasis } from '../../protocol/norms/suitability.table.ts'
import { suitability } from '../../protocol/norms/suitability.ts'
import type { ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Sole, Surface } from '../../visit/terms.ts'
import { type Statement, state } from '../../words/statement.ts'
import type { Answer } from './answer.ts'

/** How a mean cost above 0 is told; the costs are those of the suitability table. */
function suitsAt(meanCost: number): 'poor' | 'second' | 'near-best' {
	if (meanCost > 1.5) return 'poor'
	return meanCost > 0.5 ? 'second' : 'near-best'
}

/** Nothing is answered where no surface is recorded. */
export function askGround(
	sole: Sole,
	surfaces: readonly Surface[],
	value: (key: ThresholdKey) => number,
): Answer {
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
