/**
 * What was seen of a pair on the foot: each thing once, whichever feet it was seen on. What each
 * comes to is common practice, no source.
 */
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { type OnOneFoot, studJointNames } from '../../visit/recorded/on-foot.ts'
import { bothSides, perSide, rounded } from '../../visit/sides.ts'
import type { PressurePlace } from '../../visit/terms.ts'
import type { Pair, Side } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { isUncomfortable } from './comfort.ts'
import type { Ground, PairPicture } from './ground.ts'
import { roomByLength, weeksLater } from './room.ts'
import { leastStanding } from './standing.ts'

type Look = (pair: Pair, picture: PairPicture, protocol: Protocol) => Ground[]
/** The feet on which something was seen; undefined for none. */
function sideWhere(
	{ onFoot }: Pair,
	isSo: (foot: OnOneFoot, side: Side) => boolean,
): Side | 'both' | undefined {
	const sides = bothSides.filter((side) => {
		const foot = onFoot?.[side]
		return foot !== undefined && isSo(foot, side)
	})
	return sides.length > 1 ? 'both' : sides[0]
}
const width: Look = (pair, picture, protocol) => {
	const tight = sideWhere(pair, (foot) => foot.width === 'too-tight')
	if (tight !== undefined) {
		const statement = state('onfoot.too-tight', { side: tight, atRisk: picture.footAtRisk })
		if (picture.footAtRisk) return [{ verdict: 'stop-wearing', statement }]
		const by = weeksLater(picture, protocol.value('footwear.ownedShortWeeks'))
		return [{ verdict: 'replace', statement, ...present({ by }) }]
	}
	const loose = sideWhere(pair, (foot) => foot.width === 'loose')
	if (loose === undefined) return []
	return [
		{
			verdict: 'modify',
			statement: state('onfoot.loose', { side: loose }),
			work: 'take-up-width',
		},
	]
}
/** Said once where it is recorded as a sign of wear as well. */
const heel: Look = (pair, { heelIsSore }) => {
	const side = sideWhere(pair, (foot) => foot.heel === 'slips')
	if (side === undefined || pair.damage?.includes('heel-slips')) return []
	return heelIsSore
		? [{ verdict: 'modify', statement: state('pairs.heel-slips-sore') }]
		: [{ verdict: 'modify', statement: state('pairs.heel-slips'), work: 'heel-lock' }]
}
const isPlace = (place: string): place is PressurePlace => place !== 'none'
const pressure: Look = ({ onFoot }, { footAtRisk }) => {
	const places = perSide((side) => (onFoot?.[side]?.pressure ?? []).filter(isPlace))
	if (places.left.length + places.right.length === 0) return []
	return footAtRisk
		? [{ verdict: 'stop-wearing', statement: state('onfoot.presses-at-risk', { places }) }]
		: [
				{
					verdict: 'modify',
					statement: state('onfoot.presses', { places }),
					work: 'find-sore-place',
				},
			]
}
/** Where a joint is not at risk, a stud under it is no reason for anything. */
const studs: Look = ({ onFoot }, { jointsAtRisk }) => {
	const under = perSide((side) =>
		(onFoot?.[side]?.studs ?? []).flatMap((joint) =>
			joint !== 'clear' && jointsAtRisk[side].includes(studJointNames[joint]) ? [joint] : [],
		),
	)
	if (under.left.length + under.right.length === 0) return []
	return [
		{
			verdict: 'modify',
			statement: state('onfoot.stud-under', { joints: under }),
			work: 'move-stud',
		},
	]
}
const bends: Look = (pair, picture, protocol) => {
	const behind = sideWhere(pair, (foot) => foot.bends === 'behind-the-ball')
	if (behind !== undefined)
		return [
			{
				verdict: 'replace',
				statement: state('onfoot.bends-behind', { side: behind }),
				...present({ by: weeksLater(picture, protocol.value('footwear.ownedReplaceWeeks')) }),
			},
		]
	const hardly = sideWhere(pair, (foot) => foot.bends === 'hardly')
	return hardly === undefined
		? []
		: [{ verdict: 'keep', statement: state('onfoot.bends-hardly', { side: hardly }) }]
}
/** A label is no measure: what fits by it alone is not known to fit. */
const byLabel: Look = (pair) =>
	pair.onFoot?.lengthBy === 'label' && leastStanding(pair) === undefined
		? [{ verdict: 'keep', unknownRoom: true, statement: state('onfoot.by-label') }]
		: []
/** Two figures of one room that cannot both be right. */
const rooms: Look = (pair, picture, protocol) => {
	const byLengthMm = roomByLength(pair, picture)
	const standing = leastStanding(pair)
	if (byLengthMm === undefined || standing === undefined) return []
	const apart = Math.abs(byLengthMm - standing.roomMm)
	if (apart < protocol.value('onfoot.roomsDifferMm')) return []
	return [
		{
			verdict: 'keep',
			statement: state('onfoot.rooms-differ', {
				byLengthMm: rounded(byLengthMm, 1),
				standingMm: rounded(standing.roomMm, 1),
				side: standing.side,
			}),
		},
	]
}
/** Less comfortable than at first by more than chance; one that is uncomfortable has said it. */
const comfort: Look = (pair, picture, protocol) => {
	const { comfortFirst: first, comfortLater: later } = pair.onFoot ?? {}
	if (first === undefined || later === undefined || isUncomfortable(pair, picture, protocol))
		return []
	if (first - later < protocol.value('onfoot.comfortChangeLeast')) return []
	const sessions = protocol.value('onfoot.comfortSessions')
	return [
		{
			verdict: 'modify',
			statement: state('onfoot.comfort-fell', { first, later, sessions }),
			work: 'find-sore-place',
		},
	]
}
const looks: readonly Look[] = [byLabel, rooms, width, heel, pressure, studs, bends, comfort]
/** One ground for each thing that was seen, in the order in which it is looked at. */
export const onFootGrounds: Look = (pair, picture, protocol) =>
	pair.onFoot === undefined ? [] : looks.flatMap((look) => look(pair, picture, protocol))
