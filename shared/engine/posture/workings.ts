/** The posture room's numbers, each with its formula and this player's values put in. */
import type { LegLength, PerSide, PostureResult, PostureSide } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import { equation, exactly, minus } from '../findings/formula.ts'
import { linesOf, tenths } from '../findings/working.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { beightonKey } from './beighton.ts'
import { measureNames, postureMeasures } from './changes.ts'
import { ipjLine } from './first-ray.ts'
import { fpiSum, schemeOf } from './foot-posture.ts'
import { riseGap, riseNormKey } from './heel-rises.ts'
import { correctionOf, firstLift, legLengthKey } from './leg-length.ts'

type Result = Omit<PostureResult, 'workings'>
/** One foot of a visit, with the protocol that judges it. */
interface Foot {
	visit: Visit
	side: Side
	foot: PostureSide
	protocol: Protocol
}
const noLimitPublished: Basis = {
	rule: 'change without a published limit',
	source: 'no published smallest real change was found',
	strength: 'practice',
}

function bandWords(protocol: Protocol): string {
	if (schemeOf(protocol) === 'raw')
		return (
			`-12 to ${protocol.value('posture.rawHighlySupinatedMax')} highly supinated, to ` +
			`${protocol.value('posture.rawSupinatedMax')} supinated, to ` +
			`${protocol.value('posture.rawNormalMax')} normal, to ` +
			`${protocol.value('posture.rawPronatedMax')} pronated, above highly pronated`
		)
	return (
		`-12 to ${protocol.value('posture.trialSupinatedMax')} supinated, to ` +
		`${protocol.value('posture.trialNormalMax')} normal, above pronated`
	)
}
function indexWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	const items = visit.posture?.[side]?.fpi6
	if (items === undefined || foot.fpi === undefined || foot.fpiBand === undefined) return []
	const scheme = schemeOf(protocol)
	return [
		{
			id: `posture.fpi.${side}`,
			title: `Foot posture index, ${side}`,
			lines: [
				`Six items: ${equation(fpiSum(items))}`,
				`Bands, ${scheme} scheme: ${bandWords(protocol)}`,
				`Band: ${foot.fpiBand.replace('-', ' ')}`,
			],
			basis: protocol.basis(
				'foot posture band',
				scheme === 'raw' ? 'posture.rawNormalMax' : 'posture.trialNormalMax',
			),
		},
	]
}
function firstMtpWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	const rangeDeg = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing)
	const jackDeg = meanOf(visit.posture?.[side]?.jackTestDeg)
	if (rangeDeg === undefined) return []
	return [
		{
			id: `posture.first-mtp.${side}`,
			title: `First MTP joint, ${side}`,
			lines: [
				`Off the ground, mean: ${tenths(rangeDeg)} deg; free from ` +
					`${protocol.value('posture.mtpFreeDeg')}, structural below ` +
					`${protocol.value('posture.mtpStructuralDeg')} with a painful joint`,
				jackDeg === undefined
					? 'Standing: not measured'
					: `Standing, mean: ${tenths(jackDeg)} deg; held below ` +
						`${protocol.value('posture.jackDeg')}`,
				`Verdict: ${foot.firstMtp?.replace('-', ' ') ?? 'open until measured standing'}`,
			],
			basis: protocol.basis('first MTP joint', 'posture.mtpFreeDeg'),
		},
	]
}
function ipjWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	const rangeDeg = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing)
	if (rangeDeg === undefined || foot.ipjEstimateDeg === undefined) return []
	return [
		{
			id: `posture.ipj.${side}`,
			title: `Interphalangeal joint of the big toe, estimate, ${side}`,
			lines: [equation(ipjLine(rangeDeg, protocol), 'deg')],
			basis: protocol.basis('interphalangeal estimate', 'posture.ipjSlope'),
		},
	]
}
function navicularWorkings({ side, foot, protocol }: Foot): Working[] {
	if (foot.navicularDropMm === undefined) return []
	return [
		{
			id: `posture.navicular-drop.${side}`,
			title: `Navicular drop, ${side}`,
			lines: [
				`Mean: ${tenths(foot.navicularDropMm)} mm; limit in use ` +
					`${protocol.value('posture.navicularDropMm')} mm (13 and 15 mm are also in print)`,
				'Repeat readings agree poorly: weighted kappa 0.40',
			],
			basis: protocol.basis('navicular drop', 'posture.navicularDropMm'),
		},
	]
}
/** @param recordedOnly the limb is injured or is not to be tested: compared with nothing */
function riseWorkings({ visit, side, foot, protocol }: Foot, recordedOnly: boolean): Working[] {
	if (foot.heelRises === undefined) return []
	const normKey = recordedOnly ? undefined : riseNormKey(visit, protocol)
	return [
		{
			id: `posture.heel-rises.${side}`,
			title: `Heel rises, ${side}`,
			lines: [
				normKey
					? `${foot.heelRises}; median for this age and sex ${protocol.value(normKey)} (10 degree ` +
						`slope, 30 a minute); said below ${protocol.value('posture.riseWellBelowShare')} of it`
					: `${foot.heelRises}; ${recordedOnly ? 'recorded only' : 'no published figure for this age'}`,
			],
			basis: protocol.basis('heel rises for age', normKey ?? 'posture.riseNormFromYears'),
		},
	]
}
function changeWorkings(side: Side, { changes }: Result, protocol: Protocol): Working[] {
	return measureNames.flatMap((name) => {
		const change = changes[side][name]
		if (!change) return []
		return [
			{
				id: `posture.change-${name.toLowerCase()}.${side}`,
				title: `Change of ${postureMeasures[name].measure.name}, ${side}`,
				lines: changeLines(change),
				basis:
					change.smallestReal === undefined
						? noLimitPublished
						: protocol.basis('change in heel rises', 'posture.riseChange'),
			},
		]
	})
}
function indexDifferenceWorkings({ left, right }: Result, protocol: Protocol): Working[] {
	if (left.fpi === undefined || right.fpi === undefined) return []
	const [larger, smaller] = [Math.max(left.fpi, right.fpi), Math.min(left.fpi, right.fpi)]
	const gap = minus(exactly(larger), exactly(smaller))
	return [
		{
			id: 'posture.fpi-asymmetry',
			title: 'Difference of the foot posture indices',
			lines: [
				`Larger less smaller: ${equation(gap, 'points')}; up to ` +
					`${protocol.value('posture.asymmetryNormal')} normal, above ` +
					`${protocol.value('posture.asymmetrySevere')} severe`,
			],
			basis: protocol.basis('foot posture asymmetry', 'posture.asymmetryNormal'),
		},
	]
}
function riseGapWorkings(compared: PerSide<PostureSide>, protocol: Protocol): Working[] {
	const gap = riseGap(compared)
	if (!gap) return []
	return [
		{
			id: 'posture.heel-rise-gap',
			title: 'Difference in heel rises',
			lines: [
				`${equation(gap.percent, '%', 1)}; notable from ` +
					`${protocol.value('posture.riseGapPercent')} % and beyond ` +
					`${protocol.value('posture.riseChange')} rises`,
			],
			basis: protocol.basis('heel-rise difference', 'posture.riseGapPercent'),
		},
	]
}
function beightonWorkings(visit: Visit, { beighton }: Result, protocol: Protocol): Working[] {
	if (!beighton) return []
	const history = visit.body?.hypermobilityHistory
	return [
		{
			id: 'posture.beighton',
			title: 'Beighton score',
			lines: linesOf(
				`Score ${beighton.score} of 9; cut-off ` +
					`${beighton.cutOff ?? 'not known until maturity is recorded'}`,
				history === undefined
					? undefined
					: `History: ${history} of 5 yes; one below the cut-off, ` +
							`${protocol.value('posture.beightonHistory')} count`,
				`Verdict: ${beighton.state.replaceAll('-', ' ')}`,
			),
			basis: protocol.basis(
				'Beighton score by maturity',
				beightonKey(visit, protocol) ?? 'posture.beightonGrowing',
			),
		},
	]
}
function correctionLine(differenceMm: number, protocol: Protocol): string {
	const { min, max } = correctionOf(differenceMm, protocol)
	return `Correction: ${equation(min, 'mm', 1)} to ${equation(max, 'mm', 1)}`
}
/** The staged first lift of Heilig; undefined where it was not worked out. */
function firstLiftLine(
	visit: Visit,
	{ differenceMm, startBelowMm }: LegLength,
): string | undefined {
	const lift = startBelowMm === undefined ? undefined : firstLift(visit, differenceMm)
	return lift && `First lift below ${equation(lift, 'mm', 1)} (Heilig, expert opinion)`
}
function legLengthWorkings(visit: Visit, { legLength }: Result, protocol: Protocol): Working[] {
	if (!legLength) return []
	const { differenceMm, correctionMm } = legLength
	return [
		{
			id: 'posture.leg-length',
			title: 'Leg-length difference',
			lines: linesOf(
				`${tenths(differenceMm)} mm: below ${protocol.value('posture.legLengthRecordMm')} record ` +
					`only, from ${protocol.value('posture.legLengthConsiderMm')} consider, from ` +
					`${protocol.value('posture.legLengthReferMm')} refer`,
				correctionMm && correctionLine(differenceMm, protocol),
				firstLiftLine(visit, legLength),
			),
			basis: protocol.basis('leg-length difference', legLengthKey(differenceMm, protocol)),
		},
	]
}
/**
 * @param result the room's result without workings; @param compared the feet without the heel rises
 * that are only recorded
 */
export function postureWorkings(
	visit: Visit,
	result: Result,
	compared: PerSide<PostureSide>,
	protocol: Protocol,
): Working[] {
	return [
		...bothSides.flatMap((side) => {
			const foot = { visit, side, foot: result[side], protocol }
			return [
				...indexWorkings(foot),
				...firstMtpWorkings(foot),
				...ipjWorkings(foot),
				...navicularWorkings(foot),
				...riseWorkings(foot, compared[side].heelRises === undefined),
				...changeWorkings(side, result, protocol),
			]
		}),
		...indexDifferenceWorkings(result, protocol),
		...riseGapWorkings(compared, protocol),
		...beightonWorkings(visit, result, protocol),
		...legLengthWorkings(visit, result, protocol),
	]
}
