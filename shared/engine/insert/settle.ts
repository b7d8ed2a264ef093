/** Of two elements that may not stand together, which one does; the other says why it gives way. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { ElementId } from '../words/en/insert-names.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { conflictOn } from './conflict.ts'
import type { InsertFacts } from './facts.ts'
import {
	type OppositeRow,
	opposites,
	type SettleRank,
	settleRanks,
	weakestFirst,
} from './settle.table.ts'

/** Elements that stand, and what gave way. */
export interface Settled {
	elements: InsertElement[]
	settled: InsertConflict[]
}
/** The higher one stands: fewer objections, the worse pain now, the stronger evidence. */
const standing: Record<SettleRank, (element: InsertElement, facts: InsertFacts) => number> = {
	safety: ({ cautioned = [] }) =>
		-cautioned.filter(({ code }) => code === 'insert.objection').length,
	'pain-now': ({ because }, facts) => facts.painNow(because.map(({ measure }) => measure)),
	strength: ({ basis }) => weakestFirst.indexOf(basis.strength),
}
/** The first rank by which the two differ, and the one that stands; undefined where none does. */
function chosen(
	pair: readonly [InsertElement, InsertElement],
	facts: InsertFacts,
): { stands: InsertElement; by: SettleRank } | undefined {
	const [first, second] = pair
	for (const by of settleRanks) {
		const more = standing[by](first, facts) - standing[by](second, facts)
		if (more !== 0) return { stands: more > 0 ? first : second, by }
	}
	return undefined
}
function settledPair(
	pair: readonly [InsertElement, InsertElement],
	{ elements: [first, second], why }: OppositeRow,
	facts: InsertFacts,
): { out: ElementId[]; said: InsertConflict } {
	const { side } = facts
	const basis = practiceBasis('elements that exclude each other')
	const choice = chosen(pair, facts)
	if (!choice)
		return {
			out: [first, second],
			said: conflictOn(
				side,
				state('insert.settled-neither', { side, first, second }),
				[first, second],
				basis,
				`${first}-${second}`,
			),
		}
	const [gives, to] = choice.stands === pair[0] ? [second, first] : [first, second]
	return {
		out: [gives],
		said: conflictOn(
			side,
			state('insert.settled-opposite', { side, gives, to, why, by: choice.by }),
			[gives],
			choice.by === 'strength' ? choice.stands.basis : basis,
			`${gives}-${to}`,
		),
	}
}
/** The elements without the losers of every pair that excludes each other. */
export function withoutOpposites(called: readonly InsertElement[], facts: InsertFacts): Settled {
	return opposites.reduce<Settled>(
		({ elements, settled }, row) => {
			const [first, second] = row.elements.map((id) =>
				elements.find(({ element }) => element === id),
			)
			if (!first || !second) return { elements, settled }
			const { out, said } = settledPair([first, second], row, facts)
			return {
				elements: elements.filter(({ element }) => !out.includes(element as ElementId)),
				settled: [...settled, said],
			}
		},
		{ elements: [...called], settled: [] },
	)
}
