/** The length to fit: which foot decides, and whether heel to toe or heel to ball asks for more. */
import type { FootSizing, PerSide, SizingResult } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { ballRatioKey, isAdult } from './feet.ts'
import { readingsOf } from './readings.ts'

const longerFootRule: Basis = {
	rule: 'longer foot',
	source:
		'ISO 9407 definition of foot length (the larger foot decides), as read on secondary pages',
	strength: 'standard',
}
interface MeasuredFoot {
	side: Side
	lengthMm: number
}
/** A foot whose ball sits so far forward that heel to ball asks for half a size more. */
interface ForwardBall extends MeasuredFoot {
	ballLengthMm: number
	archLengthMm: number
}
interface FitLength {
	/** Undefined where no foot was measured. */
	fitLengthMm?: number
	longerFoot?: NonNullable<SizingResult['longerFoot']>
	/** Standard error of the length to fit, mm. */
	semMm?: number
	findings: Finding[]
}

function measuredFeet(feet: PerSide<FootSizing>): MeasuredFoot[] {
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

/** Those of the deciding feet where heel to ball asks for at least half a size more. */
function forwardBalls(
	deciding: readonly MeasuredFoot[],
	feet: PerSide<FootSizing>,
	protocol: Protocol,
): ForwardBall[] {
	return deciding.flatMap((foot) => {
		const { archLengthMm, ballLengthMm } = feet[foot.side]
		if (archLengthMm === undefined || ballLengthMm === undefined) return []
		const moreMm = rounded(archLengthMm - foot.lengthMm, 6)
		return moreMm >= protocol.value('sizing.halfSizeMm')
			? [{ ...foot, archLengthMm, ballLengthMm }]
			: []
	})
}
function forwardBallFinding(visit: Visit, foot: ForwardBall, protocol: Protocol): Finding {
	const { side, archLengthMm, ballLengthMm, lengthMm } = foot
	const longerMm = rounded(archLengthMm - lengthMm, 1)
	return findingOf(state('sizing.arch-length', { side, longerMm }), {
		side,
		level: 'advise',
		because: [
			reading('heelToBallMm', ballLengthMm, 'mm', side),
			reading('lengthFromBallMm', archLengthMm, 'mm', side),
			reading('heelToToeMm', lengthMm, 'mm', side),
		],
		basis: protocol.basis(
			isAdult(visit, protocol)
				? 'heel-to-ball length'
				: 'heel-to-ball length (adult ratio used for a player under 18: no ratio for minors ' +
						'was found)',
			ballRatioKey(visit),
		),
	})
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
function compareFeet(
	measured: readonly MeasuredFoot[],
	protocol: Protocol,
): Pick<FitLength, 'longerFoot' | 'findings'> {
	const [first, second] = measured
	if (first === undefined) return { findings: [] }
	if (second === undefined) return { findings: [oneFootFinding(first)] }
	return {
		longerFoot: longerOf(rounded(first.lengthMm - second.lengthMm, 4), protocol),
		findings: sideDifferenceFindings(first, second, protocol),
	}
}
/** The length to fit, mm, with what was found on the way. */
export function fitLength(visit: Visit, feet: PerSide<FootSizing>, protocol: Protocol): FitLength {
	const measured = measuredFeet(feet)
	const compared = compareFeet(measured, protocol)
	if (measured.length === 0) return compared
	const longer = measured.filter(({ side }) => side === compared.longerFoot)
	const deciding = longer.length > 0 ? longer : measured
	const farthest = largestBy(
		forwardBalls(deciding, feet, protocol),
		({ archLengthMm }) => archLengthMm,
	)
	const [forward] = farthest
	if (forward)
		return {
			...compared,
			fitLengthMm: forward.archLengthMm,
			semMm: semOf(visit, farthest, 'heelToBallMm', protocol),
			findings: [
				...compared.findings,
				...farthest.map((foot) => forwardBallFinding(visit, foot, protocol)),
			],
		}
	const longest = largestBy(deciding, ({ lengthMm }) => lengthMm)
	return {
		...compared,
		fitLengthMm: Math.max(...deciding.map(({ lengthMm }) => lengthMm)),
		semMm: semOf(visit, longest, 'heelToToeMm', protocol),
	}
}
