/**
 * The raise room: one figure for each foot in each pair. Nothing else in the engine works out a
 * raise; wedge, insert and outsole are ways to make this one.
 */
import { isHeld } from '../facts/held.ts'
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
import { aimOfVisit } from './aim.ts'
import { raiseFindings, wornFindings } from './findings.ts'
import { forefootAtRisk } from './forefoot.ts'
import { raiseInPair } from './in-pair.ts'
import { type InsertInside, pairsToLeaveOff, raisedPairs } from './pairs.ts'
import { raiseSteps } from './steps.ts'
import { raiseWorkings } from './workings.ts'

export interface RaiseContext {
	facts: PlayerFacts
	gate: Gate
	ankle: AnkleResult
	posture: PostureResult
	sizing: SizingResult
	/** Ids of more pairs that are not to be worn, beside those the room itself leaves off. */
	pairsLeftOff?: ReadonlySet<string>
	/** Ids of pairs that are worn until another takes their place: their roles have a figure of their own. */
	pairsReplaced?: ReadonlySet<string>
	/** What an insert to be made puts under each heel, mm, by pair: the raise has the room it leaves. */
	insertsInside?: ReadonlyMap<string, InsertInside>
}
/**
 * The raise of a visit: its aim, each pair and foot, and its steps. Heights mm. Where raises are
 * held nothing is proposed; what is worn already is named, to be left as it is.
 */
export function raise(visit: Visit, context: RaiseContext, protocol: Protocol): RaiseResult {
	const leftOff = new Set([
		...pairsToLeaveOff(visit, context.sizing, protocol),
		...(context.pairsLeftOff ?? []),
	])
	const known = {
		leftOff,
		replaced: context.pairsReplaced ?? new Set<string>(),
		inserts: context.insertsInside ?? new Map<string, InsertInside>(),
	}
	const pairs = raisedPairs(visit, context.facts, known, protocol)
	if (isHeld(context.gate, 'raise')) {
		const worn = pairs
			.filter(({ wornMm, leftOff: off }) => wornMm > 0 && !off)
			.map((pair) => ({ pair, verdict: 'leave' as const, given: false }))
		return {
			aim: { kind: 'none', because: [] },
			pairs: [],
			steps: [],
			findings: wornFindings(worn),
			workings: [],
		}
	}
	const aimed = aimOfVisit(visit, context, protocol)
	const forefoot = forefootAtRisk(visit, context.posture)
	const given = pairs.map((pair) => raiseInPair(pair, aimed, forefoot.length > 0, protocol))
	return {
		aim: aimed.aim,
		pairs: given.map(({ entry }) => entry),
		steps: raiseSteps(given, aimed, protocol),
		findings: raiseFindings(visit, aimed, given, forefoot, protocol),
		workings: raiseWorkings(given, aimed, protocol),
	}
}
