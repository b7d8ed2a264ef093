import type { Action } from '../findings/assessment.ts'
import type { Strength } from '../protocol/basis.ts'
import type { generalFlagShape } from '../visit/visit.ts'

export type FlagKey = keyof typeof generalFlagShape
export interface FlagRow {
	key: FlagKey
	action: Action
	minorAction?: Action
	says: string
	source: string
	strength: Strength
}
export const row = (
	key: FlagKey,
	action: Action,
	says: string,
	source: string,
	strength: Strength,
	minorAction?: Action,
): FlagRow => ({ key, action, says, source, strength, ...(minorAction ? { minorAction } : {}) })
