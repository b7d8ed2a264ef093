/** What is done to the insert that is worn, as the plan of a document has it. */

import type { SettledPlan } from '../prescription/settled.ts'
import { bothSides } from '../visit/sides.ts'
import type { ReportInput } from './inputs.ts'
import { planOf } from './plan-of.ts'
import { waits } from './waits.ts'

type Kept = NonNullable<SettledPlan['insertKept']>
/** The insert that goes on being worn; undefined where none does, or a new one is ordered. */
export function keptInsertOf(
	input: Pick<ReportInput, 'assessment' | 'decisions' | 'draft'>,
): Kept | undefined {
	const { insertKept: kept } = planOf(input)
	return kept === undefined || kept.anew === true ? undefined : kept
}
/** With the lines that stand; undefined where nothing is done to it. None on a limb that waits. */
export function adjustmentsOf(input: Parameters<typeof keptInsertOf>[0]): Kept | undefined {
	const kept = keptInsertOf(input)
	if (!kept) return undefined
	const { gate } = planOf(input)
	const free = bothSides.filter((side) => !waits(gate, 'insert', side))
	const lines = kept.lines.filter(({ side }) => free.includes(side))
	return lines.length > 0 ? { ...kept, lines } : undefined
}
