/** The gate in words of its result: of the player and of each limb. Pure. */
import type { Gate, GatePart } from '../../../../shared/engine/findings/gate.ts'
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
export const stateWords = ({ state }: GatePart): string => states[state]
/** The core questions that stand open, each once, in the order in which they are asked. */
export const unaskedIn = (gate: Gate): string[] => [
	...new Set(gateParts.flatMap((part) => gate[part].unasked)),
]
