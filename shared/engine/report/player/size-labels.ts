/** The labels of a player's size, in each system as its scale writes it. */
import type { Kept, SizeLabel, Sizes, SizingResult } from '../../findings/assessment.ts'
import { lastChildSize } from '../../sizing/sizes.ts'
import { termWords } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { sizeShown } from '../../words/words.ts'

type System = Exclude<keyof Sizes, 'mondopoint'>
const halfSize = 0.5
/** After the last child size the scale begins again. */
const firstOfNextScale = 1

/** A size system by its name, the player's label in it, and which it is. */
export type Labelled = [name: string, label: SizeLabel, system: System]
/** The size systems of a player, in the order the reader looks for them. */
export function systemsOf(visit: Visit, { sizes }: Kept<SizingResult>): [System, SizeLabel][] {
	if (!sizes) return []
	const childSize = sizes.usChild.scale === 'child' || sizes.uk.scale === 'child'
	const adultSystem: System = visit.player.sex === 'female' ? 'usWomen' : 'usMen'
	const systems: System[] = ['eu', 'uk', childSize ? 'usChild' : adultSystem, 'jpCm']
	return systems.map((system) => [system, sizes[system]])
}
/** The same by the names of the systems. */
export const labelsOf = (visit: Visit, sizing: Kept<SizingResult>): Labelled[] =>
	systemsOf(visit, sizing).map(([system, label]) => [termWords(system), label, system])
/** A label as its scale writes it: a child's size says so. */
export const labelWords = ({ scale, label }: SizeLabel, value: number, t: Speak): string =>
	scale === 'child' && value >= label
		? t('player.child', { size: sizeShown(value) })
		: sizeShown(value)
/** The next label to try where the closest is too tight: the next half up, never the same again. */
export function nextUp({ label, fitting, scale }: SizeLabel): number {
	if (fitting !== label) return fitting
	return scale === 'child' && label >= lastChildSize ? firstOfNextScale : label + halfSize
}
