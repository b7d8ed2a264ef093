/** The length to fit: which foot decides, and whether heel to toe or heel to ball asks for more. */
import { isAdult } from '../facts/age.ts'
import type { FootSizing, PerSide, SizingResult } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { ballRatioKey } from './feet.ts'
import { readingsOf } from './readings.ts'

const longerFootRule: Basis = {
	rule: 'longer foot',
	source:
		'ISO 9407 definition of foot length (the larger foot decides), as read on secondary pages',
	strength: 'standard',
}
/** What the length to fit rests on, mm. */
export type MeasuredLengths = Pick<FootSizing, 'lengthMm' | 'ballLengthMm' | 'archLengthMm'>
interface MeasuredFoot {
	side: Side
	lengthMm: number
}
/** What one foot asks for: its own length, and what heel to ball adds to it. */
interface Asking extends MeasuredFoot {
	/** Length to fit this foot, mm. */
	fitMm: number
	/** Undefined where heel to ball was not measured or adds nothing. */
	ball?: { lengthMm: number; archLengthMm: number; wholly: boolean }
}
export interface FitLength {
	/** Undefined where no foot was measured. */
	fitLengthMm?: number
	longerFoot?: NonNullable<SizingResult['longerFoot']>
	decidedBy?: NonNullable<SizingResult['decidedBy']>
	decidedByFoot?: NonNullable<SizingResult['decidedByFoot']>
	/** Standard error of the length to fit, mm. */
	semMm?: number
}

function measuredFeet(feet: PerSide<MeasuredLengths>): MeasuredFoot[] {
	return bothSides.flatMap((side) => {
		const { lengthMm } = feet[side]
		return lengthMm === undefined ? [] : [{ side, lengthMm }]
	})
}
/** Feet that share the largest value. */
function largestBy<Foot>(feet: readonly Foot[], of: (foot: Foot) => number): Foot[] {
	const most = Math.max(...feet.map(of))
	return feet.filter((foot) => of(foot) === most)
}

function longerOf(differenceMm: number, protocol: Protocol): 'left' | 'right' | 'equal' {
	if (Math.abs(differenceMm) <= protocol.value('sizing.equalMm')) return 'equal'
	return differenceMm > 0 ? 'left' : 'right'
}
function sideDifferenceFindings(
	left: MeasuredFoot,
	right: MeasuredFoot,
	protocol: Protocol,
): Finding[] {
	const differenceMm = rounded(left.lengthMm - right.lengthMm, 4)
	if (Math.abs(differenceMm) <= protocol.value('sizing.sideDifferenceMm')) return []
	return [
		findingOf(
			state('sizing.side-difference', {
				longer: longerOf(differenceMm, protocol),
				byMm: rounded(Math.abs(differenceMm), 1),
			}),
			{
				side: 'both',
				level: 'advise',
				because: [left, right].map(({ side, lengthMm }) =>
					reading('heelToToeMm', lengthMm, 'mm', side),
				),
				basis: protocol.basis('left and right difference', 'sizing.sideDifferenceMm'),
			},
		),
	]
}
const oneFootFinding = ({ side, lengthMm }: MeasuredFoot): Finding =>
	findingOf(state('sizing.one-foot', { side }), {
		side,
		level: 'caution',
		because: [reading('heelToToeMm', lengthMm, 'mm', side)],
		basis: longerFootRule,
	})

/**
 * How much of what heel to ball asks for more is given, 0 to 1: nothing clearly below half a size,
 * all of it clearly above, in proportion within the band between, so that a tenth of a millimetre
 * never turns the size.
 */
function shareOfBall(moreMm: number, protocol: Protocol): number {
	const bandMm = protocol.value('sizing.ballBandMm')
	const fromMm = protocol.value('sizing.halfSizeMm') - bandMm
	const share = (rounded(moreMm, 6) - fromMm) / (2 * bandMm)
	return Math.min(1, Math.max(0, share))
}
function asking(foot: MeasuredFoot, feet: PerSide<MeasuredLengths>, protocol: Protocol): Asking {
	const { archLengthMm, ballLengthMm } = feet[foot.side]
	const own = { ...foot, fitMm: foot.lengthMm }
	if (archLengthMm === undefined || ballLengthMm === undefined) return own
	const moreMm = archLengthMm - foot.lengthMm
	const share = shareOfBall(moreMm, protocol)
	if (share === 0) return own
	const wholly = share === 1
	return {
		...foot,
		// exactly what heel to ball gives, not the sum of two roundings
		fitMm: wholly ? archLengthMm : foot.lengthMm + share * moreMm,
		ball: { lengthMm: ballLengthMm, archLengthMm, wholly },
	}
}
function forwardBallFindings(visit: Visit, foot: Asking, protocol: Protocol): Finding[] {
	const { side, ball, lengthMm, fitMm } = foot
	if (!ball) return []
	const longerMm = rounded(ball.archLengthMm - lengthMm, 1)
	const givenMm = rounded(fitMm - lengthMm, 1)
	const { wholly } = ball
	return [
		findingOf(state('sizing.arch-length', { side, longerMm, givenMm, wholly }), {
			side,
			level: 'advise',
			because: [
				reading('heelToBallMm', ball.lengthMm, 'mm', side),
				reading('lengthFromBallMm', ball.archLengthMm, 'mm', side),
				reading('heelToToeMm', lengthMm, 'mm', side),
			],
			basis: protocol.basis(
				isAdult(visit, protocol)
					? 'heel-to-ball length'
					: 'heel-to-ball length (adult ratio used for a player under 18: no ratio for minors ' +
							'was found)',
				ballRatioKey(visit),
			),
		}),
	]
}
/** Says that heel to toe decided where heel to ball asks for more, but too little to follow. */
function toeFindings(
	deciding: readonly Asking[],
	feet: PerSide<FootSizing>,
	protocol: Protocol,
): Finding[] {
	const [first, another] = deciding
	if (!first) return []
	const asksMore = bothSides.flatMap((side) => {
		const { archLengthMm } = feet[side]
		return archLengthMm === undefined || archLengthMm <= first.fitMm
			? []
			: [reading('lengthFromBallMm', archLengthMm, 'mm', side)]
	})
	if (asksMore.length === 0) return []
	const lengths = deciding.map(({ side, lengthMm }) => reading('heelToToeMm', lengthMm, 'mm', side))
	return [
		findingOf(state('sizing.toe-length', { foot: another ? 'equal' : first.side }), {
			side: 'both',
			level: 'note',
			because: [...lengths, ...asksMore],
			basis: protocol.basis('heel-to-ball length', 'sizing.halfSizeMm'),
		}),
	]
}
/** Standard error of a mean; of two feet that tie, the one read fewer times says how sure it is. */
function semOf(
	visit: Visit,
	tied: readonly MeasuredFoot[],
	field: 'heelToToeMm' | 'heelToBallMm',
	protocol: Protocol,
): number {
	const readings = Math.min(...tied.map(({ side }) => readingsOf(visit, side, field).length))
	// An error of heel to ball grows when the length is divided by the ratio.
	const scale = field === 'heelToBallMm' ? 1 / protocol.value(ballRatioKey(visit)) : 1
	return (protocol.value('sizing.readingSemMm') * scale) / Math.sqrt(readings)
}
/** Which foot is longer, as far as both were measured. */
function longerOfBoth(
	[first, second]: readonly MeasuredFoot[],
	protocol: Protocol,
): Pick<FitLength, 'longerFoot'> {
	if (first === undefined || second === undefined) return {}
	return { longerFoot: longerOf(rounded(first.lengthMm - second.lengthMm, 4), protocol) }
}
function sideFindings([first, second]: readonly MeasuredFoot[], protocol: Protocol): Finding[] {
	if (first === undefined) return []
	return second === undefined
		? [oneFootFinding(first)]
		: sideDifferenceFindings(first, second, protocol)
}
/** The feet that ask for most, and whether heel to ball is why. */
function decidingFeet(feet: PerSide<MeasuredLengths>, protocol: Protocol) {
	const deciding = largestBy(
		measuredFeet(feet).map((foot) => asking(foot, feet, protocol)),
		({ fitMm }) => fitMm,
	)
	return { deciding, byBall: deciding.filter(({ ball }) => ball !== undefined) }
}
/** The length to fit, mm: the most that either foot asks for, by heel to toe or by heel to ball. */
export function fitLength(
	visit: Visit,
	feet: PerSide<MeasuredLengths>,
	protocol: Protocol,
): FitLength {
	const { deciding, byBall } = decidingFeet(feet, protocol)
	const compared = longerOfBoth(measuredFeet(feet), protocol)
	const [first] = deciding
	if (!first) return compared
	const fromBall = byBall.length > 0
	return {
		...compared,
		fitLengthMm: first.fitMm,
		decidedBy: fromBall ? 'ball-length' : 'toe-length',
		decidedByFoot: deciding.length > 1 ? 'equal' : first.side,
		semMm: semOf(
			visit,
			fromBall ? byBall : deciding,
			fromBall ? 'heelToBallMm' : 'heelToToeMm',
			protocol,
		),
	}
}
/** What was found on the way to the length to fit. */
export function fitLengthFindings(
	visit: Visit,
	feet: PerSide<FootSizing>,
	protocol: Protocol,
): Finding[] {
	const { deciding, byBall } = decidingFeet(feet, protocol)
	return [
		...sideFindings(measuredFeet(feet), protocol),
		...byBall.flatMap((foot) => forwardBallFindings(visit, foot, protocol)),
		...(byBall.length > 0 ? [] : toeFindings(deciding, feet, protocol)),
	]
}
