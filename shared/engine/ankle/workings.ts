/** The ankle room's numbers, each with its formula and this player's values put in. */
import type { AnkleResult } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import { idPart, type Working } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { limitKey, lungeMeasures } from './changes.ts'
import { ballLengthOf, heelCentreLengthOf } from './pairs.ts'
import { pitchDeg } from './pitch.ts'
import { evidence, type Raise } from './raise.ts'

const n = (value: number, digits = 1): string => String(rounded(value, digits))

/** @param result the room's result without workings; @param raise how its proposal came about */
export function ankleWorkings(
	visit: Visit,
	result: Omit<AnkleResult, 'workings'>,
	raise: Raise | undefined,
	protocol: Protocol,
): Working[] {
	const made: Working[] = []
	const add = (what: string, title: string, lines: string[], basis: Basis) =>
		made.push({ id: `ankle.${what}`, title, lines, basis })
	const limit = (key: ThresholdKey) => protocol.value(key)
	for (const side of bothSides) {
		const {
			lungeCm,
			lungeDeg,
			kneeStraightDeg: straight,
			kneeBentDeg: bent,
			band,
			limitedBy,
		} = result[side]
		if (lungeCm !== undefined || lungeDeg !== undefined)
			add(
				`band.${side}`,
				`Ankle range, ${side}`,
				[
					...(lungeDeg === undefined
						? []
						: [
								`Lunge angle, mean: ${n(lungeDeg)} deg; restricted below ` +
									`${limit('ankle.restrictedDeg')} deg`,
							]),
					...(lungeCm === undefined
						? []
						: [
								`Knee to wall, mean: ${n(lungeCm)} cm; restricted below ` +
									`${limit('ankle.restrictedCm')} ` +
									`cm${lungeDeg === undefined ? '' : ' (the angle decides where both were read)'}`,
							]),
					`Band: ${band}`,
				],
				protocol.basis(
					'restricted ankle',
					lungeDeg === undefined ? 'ankle.restrictedCm' : 'ankle.restrictedDeg',
				),
			)
		if (straight !== undefined && bent !== undefined)
			add(
				`limit.${side}`,
				`What limits it, ${side}`,
				[
					`Knee bent - knee straight = ${n(bent)} - ${n(straight)} = ${n(bent - straight)} deg; ` +
						`from ${limit('ankle.gastrocnemiusGapDeg')} deg it points to the gastrocnemius`,
					'Barouk 2014 calls it tight off the ground only where it also reaches no more than ' +
						`${limit('ankle.gastrocnemiusStraightDeg')} deg with the knee straight: ` +
						`${bent - straight >= limit('ankle.gastrocnemiusGapDeg') && straight <= limit('ankle.gastrocnemiusStraightDeg') ? 'so here' : 'not so here'}`,
					`End feel: ${visit.ankles?.[side]?.endFeel?.replaceAll('-', ' ') ?? 'not recorded'}; ` +
						`limited by: ${limitedBy.replaceAll('-', ' ')}`,
				],
				protocol.basis('what limits the ankle', 'ankle.gastrocnemiusGapDeg'),
			)
		for (const measure of lungeMeasures) {
			const change = result.changes[side][measure]
			if (change)
				add(
					`change-${measure === 'lungeCm' ? 'cm' : 'deg'}.${side}`,
					`Change of ${measure === 'lungeCm' ? 'knee to wall' : 'lunge angle'}, ${side}`,
					changeLines(change),
					protocol.basis('smallest real change of the lunge', limitKey(measure, change.examiners)),
				)
		}
	}
	const { asymmetryCm, asymmetryDeg, asymmetry } = result
	if (asymmetry !== 'unknown')
		add(
			'asymmetry',
			'Difference between the ankles',
			[
				...(asymmetryCm === undefined
					? []
					: [
							'Larger - smaller, knee to wall: ' +
								`${n(Math.max(result.left.lungeCm!, result.right.lungeCm!))} - ` +
								`${n(Math.min(result.left.lungeCm!, result.right.lungeCm!))} = ${n(asymmetryCm)} ` +
								`cm; flag from ${limit('ankle.asymmetryFlagCm')}, act from ` +
								`${limit('ankle.asymmetryActCm')} cm`,
						]),
				...(asymmetryDeg === undefined
					? []
					: [
							'Larger - smaller, angle: ' +
								`${n(Math.max(result.left.lungeDeg!, result.right.lungeDeg!))} - ` +
								`${n(Math.min(result.left.lungeDeg!, result.right.lungeDeg!))} = ` +
								`${n(asymmetryDeg)} deg; act from ${limit('ankle.asymmetryActDeg')} deg`,
						]),
				`Asymmetry: ${asymmetry}`,
			],
			protocol.basis(
				'ankle asymmetry',
				asymmetryCm === undefined ? 'ankle.asymmetryActDeg' : 'ankle.asymmetryFlagCm',
			),
		)
	const ball = ballLengthOf(visit, protocol),
		centre = heelCentreLengthOf(visit, protocol)
	if (raise) {
		const height = Math.max(raise.heelRaiseMm.left, raise.heelRaiseMm.right)
		add(
			'heel-raise',
			'Heel raise proposed',
			[
				`Both feet: ${n(raise.baseMm)} mm; warn above ${limit('ankle.raiseWarnMm')} mm, stop ` +
					`above ${limit('ankle.raiseStopMm')} mm in a boot`,
				...(raise.correctionMm > 0
					? [
							`Leg length, shorter side: ${n(visit.body!.legLengthDifferenceMm!)} x ` +
								`${limit('posture.legLengthShareMax')} = ${n(raise.correctionMm)} mm more, held ` +
								`at ${n(height)} mm by the boot limit where that is lower`,
						]
					: []),
				...(ball === undefined
					? []
					: [
							`Angle: atan(${n(height)} / ${n(ball)}) = ${n(pitchDeg(height, ball), 2)} deg on ` +
								'heel to ' +
								`ball${centre === undefined ? '' : `; atan(${n(height)} / ${n(centre)}) = ${n(pitchDeg(height, centre), 2)} deg on heel centre to ball (from memory)`}`,
							`Expected in running: ${n(pitchDeg(height, ball), 2)} x ` +
								`${limit('ankle.raiseTransfer')} = ` +
								`${n(pitchDeg(height, ball) * limit('ankle.raiseTransfer'), 2)} deg (one study: ` +
								'Dixon and Kerwin 1999, n 8)',
						]),
				...[
					raise.key,
					...(raise.correctionMm > 0 && raise.key !== 'posture.legLengthShareMax'
						? ['posture.legLengthShareMax' as const]
						: []),
				].flatMap((key) => evidence[key] ?? []),
				'An estimate: the clinician decides',
			],
			protocol.basis('heel raise', raise.key),
		)
	}
	const footwear = visit.footwear ?? []
	const at = (id: string) => footwear.findIndex((pair) => pair.id === id)
	for (const { from, to, fromDeg, toDeg, changeDeg } of result.pitches) {
		const [a, b] = [footwear[at(from)]!, footwear[at(to)]!],
			height = (pair: typeof a) => pair.heelToForefootOffsetMm! + (pair.heelLiftMm ?? 0)
		add(
			`pitch-${idPart(from, at(from))}-${idPart(to, at(to))}`,
			`Pitch: ${a.name ?? a.id} and ${b.name ?? b.id}`,
			[
				`Offset and raise: ${n(height(a))} mm gives ${n(fromDeg, 2)} deg, ${n(height(b))} mm ` +
					`gives ${n(toDeg, 2)} deg on ${n(ball!)} mm heel to ball`,
				`Difference: atan((${n(height(a))} - ${n(height(b))}) / ${n(ball!)}) = ` +
					`${n(changeDeg, 2)} deg more asked in the second`,
			],
			protocol.basis('pitch between two pairs', 'ankle.demandDeg'),
		)
	}
	return made
}
