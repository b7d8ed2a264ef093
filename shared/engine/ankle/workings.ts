/** The ankle room's numbers, each with its formula and this player's values put in. */
import type { AnkleResult, AnkleSide } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import { equation, minus, quantity } from '../findings/formula.ts'
import { linesOf, tenths } from '../findings/working.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { limitKey, lungeMeasures, measures } from './changes.ts'
import {
	ballLengthOf,
	heelCentreLengthOf,
	heelHeightMm,
	type PairsCompared,
	pairName,
	pairsId,
} from './pairs.ts'
import { netPitchChange, pitch, transferred } from './pitch.ts'
import { correctionOf, evidence, type Raise } from './raise.ts'
import { bandKey } from './range.ts'

type Result = Omit<AnkleResult, 'workings'>

function bandWorkings(side: Side, ankle: AnkleSide, protocol: Protocol): Working[] {
	const { lungeCm, lungeDeg, band } = ankle
	if (lungeCm === undefined && lungeDeg === undefined) return []
	const angleDecides = lungeDeg === undefined ? '' : ' (the angle decides where both were read)'
	const angle =
		lungeDeg === undefined
			? undefined
			: `Lunge angle, mean: ${tenths(lungeDeg)} deg; restricted below ` +
				`${protocol.value('ankle.restrictedDeg')} deg`
	const distance =
		lungeCm === undefined
			? undefined
			: `Knee to wall, mean: ${tenths(lungeCm)} cm; restricted below ` +
				`${protocol.value('ankle.restrictedCm')} cm${angleDecides}`
	return [
		{
			id: `ankle.band.${side}`,
			title: `Ankle range, ${side}`,
			lines: linesOf(angle, distance, `Band: ${band}`),
			basis: protocol.basis('restricted ankle', bandKey(ankle)),
		},
	]
}
function limitWorkings(
	visit: Visit,
	side: Side,
	{ kneeStraightDeg: straight, kneeBentDeg: bent, limitedBy }: AnkleSide,
	protocol: Protocol,
): Working[] {
	if (straight === undefined || bent === undefined) return []
	const gapLimit = protocol.value('ankle.gastrocnemiusGapDeg')
	const straightLimit = protocol.value('ankle.gastrocnemiusStraightDeg')
	const gap = minus(quantity(bent, 1), quantity(straight, 1))
	const tightByBoth = gap.value >= gapLimit && straight <= straightLimit
	const endFeel = visit.ankles?.[side]?.endFeel?.replaceAll('-', ' ') ?? 'not recorded'
	return [
		{
			id: `ankle.limit.${side}`,
			title: `What limits it, ${side}`,
			lines: [
				`Knee bent less knee straight: ${equation(gap, 'deg', 1)}; from ${gapLimit} deg it points to ` +
					'the gastrocnemius',
				'Barouk 2014 calls it tight off the ground only where it also reaches no more than ' +
					`${straightLimit} deg with the knee straight: ${tightByBoth ? 'so here' : 'not so here'}`,
				`End feel: ${endFeel}; limited by: ${limitedBy.replaceAll('-', ' ')}`,
			],
			basis: protocol.basis('what limits the ankle', 'ankle.gastrocnemiusGapDeg'),
		},
	]
}
const changeWorkings = (side: Side, { changes }: Result, protocol: Protocol): Working[] =>
	lungeMeasures.flatMap((measure) => {
		const change = changes[side][measure]
		if (!change) return []
		const { unit, words } = measures[measure]
		return [
			{
				id: `ankle.change-${unit}.${side}`,
				title: `Change of ${words}, ${side}`,
				lines: changeLines(change),
				basis: protocol.basis(
					'smallest real change of the lunge',
					limitKey(measure, change.examiners),
				),
			},
		]
	})

/** The larger less the smaller of the two sides; undefined unless both were read. */
function gapWords(
	left: number | undefined,
	right: number | undefined,
	unit: string,
): string | undefined {
	if (left === undefined || right === undefined) return undefined
	const gap = minus(quantity(Math.max(left, right), 1), quantity(Math.min(left, right), 1))
	return equation(gap, unit, 1)
}
function asymmetryWorkings(result: Result, protocol: Protocol): Working[] {
	const { left, right, asymmetryCm, asymmetry } = result
	if (asymmetry === 'unknown') return []
	const distance = gapWords(left.lungeCm, right.lungeCm, 'cm')
	const angle = gapWords(left.lungeDeg, right.lungeDeg, 'deg')
	return [
		{
			id: 'ankle.asymmetry',
			title: 'Difference between the ankles',
			lines: linesOf(
				distance &&
					`Larger less smaller, knee to wall: ${distance}; flag from ` +
						`${protocol.value('ankle.asymmetryFlagCm')}, act from ` +
						`${protocol.value('ankle.asymmetryActCm')} cm`,
				angle &&
					`Larger less smaller, angle: ${angle}; act from ` +
						`${protocol.value('ankle.asymmetryActDeg')} deg`,
				`Asymmetry: ${asymmetry}`,
			),
			basis: protocol.basis(
				'ankle asymmetry',
				asymmetryCm === undefined ? 'ankle.asymmetryActDeg' : 'ankle.asymmetryFlagCm',
			),
		},
	]
}
/** What a height does to the ankle, on heel to ball and on the shorter lever from memory. */
function raiseAngleLines(visit: Visit, heightMm: number, protocol: Protocol): string[] {
	const ballMm = ballLengthOf(visit, protocol)
	if (ballMm === undefined) return []
	const centreMm = heelCentreLengthOf(visit, protocol)
	const angle = pitch(heightMm, ballMm)
	const onCentre =
		centreMm === undefined
			? ''
			: `; ${equation(pitch(heightMm, centreMm), 'deg')} on heel centre to ball (from memory)`
	const expected = transferred(angle.value, protocol.value('ankle.raiseTransfer'))
	return [
		`Angle: ${equation(angle, 'deg')} on heel to ball${onCentre}`,
		`Expected in running: ${equation(expected, 'deg')} (one study: Dixon and Kerwin 1999, n 8)`,
	]
}
function raiseEvidence({ key, correctionMm }: Raise): string[] {
	const legLength = 'posture.legLengthShareMax' as const
	const keys = correctionMm > 0 && key !== legLength ? [key, legLength] : [key]
	return keys.flatMap((evidenceKey) => evidence[evidenceKey] ?? [])
}
function raiseWorkings(visit: Visit, raise: Raise | undefined, protocol: Protocol): Working[] {
	if (!raise) return []
	const heightMm = Math.max(raise.heelRaiseMm.left, raise.heelRaiseMm.right)
	const differenceMm = visit.body?.legLengthDifferenceMm ?? 0
	const correction =
		raise.correctionMm > 0
			? `Leg length, shorter side: ${equation(correctionOf(differenceMm, protocol), 'mm', 1)} more, ` +
				`held at ${tenths(heightMm)} mm by the boot limit where that is lower`
			: undefined
	return [
		{
			id: 'ankle.heel-raise',
			title: 'Heel raise proposed',
			lines: linesOf(
				`Both feet: ${tenths(raise.baseMm)} mm; warn above ` +
					`${protocol.value('ankle.raiseWarnMm')} mm, stop above ` +
					`${protocol.value('ankle.raiseStopMm')} mm in a boot`,
				correction,
				...raiseAngleLines(visit, heightMm, protocol),
				...raiseEvidence(raise),
				'An estimate: the clinician decides',
			),
			basis: protocol.basis('heel raise', raise.key),
		},
	]
}
function pitchWorking(pairs: PairsCompared, protocol: Protocol): Working {
	const { from, to, ballLengthMm } = pairs
	const angle = (pair: PairsCompared['from']) =>
		equation(pitch(heelHeightMm(pair), ballLengthMm), 'deg')
	return {
		id: `ankle.pitch-${pairsId(pairs)}`,
		title: `Pitch: ${pairName(from.pair)} and ${pairName(to.pair)}`,
		lines: [
			`Offset and raise over heel to ball: ${angle(from)}; ${angle(to)}`,
			`Difference: ${equation(netPitchChange(from, to, ballLengthMm), 'deg')} more asked in the ` +
				'second',
		],
		basis: protocol.basis('pitch between two pairs', 'ankle.demandDeg'),
	}
}
/**
 * @param result the room's result without workings; @param raise how its proposal came about
 * @param pairs the pairs compared for the result
 */
export function ankleWorkings(
	visit: Visit,
	result: Result,
	raise: Raise | undefined,
	pairs: readonly PairsCompared[],
	protocol: Protocol,
): Working[] {
	return [
		...bothSides.flatMap((side) => [
			...bandWorkings(side, result[side], protocol),
			...limitWorkings(visit, side, result[side], protocol),
			...changeWorkings(side, result, protocol),
		]),
		...asymmetryWorkings(result, protocol),
		...raiseWorkings(visit, raise, protocol),
		...pairs.map((two) => pitchWorking(two, protocol)),
	]
}
