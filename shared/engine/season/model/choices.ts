/** What may still be chosen in a season: each pair in each session, with its variables. */
import { need } from '../../plain/need.ts'
import {
	fixedUses,
	minutesIn,
	openMinutes,
	pointsAt,
	type SeasonProblem,
	type Slot,
	type Use,
} from '../problem/problem.ts'
import type { Term } from './programme.ts'
import { nameOf } from './variables.ts'

/** A pair in a session. */
export interface Cell {
	/** its place in the season */
	session: number
	slot: Slot
	/** its place among the pairs */
	pair: number
	/** points an hour, where the pair may still be chosen */
	points: number | undefined
	/** variable: 1 where the pair is worn */
	worn: string
	/** variable: minutes in the pair, where the session may be shared */
	part: string
	/** the minutes chosen, as terms; none where the pair cannot be chosen */
	minutes: readonly Term[]
	settledMinutes: number
}
type ChoosableCell = Cell & { points: number }
export interface ModelSession {
	index: number
	slot: Slot
	/** minutes not settled before */
	openMinutes: number
	/** by pair */
	cells: readonly Cell[]
	able: readonly ChoosableCell[]
}
export const isChoosable = (cell: Cell): cell is ChoosableCell => cell.points !== undefined
/** 1 where the pair is worn in the session by what was settled before. */
export const settledUse = (cell: Cell): number => (cell.settledMinutes > 0 ? 1 : 0)
/** The cell of a pair in a session. */
export const cellOf = (session: ModelSession, pair: number): Cell =>
	need(session.cells[pair], 'the pair in its session')

function cellIn(
	problem: SeasonProblem,
	{ index, slot, settled, open }: { index: number; slot: Slot; settled: Use[]; open: number },
	pair: number,
): Cell {
	const points = pointsAt(problem, index, pair)
	const free = open > 0 && points !== undefined && !settled.some((use) => use.pair === pair)
	const worn = nameOf({ is: 'worn', slot: index, pair })
	const part = nameOf({ is: 'part', slot: index, pair })
	const chosen: Term = slot.split ? [1, part] : [open, worn]
	return {
		session: index,
		slot,
		pair,
		points: free ? points : undefined,
		worn,
		part,
		minutes: free ? [chosen] : [],
		settledMinutes: minutesIn(settled, pair),
	}
}
/** Every session of a problem with what may be chosen in it, in order of time. */
export function choicesOf(problem: SeasonProblem): ModelSession[] {
	const fixed = fixedUses(problem)
	return problem.slots.map((slot, index) => {
		const settled = need(fixed[index], 'what is settled in a session')
		const open = openMinutes(slot, settled)
		const cells = problem.pairs.map((_, pair) =>
			cellIn(problem, { index, slot, settled, open }, pair),
		)
		return { index, slot, openMinutes: open, cells, able: cells.filter(isChoosable) }
	})
}
