/** Range of one ankle: how far it bends, what stops it, and whether its readings fit each other. */
import { isMinor } from '../facts/age.ts'
import type { AnkleSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import { type Basis, type Because, commonPractice } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { meanOf, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { lungeGeometryDeg } from './pitch.ts'
import { distanceCutOff, shankCmOf } from './stature.ts'

const frontBlocks = ['front-pinch', 'hard-stop']
const posteriorFeels = ['calf-stretch', 'springy-back']

/** The row that decides the band: the angle where both were read. */
export const bandKey = ({ lungeDeg }: Pick<AnkleSide, 'lungeDeg'>): ThresholdKey =>
	lungeDeg === undefined ? 'ankle.restrictedCm' : 'ankle.restrictedDeg'

type Banded = Pick<AnkleSide, 'band' | 'bandSure' | 'bandBy'>
const noBand: Banded = { band: 'unknown', bandSure: false }
/** A reading against its cut-off: crisp, and sure beyond the repeat error. */
const banded = (
	value: number,
	cutOff: number,
	errorKey: ThresholdKey,
	bandBy: NonNullable<AnkleSide['bandBy']>,
	protocol: Protocol,
): Banded => ({
	band: value < cutOff ? 'restricted' : 'adequate',
	bandSure: Math.abs(value - cutOff) > protocol.value(errorKey),
	bandBy,
})
/** By the angle where it was read; a minor's distance only against a cut-off scaled to stature. */
function bandOf(
	visit: Visit,
	lungeCm: number | undefined,
	lungeDeg: number | undefined,
	protocol: Protocol,
): Banded {
	if (lungeDeg !== undefined) {
		const cutOff = protocol.value('ankle.restrictedDeg')
		return banded(lungeDeg, cutOff, 'ankle.repeatDeg', 'angle', protocol)
	}
	const cutOff = distanceCutOff(visit, protocol)
	if (lungeCm === undefined || !cutOff) return noBand
	const by = isMinor(visit, protocol) ? 'distance-for-stature' : 'distance'
	return banded(lungeCm, cutOff.value, 'ankle.repeatCm', by, protocol)
}
/**
 * What two readings off the ground say: tight only where the ankle stays at the cut-off with the
 * knee straight and bending it gains clearly more than the cut-off; a healthy gap says nothing.
 */
function limitByGap(
	straightDeg: number,
	bentDeg: number,
	protocol: Protocol,
): AnkleSide['limitedBy'] {
	const gapDeg = rounded(bentDeg - straightDeg, 4)
	const cutOffDeg = protocol.value('ankle.gastrocnemiusGapDeg')
	const errorDeg = protocol.value('ankle.gapErrorDeg')
	if (gapDeg < cutOffDeg - errorDeg) return 'soleus-or-capsule'
	const low = straightDeg <= protocol.value('ankle.gastrocnemiusStraightDeg')
	return low && gapDeg >= cutOffDeg + errorDeg ? 'gastrocnemius' : 'unknown'
}
/** What stops the motion: the first that holds. */
function limitOf(
	band: AnkleSide['band'],
	{ kneeStraightDeg, kneeBentDeg }: Pick<AnkleSide, 'kneeStraightDeg' | 'kneeBentDeg'>,
	endFeel: string,
	protocol: Protocol,
): AnkleSide['limitedBy'] {
	if (band === 'adequate') return 'none'
	if (frontBlocks.includes(endFeel)) return 'anterior-block'
	if (band === 'unknown' || endFeel === 'joint-pain') return 'unknown'
	if (kneeStraightDeg !== undefined && kneeBentDeg !== undefined)
		return limitByGap(kneeStraightDeg, kneeBentDeg, protocol)
	return posteriorFeels.includes(endFeel) ? 'soleus-or-capsule' : 'unknown'
}
/**
 * The range of one ankle; what was not read is absent. @param recordedOnly the limb is acutely
 * injured or must not be tested: its readings are kept and judged by nothing
 */
export function ankleSide(
	visit: Visit,
	side: Side,
	protocol: Protocol,
	recordedOnly: boolean,
): AnkleSide {
	const read = visit.ankles?.[side]
	const readings = present({
		lungeCm: meanOf(read?.lungeCm),
		lungeDeg: meanOf(read?.lungeDeg),
		kneeStraightDeg: meanOf(read?.kneeStraightDeg),
		kneeBentDeg: meanOf(read?.kneeBentDeg),
	})
	if (recordedOnly) return { ...readings, ...noBand, recordedOnly, limitedBy: 'unknown' }
	const found = bandOf(visit, readings.lungeCm, readings.lungeDeg, protocol)
	const limitedBy = limitOf(found.band, readings, read?.endFeel ?? '', protocol)
	return { ...readings, ...found, limitedBy }
}

const frontEndFeel: Basis = {
	rule: 'front end feel',
	source: 'end feel in the clinic: expert opinion and common practice, no source',
	strength: 'expert',
}
const readingUnits = {
	lungeDeg: 'deg',
	lungeCm: 'cm',
	kneeStraightDeg: 'deg',
	kneeBentDeg: 'deg',
} as const
const readingFields = ['lungeDeg', 'lungeCm', 'kneeStraightDeg', 'kneeBentDeg'] as const

/** What was read of one ankle, for the reasons of a finding. */
function readingsOf(visit: Visit, side: Side, ankle: AnkleSide): Because[] {
	const numbers = readingFields.flatMap((field) => {
		const value = ankle[field]
		return value === undefined ? [] : [reading(field, value, readingUnits[field], side)]
	})
	const endFeel = visit.ankles?.[side]?.endFeel
	return endFeel ? [...numbers, { measure: 'endFeel', side, value: endFeel }] : numbers
}
/** A limb that waits: nothing is made of its readings, and that is said. */
const recordedFinding = (side: Side, because: Because[]): Finding | undefined =>
	because.length === 0
		? undefined
		: findingOf(state('ankle.recorded-only', { side }), {
				side,
				level: 'note',
				because,
				basis: { rule: 'an injured limb is not compared', ...commonPractice },
			})
/** A minor's distance without a stature is judged by nothing. */
function distanceFinding(
	visit: Visit,
	side: Side,
	{ lungeCm, lungeDeg, recordedOnly }: AnkleSide,
	protocol: Protocol,
): Finding | undefined {
	if (recordedOnly || lungeCm === undefined || lungeDeg !== undefined) return undefined
	if (distanceCutOff(visit, protocol)) return undefined
	return findingOf(state('ankle.distance-of-minor', { side }), {
		side,
		level: 'note',
		because: [reading('lungeCm', lungeCm, 'cm', side)],
		basis: protocol.basis('distance scaled to stature', 'ankle.shankPerStatureYoung'),
	})
}
function rangeFinding(
	visit: Visit,
	side: Side,
	ankle: AnkleSide,
	protocol: Protocol,
): Finding | undefined {
	const because = readingsOf(visit, side, ankle)
	if (ankle.recordedOnly) return recordedFinding(side, because)
	if (ankle.band === 'restricted') {
		const { limitedBy, bandSure, bandBy = 'angle' } = ankle
		return findingOf(state('ankle.restricted', { side, limitedBy, bandSure, bandBy }), {
			side,
			level: 'advise',
			because,
			basis: protocol.basis('restricted ankle', bandKey(ankle)),
		})
	}
	if (!frontBlocks.includes(visit.ankles?.[side]?.endFeel ?? '')) return undefined
	const rangeIsAdequate = ankle.band === 'adequate'
	return findingOf(state('ankle.front-end-feel', { side, rangeIsAdequate }), {
		side,
		level: 'caution',
		because,
		basis: frontEndFeel,
	})
}
/**
 * Degrees to expect from the knee-to-wall distance and the geometry of the leg, all of it scaled to
 * the lower leg; undefined for a minor without a stature.
 */
function expectedLungeDeg(
	visit: Visit,
	side: Side,
	lungeCm: number,
	protocol: Protocol,
): number | undefined {
	const shankCm = shankCmOf(visit, protocol)
	if (shankCm === undefined) return undefined
	const scale = shankCm / protocol.value('ankle.shankCm')
	const footMm = meanOf(visit.feet?.[side]?.heelToToeMm)
	const toeCm =
		footMm === undefined
			? protocol.value('ankle.toeDefaultCm') * scale
			: (footMm / 10) * protocol.value('ankle.toePerFoot')
	const kneeCm = protocol.value('ankle.kneeCm') * scale
	return lungeGeometryDeg(lungeCm, toeCm, kneeCm, shankCm).value
}
/** A finding where distance and angle of one lunge cannot both be right. */
function pairFinding(
	visit: Visit,
	side: Side,
	ankle: AnkleSide,
	protocol: Protocol,
): Finding | undefined {
	const { lungeCm, lungeDeg } = ankle
	if (ankle.recordedOnly || lungeCm === undefined || lungeDeg === undefined) return undefined
	const expectedDeg = expectedLungeDeg(visit, side, lungeCm, protocol)
	if (expectedDeg === undefined) return undefined
	if (Math.abs(expectedDeg - lungeDeg) <= protocol.value('ankle.pairToleranceDeg')) return undefined
	return findingOf(state('ankle.pair', { side, lungeCm, lungeDeg, expectedDeg }), {
		side,
		level: 'advise',
		because: [
			...readingsOf(visit, side, ankle),
			reading('expectedLungeDeg', expectedDeg, 'deg', side),
		],
		basis: protocol.basis('plausible pair of lunge readings', 'ankle.pairToleranceDeg'),
	})
}
/** What is said of one ankle by itself. */
export function rangeFindings(
	visit: Visit,
	side: Side,
	ankle: AnkleSide,
	protocol: Protocol,
): Finding[] {
	return [
		rangeFinding(visit, side, ankle, protocol),
		distanceFinding(visit, side, ankle, protocol),
		pairFinding(visit, side, ankle, protocol),
	].filter((finding) => finding !== undefined)
}
