/**
 * Posture room: foot posture index, first MTP joint, first ray, navicular drop, heel rises,
 * Beighton score, leg length.
 */

import type { PostureResult, PostureSide } from '../findings/assessment.ts'
import type { Finding, FindingSide, Level } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { beightonOf } from './beighton.ts'
import { postureChanges, riseFindings } from './changes.ts'
import { legLengthOf } from './leg-length.ts'
import { postureWorkings } from './workings.ts'

type Band = NonNullable<PostureSide['fpiBand']>
/** Upper edge (inclusive) of each band, lowest first; the last band has no edge. */
const schemes: Record<'raw' | 'trial', { edges: [ThresholdKey, Band][]; top: Band }> = {
	raw: {
		edges: [
			['posture.rawHighlySupinatedMax', 'highly-supinated'],
			['posture.rawSupinatedMax', 'supinated'],
			['posture.rawNormalMax', 'normal'],
			['posture.rawPronatedMax', 'pronated'],
		],
		top: 'highly-pronated',
	},
	trial: {
		edges: [
			['posture.trialSupinatedMax', 'supinated'],
			['posture.trialNormalMax', 'normal'],
		],
		top: 'pronated',
	},
}
const bandOf = (fpi: number, scheme: 'raw' | 'trial', protocol: Protocol): Band =>
	schemes[scheme].edges.find(([key]) => fpi <= protocol.value(key))?.[1] ?? schemes[scheme].top
const decades = ['20', '30', '40', '50', '60', '70'] as const

/**
 * Free, functional, structural (only with a painful joint recorded) or grey; undefined where not
 * measured. Degrees.
 */
function firstMtp(visit: Visit, side: Side, protocol: Protocol): PostureSide['firstMtp'] {
	const range = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing),
		jack = meanOf(visit.posture?.[side]?.jackTestDeg)
	if (range === undefined) return undefined
	const painful = (visit.conditions ?? []).some(
		(condition) =>
			(condition.condition === 'hallux-limitus' ||
				condition.condition === 'first-mtp-osteoarthritis') &&
			condition.status !== 'past' &&
			(condition.side === side || condition.side === 'both'),
	)
	if (range < protocol.value('posture.mtpStructuralDeg'))
		return painful ? 'structural-limit' : 'grey'
	if (jack !== undefined && jack < protocol.value('posture.jackDeg')) return 'functional-limit'
	if (range < protocol.value('posture.mtpFreeDeg')) return 'grey'
	return jack === undefined ? undefined : 'free'
}
/**
 * Interphalangeal dorsiflexion to expect from the first MTP range, degrees; absent where the line
 * falls below nought.
 */
function ipjOf(
	mtpDeg: number | undefined,
	protocol: Protocol,
): Pick<PostureSide, 'ipjEstimateDeg'> {
	if (mtpDeg === undefined) return {}
	const ipjEstimateDeg =
		protocol.value('posture.ipjIntercept') + protocol.value('posture.ipjSlope') * mtpDeg
	return ipjEstimateDeg < 0 ? {} : { ipjEstimateDeg }
}
const mtpWords = {
	'functional-limit': 'moves freely off the ground but is held when standing (functional limit)',
	'structural-limit':
		'is limited off the ground as well, with a painful joint recorded (structural limit)',
	grey: 'is in the grey zone: neither clearly free nor clearly limited',
} as const

/**
 * First-ray readings worth a word; the hand test has poor agreement between examiners (clinical
 * sources disagree on its use).
 */
const rayWords: Partial<Record<string, string>> = {
	plantarflexed: 'look for pressure under the first joint and keep studs clear of it',
	dorsiflexed: 'look for load moving to the second ray',
	hypermobile:
		'this counts as excessive only above {mm} mm of upward movement with symptoms (expert opinion)',
}

/** Posture findings of a visit. Crossing a band alone does not warrant an insert. */
export function posture(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): PostureResult {
	const scheme = protocol.file.fpiScheme ?? 'raw'
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const findings: Finding[] = []
	const say = (
		rule: string,
		side: FindingSide,
		level: Level,
		says: string,
		because: Because[],
		key: ThresholdKey,
		what: string,
	) =>
		findings.push({
			id: `posture.${rule}.${side}`,
			topic: 'posture',
			side,
			level,
			says,
			because,
			basis: protocol.basis(what, key),
		})
	const both = perSide((side): PostureSide => {
		const read = visit.posture?.[side]
		const fpi = read?.fpi6?.reduce((sum, one) => sum + one, 0),
			drop = meanOf(read?.navicularDropMm),
			mtp = firstMtp(visit, side, protocol)
		return {
			...(fpi === undefined ? {} : { fpi, fpiBand: bandOf(fpi, scheme, protocol) }),
			...(read?.firstRay ? { firstRay: read.firstRay } : {}),
			...(mtp ? { firstMtp: mtp } : {}),
			...(drop === undefined ? {} : { navicularDropMm: drop }),
			...(read?.heelRises === undefined ? {} : { heelRises: read.heelRises }),
			...ipjOf(meanOf(read?.firstMtpDegNonWeightBearing), protocol),
		}
	})
	const { left, right } = both
	const decade = decades[Math.min(Math.floor(age / 10) - 2, decades.length)]
	const normKey: ThresholdKey | undefined =
		age >= protocol.value('posture.riseNormFromYears') && decade
			? `posture.rise${visit.player.sex === 'male' ? 'Men' : 'Women'}${decade}`
			: undefined
	for (const side of bothSides) {
		const one = both[side]
		if (one.fpi !== undefined && one.fpiBand !== 'normal')
			say(
				'fpi',
				side,
				'note',
				`The ${side} foot posture index is ${one.fpi}: ${one.fpiBand!.replace('-', ' ')} ` +
					`(${scheme} scheme). This alone is no reason for an insert.`,
				[{ measure: 'FPI', value: one.fpi }],
				schemes[scheme].edges.find(([, band]) => band === one.fpiBand)?.[0] ??
					schemes[scheme].edges.at(-1)![0],
				`foot posture band, ${scheme} scheme`,
			)
		if (
			one.fpi !== undefined &&
			age < protocol.value('posture.adultFromYears') &&
			one.fpi >= protocol.value('posture.minorP85')
		)
			say(
				'fpi-minor',
				side,
				'note',
				`A score of ${one.fpi} on the ${side} is ` +
					`${one.fpi === protocol.value('posture.minorP85') ? 'at' : 'above'} the upper limit ` +
					'found in children of 6 to 11 years. Children are often more pronated than adults.',
				[{ measure: 'FPI', value: one.fpi }],
				'posture.minorP85',
				'foot posture in minors',
			)
		if (one.firstMtp && one.firstMtp !== 'free') {
			const range = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing)!,
				jack = meanOf(visit.posture?.[side]?.jackTestDeg)
			say(
				'first-mtp',
				side,
				one.firstMtp === 'grey' ? 'note' : 'advise',
				`The ${side} big toe joint ${mtpWords[one.firstMtp]}.`,
				[
					{ measure: 'off the ground', value: rounded(range, 1), unit: 'deg' },
					...(jack === undefined
						? []
						: [{ measure: 'standing', value: rounded(jack, 1), unit: 'deg' }]),
				],
				one.firstMtp === 'functional-limit'
					? 'posture.jackDeg'
					: one.firstMtp === 'grey' && range >= protocol.value('posture.mtpStructuralDeg')
						? 'posture.mtpFreeDeg'
						: 'posture.mtpStructuralDeg',
				'first MTP joint',
			)
		}
		const ray = one.firstRay === undefined ? undefined : rayWords[one.firstRay]
		if (ray)
			findings.push({
				id: `posture.first-ray.${side}`,
				topic: 'posture',
				side,
				level: 'note',
				says:
					`The ${side} first ray is ${one.firstRay}: ` +
					`${ray.replace('{mm}', String(protocol.value('posture.firstRayExcessMm')))}. The ` +
					'hand test has poor agreement between examiners.',
				because: [{ measure: 'first ray', value: one.firstRay! }],
				basis:
					one.firstRay === 'hypermobile'
						? protocol.basis('first ray, hypermobile', 'posture.firstRayExcessMm')
						: {
								rule: `first ray, ${one.firstRay}`,
								source: 'common practice, no source',
								strength: 'practice',
							},
			})
		if (
			one.fpi !== undefined &&
			visit.player.sex === 'male' &&
			age < protocol.value('posture.adultFromYears') &&
			one.fpi < protocol.value('posture.futsalLowFpi')
		)
			say(
				'fpi-low',
				side,
				'note',
				`A foot posture index below ${protocol.value('posture.futsalLowFpi')} (${side}: ` +
					`${one.fpi}) has been associated with more overuse trouble of foot and ankle in one ` +
					'group of futsal boys.',
				[{ measure: 'FPI', value: one.fpi }],
				'posture.futsalLowFpi',
				'low foot posture index in boys',
			)
		if (
			one.navicularDropMm !== undefined &&
			one.navicularDropMm > protocol.value('posture.navicularDropMm')
		)
			say(
				'navicular-drop',
				side,
				'note',
				`The ${side} navicular drops ${rounded(one.navicularDropMm, 1)} mm, above the ` +
					`${protocol.value('posture.navicularDropMm')} mm limit in use. Published limits and ` +
					'repeat readings vary widely.',
				[{ measure: 'navicular drop', value: rounded(one.navicularDropMm, 1), unit: 'mm' }],
				'posture.navicularDropMm',
				'navicular drop',
			)
		if (normKey && one.heelRises !== undefined && one.heelRises < protocol.value(normKey))
			say(
				'heel-rises',
				side,
				'note',
				`The ${side} leg made ${one.heelRises} heel rises; the published figure for this age ` +
					`and sex is ${protocol.value(normKey)}.`,
				[{ measure: 'heel rises', value: one.heelRises }],
				normKey,
				'heel rises for age',
			)
	}
	if (left.fpi !== undefined && right.fpi !== undefined) {
		const gap = Math.abs(left.fpi - right.fpi),
			severe = gap > protocol.value('posture.asymmetrySevere')
		if (gap > protocol.value('posture.asymmetryNormal'))
			say(
				'fpi-asymmetry',
				'both',
				severe ? 'advise' : 'note',
				`The foot posture scores differ by ${gap} points: ` +
					`${severe ? 'severe asymmetry' : 'asymmetry'}.`,
				[
					{ measure: 'left FPI', value: left.fpi },
					{ measure: 'right FPI', value: right.fpi },
				],
				severe ? 'posture.asymmetrySevere' : 'posture.asymmetryNormal',
				'foot posture asymmetry',
			)
	}
	if (left.heelRises !== undefined && right.heelRises !== undefined) {
		const most = Math.max(left.heelRises, right.heelRises),
			gap = most === 0 ? 0 : (Math.abs(left.heelRises - right.heelRises) / most) * 100
		if (gap >= protocol.value('posture.riseGapPercent'))
			say(
				'heel-rise-gap',
				'both',
				'advise',
				`The legs differ by ${rounded(gap, 0)} % in heel rises. A change of fewer than ` +
					`${Math.ceil(protocol.value('posture.riseChange'))} rises between days is within error.`,
				[
					{ measure: 'left', value: left.heelRises },
					{ measure: 'right', value: right.heelRises },
				],
				'posture.riseGapPercent',
				'heel-rise difference',
			)
	}
	const beighton = beightonOf(visit, protocol, findings),
		legLength = legLengthOf(visit, protocol, findings)
	const changes = postureChanges(visit, earlier, protocol)
	findings.push(...riseFindings(changes, protocol))
	const result = {
		left,
		right,
		fpiScheme: scheme,
		...(beighton ? { beighton } : {}),
		...(legLength ? { legLength } : {}),
		changes,
		findings,
	}
	return { ...result, workings: postureWorkings(visit, result, normKey, protocol) }
}
