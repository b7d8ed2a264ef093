/** On which limb a sign is, and whether a row of holds applies to it. */
import { type Action, actions, type ScreeningItem } from '../findings/screening-result.ts'
import { type HoldRow, holdRows } from '../protocol/holds.table.ts'
import { bothSides } from '../visit/sides.ts'
import type { Screening, Side } from '../visit/visit.ts'

/** Whether a row holds for a sign that asks for this action. */
export const actsFrom = ({ from }: HoldRow, action: Action): boolean =>
	from === undefined || actions.indexOf(action) >= actions.indexOf(from)
/** The side that a group opened beside a general question names. */
function placed(rule: string, screening: Screening | undefined): readonly Side[] {
	const groups = holdRows.find((row) => row.rule === rule)?.placedBy ?? []
	const named = groups.flatMap((group) => screening?.[group]?.side ?? [])[0]
	if (named === undefined) return []
	return named === 'both' ? bothSides : [named]
}
/** The limb or limbs of a sign; none where it has no place: it is then of the whole person. */
export function placesOf(
	{ code, side }: Pick<ScreeningItem, 'code' | 'side'>,
	screening: Screening | undefined,
): readonly Side[] {
	if (side === 'both') return bothSides
	return side === 'none' ? placed(code, screening) : [side]
}
/** The limbs that a sign may be on: both where it has no place. */
export function sidesOfSign(
	item: Pick<ScreeningItem, 'code' | 'side'>,
	screening: Screening | undefined,
): readonly Side[] {
	const places = placesOf(item, screening)
	return places.length > 0 ? places : bothSides
}
