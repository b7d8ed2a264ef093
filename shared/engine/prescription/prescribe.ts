/** From what the rooms propose to the one plan of a visit. */
import { isHeld } from '../facts/held.ts'
import { rolesOfPair } from '../facts/trainer.ts'
import type {
	AnkleResult,
	FootwearResult,
	Gate,
	GrowthResult,
	InsertResult,
	LoadingResult,
	OwnedPair,
	PlayerFacts,
	PostureResult,
	Prescription,
	RaisePlan,
	RaiseResult,
	ScreeningResult,
	SizingResult,
} from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { keptInsert } from '../insert/follow/kept.ts'
import { addDays, daysPerWeek } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import type { Visit } from '../visit/visit.ts'
import { prescribedInserts } from './inserts.ts'
import { namedIn } from './lines.ts'
import { loadPlan } from './load.ts'
import { prioritiesOf } from './priorities.ts'
import { questionsOf } from './questions.ts'
import { earliestReview, reviewsAsked } from './review.ts'
import { rolePairs } from './roles/role-pairs.ts'
import { sizeToBuyBy } from './settled-size.ts'
import { unchangedSince } from './unchanged.ts'
import { standingWork } from './work.ts'

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
	owned: OwnedPair[]
	insert: InsertResult
	findings: readonly Finding[]
	shelf: Shelf | undefined
}
/** The prescription of a visit. @param before the player's earlier visits, oldest first */
export function prescribe(
	visit: Visit,
	before: readonly Visit[],
	proposed: Proposed,
	protocol: Protocol,
): Prescription {
	const { gate, footwear, findings, facts, growth, loading, owned } = proposed
	const { visitDate } = visit
	const pairs = rolePairs(visit, proposed, protocol)
	const insert = prescribedInserts(visit, proposed.insert, gate, { roles: pairs, owned })
	const insertKept = keptInsert(visit, proposed.insert, gate, protocol)
	const raise = raiseOf(proposed)
	const changes = standingWork(footwear.modifications, gate, insert)
	const lacing = standingWork(footwear.lacing, gate)
	const reviewAsked = reviewsAsked(
		{ gate, raise, insert, owned, growth, findings, visitDate },
		protocol,
	)
	const review = earliestReview(reviewAsked)
	const load = loadPlan(gate, loading, findings)
	const named = namedIn(visit, { sizing: proposed.sizing, footwear })
	const rolesOf = (id: string) =>
		(visit.footwear ?? []).flatMap((pair) => (pair.id === id ? rolesOfPair(pair) : []))
	const parts = {
		gate,
		load,
		raise,
		pairs,
		owned,
		insert,
		changes,
		lacing,
		...present({ review, insertKept }),
	}
	return {
		...parts,
		reviewAsked,
		priorities: prioritiesOf({
			...parts,
			minor: facts.minor,
			visitDate,
			buyBy: addDays(visitDate, protocol.value('prescription.buyWeeks') * daysPerWeek),
			findings,
			nameOf: named.nameOf,
			rolesOf,
		}),
		questions: questionsOf(
			{ ...parts, size: sizeToBuyBy(proposed.sizing) },
			named,
			findings,
			{ footwear, pairs, roles: facts.roles },
			unchangedSince(visit, before, facts.minor, protocol),
			protocol,
		),
	}
}
function raiseOf({ gate, raise: { aim, pairs, steps } }: Proposed): RaisePlan {
	return isHeld(gate, 'raise')
		? { aim: { kind: 'none', because: [] }, pairs: [], steps: [] }
		: { aim, pairs, steps }
}
