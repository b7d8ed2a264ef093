/** The player's earlier visits in one order, whatever order they came in. */
import { canonicalJson } from '../plain/canonical.ts'
import type { Visit } from '../visit/visit.ts'

const byDayThenContent = (one: Visit, other: Visit): number => {
	if (one.visitDate !== other.visitDate) return one.visitDate < other.visitDate ? -1 : 1
	const [first, second] = [canonicalJson(one), canonicalJson(other)]
	if (first === second) return 0
	return first < second ? -1 : 1
}
/**
 * Those of an earlier day, oldest first; of one day by their content, so that their order on
 * coming in decides nothing. One of the same day as the visit has no time between and is left out.
 */
export const visitsBefore = (visit: Visit, earlier: readonly Visit[]): Visit[] =>
	earlier.filter(({ visitDate }) => visitDate < visit.visitDate).sort(byDayThenContent)
