/** What in an insert works against something else: shown, never settled silently. */
import type { InsertConflict } from '../findings/assessment.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Side } from '../visit/visit.ts'
import type { Statement } from '../words/statement.ts'

/**
 * @param elements ids of the elements it is about; @param of what tells it from another conflict of
 * the same code on that side
 */
export const conflictOn = (
	side: Side,
	statement: Statement,
	elements: string[],
	basis: Basis,
	of?: string,
): InsertConflict => ({
	id: `${statement.code}${of === undefined ? '' : `-${of}`}.${side}`,
	side,
	elements,
	...statement,
	basis,
})
