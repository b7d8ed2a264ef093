import type { Action } from '../findings/assessment.ts'
import type { Level } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Strength } from '../protocol/basis.ts'
import type { generalFlagShape } from '../visit/visit.ts'

export type FlagKey = keyof typeof generalFlagShape
interface More {
	/** Where it differs for a minor. */
	minorAction?: Action
	/** Said as a finding of this level although nobody else is called. */
	level?: Level
	/** Asked of these players only; an answer given by another still counts. */
	sex?: 'female'
}
export interface FlagRow extends More {
	key: FlagKey
	action: Action
	source: string
	strength: Strength
}
/** A row of the table of general questions; its sentence stands in words under `screening.<key>`. */
export const row = (
	key: FlagKey,
	action: Action,
	source: string,
	strength: Strength,
	more: More = {},
): FlagRow => present({ key, action, source, strength, ...more })
