/**
 * What may be taken as it was measured before, with one key: never what changed beyond error, what
 * grows, what was swollen, or what a trouble or a new condition speaks against.
 */
import { isAdultOn } from '../facts/age.ts'
import { changedBeyondError } from '../prescription/unchanged.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type TakenGroup, takenGroups } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { troublesTold } from './told.ts'
import { troublesOfSize } from './troubles.table.ts'

interface Two {
	visit: Visit
	last: Visit
	protocol: Protocol
}
/** Groups that a reason speaks against; it holds for one visit against the one before. */
interface Reason {
	against: readonly TakenGroup[]
	isSo(two: Two): boolean
}
const limbs: readonly TakenGroup[] = ['feet', 'ankles', 'posture']
const keyOf = ({ condition, side }: NonNullable<Visit['conditions']>[number]): string =>
	`${condition} ${side}`
/** Present now and not at the visit before, or not as much: what was past, or getting better, is back. */
function hasNewCondition({ visit, last }: Two): boolean {
	const then = new Map((last.conditions ?? []).map((one) => [keyOf(one), one.status ?? 'current']))
	return (visit.conditions ?? []).some((one) => {
		if (one.status !== 'current') return false
		return then.get(keyOf(one)) !== 'current'
	})
}
const reasons: readonly Reason[] = [
	{
		against: ['feet', 'ankles', 'posture', 'body'],
		isSo: ({ visit, protocol }) => !isAdultOn(visit.player.birthDate, visit.visitDate, protocol),
	},
	{ against: ['feet'], isSo: ({ visit }) => asksFor(visit, 'feet') },
	{ against: ['body'], isSo: ({ visit }) => asksFor(visit, 'body') },
	{
		against: ['feet'],
		isSo: ({ visit }) => troublesTold(visit).some((trouble) => troublesOfSize.includes(trouble)),
	},
	{ against: limbs, isSo: hasNewCondition },
	{ against: limbs, isSo: ({ visit }) => visit.screening?.injury !== undefined },
	{
		against: limbs,
		isSo: ({ visit, last }) =>
			visit.player.birthDate !== last.player.birthDate || visit.player.sex !== last.player.sex,
	},
]
const asksFor = ({ since }: Visit, group: 'feet' | 'body'): boolean =>
	(since?.measure ?? []).some(({ what }) => what === group)
/**
 * @param last the visit that the re-check looks back to
 * @returns the groups that may be taken as they were, in the order of the walk
 */
export function offeredUnchanged(visit: Visit, last: Visit, protocol: Protocol): TakenGroup[] {
	const two = { visit, last, protocol }
	const refused = new Set(reasons.flatMap(({ against, isSo }) => (isSo(two) ? against : [])))
	return takenGroups.filter(
		(group) => last[group] !== undefined && !refused.has(group) && !changedBeyondError(group, two),
	)
}
