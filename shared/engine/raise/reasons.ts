/** Why both heels are raised: the range of an ankle, or pain. Each reason with its rows. */
import { conditionReasons } from '../conditions/query.ts'
import type { AnkleSide, PerSide, PlayerFacts, RaiseKind } from '../findings/assessment.ts'
import { reading } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Condition } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'

type RaiseReasonName =
	| 'restricted-ankle'
	| 'front-block'
	| 'growing-heel'
	| 'achilles'
	| 'plantar-heel'
/** One reason for a raise of both heels. */
export interface RaiseReason {
	name: RaiseReasonName
	kind: Extract<RaiseKind, 'range' | 'pain'>
	/** The row of its height. */
	key: ThresholdKey
	mm: number
	/** How much of a pair's own offset is taken off, 0 to 1: the whole of it where range is aimed at. */
	offsetShare: number
	because: Because[]
}
/** The rows of a reason; without a share row the whole offset counts. */
interface ReasonRow {
	name: RaiseReasonName
	kind: RaiseReason['kind']
	key: ThresholdKey
	share?: ThresholdKey
}
const restricted: ReasonRow = {
	name: 'restricted-ankle',
	kind: 'range',
	key: 'ankle.raiseRestrictedMm',
}
const frontBlock: ReasonRow = { name: 'front-block', kind: 'range', key: 'ankle.raiseBlockMm' }
interface PainRow extends ReasonRow {
	conditions: readonly Condition[]
	/** The trial was of adults, or the condition is of those who grow. */
	of?: 'adults' | 'minors'
}
const painRows: readonly PainRow[] = [
	{
		name: 'achilles',
		kind: 'pain',
		key: 'raise.midportionMm',
		share: 'raise.achillesOffsetShare',
		conditions: ['achilles-midportion'],
		of: 'adults',
	},
	{
		name: 'achilles',
		kind: 'pain',
		key: 'insert.achillesRaiseMm',
		share: 'raise.achillesOffsetShare',
		conditions: ['achilles-midportion'],
		of: 'minors',
	},
	{
		name: 'achilles',
		kind: 'pain',
		key: 'insert.achillesRaiseMm',
		share: 'raise.achillesOffsetShare',
		conditions: ['achilles-insertional', 'haglund-deformity'],
	},
	{
		name: 'growing-heel',
		kind: 'pain',
		key: 'ankle.raiseApophysitisMm',
		share: 'raise.apophysitisOffsetShare',
		conditions: ['calcaneal-apophysitis'],
		of: 'minors',
	},
	{
		name: 'plantar-heel',
		kind: 'pain',
		key: 'raise.plantarHeelMm',
		share: 'raise.plantarHeelOffsetShare',
		conditions: ['plantar-heel-pain'],
	},
]
function reasonOf(
	{ name, kind, key, share }: ReasonRow,
	because: Because[],
	protocol: Protocol,
): RaiseReason[] {
	if (because.length === 0) return []
	const offsetShare = share === undefined ? 1 : protocol.value(share)
	return [{ name, kind, key, mm: protocol.value(key), offsetShare, because }]
}
/** What was read of the ankles with this band or block. */
function ankleReasons(
	ankle: PerSide<AnkleSide>,
	holds: 'restricted' | 'anterior-block',
): Because[] {
	return bothSides.flatMap((side): Because[] => {
		const { band, limitedBy, lungeDeg, lungeCm } = ankle[side]
		if (holds === 'restricted' ? band !== 'restricted' : limitedBy !== 'anterior-block') return []
		if (lungeDeg !== undefined) return [reading('lungeDeg', lungeDeg, 'deg', side)]
		if (lungeCm !== undefined) return [reading('lungeCm', lungeCm, 'cm', side)]
		return [{ measure: 'ankleLimitedBy', side, value: limitedBy }]
	})
}
/**
 * Every reason for a raise of both heels, the highest first; of two alike pain, which hurts now,
 * before range.
 */
export function raiseReasons(
	visit: Visit,
	ankle: PerSide<AnkleSide>,
	{ minor }: PlayerFacts,
	protocol: Protocol,
): RaiseReason[] {
	const pain = painRows
		.filter(({ of }) => of === undefined || (of === 'minors') === minor)
		.flatMap((row) => reasonOf(row, conditionReasons(visit, row.conditions), protocol))
	const block = [
		...ankleReasons(ankle, 'anterior-block'),
		...conditionReasons(visit, ['anterior-ankle-impingement']),
	]
	return [
		...pain,
		...reasonOf(frontBlock, block, protocol),
		...reasonOf(restricted, ankleReasons(ankle, 'restricted'), protocol),
	].sort((reason, other) => other.mm - reason.mm)
}
