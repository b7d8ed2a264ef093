/** What the insert rows look at on one side, gathered once. */
import { isAdult } from '../facts/age.ts'
import type {
	AnkleResult,
	PostureResult,
	ScreeningResult,
	SizingResult,
} from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { meanOf } from '../visit/sides.ts'
import { type Condition, termWords } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** The footwear the insert goes into, where known: the liner that comes out makes room. All mm. */
export interface InsertRoom {
	removableLiner?: boolean
	linerMm?: number
	depthOverToesMm?: number
}
/** The results that the insert room draws on, and the room in the boot where known. */
export interface InsertContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	screening: ScreeningResult
	room?: InsertRoom
}
/** One side; what is not measured is absent. */
export interface InsertFacts {
	side: Side
	adult: boolean
	massKg?: number
	fpi?: number
	fpiBand?: string
	firstRay?: string
	firstMtp?: string
	heelWidthMm?: number
	ballLengthMm?: number
	forefoot?: string
	supinationResistance?: string
	ankleRaiseMm?: number
	/** Where the ankle's raise comes from. */
	ankleRaiseBasis?: Basis
	legLengthMm?: number
	shorter: boolean
	protocol: Protocol
	/** Current or recovering on this side, on both, or recorded without a side. */
	nowHereOrUnsided(...conditions: Condition[]): Because[]
	/** Current or recovering, whatever the side: for what is given to both shoes. */
	nowAnywhere(...conditions: Condition[]): Because[]
	/** Past ones too, on this side, on both, or recorded without a side. */
	everHereOrUnsided(...conditions: Condition[]): Because[]
}
type Recorded = NonNullable<Visit['conditions']>[number]
const asReason = ({ condition, side, status, painWorst }: Recorded): Because => ({
	measure: `${termWords(condition)}${side === 'none' ? '' : ` (${side})`}`,
	value: painWorst === undefined ? status : `${status}, worst pain ${painWorst} of 10`,
})
/**
 * The part of the ankle room's raise that is for both shoes; what one side has above it corrects
 * the leg length and is an element of its own. Undefined where there is none.
 */
function symmetricalRaiseMm({ heelRaiseMm }: AnkleResult): number | undefined {
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
	const conditions = visit.conditions ?? []
	const here = (condition: Recorded) =>
		condition.side === side || condition.side === 'both' || condition.side === 'none'
	const isNow = (condition: Recorded) => condition.status !== 'past'
	const recorded = (wanted: readonly Condition[]) =>
		conditions.filter(({ condition }) => wanted.includes(condition))
	const { fpi, fpiBand, firstRay, firstMtp } = context.posture[side]
	const ankleRaise = context.ankle.findings.find(({ id }) => id.startsWith('ankle.heel-raise'))
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
		ankleRaiseBasis: ankleRaise?.basis,
		legLengthMm: visit.body?.legLengthDifferenceMm,
		shorter: visit.body?.shorterLeg === side,
		nowHereOrUnsided: (...wanted: Condition[]) =>
			recorded(wanted).filter(isNow).filter(here).map(asReason),
		nowAnywhere: (...wanted: Condition[]) => recorded(wanted).filter(isNow).map(asReason),
		everHereOrUnsided: (...wanted: Condition[]) => recorded(wanted).filter(here).map(asReason),
	})
}
