/** What the screening room returns: signs, the action they ask for, and what they hold back. */
import type { Basis } from '../protocol/basis.ts'
import type { Statement } from '../words/statement.ts'
import type { PerSide } from './compared.ts'
import type { Finding } from './finding.ts'

export const actions = ['proceed', 'letter', 'imaging', 'same-day', 'emergency'] as const
export type Action = (typeof actions)[number]
export type OttawaState = 'met' | 'not-met' | 'incomplete' | 'not-applicable'
export interface ScreeningItem extends Statement {
	id: string
	side: 'left' | 'right' | 'both' | 'none'
	state: 'yes' | 'no' | 'not-asked'
	action: Action
	basis: Basis
}
/** Foot at risk in diabetes (NICE NG19). */
export type DiabeticRisk = 'low' | 'moderate' | 'high' | 'active' | 'incomplete'
export interface ScreeningResult {
	action: Action
	items: ScreeningItem[]
	ottawa: Partial<PerSide<{ ankle: OttawaState; foot: OttawaState }>>
	wells?: { score?: number; band: 'likely' | 'unlikely' | 'not-applicable' }
	diabeticFoot?: Partial<PerSide<DiabeticRisk>>
	/**
	 * Limbs whose insert and rotation output stop until what was done is recorded
	 * (decisions.screeningDone), and the items that stop each.
	 */
	blockedSides: ('left' | 'right')[]
	blockedBy: PerSide<string[]>
	findings: Finding[]
}
