/** Ankle room: range, symmetry, what stops the motion, and an editable heel-raise estimate. */
import type { AnkleResult, AnkleSide } from '../findings/assessment.ts'
import { type Finding, type FindingSide, idPart, type Level } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, otherSide, perSide, rounded } from '../visit/sides.ts'
import type { Pair, Side, Visit } from '../visit/visit.ts'
import { changeFindings, lungeChanges } from './changes.ts'
import { ballLengthOf, pairPitches } from './pairs.ts'
import { lungeGeometryDeg } from './pitch.ts'
import { proposeRaise } from './raise.ts'
import { ankleWorkings } from './workings.ts'

const frontBlocks = ['front-pinch', 'hard-stop']
const posteriorFeels = ['calf-stretch', 'springy-back']
const trainers = ['road', 'trail']
const deg = (measure: string, value: number): Because => ({
	measure,
	value: rounded(value, 1),
	unit: 'deg',
})
const cm = (measure: string, value: number): Because => ({
	measure,
	value: rounded(value, 1),
	unit: 'cm',
})
const mm = (measure: string, value: number): Because => ({
	measure,
	value: rounded(value, 1),
	unit: 'mm',
})
const name = (pair: Pair): string => pair.name ?? pair.id

function sideOf(visit: Visit, protocol: Protocol, side: Side): AnkleSide {
	const read = visit.ankles?.[side]
	const lungeCm = meanOf(read?.lungeCm),
		lungeDeg = meanOf(read?.lungeDeg),
		kneeStraightDeg = meanOf(read?.kneeStraightDeg),
		kneeBentDeg = meanOf(read?.kneeBentDeg)
	const band: AnkleSide['band'] =
		lungeDeg !== undefined
			? lungeDeg < protocol.value('ankle.restrictedDeg')
				? 'restricted'
				: 'adequate'
			: lungeCm !== undefined
				? lungeCm < protocol.value('ankle.restrictedCm')
					? 'restricted'
					: 'adequate'
				: 'unknown'
	const gap =
		kneeStraightDeg !== undefined && kneeBentDeg !== undefined
			? rounded(kneeBentDeg - kneeStraightDeg, 4)
			: undefined
	const feel = read?.endFeel ?? ''
	const limits: [AnkleSide['limitedBy'], boolean][] = [
		['none', band === 'adequate'],
		['anterior-block', frontBlocks.includes(feel)],
		['unknown', band === 'unknown' || feel === 'joint-pain'],
		['gastrocnemius', gap !== undefined && gap >= protocol.value('ankle.gastrocnemiusGapDeg')],
		['soleus-or-capsule', gap !== undefined || posteriorFeels.includes(feel)],
	]
	return {
		...(lungeCm === undefined ? {} : { lungeCm }),
		...(lungeDeg === undefined ? {} : { lungeDeg }),
		...(kneeStraightDeg === undefined ? {} : { kneeStraightDeg }),
		...(kneeBentDeg === undefined ? {} : { kneeBentDeg }),
		band,
		limitedBy: limits.find(([, holds]) => holds)?.[0] ?? 'unknown',
	}
}
const limitWords: Partial<Record<AnkleSide['limitedBy'], string>> = {
	gastrocnemius: 'The gap between knee bent and knee straight points to the gastrocnemius.',
	'soleus-or-capsule':
		'The pattern points to the soleus or the joint capsule, not to the gastrocnemius alone.',
	'anterior-block':
		'The end feel points to a block at the front of the ankle: do not stretch into pain, and ' +
		'consider imaging.',
}

const frontEndFeel: Basis = {
	rule: 'front end feel',
	source: 'end feel in the clinic: expert opinion and common practice, no source',
	strength: 'expert',
}

/** Ankle findings of a visit; cm and degrees are never converted into each other. */
export function ankle(visit: Visit, earlier: readonly Visit[], protocol: Protocol): AnkleResult {
	const both = perSide((side) => sideOf(visit, protocol, side))
	const { left, right } = both
	const findings: Finding[] = []
	const say = (
		rule: string,
		side: FindingSide,
		level: Level,
		says: string,
		because: Because[],
		basis: Basis | ThresholdKey,
		what = rule,
	) =>
		findings.push({
			id: `ankle.${rule}.${side}`,
			topic: 'ankle',
			side,
			level,
			says,
			because,
			basis: typeof basis === 'string' ? protocol.basis(what, basis) : basis,
		})

	for (const side of bothSides) {
		const one = both[side]
		const numbers = [
			...(one.lungeDeg === undefined ? [] : [deg('lunge angle', one.lungeDeg)]),
			...(one.lungeCm === undefined ? [] : [cm('knee to wall', one.lungeCm)]),
			...(one.kneeStraightDeg === undefined ? [] : [deg('knee straight', one.kneeStraightDeg)]),
			...(one.kneeBentDeg === undefined ? [] : [deg('knee bent', one.kneeBentDeg)]),
		]
		const feel = visit.ankles?.[side]?.endFeel
		if (feel) numbers.push({ measure: 'end feel', value: feel })
		if (one.band === 'restricted')
			say(
				'restricted',
				side,
				'advise',
				`The ${side} ankle bends less than the cut-off in ` +
					`use.${limitWords[one.limitedBy] ? ` ${limitWords[one.limitedBy]}` : ''}`,
				numbers,
				one.lungeDeg === undefined ? 'ankle.restrictedCm' : 'ankle.restrictedDeg',
				'restricted ankle',
			)
		else if (feel && frontBlocks.includes(feel))
			say(
				'front-end-feel',
				side,
				'caution',
				`The ${side} ankle stops at the ` +
					`front${one.band === 'adequate' ? ' although its range is adequate' : ''}: do not ` +
					'stretch into pain.',
				numbers,
				frontEndFeel,
			)
		if (one.lungeCm !== undefined && one.lungeDeg !== undefined) {
			const footMm = meanOf(visit.feet?.[side]?.heelToToeMm)
			const toeCm =
				footMm === undefined
					? protocol.value('ankle.toeDefaultCm')
					: (footMm / 10) * protocol.value('ankle.toePerFoot')
			const expected = lungeGeometryDeg(
				one.lungeCm,
				toeCm,
				protocol.value('ankle.kneeCm'),
				protocol.value('ankle.shankCm'),
			)
			if (Math.abs(expected - one.lungeDeg) > protocol.value('ankle.pairToleranceDeg'))
				say(
					'pair',
					side,
					'caution',
					`The ${side} lunge readings do not fit each other: ${rounded(one.lungeCm, 1)} cm ` +
						`would be near ${rounded(expected, 1)} degrees, ${rounded(one.lungeDeg, 1)} was ` +
						'entered. Check both.',
					[...numbers, deg('angle expected from geometry', expected)],
					'ankle.pairToleranceDeg',
					'plausible pair of lunge readings',
				)
		}
	}
	const gapOf = (a?: number, b?: number) =>
		a === undefined || b === undefined ? undefined : rounded(Math.abs(a - b), 4)
	const asymmetryCm = gapOf(left.lungeCm, right.lungeCm),
		asymmetryDeg = gapOf(left.lungeDeg, right.lungeDeg)
	const reaches = (value: number | undefined, key: ThresholdKey) =>
		value !== undefined && value >= protocol.value(key)
	const asymmetry: AnkleResult['asymmetry'] =
		asymmetryCm === undefined && asymmetryDeg === undefined
			? 'unknown'
			: reaches(asymmetryCm, 'ankle.asymmetryActCm') ||
					reaches(asymmetryDeg, 'ankle.asymmetryActDeg')
				? 'act'
				: reaches(asymmetryCm, 'ankle.asymmetryFlagCm')
					? 'flag'
					: 'none'
	if (asymmetry === 'flag' || asymmetry === 'act') {
		const key: ThresholdKey =
			asymmetry === 'flag'
				? 'ankle.asymmetryFlagCm'
				: reaches(asymmetryCm, 'ankle.asymmetryActCm')
					? 'ankle.asymmetryActCm'
					: 'ankle.asymmetryActDeg'
		say(
			'asymmetry',
			'both',
			asymmetry === 'act' ? 'advise' : 'note',
			'The ankles ' +
				`differ${asymmetry === 'act' ? ' enough to look for a reason and to treat the stiffer side' : ' by more than measurement error: keep watching'}.`,
			[
				...(asymmetryCm === undefined ? [] : [cm('difference', asymmetryCm)]),
				...(asymmetryDeg === undefined ? [] : [deg('difference', asymmetryDeg)]),
			],
			key,
			'ankle asymmetry',
		)
	}
	const raise = proposeRaise(visit, both, protocol)
	if (raise) {
		const { left: l, right: r } = raise.heelRaiseMm
		const shorter: Side = visit.body?.shorterLeg ?? 'left'
		const where =
			l === r
				? `a ${l} mm heel raise in both shoes`
				: `a heel raise of ${raise.heelRaiseMm[shorter]} mm on the ${shorter} (shorter leg) and ` +
					`${raise.heelRaiseMm[otherSide(shorter)]} mm on the other side`
		say(
			'heel-raise',
			'both',
			'advise',
			`Estimate, for the clinician to edit: ${where}. ` +
				`${raise.oneSided ? 'The sides differ because a reason to correct the leg length is recorded. ' : ''}It ` +
				'does not treat the cause. Check heel hold in the ' +
				`boot.${raise.capped ? ' The rest of the correction would go on the outsole.' : ''}`,
			l === r ? [mm('heel raise', l)] : [mm('heel raise, left', l), mm('heel raise, right', r)],
			raise.key,
			raise.oneSided ? 'heel raise with leg-length correction' : 'heel raise to both feet',
		)
	}
	const footwear = visit.footwear ?? []
	footwear.forEach((pair, index) => {
		const lift = pair.heelLiftMm ?? 0,
			id = `lift-${idPart(pair.id, index)}`
		if (trainers.includes(pair.sole ?? '')) {
			if (lift > protocol.value('ankle.raiseTrainerMm'))
				say(
					id,
					'both',
					'caution',
					`The heel raise of ${lift} mm in ${name(pair)} is above ` +
						`${protocol.value('ankle.raiseTrainerMm')} mm, the most tried in daily shoes: check ` +
						'heel hold.',
					[mm('heel raise inside', lift)],
					'ankle.raiseTrainerMm',
					'heel raise limit, trainers',
				)
			return
		}
		const over: ThresholdKey | undefined =
			lift > protocol.value('ankle.raiseStopMm')
				? 'ankle.raiseStopMm'
				: lift > protocol.value('ankle.raiseWarnMm')
					? 'ankle.raiseWarnMm'
					: undefined
		if (over)
			say(
				id,
				'both',
				over === 'ankle.raiseStopMm' ? 'stop' : 'caution',
				`The heel raise of ${lift} mm in ${name(pair)} is above the ${protocol.value(over)} mm ` +
					'limit in use: check heel hold.',
				[mm('heel raise inside', lift)],
				over,
				'heel raise limit',
			)
	})
	const pitches = pairPitches(visit, protocol),
		ballLength = ballLengthOf(visit, protocol)
	const at = (id: string) => footwear.findIndex((pair) => pair.id === id)
	for (const { from, to, changeDeg } of pitches) {
		if (changeDeg < protocol.value('ankle.demandDeg')) continue
		const a = footwear[at(from)]!,
			b = footwear[at(to)]!
		say(
			`demand-${idPart(from, at(from))}-${idPart(to, at(to))}`,
			'both',
			'note',
			`${name(b)} asks ${rounded(changeDeg, 1)} degrees more of the ankle than ${name(a)}.`,
			[
				mm(`offset and raise, ${name(a)}`, a.heelToForefootOffsetMm! + (a.heelLiftMm ?? 0)),
				mm(`offset and raise, ${name(b)}`, b.heelToForefootOffsetMm! + (b.heelLiftMm ?? 0)),
				mm('heel to ball', ballLength!),
			],
			'ankle.demandDeg',
			'change of demand between pairs',
		)
	}
	const changes = lungeChanges(visit, earlier, protocol)
	findings.push(...changeFindings(visit, changes, protocol))
	const result = {
		left,
		right,
		...(asymmetryCm === undefined ? {} : { asymmetryCm }),
		...(asymmetryDeg === undefined ? {} : { asymmetryDeg }),
		asymmetry,
		...(raise
			? { heelRaiseMm: raise.heelRaiseMm, ...(raise.offsetMm ? { offsetMm: raise.offsetMm } : {}) }
			: {}),
		pitches,
		changes,
		findings,
	}
	return { ...result, workings: ankleWorkings(visit, result, raise, protocol) }
}
