/** What the insert rows look at on one side, gathered once. */
import {
	conditionReasons,
	hasCondition,
	recordedConditions,
	unclearedSurgery,
} from '../conditions/query.ts'
import { isAdult } from '../facts/age.ts'
import type { Gate, Kept, PostureResult, PostureSide } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import { meanOf } from '../visit/sides.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { RaiseFigures } from './raised.ts'

/** The footwear the insert goes into, where known: the liner that comes out makes room. All mm. */
export interface InsertRoom {
	removableLiner?: boolean
	linerMm?: number
	depthOverToesMm?: number
}
/**
 * What the insert room draws on, of a signed visit as its record keeps it, and the room in the boot
 * where known.
 */
export interface InsertContext {
	posture: Kept<PostureResult>
	gate: Gate
	/** The raises as they are wanted with nothing else under the heel: what the rest makes room for. */
	wanted: RaiseFigures
	/** The raises as they are given beside the insert; absent before that is known. */
	raised?: RaiseFigures
	room?: InsertRoom
}
type Where = NonNullable<Parameters<typeof recordedConditions>[2]>
type Stance = NonNullable<NonNullable<Visit['posture']>[Side]>
/** One side; what is not measured is absent. */
export interface InsertFacts {
	side: Side
	adult: boolean
	massKg?: number
	fpi?: number
	fpiBand?: NonNullable<PostureSide['fpiBand']>
	firstRay?: string
	firstMtp?: NonNullable<PostureSide['firstMtp']>
	heelWidthMm?: number
	ballLengthMm?: number
	forefoot?: NonNullable<Stance['forefoot']>
	supinationResistance?: NonNullable<Stance['supinationResistance']>
	legLengthMm?: number
	protocol: Protocol
	/** Operated, without the surgeon's clearance. */
	uncleared: boolean
	/** Current or recovering, whatever the side: for what is given to both shoes. */
	nowAnywhere(...conditions: Condition[]): boolean
	/**
	 * How bad what is named hurts now on this side, for order only: 0 not at all, a current complaint
	 * above every recovering one.
	 */
	painNow(names: readonly string[]): number
	/** Recorded conditions among these, as reasons. */
	reasons(conditions: readonly Condition[], where: Where): Because[]
	/** Recorded conditions among these, each once. */
	recorded(conditions: readonly Condition[], where: Where): Condition[]
}
/** Above the worst pain that can be recorded, so that what is current comes first. */
const current = 20
/** Pain from 0 to 10 as recorded, and whether the complaint is current. */
function painOf(visit: Visit, side: Side, names: readonly string[]): number {
	const now = recordedConditions(visit, names as readonly Condition[], { side })
	return Math.max(
		0,
		...now.map(({ status, painWorst = 0 }) => (status === 'current' ? current : 1) + painWorst),
	)
}
/** What the rows ask about one side. */
export function insertFacts(
	visit: Visit,
	context: InsertContext,
	side: Side,
	protocol: Protocol,
): InsertFacts {
	const { fpi, fpiBand, firstRay, firstMtp } = context.posture[side]
	return present({
		side,
		adult: isAdult(visit, protocol),
		protocol,
		massKg: bodySize(visit).massKg,
		fpi,
		fpiBand,
		firstRay,
		firstMtp,
		heelWidthMm: meanOf(visit.feet?.[side]?.heelWidthMm),
		ballLengthMm: meanOf(visit.feet?.[side]?.heelToBallMm),
		forefoot: visit.posture?.[side]?.forefoot,
		supinationResistance: visit.posture?.[side]?.supinationResistance,
		legLengthMm: visit.body?.legLengthDifferenceMm,
		uncleared: unclearedSurgery(visit, { side }).length > 0,
		nowAnywhere: (...wanted: Condition[]) => hasCondition(visit, wanted),
		painNow: (names: readonly string[]) => painOf(visit, side, names),
		reasons: (wanted: readonly Condition[], where: Where) => conditionReasons(visit, wanted, where),
		recorded: (wanted: readonly Condition[], where: Where) => [
			...new Set(recordedConditions(visit, wanted, where).map(({ condition }) => condition)),
		],
	})
}
