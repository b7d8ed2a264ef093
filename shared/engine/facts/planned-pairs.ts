/** Pairs that are planned and not owned yet: the season wears them, nothing else knows of them. */
import type { Pair, Visit } from '../visit/visit.ts'

/** Whether a pair is still to be bought. */
export const isToBuy = ({ plannedAs }: Pick<Pair, 'plannedAs'>): boolean => plannedAs !== undefined
/** The visit with the pairs that are owned; the same visit where no other is planned. */
export const ownedOnly = (visit: Visit): Visit =>
	visit.footwear?.some(isToBuy)
		? { ...visit, footwear: visit.footwear.filter((pair) => !isToBuy(pair)) }
		: visit
