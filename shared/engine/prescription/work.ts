/** Changes to footwear and ways to lace that stand in the plan. */
import { isHeld } from '../facts/held.ts'
import type { FootwearWork, Gate, Prescription } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'

/** Work that is a raise: its figure stands in the plan of the raise, once. */
const raises = new Set(['heel-raise'])
/** Work that an element of the insert does as well: it is done once. */
const doneByInsert: Readonly<Record<string, string>> = { 'forefoot-plate': 'forefoot-stiffener' }
/**
 * @param work modifications or lacings. @param insert what it does is not
 * done to the boot as well. @returns their keys (`ID.SIDE`): none where no sport is
 * played, none for a limb that carries no weight
 */
export function standingWork(
	work: readonly FootwearWork[] | undefined,
	gate: Gate,
	insert?: Prescription['insert'],
): string[] {
	if (isHeld(gate, 'sport')) return []
	return (work ?? [])
		.filter(({ id, side }) => {
			const limbs = side === 'both' ? bothSides : [side]
			const element = doneByInsert[id]
			const isDone =
				element !== undefined && limbs.every((limb) => insert?.[limb].elements.includes(element))
			return !raises.has(id) && !isDone && !limbs.some((limb) => isHeld(gate, 'weight', limb))
		})
		.map(({ id, side }) => `${id}.${side}`)
}
