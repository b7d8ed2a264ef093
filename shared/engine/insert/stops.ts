/**
 * What stops an insert on a limb: any of these recorded, and nothing is proposed until what was
 * done about it is recorded.
 */
import { hasCondition } from '../conditions/query.ts'
import type { InsertSide, Kept, ScreeningResult } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { StatementCode } from '../words/statement.ts'
import { stateOf } from './said.ts'

/** What was asked, looked at for one side. */
interface Limb {
	side: Side
	adult: boolean
	screening: NonNullable<Visit['screening']>
}
interface StopRow {
	code: StatementCode
	/** An answer of the screening sets it off. */
	answered?(limb: Limb): boolean
	/** A condition of this side sets it off; one that recovers does not, unless its history does. */
	conditions?: readonly Condition[]
	when?: 'current' | 'ever'
}
/** Signs of the screening recorded for this side or for both; they always have a side. */
const ofSide = <Signs extends { side: string }>(
	signs: Signs | undefined,
	side: Side,
): Signs | undefined => (signs?.side === side || signs?.side === 'both' ? signs : undefined)

/** Source: expert opinion and common practice, where a row says no other. */
export const stopRows: readonly StopRow[] = [
	{
		code: 'insert.stop-night-pain',
		answered: ({ screening }) => screening.nightPain === true,
	},
	{
		code: 'insert.stop-weight-bearing',
		answered: ({ screening, side }) =>
			ofSide(screening.injury, side)?.unableToBearWeightNow === true ||
			ofSide(screening.lisfranc, side)?.cannotBearWeight === true ||
			ofSide(screening.limp, side)?.cannotBearWeight === true,
	},
	{
		code: 'insert.stop-bony-tenderness',
		answered: ({ screening, side }) => {
			const injury = ofSide(screening.injury, side)
			return [
				injury?.tenderFifthMetatarsalBase,
				injury?.tenderNavicular,
				injury?.tenderLateralMalleolus,
				injury?.tenderMedialMalleolus,
			].includes(true)
		},
	},
	{
		code: 'insert.stop-bone-stress',
		answered: ({ screening, side }) => {
			const signs = ofSide(screening.boneStress, side)
			return (
				screening.boneStressLowRisk === true ||
				signs?.focalTenderness === true ||
				signs?.hopPain === true
			)
		},
		conditions: [
			'second-metatarsal-stress-fracture',
			'fifth-metatarsal-stress-fracture',
			'navicular-stress-fracture',
		],
	},
	{
		// J Foot Ankle Res 2023, s13047-023-00608-0: 20 to 40 % missed at first; no weight until filmed
		code: 'insert.stop-midfoot-sprain',
		conditions: ['midfoot-sprain'],
	},
	{
		code: 'insert.stop-limp',
		answered: ({ screening, side, adult }) =>
			!adult && (screening.limpUnexplained === true || ofSide(screening.limp, side) !== undefined),
	},
	{
		code: 'insert.stop-hot-joint',
		answered: ({ screening }) => screening.hotSwollenJoint === true,
	},
	{
		code: 'insert.stop-numb',
		answered: ({ screening, side }) => {
			const foot = screening.neurological?.[side]
			return (
				screening.reducedSensation === true ||
				[foot?.feltHallux, foot?.feltFirstHead, foot?.feltFifthHead].includes(false)
			)
		},
		conditions: ['neuropathy'],
	},
	{
		code: 'insert.stop-infection',
		answered: ({ screening, side }) => {
			const signs = ofSide(screening.infection, side)
			return (
				screening.spreadingInfection === true ||
				screening.activeFootUlcer === true ||
				signs?.spreadingRedness === true ||
				signs?.infectedNailOrBlister === true
			)
		},
	},
	{
		code: 'insert.stop-rigid-or-cavus',
		answered: ({ screening }) => screening.rigidFlatFoot === true,
	},
	{
		code: 'insert.stop-sudden-leg-length',
		answered: ({ screening }) => screening.suddenLegLengthDifference === true,
	},
	{
		code: 'insert.stop-diabetic-risk',
		answered: ({ screening, side }) => screening.diabeticFoot?.[side]?.previousUlcer === true,
		conditions: ['previous-foot-ulcer'],
		when: 'ever',
	},
]
const holds = (
	{ answered, conditions = [], when = 'current' }: StopRow,
	visit: Visit,
	limb: Limb,
) => answered?.(limb) === true || hasCondition(visit, conditions, { side: limb.side, when })
/**
 * Everything that stops this limb, screening first; `released` holds the ids about which the
 * clinician has recorded what was done.
 */
export function stopsOf(
	visit: Visit,
	screening: Kept<ScreeningResult>,
	side: Side,
	adult: boolean,
	released: readonly string[],
): InsertSide['stoppedBy'] {
	const limb: Limb = { side, adult, screening: visit.screening ?? {} }
	const warned = screening.blockedBy[side].map((id) => warning(screening, id))
	const recorded = stopRows
		.filter((row) => holds(row, visit, limb))
		.map(({ code }) => ({ id: `${code}.${side}`, ...stateOf(code, {}) }))
	return [...warned, ...recorded].filter(({ id }) => !released.includes(id))
}
/** A sign of the screening, as that room states it. */
function warning({ items }: Kept<ScreeningResult>, id: string): InsertSide['stoppedBy'][number] {
	const { says = id, code, params } = items.find((one) => one.id === id) ?? {}
	return present({ id, says, code, params })
}
