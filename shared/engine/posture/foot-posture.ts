/** Foot posture index and navicular drop: bands, limits in minors, difference of the sides. */
import type { PerSide, PostureSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { exactly, type Formula, plus } from '../findings/formula.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

export type Scheme = 'raw' | 'trial'
type Band = NonNullable<PostureSide['fpiBand']>
/** A band with its upper edge, which belongs to it. */
interface Edge {
	key: ThresholdKey
	band: Band
}
/** Bands of each scheme, lowest first; the top band lies above the highest edge. */
const schemes: Record<Scheme, { edges: readonly Edge[]; highest: ThresholdKey; top: Band }> = {
	raw: {
		edges: [
			{ key: 'posture.rawHighlySupinatedMax', band: 'highly-supinated' },
			{ key: 'posture.rawSupinatedMax', band: 'supinated' },
			{ key: 'posture.rawNormalMax', band: 'normal' },
			{ key: 'posture.rawPronatedMax', band: 'pronated' },
		],
		highest: 'posture.rawPronatedMax',
		top: 'highly-pronated',
	},
	trial: {
		edges: [
			{ key: 'posture.trialSupinatedMax', band: 'supinated' },
			{ key: 'posture.trialNormalMax', band: 'normal' },
		],
		highest: 'posture.trialNormalMax',
		top: 'pronated',
	},
}
/** The scheme of bands that the clinic reads the index by. */
export const schemeOf = (protocol: Protocol): Scheme => protocol.file.fpiScheme ?? 'raw'
/** The sum of the six items. */
export const fpiSum = ([first = 0, ...more]: readonly number[]): Formula =>
	plus(exactly(first), ...more.map(exactly))
/** The foot posture index; undefined where its items were not scored. */
export const fpiOf = (items: readonly number[] | undefined): number | undefined =>
	items && fpiSum(items).value
/** The band of an index in the scheme in force. */
export function fpiBandOf(fpi: number, protocol: Protocol): Band {
	const { edges, top } = schemes[schemeOf(protocol)]
	return edges.find(({ key }) => fpi <= protocol.value(key))?.band ?? top
}
const fpiReason = (fpi: number, side: Side): Because => ({
	measure: 'footPostureIndex',
	side,
	value: fpi,
})
const isMinor = ({ player, visitDate }: Visit, protocol: Protocol): boolean =>
	ageYears(player.birthDate, visitDate) < protocol.value('posture.adultFromYears')

/** A finding for an index outside the normal band. */
export function bandFindings(
	side: Side,
	{ fpi, fpiBand }: PostureSide,
	protocol: Protocol,
): Finding[] {
	if (fpi === undefined || fpiBand === undefined || fpiBand === 'normal') return []
	const scheme = schemeOf(protocol)
	const { edges, highest } = schemes[scheme]
	return [
		findingOf(state('posture.fpi', { side, fpi, band: fpiBand, scheme }), {
			side,
			level: 'note',
			because: [fpiReason(fpi, side)],
			basis: protocol.basis(
				`foot posture band, ${scheme} scheme`,
				edges.find(({ band }) => band === fpiBand)?.key ?? highest,
			),
		}),
	]
}
/** A finding where a minor's index is at or above the upper limit found in children. */
export function minorIndexFindings(
	visit: Visit,
	side: Side,
	{ fpi }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const limit = protocol.value('posture.minorP85')
	if (fpi === undefined || !isMinor(visit, protocol) || fpi < limit) return []
	return [
		findingOf(state('posture.fpi-minor', { side, fpi, limit }), {
			side,
			level: 'note',
			because: [fpiReason(fpi, side)],
			basis: protocol.basis('foot posture in minors', 'posture.minorP85'),
		}),
	]
}
/** A finding where a boy's index is below that of the futsal study. */
export function lowIndexFindings(
	visit: Visit,
	side: Side,
	{ fpi }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const limit = protocol.value('posture.futsalLowFpi')
	const boy = visit.player.sex === 'male' && isMinor(visit, protocol)
	if (fpi === undefined || !boy || fpi >= limit) return []
	return [
		findingOf(state('posture.fpi-low', { side, fpi, limit }), {
			side,
			level: 'note',
			because: [fpiReason(fpi, side)],
			basis: protocol.basis('low foot posture index in boys', 'posture.futsalLowFpi'),
		}),
	]
}
/** A finding where the navicular drops further than the limit in use. */
export function navicularFindings(
	side: Side,
	{ navicularDropMm }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const limitMm = protocol.value('posture.navicularDropMm')
	if (navicularDropMm === undefined || navicularDropMm <= limitMm) return []
	return [
		findingOf(
			state('posture.navicular-drop', { side, dropMm: rounded(navicularDropMm, 1), limitMm }),
			{
				side,
				level: 'note',
				because: [reading('navicularDropMm', navicularDropMm, 'mm', side)],
				basis: protocol.basis('navicular drop', 'posture.navicularDropMm'),
			},
		),
	]
}
/** A finding where the indices of the two feet differ notably. */
export function indexDifferenceFindings(
	{ left, right }: PerSide<PostureSide>,
	protocol: Protocol,
): Finding[] {
	if (left.fpi === undefined || right.fpi === undefined) return []
	const gap = Math.abs(left.fpi - right.fpi)
	if (gap <= protocol.value('posture.asymmetryNormal')) return []
	const severe = gap > protocol.value('posture.asymmetrySevere')
	return [
		findingOf(state('posture.fpi-asymmetry', { gap, severe }), {
			side: 'both',
			level: severe ? 'advise' : 'note',
			because: [fpiReason(left.fpi, 'left'), fpiReason(right.fpi, 'right')],
			basis: protocol.basis(
				'foot posture asymmetry',
				severe ? 'posture.asymmetrySevere' : 'posture.asymmetryNormal',
			),
		}),
	]
}
