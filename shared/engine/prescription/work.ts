/** Changes to footwear and ways to lace that stand in the plan. */
import { isHeld } from '../facts/held.ts'
import type { FootwearWork, Gate } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'

/** Work that is a raise: its figure stands in the plan of the raise, once. */
const raises = new Set(['heel-raise'])
/**
 * @param work modifications or lacings. @returns their keys (`ID.SIDE`): none where no sport is
 * played, none for a limb that carries no weight
 */
export function standingWork(work: readonly FootwearWork[] | undefined, gate: Gate): string[] {
	if (isHeld(gate, 'sport')) return []
	return (work ?? [])
		.filter(({ id, side }) => {
			const limbs = side === 'both' ? bothSides : [side]
			return !raises.has(id) && !limbs.some((limb) => isHeld(gate, 'weight', limb))
		})
		.map(({ id, side }) => `${id}.${side}`)
}
