/**
 * Matching the shelf to a player: the best size and fitting of each model, hard stops, soft
 * penalties, and the reasons.
 * Deterministic: the order is stops last, then points, then id. Points are for the order only;
 * every weight is a protocol row.
 */
import type { RankedModel } from '../../findings/assessment.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Shelf } from '../../visit/shelf.ts'
import type { Visit } from '../../visit/visit.ts'
import { fitterFor } from './fitter.ts'
import { judge } from './judge.ts'
import { type MatchContext, needsOf } from './needs.ts'
import { bestSize, byText } from './size.ts'

/**
 * Every model on sale, best first. Empty where no foot length is known. Under 20 ms for 500 models.
 */
export function matchShelf(
	shelf: Shelf,
	visit: Visit,
	context: MatchContext,
	protocol: Protocol,
): RankedModel[] {
	const needs = needsOf(visit, context, protocol)
	if (!needs) return []
	const fitter = fitterFor(needs, context, protocol)
	const { tightMm } = fitter.limits
	return shelf.models
		.filter((model) => !model.retired)
		.map((model) => judge({ model, size: bestSize(model, needs, tightMm) }, fitter))
		.sort(
			(first, second) =>
				Number(first.verdict === 'unsuitable') - Number(second.verdict === 'unsuitable') ||
				first.points - second.points ||
				byText(first.id, second.id),
		)
}
