/** Range of one ankle: how far it bends, what stops it, and whether its readings fit each other. */
import type { AnkleSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { meanOf, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { lungeGeometryDeg } from './pitch.ts'

const frontBlocks = ['front-pinch', 'hard-stop']
const posteriorFeels = ['calf-stretch', 'springy-back']

/** The row that decides the band: the angle where both were read. */
export const bandKey = ({ lungeDeg }: Pick<AnkleSide, 'lungeDeg'>): ThresholdKey =>
	lungeDeg === undefined ? 'ankle.restrictedCm' : 'ankle.restrictedDeg'

function bandOf(
	lungeCm: number | undefined,
	lungeDeg: number | undefined,
	protocol: Protocol,
): AnkleSide['band'] {
	const decisive = lungeDeg ?? lungeCm
	if (decisive === undefined) return 'unknown'
	return decisive < protocol.value(bandKey(present({ lungeDeg }))) ? 'restricted' : 'adequate'
}
/** Degrees gained by bending the knee; undefined unless both were read. */
const kneeGap = (straightDeg: number | undefined, bentDeg: number | undefined) =>
	straightDeg === undefined || bentDeg === undefined ? undefined : rounded(bentDeg - straightDeg, 4)

/** What stops the motion: the first that holds. */
function limitOf(
	band: AnkleSide['band'],
	gapDeg: number | undefined,
	endFeel: string,
	protocol: Protocol,
): AnkleSide['limitedBy'] {
	if (band === 'adequate') return 'none'
	if (frontBlocks.includes(endFeel)) return 'anterior-block'
	if (band === 'unknown' || endFeel === 'joint-pain') return 'unknown'
	if (gapDeg !== undefined && gapDeg >= protocol.value('ankle.gastrocnemiusGapDeg'))
		return 'gastrocnemius'
	if (gapDeg !== undefined || posteriorFeels.includes(endFeel)) return 'soleus-or-capsule'
	return 'unknown'
}
/** The range of one ankle; what was not read is absent. */
export function ankleSide(visit: Visit, side: Side, protocol: Protocol): AnkleSide {
	const read = visit.ankles?.[side]
	const lungeCm = meanOf(read?.lungeCm)
	const lungeDeg = meanOf(read?.lungeDeg)
	const kneeStraightDeg = meanOf(read?.kneeStraightDeg)
	const kneeBentDeg = meanOf(read?.kneeBentDeg)
	const band = bandOf(lungeCm, lungeDeg, protocol)
	const gapDeg = kneeGap(kneeStraightDeg, kneeBentDeg)
	const limitedBy = limitOf(band, gapDeg, read?.endFeel ?? '', protocol)
	return present({ lungeCm, lungeDeg, kneeStraightDeg, kneeBentDeg, band, limitedBy })
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
function rangeFinding(
	visit: Visit,
	side: Side,
	ankle: AnkleSide,
	protocol: Protocol,
): Finding | undefined {
	const because = readingsOf(visit, side, ankle)
	if (ankle.band === 'restricted')
		return findingOf(state('ankle.restricted', { side, limitedBy: ankle.limitedBy }), {
			side,
			level: 'advise',
			because,
			basis: protocol.basis('restricted ankle', bandKey(ankle)),
		})
	if (!frontBlocks.includes(visit.ankles?.[side]?.endFeel ?? '')) return undefined
	const rangeIsAdequate = ankle.band === 'adequate'
	return findingOf(state('ankle.front-end-feel', { side, rangeIsAdequate }), {
		side,
		level: 'caution',
		because,
		basis: frontEndFeel,
	})
}
/** Degrees to expect from the knee-to-wall distance and the geometry of the leg. */
function expectedLungeDeg(visit: Visit, side: Side, lungeCm: number, protocol: Protocol): number {
	const footMm = meanOf(visit.feet?.[side]?.heelToToeMm)
	const toeCm =
		footMm === undefined
			? protocol.value('ankle.toeDefaultCm')
			: (footMm / 10) * protocol.value('ankle.toePerFoot')
	const kneeCm = protocol.value('ankle.kneeCm')
	return lungeGeometryDeg(lungeCm, toeCm, kneeCm, protocol.value('ankle.shankCm')).value
}
/** A finding where distance and angle of one lunge cannot both be right. */
function pairFinding(
	visit: Visit,
	side: Side,
	ankle: AnkleSide,
	protocol: Protocol,
): Finding | undefined {
	const { lungeCm, lungeDeg } = ankle
	if (lungeCm === undefined || lungeDeg === undefined) return undefined
	const expectedDeg = expectedLungeDeg(visit, side, lungeCm, protocol)
	if (Math.abs(expectedDeg - lungeDeg) <= protocol.value('ankle.pairToleranceDeg')) return undefined
	return findingOf(state('ankle.pair', { side, lungeCm, lungeDeg, expectedDeg }), {
		side,
		level: 'caution',
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
		pairFinding(visit, side, ankle, protocol),
	].filter((finding) => finding !== undefined)
}
