/** The sizing room's numbers, each with its formula and this player's values put in. */
import type { SizingResult } from '../findings/assessment.ts'
import type { Working } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { footWorkings } from './foot-workings.ts'
import { sizeWorkings } from './size-workings.ts'

/** @param result the room's result without workings */
export const sizingWorkings = (
	visit: Visit,
	result: Omit<SizingResult, 'workings'>,
	protocol: Protocol,
): Working[] => [
	...bothSides.flatMap((side) => footWorkings(visit, side, result, protocol)),
	...sizeWorkings(visit, result, protocol),
]
