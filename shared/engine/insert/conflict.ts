/** What in an insert works against something else: shown, never settled silently. */
import type { InsertConflict } from '../findings/assessment.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Side } from '../visit/visit.ts'

/** @param id what it is, without room and side; @param elements ids of the elements it is about */
export const conflictOn = (
	side: Side,
	id: string,
	elements: string[],
	says: string,
	basis: Basis,
): InsertConflict => ({ id: `insert.${id}.${side}`, side, elements, says, basis })
/** A sentence's first letter as a capital. */
export const capitalised = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
