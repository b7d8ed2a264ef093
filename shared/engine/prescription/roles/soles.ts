/**
 * Which soles serve the grounds of a role: as few pairs as will do, each ground on a sole that it
 * allows. A sole is never worn where the table forbids it.
 */
import type { FeatureWish } from '../../findings/assessment.ts'
import { suitability } from '../../protocol/norms/suitability.ts'
import type { Sole, Surface } from '../../visit/terms.ts'
import { soleRows } from './sole.table.ts'

/** A sole and the grounds that it serves. */
export interface SoleOnGrounds {
	sole: Sole
	surfaces: Surface[]
	/** The sole that the grounds would ask for, left for the sake of this wish. */
	left?: { sole: Sole; wish: FeatureWish; way: 'seek' | 'avoid' }
}
export interface SoleQuestion {
	/** In the order of the list of surfaces. */
	surfaces: readonly Surface[]
	/** Soles of the role. */
	soles: readonly Sole[]
	/** Soles of the pairs at hand that may go on being worn: nothing new where one of them serves. */
	atHand: readonly Sole[]
	/** Wishes that stand before grip: a sole that goes against them is left where another serves. */
	before: { seek: readonly FeatureWish[]; avoid: readonly FeatureWish[] }
	/** Only one pair can be had. */
	onlyOne: boolean
	/** The most that a sole may cost on a ground. */
	mostCost: number
}
/** What a sole costs on dry ground; undefined where it is forbidden. */
export function costOn(sole: Sole, surface: Surface): number | undefined {
	const cost = suitability[sole][surface].dry
	return cost === 'forbidden' ? undefined : cost
}
/** The wish that a sole by itself goes against; undefined: none. */
export function wishAgainst(
	sole: Sole,
	{ seek, avoid }: SoleQuestion['before'],
): { wish: FeatureWish; way: 'seek' | 'avoid' } | undefined {
	const { has, lacks } = soleRows[sole]
	const avoided = avoid.find(({ feature }) => has.includes(feature))
	if (avoided) return { wish: avoided, way: 'avoid' }
	const sought = seek.find(({ feature }) => lacks.includes(feature))
	return sought && { wish: sought, way: 'seek' }
}
/** Every way to take this many soles, in the order of the list. */
function choices(soles: readonly Sole[], many: number): Sole[][] {
	if (many === 0) return [[]]
	return soles.flatMap((sole, at) =>
		choices(soles.slice(at + 1), many - 1).map((rest) => [sole, ...rest]),
	)
}
/** How well these soles serve the grounds; lower is better, in the order of its parts. */
interface Served {
	soles: Sole[]
	/** Grounds on which the best of them costs more than one sole may. */
	poor: number
	against: number
	fresh: number
	cost: number
}
/** Undefined where a ground forbids each of them. */
function servedBy(soles: Sole[], question: SoleQuestion): Served | undefined {
	const costs = question.surfaces.map((surface) =>
		Math.min(...soles.map((sole) => costOn(sole, surface) ?? Infinity)),
	)
	if (costs.includes(Infinity)) return undefined
	return {
		soles,
		poor: costs.filter((cost) => cost > question.mostCost).length,
		against: soles.filter((sole) => wishAgainst(sole, question.before)).length,
		fresh: soles.filter((sole) => !question.atHand.includes(sole)).length,
		cost: costs.reduce((sum, cost) => sum + cost, 0),
	}
}
const compare = (first: Served, second: Served): number =>
	first.poor - second.poor ||
	first.against - second.against ||
	first.fresh - second.fresh ||
	first.cost - second.cost
/** The best way to serve the grounds, as few soles as will do. */
function bestOf(question: SoleQuestion): Sole[] {
	const ways = question.soles.map((_, at) =>
		choices(question.soles, at + 1)
			.flatMap((soles) => servedBy(soles, question) ?? [])
			.toSorted(compare),
	)
	const possible = ways.flatMap((served) => served[0] ?? [])
	const enough = question.onlyOne ? possible[0] : possible.find(({ poor }) => poor === 0)
	const best = enough ?? possible.toSorted(compare)[0]
	return best?.soles ?? []
}

/**
 * The soles, each with the grounds on which it is the best of them; the one that serves the first
 * ground first. Empty where no ground is recorded.
 */
export function solesFor(question: SoleQuestion): SoleOnGrounds[] {
	if (question.surfaces.length === 0) return []
	const soles = bestOf(question)
	const unbound = bestOf({ ...question, before: { seek: [], avoid: [] } })
	const served = new Map<Sole, Surface[]>()
	for (const surface of question.surfaces) {
		const [best] = soles
			.filter((sole) => costOn(sole, surface) !== undefined)
			.toSorted((first, second) => (costOn(first, surface) ?? 0) - (costOn(second, surface) ?? 0))
		if (best) served.set(best, [...(served.get(best) ?? []), surface])
	}
	return [...served].map(([sole, surfaces]) => {
		const left = unbound.find(
			(other) => !soles.includes(other) && surfaces.every((at) => costOn(other, at) !== undefined),
		)
		const against = left && wishAgainst(left, question.before)
		return left && against
			? { sole, surfaces, left: { sole: left, ...against } }
			: { sole, surfaces }
	})
}
