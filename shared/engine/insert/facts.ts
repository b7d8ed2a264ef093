/** What the insert rows look at on one side, gathered once. */
import {
	conditionReasons,
	hasCondition,
	recordedConditions,
	unclearedSurgery,
} from '../conditions/query.ts'
import { isAdult } from '../facts/age.ts'
import type {
	AnkleResult,
	Kept,
	PostureResult,
	PostureSide,
	ScreeningResult,
	SizingResult,
} from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { meanOf } from '../visit/sides.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** The footwear the insert goes into, where known: the liner that comes out makes room. All mm. */
export interface InsertRoom {
	removableLiner?: boolean
	linerMm?: number
	depthOverToesMm?: number
}
/**
 * The results that the insert room draws on, of a signed visit as its record keeps them, and the
 * room in the boot where known.
 */
export interface InsertContext {
	sizing: Kept<SizingResult>
	ankle: Kept<AnkleResult>
	posture: Kept<PostureResult>
	screening: Kept<ScreeningResult>
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
	ankleRaiseMm?: number
	/** Where the ankle's raise comes from. */
	ankleRaiseBasis?: Basis
	legLengthMm?: number
	shorter: boolean
	protocol: Protocol
	/** Operated, without the surgeon's clearance. */
	uncleared: boolean
	/** Current or recovering, whatever the side: for what is given to both shoes. */
	nowAnywhere(...conditions: Condition[]): boolean
	/** Recorded conditions among these, as reasons. */
	reasons(conditions: readonly Condition[], where: Where): Because[]
	/** Recorded conditions among these, each once. */
	recorded(conditions: readonly Condition[], where: Where): Condition[]
}
/**
 * The part of the ankle room's raise that is for both shoes; what one side has above it corrects
 * the leg length and is an element of its own. Undefined where there is none.
 */
function symmetricalRaiseMm({ heelRaiseMm }: Pick<AnkleResult, 'heelRaiseMm'>): number | undefined {
	if (heelRaiseMm === undefined) return undefined
	const bothMm = Math.min(heelRaiseMm.left, heelRaiseMm.right)
	return bothMm === 0 ? undefined : bothMm
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
		massKg: visit.body?.massKg,
		fpi,
		fpiBand,
		firstRay,
		firstMtp,
		heelWidthMm: meanOf(visit.feet?.[side]?.heelWidthMm),
		ballLengthMm: meanOf(visit.feet?.[side]?.heelToBallMm),
		forefoot: visit.posture?.[side]?.forefoot,
		supinationResistance: visit.posture?.[side]?.supinationResistance,
		ankleRaiseMm: symmetricalRaiseMm(context.ankle),
		ankleRaiseBasis: context.ankle.heelRaiseBasis,
		legLengthMm: visit.body?.legLengthDifferenceMm,
		shorter: visit.body?.shorterLeg === side,
		uncleared: unclearedSurgery(visit, { side }).length > 0,
		nowAnywhere: (...wanted: Condition[]) => hasCondition(visit, wanted),
		reasons: (wanted: readonly Condition[], where: Where) => conditionReasons(visit, wanted, where),
		recorded: (wanted: readonly Condition[], where: Where) => [
			...new Set(recordedConditions(visit, wanted, where).map(({ condition }) => condition)),
		],
	})
}
