/** From what the rooms propose to the one plan of a visit. */
import type {
	AnkleResult,
	FootwearResult,
	Gate,
	GrowthResult,
	InsertResult,
	LoadingResult,
	PlayerFacts,
	PostureResult,
	Prescription,
	RaiseResult,
	ScreeningResult,
	SizingResult,
} from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import type { Visit } from '../visit/visit.ts'

/** What every room found, and the facts and the gate before them. */
export interface Proposed {
	facts: PlayerFacts
	gate: Gate
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	growth: GrowthResult | undefined
	screening: ScreeningResult
	loading: LoadingResult
	raise: RaiseResult
	footwear: FootwearResult
	insert: InsertResult
	findings: readonly Finding[]
	shelf: Shelf | undefined
}
/** The prescription of a visit. @param before the player's earlier visits, oldest first */
export function prescribe(
	_visit: Visit,
	_before: readonly Visit[],
	{ gate, raise }: Proposed,
	_protocol: Protocol,
): Prescription {
	const nothing = { state: 'not-needed', elements: [], pairs: [] } as const
	return {
		gate,
		priorities: [],
		raise: { aim: raise.aim, pairs: raise.pairs, steps: raise.steps },
		pairs: [],
		owned: [],
		insert: {
			left: { ...nothing, elements: [], pairs: [] },
			right: { ...nothing, elements: [], pairs: [] },
		},
		changes: [],
		lacing: [],
		questions: [],
	}
}
