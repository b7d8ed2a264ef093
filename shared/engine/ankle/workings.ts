/** The ankle room's numbers, each with its formula and this player's values put in. */
import type { AnkleResult, AnkleSide } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import { figure, linesOf, tenths } from '../findings/working.ts'
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
import { pitchDeg } from './pitch.ts'
import { evidence, type Raise } from './raise.ts'
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
	const tightByBoth = bent - straight >= gapLimit && straight <= straightLimit
	const endFeel = visit.ankles?.[side]?.endFeel?.replaceAll('-', ' ') ?? 'not recorded'
	return [
		{
			id: `ankle.limit.${side}`,
			title: `What limits it, ${side}`,
			lines: [
				`Knee bent - knee straight = ${tenths(bent)} - ${tenths(straight)} = ` +
					`${tenths(bent - straight)} deg; from ${gapLimit} deg it points to the gastrocnemius`,
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

/** 'larger - smaller = gap' of the two sides; undefined unless both were read. */
function gapWords(
	left: number | undefined,
	right: number | undefined,
	gap: number | undefined,
): string | undefined {
	if (left === undefined || right === undefined || gap === undefined) return undefined
	return `${tenths(Math.max(left, right))} - ${tenths(Math.min(left, right))} = ${tenths(gap)}`
}
function asymmetryWorkings(result: Result, protocol: Protocol): Working[] {
	const { left, right, asymmetryCm, asymmetryDeg, asymmetry } = result
	if (asymmetry === 'unknown') return []
	const distance = gapWords(left.lungeCm, right.lungeCm, asymmetryCm)
	const angle = gapWords(left.lungeDeg, right.lungeDeg, asymmetryDeg)
	return [
		{
			id: 'ankle.asymmetry',
			title: 'Difference between the ankles',
			lines: linesOf(
				distance &&
					`Larger - smaller, knee to wall: ${distance} cm; flag from ` +
						`${protocol.value('ankle.asymmetryFlagCm')}, act from ` +
						`${protocol.value('ankle.asymmetryActCm')} cm`,
				angle &&
					`Larger - smaller, angle: ${angle} deg; act from ` +
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
	const angleDeg = pitchDeg(heightMm, ballMm)
	const onCentre =
		centreMm === undefined
			? ''
			: `; atan(${tenths(heightMm)} / ${tenths(centreMm)}) = ` +
				`${figure(pitchDeg(heightMm, centreMm))} deg on heel centre to ball (from memory)`
	const transfer = protocol.value('ankle.raiseTransfer')
	return [
		`Angle: atan(${tenths(heightMm)} / ${tenths(ballMm)}) = ${figure(angleDeg)} deg on ` +
			`heel to ball${onCentre}`,
		`Expected in running: ${figure(angleDeg)} x ${transfer} = ${figure(angleDeg * transfer)} deg ` +
			'(one study: Dixon and Kerwin 1999, n 8)',
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
			? `Leg length, shorter side: ${tenths(differenceMm)} x ` +
				`${protocol.value('posture.legLengthShareMax')} = ${tenths(raise.correctionMm)} mm more, ` +
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
	const { from, to, ballLengthMm, pitch } = pairs
	const [fromMm, toMm] = [tenths(heelHeightMm(from)), tenths(heelHeightMm(to))]
	const ballMm = tenths(ballLengthMm)
	return {
		id: `ankle.pitch-${pairsId(pairs)}`,
		title: `Pitch: ${pairName(from.pair)} and ${pairName(to.pair)}`,
		lines: [
			`Offset and raise: ${fromMm} mm gives ${figure(pitch.fromDeg)} deg, ${toMm} mm ` +
				`gives ${figure(pitch.toDeg)} deg on ${ballMm} mm heel to ball`,
			`Difference: atan((${fromMm} - ${toMm}) / ${ballMm}) = ${figure(pitch.changeDeg)} deg ` +
				'more asked in the second',
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
