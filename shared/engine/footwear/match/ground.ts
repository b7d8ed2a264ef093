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
import { type Sole, type Surface, termWords } from '../../visit/terms.ts'
import { type Answer, listed } from './answer.ts'

const withArticle = (words: string) => `${/^[aeiou]/.test(words) ? 'An' : 'A'} ${words}`
/** In words, how a mean cost above 0 reads; the costs are those of the suitability table. */
function costInWords(meanCost: number): string {
	if (meanCost > 1.5) return 'poor'
	return meanCost > 0.5 ? 'second choice' : 'nearly the best choice'
}

/** Nothing is answered where no surface is recorded. */
export function askGround(
	sole: Sole,
	surfaces: readonly Surface[],
	value: (key: ThresholdKey) => number,
): Answer {
	if (surfaces.length === 0) return {}
	const grounds = surfaces.map((surface) => ({
		words: termWords(surface),
		cost: suitability[sole][surface].dry,
	}))
	const because = grounds.map(({ words, cost }) => ({
		measure: `${termWords(sole)} sole on ${words}`,
		value: cost,
	}))
	const reason = (rule: string, says: string, points?: number): MatchReason =>
		present({
			rule,
			says,
			points: points === undefined ? undefined : rounded(points, 2),
			because,
			basis: suitabilityBasis,
		})
	const banned = grounds.filter(({ cost }) => cost === 'forbidden').map(({ words }) => words)
	const costs = grounds.flatMap(({ cost }) => (cost === 'forbidden' ? [] : [cost]))
	const aSole = `${withArticle(termWords(sole))} sole`
	if (costs.length === 0)
		return {
			stops: [
				reason('sole', `${aSole} is unsuitable on every surface played on (${listed(banned)}).`),
			],
		}
	const meanCost = costs.reduce((sum, cost) => sum + cost, 0) / costs.length
	const against: MatchReason[] = []
	if (banned.length > 0)
		against.push(
			reason(
				'sole-part',
				`Not to be worn on ${listed(banned)}: a second pair is needed there.`,
				banned.length * value('footwear.pointsForbidden'),
			),
		)
	if (meanCost > 0)
		against.push(
			reason(
				'surface',
				`${aSole} is ${costInWords(meanCost)} for the surfaces it may be worn on.`,
				meanCost * value('footwear.pointsSurface'),
			),
		)
	const suited = grounds
		.filter(({ cost }) => cost !== 'forbidden' && cost <= 0.5)
		.map(({ words }) => words)
	return {
		for:
			suited.length > 0
				? [reason('surface-fit', `Its ${termWords(sole)} sole suits ${listed(suited)}.`)]
				: [],
		against,
	}
}
