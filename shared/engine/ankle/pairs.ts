/** Pitch of each pair the player owns, and the difference between any two. */
import type { PairPitch } from '../findings/assessment.ts'
import { type Finding, findingOf, idPart, reading } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, meanOf, rounded } from '../visit/sides.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { netPitchChange, pitchDeg } from './pitch.ts'

/** A pair as it is named to the reader. */
export const pairName = (pair: Pair): string => pair.name ?? pair.id

/** Mean of the two feet, mm; undefined where neither was measured. */
const ofBoth = (visit: Visit, field: 'heelToBallMm' | 'heelToToeMm') =>
	meanOf(bothSides.flatMap((side) => meanOf(visit.feet?.[side]?.[field]) ?? []))

/**
 * The player's own heel-to-ball length, mm; failing that, the usual share of foot length; undefined
 * with no foot measured.
 */
export function ballLengthOf(visit: Visit, protocol: Protocol): number | undefined {
	const toe = ofBoth(visit, 'heelToToeMm')
	return (
		ofBoth(visit, 'heelToBallMm') ??
		(toe === undefined ? undefined : toe * protocol.value('ankle.ballPerFoot'))
	)
}
/** Heel centre to ball, mm: the shorter lever of a raise; undefined without a foot length. */
export function heelCentreLengthOf(visit: Visit, protocol: Protocol): number | undefined {
	const toe = ofBoth(visit, 'heelToToeMm')
	return toe === undefined ? undefined : toe * protocol.value('ankle.heelCentrePerFoot')
}

/** A pair with a known offset, by its place in the list of pairs. */
interface KnownPair {
	pair: Pair
	index: number
	offsetMm: number
	liftMm: number
}
/** Two pairs compared on the player's own foot: `to` is the one that asks more of the ankle. */
export interface PairsCompared {
	from: KnownPair
	to: KnownPair
	ballLengthMm: number
	pitch: PairPitch
}
/** Offset and raise of a pair together, mm. */
export const heelHeightMm = ({ offsetMm, liftMm }: KnownPair): number => offsetMm + liftMm
/** 'p1-1-p2-2' of two pairs: the part of an id that names both. */
export const pairsId = ({ from, to }: PairsCompared): string =>
	`${idPart(from.pair.id, from.index)}-${idPart(to.pair.id, to.index)}`

const knownPairs = (visit: Visit): KnownPair[] =>
	(visit.footwear ?? []).flatMap((pair, index) => {
		const { heelToForefootOffsetMm: offsetMm, heelLiftMm: liftMm = 0 } = pair
		return offsetMm === undefined ? [] : [{ pair, index, offsetMm, liftMm }]
	})
function compared(first: KnownPair, second: KnownPair, ballLengthMm: number): PairsCompared {
	const change = netPitchChange(first, second, ballLengthMm).value
	const [from, to] = change >= 0 ? [first, second] : [second, first]
	const pitch = {
		from: from.pair.id,
		to: to.pair.id,
		fromDeg: pitchDeg(heelHeightMm(from), ballLengthMm),
		toDeg: pitchDeg(heelHeightMm(to), ballLengthMm),
		changeDeg: Math.abs(change),
	}
	return { from, to, ballLengthMm, pitch }
}
/** Any two pairs with a known offset, from the higher heel to the lower; degrees. */
export function comparePairs(visit: Visit, protocol: Protocol): PairsCompared[] {
	const ballLengthMm = ballLengthOf(visit, protocol)
	if (ballLengthMm === undefined) return []
	const known = knownPairs(visit)
	return known.flatMap((first, index) =>
		known.slice(index + 1).map((second) => compared(first, second, ballLengthMm)),
	)
}
/** A finding for each two pairs of which one asks notably more of the ankle. */
export function demandFindings(pairs: readonly PairsCompared[], protocol: Protocol): Finding[] {
	const notable = protocol.value('ankle.demandDeg')
	return pairs.flatMap((two) => {
		const { from, to, ballLengthMm, pitch } = two
		if (pitch.changeDeg < notable) return []
		const names = { from: pairName(from.pair), to: pairName(to.pair) }
		const moreDeg = rounded(pitch.changeDeg, 1)
		return [
			findingOf(state('ankle.demand', { ...names, moreDeg }), {
				id: `ankle.demand-${pairsId(two)}.both`,
				side: 'both',
				level: 'note',
				because: [
					{ measure: 'pairName', value: names.from },
					reading('heelHeightMm', heelHeightMm(from), 'mm'),
					{ measure: 'pairName', value: names.to },
					reading('heelHeightMm', heelHeightMm(to), 'mm'),
					reading('heelToBallMm', ballLengthMm, 'mm'),
				],
				basis: protocol.basis('change of demand between pairs', 'ankle.demandDeg'),
			}),
		]
	})
}
