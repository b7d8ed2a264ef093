/**
 * Matching the shelf to a player: the best size and fitting of each model, hard stops, soft
 * penalties, and the reasons.
 * Deterministic: the order is stops last, then studs under joints at risk, then points, then id. Points are for the order only;
 * every weight is a protocol row.
 */

import { jointNames } from '../../facts/joint-risks.table.ts'
import type { RankedModel } from '../../findings/assessment.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Model, Shelf } from '../../visit/shelf.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Visit } from '../../visit/visit.ts'
import { fitterFor } from './fitter.ts'
import { judge } from './judge.ts'
import { type MatchContext, type Needs, needsOf } from './needs.ts'
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
		.filter((model) => !model.retired && !isVetoed(model, visit))
		.map((model) => {
			const ranked = judge({ model, size: bestSize(model, needs, tightMm) }, fitter)
			return { ranked, risk: studRisk(model, ranked, needs) }
		})
		.sort(
			(first, second) =>
				Number(first.ranked.verdict === 'unsuitable') -
					Number(second.ranked.verdict === 'unsuitable') ||
				first.risk - second.risk ||
				first.ranked.points - second.ranked.points ||
				byText(first.ranked.id, second.ranked.id),
		)
		.map(({ ranked }) => ranked)
}
/** A model that the player owns and that hurts, by its name, is not put forward again. */
const isVetoed = ({ id, name }: Model, { footwear = [] }: Visit): boolean =>
	footwear.some((pair) => pair.hurts && [id, plainName(name)].includes(plainName(pair.name ?? '')))
const plainName = (name: string): string =>
	name
		.trim()
		.toLowerCase()
		.replaceAll(/[\s-]+/g, '-')
/**
 * 0: each joint at risk is clear, or none is at risk; 1: studs or joints are not known; 2: a stud
 * stands under one. No model of a higher figure stands before one of a lower, whatever its points.
 */
function studRisk({ studs }: Model, ranked: RankedModel, { risks, joints }: Needs): 0 | 1 | 2 {
	const sides = bothSides.filter((side) =>
		jointNames.some((joint) => risks[side][joint].length > 0),
	)
	if (sides.length === 0 || studs?.length === 0) return 0
	const near = sides.flatMap((side) => ranked.studs?.[side] ?? [])
	if (near.some(({ under, atRisk }) => under.length > 0 && atRisk.length > 0)) return 2
	return studs !== undefined && sides.every((side) => joints[side] !== undefined) ? 0 : 1
}
