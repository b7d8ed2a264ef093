/** The raise room: one figure for each foot in each pair. */
import type {
	AnkleResult,
	Gate,
	PlayerFacts,
	PostureResult,
	RaiseResult,
	SizingResult,
} from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'

export interface RaiseContext {
	facts: PlayerFacts
	gate: Gate
	ankle: AnkleResult
	posture: PostureResult
	sizing: SizingResult
}
/** The raise of a visit: its aim, each pair and foot, and its steps. Heights mm. */
export function raise(_visit: Visit, _context: RaiseContext, _protocol: Protocol): RaiseResult {
	return { aim: { kind: 'none', because: [] }, pairs: [], steps: [], findings: [], workings: [] }
}
