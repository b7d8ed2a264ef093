/** The ankle room's numbers, each with its formula and this player's values put in. */
import { isMinor } from '../facts/age.ts'
import type { AnkleResult, AnkleSide } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import { equation, minus, quantity } from '../findings/formula.ts'
import { linesOf, tenths } from '../findings/working.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { raiseEvidence } from '../protocol/raise-evidence.table.ts'
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
import { correctionOf, type Raise } from './raise.ts'
import { bandKey } from './range.ts'
import { distanceCutOff } from './stature.ts'

type Result = Omit<AnkleResult, 'workings'>

/** The cut-off of a distance: an adult's, or what it comes to for this lower leg. */
function distanceLine(visit: Visit, { lungeCm, lungeDeg }: AnkleSide, protocol: Protocol) {
	if (lungeCm === undefined) return undefined
	const read = `Knee to wall, mean: ${tenths(lungeCm)} cm`
	if (lungeDeg !== undefined) return `${read} (the angle decides where both were read)`
	const cutOff = distanceCutOff(visit, protocol)
	if (!cutOff) return `${read}; not judged: no stature to scale the cut-off of adults by`
	return isMinor(visit, protocol)
		? `${read}; restricted below the cut-off scaled to stature: ${equation(cutOff, 'cm', 1)}`
		: `${read}; restricted below ${tenths(cutOff.value)} cm`
}
function bandWorkings(visit: Visit, side: Side, ankle: AnkleSide, protocol: Protocol): Working[] {
	const { lungeCm, lungeDeg, band, bandSure, recordedOnly } = ankle
	if (lungeCm === undefined && lungeDeg === undefined) return []
	const angle =
		lungeDeg === undefined
			? undefined
			: `Lunge angle, mean: ${tenths(lungeDeg)} deg; restricted below ` +
				`${protocol.value('ankle.restrictedDeg')} deg`
	const errorKey = lungeDeg === undefined ? 'ankle.repeatCm' : 'ankle.repeatDeg'
	const unit = lungeDeg === undefined ? 'cm' : 'deg'
	const banded = `Band: ${band}${
		band === 'unknown' || bandSure
			? ''
			: `, within the repeat error of ${protocol.value(errorKey)} ${unit}`
	}`
	return [
		{
			id: `ankle.band.${side}`,
			title: `Ankle range, ${side}`,
			lines: linesOf(
				angle,
				distanceLine(visit, ankle, protocol),
				recordedOnly ? 'Recorded only: the limb is injured or is not to be tested' : banded,
			),
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
	const errorDeg = protocol.value('ankle.gapErrorDeg')
	const tightByBoth = gap.value >= gapLimit && straight <= straightLimit
	const endFeel = visit.ankles?.[side]?.endFeel?.replaceAll('-', ' ') ?? 'not recorded'
	return [
		{
			id: `ankle.limit.${side}`,
			title: `What limits it, ${side}`,
			lines: [
				`Knee bent less knee straight, off the ground: ${equation(gap, 'deg', 1)}; within ` +
					`${errorDeg} deg of ${gapLimit} it is unclear, and 12 to 18 is the healthy mean`,
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
function evidenceLines({ key, correctionMm }: Raise): string[] {
	const legLength = 'posture.legLengthShareMax' as const
	const keys = correctionMm > 0 && key !== legLength ? [key, legLength] : [key]
	return keys.flatMap((evidenceKey) => raiseEvidence[evidenceKey] ?? [])
}
function raiseWorkings(visit: Visit, raise: Raise | undefined, protocol: Protocol): Working[] {
	if (!raise) return []
	const heightMm = Math.max(raise.heelRaiseMm.left, raise.heelRaiseMm.right)
	const differenceMm = visit.body?.legLengthDifferenceMm ?? 0
	const correction =
		raise.correctionMm > 0
			? `Leg length, shorter side: ${equation(correctionOf(differenceMm, protocol), 'mm', 1)} more, ` +
				`no more than ${tenths(heightMm)} mm in all inside a boot`
			: undefined
	return [
		{
			id: 'ankle.heel-raise',
			title: 'Heel raise in a flat boot, by the ankle alone',
			lines: linesOf(
				`Both feet: ${tenths(raise.baseMm)} mm; warn above ` +
					`${protocol.value('ankle.raiseWarnMm')} mm, stop above ` +
					`${protocol.value('ankle.raiseStopMm')} mm in a boot`,
				correction,
				...raiseAngleLines(visit, heightMm, protocol),
				...evidenceLines(raise),
				'What is given in each pair is worked out for that pair',
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
			...bandWorkings(visit, side, result[side], protocol),
			...limitWorkings(visit, side, result[side], protocol),
			...changeWorkings(side, result, protocol),
		]),
		...asymmetryWorkings(result, protocol),
		...raiseWorkings(visit, raise, protocol),
		...pairs.map((two) => pitchWorking(two, protocol)),
	]
}
