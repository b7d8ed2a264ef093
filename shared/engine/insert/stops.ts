/**
 * What stops an insert on a limb: any of these recorded, and nothing is proposed until what was
 * done about it is recorded.
 */
import type { ScreeningResult } from '../findings/assessment.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

type Recorded = NonNullable<Visit['conditions']>[number]
/** What was recorded, looked at for one side. */
interface Limb {
	side: Side
	adult: boolean
	screening: NonNullable<Visit['screening']>
	conditions: readonly Recorded[]
}
interface StopRow {
	id: string
	says: string
	holds(limb: Limb): boolean
}
/** Signs of the screening recorded for this side or for both; they always have a side. */
const ofSide = <Signs extends { side: string }>(
	signs: Signs | undefined,
	side: Side,
): Signs | undefined => (signs?.side === side || signs?.side === 'both' ? signs : undefined)

const touchesSideOrUnsided = (condition: Recorded, side: Side): boolean =>
	condition.side === side || condition.side === 'both' || condition.side === 'none'
/** Current only: what recovers does not stop an insert. Without a side it counts for both. */
const currentOnSideOrUnsided = ({ conditions, side }: Limb, ...names: Condition[]): boolean =>
	conditions.some(
		(condition) =>
			names.includes(condition.condition) &&
			condition.status === 'current' &&
			touchesSideOrUnsided(condition, side),
	)
/** Current, recovering or past. Without a side it counts for both. */
const everOnSideOrUnsided = ({ conditions, side }: Limb, name: Condition): boolean =>
	conditions.some(
		(condition) => condition.condition === name && touchesSideOrUnsided(condition, side),
	)

/** Source: expert opinion and common practice. */
const stopRows: readonly StopRow[] = [
	{
		id: 'insert.stop-night-pain',
		says: 'pain at night or at rest',
		holds: ({ screening }) => screening.nightPain === true,
	},
	{
		id: 'insert.stop-weight-bearing',
		says: 'cannot bear weight',
		holds: ({ screening, side }) =>
			ofSide(screening.injury, side)?.unableToBearWeightNow === true ||
			ofSide(screening.lisfranc, side)?.cannotBearWeight === true ||
			ofSide(screening.limp, side)?.cannotBearWeight === true,
	},
	{
		id: 'insert.stop-bony-tenderness',
		says: 'bony tenderness',
		holds: ({ screening, side }) => {
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
		id: 'insert.stop-bone-stress',
		says: 'bone stress injury suspected',
		holds: (limb) => {
			const signs = ofSide(limb.screening.boneStress, limb.side)
			return (
				limb.screening.boneStressLowRisk === true ||
				signs?.focalTenderness === true ||
				signs?.hopPain === true ||
				currentOnSideOrUnsided(
					limb,
					'second-metatarsal-stress-fracture',
					'fifth-metatarsal-stress-fracture',
					'navicular-stress-fracture',
				)
			)
		},
	},
	{
		id: 'insert.stop-limp',
		says: 'growing player with a limp that lasts',
		holds: ({ screening, side, adult }) =>
			!adult && (screening.limpUnexplained === true || ofSide(screening.limp, side) !== undefined),
	},
	{
		id: 'insert.stop-hot-joint',
		says: 'hot, swollen joint',
		holds: ({ screening }) => screening.hotSwollenJoint === true,
	},
	{
		id: 'insert.stop-numb',
		says: 'numbness or loss of protective feeling',
		holds: (limb) => {
			const foot = limb.screening.neurological?.[limb.side]
			return (
				limb.screening.reducedSensation === true ||
				[foot?.feltHallux, foot?.feltFirstHead, foot?.feltFifthHead].includes(false) ||
				currentOnSideOrUnsided(limb, 'neuropathy')
			)
		},
	},
	{
		id: 'insert.stop-infection',
		says: 'infected skin or ulcer',
		holds: ({ screening, side }) => {
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
		id: 'insert.stop-rigid-or-cavus',
		says: 'rigid flat foot, or high arch on one side only',
		holds: ({ screening }) => screening.rigidFlatFoot === true,
	},
	{
		id: 'insert.stop-sudden-leg-length',
		says: 'leg-length difference that came on suddenly',
		holds: ({ screening }) => screening.suddenLegLengthDifference === true,
	},
	{
		id: 'insert.stop-diabetic-risk',
		says: 'foot with an ulcer in the past',
		holds: (limb) =>
			limb.screening.diabeticFoot?.[limb.side]?.previousUlcer === true ||
			everOnSideOrUnsided(limb, 'previous-foot-ulcer'),
	},
]
/**
 * Everything that stops this limb, screening first; `released` holds the ids about which the
 * clinician has recorded what was done.
 */
export function stopsOf(
	visit: Visit,
	screening: ScreeningResult,
	side: Side,
	adult: boolean,
	released: readonly string[],
): { id: string; says: string }[] {
	const limb: Limb = {
		side,
		adult,
		screening: visit.screening ?? {},
		conditions: visit.conditions ?? [],
	}
	const warned = screening.blockedBy[side].map((id) => ({
		id,
		says: screening.items.find((item) => item.id === id)?.says ?? id,
	}))
	const recorded = stopRows
		.filter((row) => row.holds(limb))
		.map(({ id, says }) => ({ id: `${id}.${side}`, says }))
	return [...warned, ...recorded].filter(({ id }) => !released.includes(id))
}
