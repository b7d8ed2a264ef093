import type { Action } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Strength } from '../protocol/basis.ts'
import type { generalFlagShape } from '../visit/visit.ts'

type FlagKey = keyof typeof generalFlagShape
export interface FlagRow {
	key: FlagKey
	action: Action
	minorAction?: Action
	says: string
	source: string
	strength: Strength
}
/** A row of the table of general questions; the action of a minor only where it differs. */
export const row = (
	key: FlagKey,
	action: Action,
	says: string,
	source: string,
	strength: Strength,
	minorAction?: Action,
): FlagRow => present({ key, action, says, source, strength, minorAction })
