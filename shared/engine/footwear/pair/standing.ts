/** The room before the toes as it was seen with the player standing in the pair. */
import { bothSides } from '../../visit/sides.ts'
import type { Pair, Side } from '../../visit/visit.ts'

export interface RoomOnFoot {
	roomMm: number
	/** The foot that has the least; both where they are alike. */
	side: Side | 'both'
}
/** Of the foot that has the least of it: one size serves both. */
export function leastStanding({ onFoot }: Pair): RoomOnFoot | undefined {
	const seen = bothSides.flatMap((side) => {
		const roomMm = onFoot?.[side]?.roomMm
		return roomMm === undefined ? [] : [{ side, roomMm }]
	})
	const roomMm = Math.min(...seen.map((one) => one.roomMm))
	const least = seen.filter((one) => one.roomMm === roomMm)
	const [first] = least
	if (first === undefined) return undefined
	return { roomMm, side: least.length > 1 ? 'both' : first.side }
}
