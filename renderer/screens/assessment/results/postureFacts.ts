/** The answer of the posture: the index on its bands, and each reading against its limit. Pure. */

import { isMinor } from '../../../../shared/engine/facts/age.ts'
import type {
	Assessment,
	LegLength,
	PostureSide,
} from '../../../../shared/engine/findings/assessment.ts'
import { fpiBandOf } from '../../../../shared/engine/posture/foot-posture.ts'
import { riseNormKey } from '../../../../shared/engine/posture/heel-rises.ts'
import type { Protocol } from '../../../../shared/engine/protocol/protocol.ts'
import { postureMeasures } from '../../../../shared/engine/visit/measures/posture.table.ts'
import { bothSides, meanOf } from '../../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import type { Side, Visit } from '../../../../shared/engine/visit/visit.ts'
import { amount, number } from '../../../../shared/engine/words/en/format.ts'
import { unitShown } from '../../../parts/units.ts'
import type { Strip, StripZone } from './strip.ts'

/** The sum of six items of -2 to 2. */
const [least, most] = [-12, 12] as const
const shortBands: Readonly<Record<NonNullable<PostureSide['fpiBand']>, string>> = {
	'highly-supinated': '',
	supinated: 'supinated',
	normal: 'normal',
	pronated: 'pronated',
	'highly-pronated': '',
}
/**
 * The bands of the scheme in force: each begins half a point below its first whole score.
 * @internal
 */
export function indexZones(protocol: Protocol): StripZone[] {
	const zones: StripZone[] = []
	for (let score: number = least; score <= most; score++) {
		const band = fpiBandOf(score, protocol)
		const last = zones.at(-1)
		const name = shortBands[band]
		if (last?.name === name && last.lit === (band === 'normal')) last.to = score + 0.5
		else zones.push({ from: score - 0.5, to: score + 0.5, name, lit: band === 'normal' })
	}
	return zones
}
/** The index of both feet on its scale; undefined where neither was scored. */
export function indexStrip(
	{ posture }: Pick<Assessment, 'posture'>,
	visit: Visit,
	protocol: Protocol,
): Strip | undefined {
	if (posture.left.fpi === undefined && posture.right.fpi === undefined) return undefined
	const minor = isMinor(visit, protocol)
	const limit = protocol.value('posture.minorP85')
	return {
		key: 'fpi',
		title: 'Foot posture index, sum of six',
		aside: `${posture.fpiScheme} bands`,
		low: least - 0.5,
		high: most + 0.5,
		zones: indexZones(protocol),
		limits: minor ? [{ value: limit }] : [],
		lanes: bothSides.map((side) => {
			const { fpi } = posture[side]
			return fpi === undefined
				? { name: side, says: 'not scored', marks: [] }
				: { name: side, says: number(fpi), marks: [{ value: fpi, filled: true }] }
		}),
		note:
			`from ${least} to ${most}` +
			(minor ? `; line: ${limit}, upper limit found in children of 6 to 11 years` : ''),
	}
}

/** How a reading lies to its limit. */
type Verdict = 'beyond' | 'within' | 'unjudged'
export interface PostureCell {
	/** The reading, with the word that tells what lies beyond; empty where it was not taken. */
	says: string
	verdict: Verdict
}
export interface PostureRow {
	key: string
	name: string
	left: PostureCell
	right: PostureCell
	/** What it is held against. */
	limit: string
}
interface RowOf {
	key: keyof typeof postureMeasures
	/** The reading of a side; undefined where it was not taken. */
	value: (side: Side) => number | undefined
	judge: (value: number, side: Side) => Verdict
	limit: string
}
const asides: Readonly<Record<Verdict, string>> = {
	beyond: ', beyond',
	within: '',
	unjudged: ', not judged',
}
const notTaken: PostureCell = { says: '', verdict: 'unjudged' }
const beyond = (is: boolean): Verdict => (is ? 'beyond' : 'within')
function numberRow({ key, value, judge, limit }: RowOf): PostureRow {
	const measure = postureMeasures[key]
	const unit = 'unit' in measure ? unitShown(measure.unit) : ''
	const cell = (side: Side): PostureCell => {
		const read = value(side)
		if (read === undefined) return notTaken
		const verdict = judge(read, side)
		return { says: `${number(read)}${asides[verdict]}`, verdict }
	}
	return {
		key,
		name:
			unit && unit !== measure.name.split(' ').at(-1) ? `${measure.label}, ${unit}` : measure.label,
		left: cell('left'),
		right: cell('right'),
		limit,
	}
}
function rayRow({ posture }: Pick<Assessment, 'posture'>): PostureRow {
	const cell = (side: Side): PostureCell => {
		const ray = posture[side].firstRay
		return ray === undefined
			? notTaken
			: { says: termWords(ray), verdict: beyond(ray !== 'neutral') }
	}
	const { label } = postureMeasures.firstRay
	return {
		key: 'firstRay',
		name: label,
		left: cell('left'),
		right: cell('right'),
		limit: 'neutral',
	}
}
/** What heel rises are held against: a median is no limit, and is only said. */
function risesLimit(visit: Visit, protocol: Protocol): string {
	const key = riseNormKey(visit, protocol)
	const change = protocol.value('posture.riseChange')
	const between = `differ beyond error from ${number(Math.ceil(change), 0)}`
	return key === undefined ? between : `median of age ${protocol.value(key)}; ${between}`
}
const risesCodes = ['posture.heel-rises', 'posture.heel-rises-again', 'posture.heel-rise-gap']
/** Whether the room found one of these of a side. */
const saysOf = (
	{ posture }: Pick<Assessment, 'posture'>,
	side: Side,
	codes: readonly string[],
): boolean =>
	posture.findings.some(
		({ code, params }) => codes.includes(code) && [params.side, params.weaker].includes(side),
	)
/**
 * Readings that were taken, those beyond their limit first.
 */
export function postureRows(
	assessment: Pick<Assessment, 'posture' | 'ankle'>,
	visit: Visit,
	protocol: Protocol,
): PostureRow[] {
	const { posture, ankle } = assessment
	const drop = protocol.value('posture.navicularDropMm')
	const free = protocol.value('posture.mtpFreeDeg')
	const structural = protocol.value('posture.mtpStructuralDeg')
	const jack = protocol.value('posture.jackDeg')
	// a limb that is only recorded is judged by nothing under load
	const unlessRecorded = (side: Side, is: boolean): Verdict =>
		ankle[side].recordedOnly ? 'unjudged' : beyond(is)
	const of = (key: 'firstMtpDegNonWeightBearing' | 'jackTestDeg') => (side: Side) =>
		meanOf(visit.posture?.[side]?.[key])
	const rows = [
		numberRow({
			key: 'navicularDropMm',
			value: (side) => posture[side].navicularDropMm,
			judge: (value) => beyond(value > drop),
			limit: `${number(drop)} or less`,
		}),
		rayRow(assessment),
		numberRow({
			key: 'firstMtpDegNonWeightBearing',
			value: of('firstMtpDegNonWeightBearing'),
			judge: (value) => beyond(value < free),
			limit: `free from ${number(free)}; stiff below ${number(structural)}`,
		}),
		numberRow({
			key: 'jackTestDeg',
			value: of('jackTestDeg'),
			judge: (value, side) => unlessRecorded(side, value < jack),
			limit: `${number(jack)} or more`,
		}),
		numberRow({
			key: 'heelRises',
			value: (side) => posture[side].heelRises,
			judge: (_, side) => unlessRecorded(side, saysOf(assessment, side, risesCodes)),
			limit: risesLimit(visit, protocol),
		}),
	].filter(({ left, right }) => left !== notTaken || right !== notTaken)
	const first = ({ left, right }: PostureRow): boolean =>
		left.verdict === 'beyond' || right.verdict === 'beyond'
	return [...rows.filter(first), ...rows.filter((row) => !first(row))]
}

/** The band of a foot, large. */
export const indexWords = ({ fpiBand }: PostureSide): string =>
	fpiBand === undefined ? 'Not scored' : termWords(fpiBand)
const toeWords: Readonly<Record<NonNullable<PostureSide['firstMtp']>, string>> = {
	free: 'Big toe free',
	'functional-limit': 'Big toe limited under load',
	'structural-limit': 'Big toe stiff',
	grey: 'Big toe between free and stiff',
}
export const toeLine = ({ firstMtp }: PostureSide): string =>
	firstMtp === undefined ? '' : toeWords[firstMtp]

const legActions: Readonly<Record<LegLength['action'], string>> = {
	'record-only': 'below the error of the test: recorded only',
	'only-if-symptomatic': 'corrected only with symptoms',
	consider: 'a correction can be considered',
	refer: 'refer',
}
/** 'Leg length: left 8 mm shorter, corrected only with symptoms'; empty where it was not recorded. */
export function legWords(legLength: LegLength | undefined): string {
	if (!legLength) return ''
	const { differenceMm, shorter, action, correctionMm } = legLength
	if (differenceMm === 0) return 'Leg length: no difference recorded'
	const which = shorter === undefined ? 'shorter side not recorded' : `${shorter} shorter`
	const correct = correctionMm
		? `; ${number(correctionMm.min)} to ${number(correctionMm.max)} mm to begin with`
		: ''
	return `Leg length: ${amount(differenceMm, 'mm')}, ${which}: ${legActions[action]}${correct}`
}
