/** A pair rests until it is dry: never worn again soaked, and where it can be not damp either. */
import { type Owned, stillWet } from '../problem/problem.ts'
import { type Cell, isChoosable, settledUse } from './choices.ts'
import type { Model, Term } from './programme.ts'
import { declare } from './variables.ts'

type Conflict = (earlier: Cell, later: Cell) => boolean
const together = (earlier: Cell, later: Cell): string => `${earlier.session} ${later.session}`
const everyTwo = (cells: readonly Cell[]): string[] =>
	cells.flatMap((earlier, place) => cells.slice(place + 1).map((later) => together(earlier, later)))

/** Maximal runs of sessions in which each two conflict; two for a lone conflict. */
function cliques(order: readonly Cell[], conflict: Conflict): Cell[][] {
	const found: Cell[][] = []
	const covered = new Set<string>()
	for (const [place, first] of order.entries()) {
		const clique = [first]
		for (const later of order.slice(place + 1).filter((cell) => conflict(first, cell)))
			if (clique.every((member) => conflict(member, later))) clique.push(later)
			else if (!covered.has(together(first, later))) {
				found.push([first, later])
				covered.add(together(first, later))
			}
		const pairs = everyTwo(clique)
		if (pairs.some((two) => !covered.has(two))) found.push(clique)
		for (const two of pairs) covered.add(two)
	}
	return found
}
/** The variables of wear in the sessions in which the pair may still be chosen. */
export const wornIn = (cells: readonly Cell[]): Term[] =>
	cells.filter(isChoosable).map((cell): Term => [1, cell.worn])
/** In how many of the sessions the pair is worn by what was settled before. */
export const settledIn = (cells: readonly Cell[]): number =>
	cells.reduce((sum, cell) => sum + settledUse(cell), 0)

/** Hard: of sessions too close for a soaked pair to dry between them it is worn in one. */
function restSoaked(model: Model, touched: readonly Cell[], pair: Owned, place: number): void {
	const soaked: Conflict = (earlier, later) =>
		earlier.slot.ground === 'wet' && stillWet(pair, earlier.slot, later.slot)
	for (const [number, clique] of cliques(touched, soaked).entries()) {
		const terms = wornIn(clique)
		if (terms.length > 0)
			model.rows.push({
				name: `h${place}_${number}`,
				terms,
				sense: '<=',
				right: Math.max(0, 1 - settledIn(clique)),
			})
	}
}
/** A wish: the same for a damp or dry pair, which may be worn again. */
function restDamp(model: Model, touched: readonly Cell[], pair: Owned, place: number): void {
	const damp: Conflict = (earlier, later) =>
		earlier.slot.ground !== 'wet' && stillWet(pair, earlier.slot, later.slot)
	const allowance = (cell: Cell): string =>
		declare(model, { is: 'not-dry', slot: cell.session, pair: place })
	const allowed = new Set<Cell>()
	for (const [number, clique] of cliques(touched, damp).entries()) {
		const terms = wornIn(clique)
		if (terms.length === 0) continue
		const later = clique.slice(1)
		for (const cell of later) allowed.add(cell)
		model.rows.push({
			name: `d${place}_${number}`,
			terms: [...terms, ...later.map((cell): Term => [-1, allowance(cell)])],
			sense: '<=',
			right: 1 - settledIn(clique),
		})
	}
	for (const cell of allowed) {
		// a settled use that was not dry is nobody's choice any more: it is allowed for and costs
		// nothing
		if (!isChoosable(cell)) {
			model.bounds.push(allowance(cell))
			continue
		}
		model.rows.push({
			name: `w${cell.session}_${place}`,
			terms: [
				[1, allowance(cell)],
				[-1, cell.worn],
			],
			sense: '<=',
			right: 0,
		})
		model.goals.dry.push([1, allowance(cell)])
	}
}
/**
 * Rows of drying of a pair.
 * @param touched the sessions in which it may be or is worn, in order of time
 */
export function restUntilDry(
	model: Model,
	touched: readonly Cell[],
	pair: Owned,
	place: number,
): void {
	restSoaked(model, touched, pair, place)
	restDamp(model, touched, pair, place)
}
