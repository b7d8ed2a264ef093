/**
 * What stops an insert on a limb: any of these recorded, and nothing is proposed until what was
 * done about it is recorded.
 */
import type { ScreeningResult } from '../findings/assessment.ts'
import type { Side, Visit } from '../visit/visit.ts'

export interface StopRow {
	id: string
	says: string
	holds(visit: Visit, side: Side, adult: boolean): boolean
}
const injured = (visit: Visit, side: Side) =>
	visit.screening?.injury?.side === side ? visit.screening.injury : undefined
const sameSide = (group: { side: string } | undefined, side: Side) =>
	group !== undefined && (group.side === side || group.side === 'both')
const active = (visit: Visit, side: Side, ...names: string[]) =>
	(visit.conditions ?? []).some(
		(condition) =>
			names.includes(condition.condition) &&
			condition.status === 'current' &&
			(condition.side === side || condition.side === 'both' || condition.side === 'none'),
	)

/** Source: expert opinion and common practice. */
export const stopRows: readonly StopRow[] = [
	{
		id: 'insert.stop-night-pain',
		says: 'pain at night or at rest',
		holds: (v) => v.screening?.nightPain === true,
	},
	{
		id: 'insert.stop-weight-bearing',
		says: 'cannot bear weight',
		holds: (v, side) =>
			injured(v, side)?.unableToBearWeightNow === true ||
			(sameSide(v.screening?.lisfranc, side) && v.screening?.lisfranc?.cannotBearWeight === true) ||
			(sameSide(v.screening?.limp, side) && v.screening?.limp?.cannotBearWeight === true),
	},
	{
		id: 'insert.stop-bony-tenderness',
		says: 'bony tenderness',
		holds: (v, side) => {
			const injury = injured(v, side)
			return (
				!!injury &&
				[
					injury.tenderFifthMetatarsalBase,
					injury.tenderNavicular,
					injury.tenderLateralMalleolus,
					injury.tenderMedialMalleolus,
				].includes(true)
			)
		},
	},
	{
		id: 'insert.stop-bone-stress',
		says: 'bone stress injury suspected',
		holds: (v, side) =>
			v.screening?.boneStressLowRisk === true ||
			(sameSide(v.screening?.boneStress, side) &&
				(v.screening?.boneStress?.focalTenderness === true ||
					v.screening?.boneStress?.hopPain === true)) ||
			active(
				v,
				side,
				'second-metatarsal-stress-fracture',
				'fifth-metatarsal-stress-fracture',
				'navicular-stress-fracture',
			),
	},
	{
		id: 'insert.stop-limp',
		says: 'growing player with a limp that lasts',
		holds: (v, side, adult) =>
			!adult && (v.screening?.limpUnexplained === true || sameSide(v.screening?.limp, side)),
	},
	{
		id: 'insert.stop-hot-joint',
		says: 'hot, swollen joint',
		holds: (v) => v.screening?.hotSwollenJoint === true,
	},
	{
		id: 'insert.stop-numb',
		says: 'numbness or loss of protective feeling',
		holds: (v, side) => {
			const foot = v.screening?.neurological?.[side]
			return (
				v.screening?.reducedSensation === true ||
				[foot?.feltHallux, foot?.feltFirstHead, foot?.feltFifthHead].includes(false) ||
				active(v, side, 'neuropathy')
			)
		},
	},
	{
		id: 'insert.stop-infection',
		says: 'infected skin or ulcer',
		holds: (v, side) => {
			const group = v.screening?.infection
			return (
				v.screening?.spreadingInfection === true ||
				v.screening?.activeFootUlcer === true ||
				(sameSide(group, side) &&
					(group?.spreadingRedness === true || group?.infectedNailOrBlister === true))
			)
		},
	},
	{
		id: 'insert.stop-rigid-or-cavus',
		says: 'rigid flat foot, or high arch on one side only',
		holds: (v) => v.screening?.rigidFlatFoot === true,
	},
	{
		id: 'insert.stop-sudden-leg-length',
		says: 'leg-length difference that came on suddenly',
		holds: (v) => v.screening?.suddenLegLengthDifference === true,
	},
	{
		id: 'insert.stop-diabetic-risk',
		says: 'foot with an ulcer in the past',
		holds: (v, side) =>
			v.screening?.diabeticFoot?.[side]?.previousUlcer === true ||
			(v.conditions ?? []).some(
				(condition) =>
					condition.condition === 'previous-foot-ulcer' &&
					(condition.side === side || condition.side === 'both' || condition.side === 'none'),
			),
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
	const warned = screening.blockedBy[side].map((id) => ({
		id,
		says: screening.items.find((item) => item.id === id)?.says ?? id,
	}))
	return [
		...warned,
		...stopRows
			.filter((row) => row.holds(visit, side, adult))
			.map(({ id, says }) => ({ id: `${id}.${side}`, says })),
	].filter(({ id }) => !released.includes(id))
}
