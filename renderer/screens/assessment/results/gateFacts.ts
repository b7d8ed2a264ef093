/** The gate in words of its result: of the player and of each limb. Pure. */
import type { Gate, GatePart } from '../../../../shared/engine/findings/gate.ts'
import { heldWords } from '../../../../shared/engine/words/en/gate.ts'
import { gateParts } from '../flagsHeld.ts'

export const partNames: Readonly<Record<keyof Gate, string>> = {
	person: 'Player',
	left: 'Left limb',
	right: 'Right limb',
}
const states: Readonly<Record<GatePart['state'], string>> = {
	held: 'Held',
	'nothing-found': 'Nothing found',
	'not-established': 'Not established',
}
/** @returns `held` is empty where nothing of this part is held */
export const partWords = ({ state, holds }: GatePart): { state: string; held: string } => ({
	state: states[state],
	held: holds.length === 0 ? '' : heldWords([...new Set(holds.map(({ what }) => what))]),
})
/** The core questions that stand open, each once, in the order in which they are asked. */
export const unaskedIn = (gate: Gate): string[] => [
	...new Set(gateParts.flatMap((part) => gate[part].unasked)),
]
