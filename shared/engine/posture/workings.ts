/** The posture room's numbers, each with its formula and this player's values put in. */
import type { PostureResult } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { beightonKey } from './beighton.ts'
import { measureNames, postureMeasures } from './changes.ts'
import { compensationFactor, durationFactor, legLengthKey } from './leg-length.ts'

const n = (value: number, digits = 1): string => String(rounded(value, digits))
const practice: Basis = {
	rule: 'change without a published limit',
	source: 'no published smallest real change was found',
	strength: 'practice',
}

/**
 * @param result the room's result without workings; @param normKey the heel-rise row for this age
 * and sex, if any
 */
export function postureWorkings(
	visit: Visit,
	result: Omit<PostureResult, 'workings'>,
	normKey: ThresholdKey | undefined,
	protocol: Protocol,
): Working[] {
	const made: Working[] = []
	const add = (what: string, title: string, lines: string[], basis: Basis) =>
		made.push({ id: `posture.${what}`, title, lines, basis })
	const limit = (key: ThresholdKey) => protocol.value(key)
	const raw = result.fpiScheme === 'raw'
	const bands = raw
		? `-12 to ${limit('posture.rawHighlySupinatedMax')} highly supinated, to ` +
			`${limit('posture.rawSupinatedMax')} supinated, to ${limit('posture.rawNormalMax')} ` +
			`normal, to ${limit('posture.rawPronatedMax')} pronated, above highly pronated`
		: `-12 to ${limit('posture.trialSupinatedMax')} supinated, to ` +
			`${limit('posture.trialNormalMax')} normal, above pronated`
	for (const side of bothSides) {
		const read = visit.posture?.[side],
			one = result[side]
		const mtp = meanOf(read?.firstMtpDegNonWeightBearing),
			jack = meanOf(read?.jackTestDeg)
		if (one.fpi !== undefined)
			add(
				`fpi.${side}`,
				`Foot posture index, ${side}`,
				[
					`Six items: ${read!.fpi6!.map((item) => (item < 0 ? `(${item})` : item)).join(' + ')} ` +
						`= ${one.fpi}`,
					`Bands, ${result.fpiScheme} scheme: ${bands}`,
					`Band: ${one.fpiBand!.replace('-', ' ')}`,
				],
				protocol.basis(
					'foot posture band',
					raw ? 'posture.rawNormalMax' : 'posture.trialNormalMax',
				),
			)
		if (mtp !== undefined)
			add(
				`first-mtp.${side}`,
				`First MTP joint, ${side}`,
				[
					`Off the ground, mean: ${n(mtp)} deg; free from ${limit('posture.mtpFreeDeg')}, ` +
						`structural below ${limit('posture.mtpStructuralDeg')} with a painful joint`,
					jack === undefined
						? 'Standing: not measured'
						: `Standing, mean: ${n(jack)} deg; held below ${limit('posture.jackDeg')}`,
					`Verdict: ${one.firstMtp?.replace('-', ' ') ?? 'open until measured standing'}`,
				],
				protocol.basis('first MTP joint', 'posture.mtpFreeDeg'),
			)
		if (one.ipjEstimateDeg !== undefined)
			add(
				`ipj.${side}`,
				`Interphalangeal joint of the big toe, estimate, ${side}`,
				[
					`${limit('posture.ipjIntercept')} - ${Math.abs(limit('posture.ipjSlope'))} x ` +
						`${n(mtp!)} = ${n(one.ipjEstimateDeg, 2)} deg`,
				],
				protocol.basis('interphalangeal estimate', 'posture.ipjSlope'),
			)
		if (one.navicularDropMm !== undefined)
			add(
				`navicular-drop.${side}`,
				`Navicular drop, ${side}`,
				[
					`Mean: ${n(one.navicularDropMm)} mm; limit in use ${limit('posture.navicularDropMm')} ` +
						'mm (13 and 15 mm are also in print)',
					'Repeat readings agree poorly: weighted kappa 0.40',
				],
				protocol.basis('navicular drop', 'posture.navicularDropMm'),
			)
		if (one.heelRises !== undefined)
			add(
				`heel-rises.${side}`,
				`Heel rises, ${side}`,
				[
					normKey
						? `${one.heelRises} against ${limit(normKey)} published for this age and sex (10 ` +
							'degree slope, 30 a minute)'
						: `${one.heelRises}; no published figure for this age`,
				],
				protocol.basis('heel rises for age', normKey ?? 'posture.riseNormFromYears'),
			)
		for (const name of measureNames) {
			const change = result.changes[side][name]
			if (change)
				add(
					`change-${name.toLowerCase()}.${side}`,
					`Change of ${postureMeasures[name].title}, ${side}`,
					changeLines(change),
					change.smallestReal === undefined
						? practice
						: protocol.basis('change in heel rises', 'posture.riseChange'),
				)
		}
	}
	const { left, right, beighton, legLength } = result
	const gap = (a: number, b: number) => `${Math.max(a, b)} - ${Math.min(a, b)} = ${Math.abs(a - b)}`
	if (left.fpi !== undefined && right.fpi !== undefined)
		add(
			'fpi-asymmetry',
			'Difference of the foot posture indices',
			[
				`Larger - smaller: ${gap(left.fpi, right.fpi)} points; up to ` +
					`${limit('posture.asymmetryNormal')} normal, above ${limit('posture.asymmetrySevere')} ` +
					'severe',
			],
			protocol.basis('foot posture asymmetry', 'posture.asymmetryNormal'),
		)
	if (
		left.heelRises !== undefined &&
		right.heelRises !== undefined &&
		Math.max(left.heelRises, right.heelRises) > 0
	) {
		const most = Math.max(left.heelRises, right.heelRises)
		add(
			'heel-rise-gap',
			'Difference in heel rises',
			[
				`(${gap(left.heelRises, right.heelRises)}) / ${most} = ` +
					`${n((100 * Math.abs(left.heelRises - right.heelRises)) / most)} %; notable from ` +
					`${limit('posture.riseGapPercent')} %`,
			],
			protocol.basis('heel-rise difference', 'posture.riseGapPercent'),
		)
	}
	if (beighton) {
		const key = beightonKey(visit, protocol)
		add(
			'beighton',
			'Beighton score',
			[
				`Score ${beighton.score} of 9; cut-off ` +
					`${beighton.cutOff ?? 'not known until maturity is recorded'}`,
				...(visit.body?.hypermobilityHistory === undefined
					? []
					: [
							`History: ${visit.body.hypermobilityHistory} of 5 yes; one below the cut-off, ` +
								`${limit('posture.beightonHistory')} count`,
						]),
				`Verdict: ${beighton.state.replaceAll('-', ' ')}`,
			],
			protocol.basis('Beighton score by maturity', key ?? 'posture.beightonGrowing'),
		)
	}
	if (legLength) {
		const { differenceMm, correctionMm, startBelowMm } = legLength,
			{ legLengthYears, legLengthCompensation } = visit.body!
		add(
			'leg-length',
			'Leg-length difference',
			[
				`${n(differenceMm)} mm: below ${limit('posture.legLengthRecordMm')} record only, from ` +
					`${limit('posture.legLengthConsiderMm')} consider, from ` +
					`${limit('posture.legLengthReferMm')} refer`,
				...(correctionMm
					? [
							`Correction: ${n(differenceMm)} x ${limit('posture.legLengthShareMin')} = ` +
								`${correctionMm.min} mm to ${n(differenceMm)} x ` +
								`${limit('posture.legLengthShareMax')} = ${correctionMm.max} mm`,
						]
					: []),
				...(startBelowMm === undefined
					? []
					: [
							`First lift below ${n(differenceMm)} / (${durationFactor(legLengthYears!)} + ` +
								`${compensationFactor[legLengthCompensation!]}) = ${n(startBelowMm)} mm (Heilig, ` +
								'expert opinion)',
						]),
			],
			protocol.basis('leg-length difference', legLengthKey(differenceMm, protocol)),
		)
	}
	return made
}
