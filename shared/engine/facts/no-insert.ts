/**
 * What speaks against anything new under a foot until it was looked into: pain, bone and skin as
 * they were found, whether or not a rule of injury is met.
 */
import { conditionReasons } from '../conditions/query.ts'
import type { Because } from '../protocol/basis.ts'
import type { Screening, Side, Visit } from '../visit/visit.ts'

type Answers = Screening
/** The signs by their names, and where each is read; those of a side have it named. */
interface Sign {
	sign: string
	found: (answers: Answers, side: Side) => boolean
}
/** Of this side or of both. */
const ofSide = <Signs extends { side: string }>(
	signs: Signs | undefined,
	side: Side,
): Signs | undefined => (signs?.side === side || signs?.side === 'both' ? signs : undefined)
const signs: readonly Sign[] = [
	{
		sign: 'bony-tenderness',
		found: ({ injury }, side) => {
			const on = ofSide(injury, side)
			return [
				on?.tenderFifthMetatarsalBase,
				on?.tenderNavicular,
				on?.tenderLateralMalleolus,
				on?.tenderMedialMalleolus,
			].includes(true)
		},
	},
	{
		sign: 'weight-bearing',
		found: ({ injury, lisfranc, limp }, side) =>
			ofSide(injury, side)?.unableToBearWeightNow === true ||
			ofSide(lisfranc, side)?.cannotBearWeight === true ||
			ofSide(limp, side)?.cannotBearWeight === true,
	},
	{
		sign: 'bone-stress',
		found: ({ boneStress, boneStressLowRisk }, side) => {
			const on = ofSide(boneStress, side)
			const placed = boneStress !== undefined
			return (
				on?.focalTenderness === true ||
				on?.hopPain === true ||
				(boneStressLowRisk === true && (!placed || on !== undefined))
			)
		},
	},
	{
		sign: 'infection',
		found: ({ infection }, side) => {
			const on = ofSide(infection, side)
			return on?.spreadingRedness === true || on?.infectedNailOrBlister === true
		},
	},
]
const limpOfMinor = ({ screening }: Visit, side: Side): boolean =>
	screening?.limpUnexplained === true || ofSide(screening?.limp, side) !== undefined
/**
 * Why nothing is put under this foot yet; empty where nothing says so. A current midfoot sprain
 * counts, since it is often missed at first (J Foot Ankle Res 2023, s13047-023-00608-0: 20 to 40 %).
 */
export function noInsertReasons(visit: Visit, minor: boolean, side: Side): Because[] {
	const answers = visit.screening ?? {}
	const named = signs.filter(({ found }) => found(answers, side)).map(({ sign }) => sign)
	if (minor && limpOfMinor(visit, side)) named.push('limp')
	return [
		...named.map((value): Because => ({ measure: 'warningSign', side, value })),
		...conditionReasons(visit, ['midfoot-sprain'], { side, when: 'current' }),
	]
}
