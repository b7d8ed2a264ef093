/**
 * The raise room: one figure for each foot in each pair. Nothing else in the engine works out a
 * raise; wedge, insert and outsole are ways to make this one.
 */
import { isHeld } from '../facts/held.ts'
import type {
	AnkleSide,
	Gate,
	PerSide,
	PlayerFacts,
	PostureResult,
	RaisePlan,
	RaiseResult,
} from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import { type Aimed, aimOfVisit } from './aim.ts'
import { raiseFindings, wornFindings } from './findings.ts'
import { forefootAtRisk } from './forefoot.ts'
import { type InPair, raiseInPair } from './in-pair.ts'
import {
	type InsertInside,
	type LengthsInside,
	pairsToLeaveOff,
	type RaisedPair,
	raisedPairs,
} from './pairs.ts'
import { raiseSteps } from './steps.ts'
import { raiseWorkings } from './workings.ts'

export interface RaiseContext {
	facts: PlayerFacts
	gate: Gate
	ankle: PerSide<AnkleSide>
	posture: PostureResult
	sizing: LengthsInside
	/** Ids of more pairs that are not to be worn, beside those the room itself leaves off. */
	pairsLeftOff?: ReadonlySet<string>
	/** Ids of pairs that are worn until another takes their place: their roles have a figure of their own. */
	pairsReplaced?: ReadonlySet<string>
	/** What an insert to be made puts under each heel, mm, by pair: the raise has the room it leaves. */
	insertsInside?: ReadonlyMap<string, InsertInside>
}
/** The pairs of a visit as the raise sees them. */
function pairsOf(visit: Visit, context: RaiseContext, protocol: Protocol): RaisedPair[] {
	const leftOff = new Set([
		...pairsToLeaveOff(visit, context.sizing, protocol),
		...(context.pairsLeftOff ?? []),
	])
	const known = {
		leftOff,
		replaced: context.pairsReplaced ?? new Set<string>(),
		inserts: context.insertsInside ?? new Map<string, InsertInside>(),
	}
	return raisedPairs(visit, context.facts, known, protocol)
}
interface Figures {
	aimed: Aimed
	/** Why the forefoot bears no more load. */
	forefoot: Because[]
	given: InPair[]
}
function figuresOf(visit: Visit, context: RaiseContext, protocol: Protocol): Figures {
	const aimed = aimOfVisit(visit, context, protocol)
	const forefoot = forefootAtRisk(visit, context.posture)
	const given = pairsOf(visit, context, protocol).map((pair) =>
		raiseInPair(pair, aimed, forefoot.length > 0, protocol),
	)
	return { aimed, forefoot, given }
}
/** What is given in each pair, without steps, findings and workings. */
export type Raised = Pick<RaisePlan, 'aim' | 'pairs'>
/** Where raises are held. */
const noneGiven = (): Raised => ({ aim: { kind: 'none', because: [] }, pairs: [] })
/** The aim and the figures alone, for what only reckons with them. */
export function raiseFigures(visit: Visit, context: RaiseContext, protocol: Protocol): Raised {
	if (isHeld(context.gate, 'raise')) return noneGiven()
	const { aimed, given } = figuresOf(visit, context, protocol)
	return { aim: aimed.aim, pairs: given.map(({ entry }) => entry) }
}
/**
 * The raise of a visit: its aim, each pair and foot, and its steps. Heights mm. Where raises are
 * held nothing is proposed; what is worn already is named, to be left as it is.
 */
export function raise(visit: Visit, context: RaiseContext, protocol: Protocol): RaiseResult {
	if (isHeld(context.gate, 'raise')) {
		const worn = pairsOf(visit, context, protocol)
			.filter(({ wornMm, leftOff: off }) => wornMm > 0 && !off)
			.map((pair) => ({ pair, verdict: 'leave' as const, given: false }))
		return { ...noneGiven(), steps: [], findings: wornFindings(worn), workings: [] }
	}
	const { aimed, forefoot, given } = figuresOf(visit, context, protocol)
	return {
		aim: aimed.aim,
		pairs: given.map(({ entry }) => entry),
		steps: raiseSteps(given, aimed, protocol),
		findings: raiseFindings(visit, aimed, given, forefoot, protocol),
		workings: raiseWorkings(given, aimed, protocol),
	}
}
