/** Heel raises already worn inside an owned pair: leave them, or take them out. */
import { isHeld } from '../facts/held.ts'
import type { AnkleResult, Gate, RaiseResult } from '../findings/assessment.ts'
import { type Finding, findingOf, idPart, reading } from '../findings/finding.ts'
import type { Ground } from '../footwear/pair/ground.ts'
import { commonPractice } from '../protocol/basis.ts'
import { raiseIn } from '../raise/in-plan.ts'
import { bothSides } from '../visit/sides.ts'
import type { Pair } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

interface RaiseWorn {
	gate: Gate
	ankle: AnkleResult
	raise?: RaiseResult | undefined
}
/** The raise room takes it out, and nothing takes its place. */
function isUnwanted({ id }: Pair, { raise }: RaiseWorn): boolean {
	const planned = raise && raiseIn(raise, id)
	if (planned?.worn?.verdict !== 'take-out') return false
	return bothSides.every((side) => planned[side].addMm === 0)
}
/** What a raise worn inside comes to; while raises are held it is left as it is. */
export function raiseInsideGrounds(pair: Pair, worn: RaiseWorn): Ground[] {
	const raiseMm = pair.heelLiftMm ?? 0
	if (raiseMm <= 0) return []
	if (isHeld(worn.gate, 'raise'))
		return [{ verdict: 'keep', statement: state('owned.raise-waits', { raiseMm }) }]
	if (!isUnwanted(pair, worn)) return []
	return [
		{
			verdict: 'modify',
			statement: state('owned.take-out-raise', { raiseMm }),
			work: 'take-out-raise',
		},
	]
}
/** The same as a finding, where something is to be done. */
export const raiseInsideFindings = (
	pair: Pair,
	index: number,
	grounds: readonly Ground[],
): Finding[] =>
	grounds
		.filter(({ work }) => work !== undefined)
		.map(({ statement }) => ({
			...findingOf(statement, {
				id: `footwear.raise-inside-${idPart(pair.id, index)}`,
				side: 'none',
				level: 'advise',
				because: [reading('heelLiftMm', pair.heelLiftMm ?? 0, 'mm')],
				basis: { rule: 'raises worn already', ...commonPractice },
			}),
			topic: 'footwear',
		}))
