/** What the sole that the ground allows decides against a wish, told as what gave way. */
import type { Settled } from '../../findings/assessment.ts'
import { rankOf, type Standing } from '../../footwear/settle.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Sole, Surface } from '../../visit/terms.ts'
import { state } from '../../words/statement.ts'
import { soleRows } from './sole.table.ts'
import { costOn, type SoleOnGrounds } from './soles.ts'

/** Wishes that no model with this sole meets: they give way to the ground. */
export function unmetBySole(
	sole: Sole,
	surfaces: readonly Surface[],
	{ seek, avoid }: Pick<Standing, 'seek' | 'avoid'>,
): Settled[] {
	const { has, lacks } = soleRows[sole]
	const unmet = [
		...lacks.map((feature) => ({ feature, way: 'seek' as const, wishes: seek })),
		...has.map((feature) => ({ feature, way: 'avoid' as const, wishes: avoid })),
	]
	return unmet.flatMap(({ feature, way, wishes }) => {
		const rules = wishes.filter((wish) => wish.feature === feature).map(({ rule }) => rule)
		if (rules.length === 0) return []
		return [
			{
				feature,
				over: 'ground',
				...state('settled.sole', { feature, way, rules: [...new Set(rules)], sole, surfaces }),
			},
		]
	})
}
/**
 * Grounds on which another sole of the role would suit better than the one chosen for all; not the
 * one that was left for a wish, which says so itself.
 */
export function compromises(
	{ sole, surfaces = [], left }: Partial<SoleOnGrounds>,
	soles: readonly Sole[],
	protocol: Protocol,
): Settled[] {
	if (sole === undefined) return []
	const limit = protocol.value('footwear.secondBestCost')
	const better = new Map<Sole, Surface[]>()
	for (const surface of surfaces) {
		const cost = (other: Sole) => costOn(other, surface) ?? Infinity
		const [best] = soles.toSorted((first, second) => cost(first) - cost(second))
		if (best === undefined || cost(sole) <= limit || cost(best) >= cost(sole)) continue
		better.set(best, [...(better.get(best) ?? []), surface])
	}
	return [...better].flatMap(([other, grounds]) => {
		const { feature } = soleRows[other]
		if (feature === undefined || other === left?.sole) return []
		const alone = surfaces.length === 1 ? { alone: true } : {}
		const said = state('settled.ground', { sole, better: other, surfaces: grounds, ...alone })
		return [{ feature, over: 'ground', ...said }]
	})
}
/** The sole that was left for the sake of skin, joints or an injury. */
export function soleLeft({ sole, left }: Partial<SoleOnGrounds>): Settled[] {
	if (sole === undefined || left === undefined) return []
	const { feature } = soleRows[left.sole]
	if (feature === undefined) return []
	const { wish, way } = left
	return [
		{
			feature,
			over: wish.feature,
			...state('settled.sole-left', {
				inPlaceOf: left.sole,
				sole,
				feature: wish.feature,
				way,
				rules: [wish.rule],
				rank: rankOf(wish),
			}),
		},
	]
}
