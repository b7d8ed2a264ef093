/** Ankle room: range, symmetry, what stops the motion, and an editable heel-raise estimate. */
import type { AnkleResult, AnkleSide } from '../assessment.ts'
import type { Basis, Because, Finding, FindingSide, Level } from '../finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Pair, Side, Visit } from '../visit/visit.ts'
import { lungeGeometryDeg, netPitchChange } from './pitch.ts'

const frontBlocks = ['front-pinch', 'hard-stop']
const posteriorFeels = ['calf-stretch', 'springy-back']
const trainers = ['road', 'trail']
const boots = ['soft-ground', 'firm-ground', 'artificial-ground', 'turf']
const deg = (measure: string, value: number): Because => ({ measure, value: rounded(value, 1), unit: 'deg' })
const cm = (measure: string, value: number): Because => ({ measure, value: rounded(value, 1), unit: 'cm' })
const mm = (measure: string, value: number): Because => ({ measure, value: rounded(value, 1), unit: 'mm' })
const name = (pair: Pair): string => pair.name ?? pair.id

function sideOf(visit: Visit, protocol: Protocol, side: Side): AnkleSide {
	const read = visit.ankles?.[side]
	const lungeCm = meanOf(read?.lungeCm), lungeDeg = meanOf(read?.lungeDeg), kneeStraightDeg = meanOf(read?.kneeStraightDeg), kneeBentDeg = meanOf(read?.kneeBentDeg)
	const band: AnkleSide['band'] = lungeDeg !== undefined ? (lungeDeg < protocol.value('ankle.restrictedDeg') ? 'restricted' : 'adequate')
		: lungeCm !== undefined ? (lungeCm < protocol.value('ankle.restrictedCm') ? 'restricted' : 'adequate') : 'unknown'
	const gap = kneeStraightDeg !== undefined && kneeBentDeg !== undefined ? rounded(kneeBentDeg - kneeStraightDeg, 4) : undefined
	const feel = read?.endFeel ?? ''
	const limits: [AnkleSide['limitedBy'], boolean][] = [
		['none', band === 'adequate'],
		['anterior-block', frontBlocks.includes(feel)],
		['unknown', band === 'unknown' || feel === 'joint-pain'],
		['gastrocnemius', gap !== undefined && gap >= protocol.value('ankle.gastrocnemiusGapDeg')],
		['soleus-or-capsule', gap !== undefined || posteriorFeels.includes(feel)],
	]
	return {
		...(lungeCm === undefined ? {} : { lungeCm }), ...(lungeDeg === undefined ? {} : { lungeDeg }),
		...(kneeStraightDeg === undefined ? {} : { kneeStraightDeg }), ...(kneeBentDeg === undefined ? {} : { kneeBentDeg }),
		band, limitedBy: limits.find(([, holds]) => holds)?.[0] ?? 'unknown',
	}
}
const limitWords: Partial<Record<AnkleSide['limitedBy'], string>> = {
	gastrocnemius: 'The gap between knee bent and knee straight points to the gastrocnemius.',
	'soleus-or-capsule': 'The pattern points to the soleus or the joint capsule, not to the gastrocnemius alone.',
	'anterior-block': 'The end feel points to a block at the front of the ankle: do not stretch into pain, and consider imaging.',
}

const frontEndFeel: Basis = { rule: 'front end feel', source: 'end feel in the clinic: expert opinion and common practice, no source', strength: 'expert' }

/** Ankle findings of a visit; cm and degrees are never converted into each other. */
export function ankle(visit: Visit, protocol: Protocol): AnkleResult {
	const both = perSide((side) => sideOf(visit, protocol, side))
	const { left, right } = both
	const findings: Finding[] = []
	const say = (rule: string, side: FindingSide, level: Level, says: string, because: Because[], basis: Basis | ThresholdKey, what = rule) =>
		findings.push({ id: `ankle.${rule}.${side}`, topic: 'ankle', side, level, says, because, basis: typeof basis === 'string' ? protocol.basis(what, basis) : basis })
	const lengths = (field: 'heelToToeMm' | 'heelToBallMm') => bothSides.flatMap((side) => meanOf(visit.feet?.[side]?.[field]) ?? [])

	for (const side of bothSides) {
		const one = both[side]
		const numbers = [...(one.lungeDeg === undefined ? [] : [deg('lunge angle', one.lungeDeg)]), ...(one.lungeCm === undefined ? [] : [cm('knee to wall', one.lungeCm)]),
			...(one.kneeStraightDeg === undefined ? [] : [deg('knee straight', one.kneeStraightDeg)]), ...(one.kneeBentDeg === undefined ? [] : [deg('knee bent', one.kneeBentDeg)])]
		const feel = visit.ankles?.[side]?.endFeel
		if (feel) numbers.push({ measure: 'end feel', value: feel })
		if (one.band === 'restricted') say('restricted', side, 'advise', `The ${side} ankle bends less than the cut-off in use.${limitWords[one.limitedBy] ? ` ${limitWords[one.limitedBy]}` : ''}`, numbers, one.lungeDeg === undefined ? 'ankle.restrictedCm' : 'ankle.restrictedDeg', 'restricted ankle')
		else if (feel && frontBlocks.includes(feel)) say('front-end-feel', side, 'caution', `The ${side} ankle stops at the front${one.band === 'adequate' ? ' although its range is adequate' : ''}: do not stretch into pain.`, numbers, frontEndFeel)
		if (one.lungeCm !== undefined && one.lungeDeg !== undefined) {
			const footMm = meanOf(visit.feet?.[side]?.heelToToeMm)
			const toeCm = footMm === undefined ? protocol.value('ankle.toeDefaultCm') : (footMm / 10) * protocol.value('ankle.toePerFoot')
			const expected = lungeGeometryDeg(one.lungeCm, toeCm, protocol.value('ankle.kneeCm'), protocol.value('ankle.shankCm'))
			if (Math.abs(expected - one.lungeDeg) > protocol.value('ankle.pairToleranceDeg')) say('pair', side, 'caution', `The ${side} lunge readings do not fit each other: ${rounded(one.lungeCm, 1)} cm would be near ${rounded(expected, 1)} degrees, ${rounded(one.lungeDeg, 1)} was entered. Check both.`, [...numbers, deg('angle expected from geometry', expected)], 'ankle.pairToleranceDeg', 'plausible pair of lunge readings')
		}
	}
	const gapOf = (a?: number, b?: number) => (a === undefined || b === undefined ? undefined : rounded(Math.abs(a - b), 4))
	const asymmetryCm = gapOf(left.lungeCm, right.lungeCm), asymmetryDeg = gapOf(left.lungeDeg, right.lungeDeg)
	const reaches = (value: number | undefined, key: ThresholdKey) => value !== undefined && value >= protocol.value(key)
	const asymmetry: AnkleResult['asymmetry'] = asymmetryCm === undefined && asymmetryDeg === undefined ? 'unknown'
		: reaches(asymmetryCm, 'ankle.asymmetryActCm') || reaches(asymmetryDeg, 'ankle.asymmetryActDeg') ? 'act' : reaches(asymmetryCm, 'ankle.asymmetryFlagCm') ? 'flag' : 'none'
	if (asymmetry === 'flag' || asymmetry === 'act') {
		const key: ThresholdKey = asymmetry === 'flag' ? 'ankle.asymmetryFlagCm' : reaches(asymmetryCm, 'ankle.asymmetryActCm') ? 'ankle.asymmetryActCm' : 'ankle.asymmetryActDeg'
		say('asymmetry', 'both', asymmetry === 'act' ? 'advise' : 'note', `The ankles differ${asymmetry === 'act' ? ' enough to look for a reason and to treat the stiffer side' : ' by more than measurement error: keep watching'}.`, [...(asymmetryCm === undefined ? [] : [cm('difference', asymmetryCm)]), ...(asymmetryDeg === undefined ? [] : [deg('difference', asymmetryDeg)])], key, 'ankle asymmetry')
	}
	const reasons: [ThresholdKey, boolean][] = [
		['ankle.raiseBlockMm', bothSides.some((side) => both[side].limitedBy === 'anterior-block')],
		['ankle.raiseApophysitisMm', (visit.conditions ?? []).some((one) => one.condition === 'calcaneal-apophysitis' && one.status === 'current')],
		['ankle.raiseRestrictedMm', bothSides.some((side) => both[side].band === 'restricted')],
	]
	const held = reasons.flatMap(([key, holds]) => (holds ? [key] : [])).sort((a, b) => protocol.value(b) - protocol.value(a))
	let raise: Pick<AnkleResult, 'heelRaiseMm' | 'offsetMm'> = {}
	if (held[0]) {
		const height = Math.min(protocol.value(held[0]), protocol.value('ankle.raiseWarnMm'), protocol.value('ankle.raiseStopMm'))
		raise = { heelRaiseMm: { left: height, right: height }, offsetMm: { min: height, max: Math.max(height, protocol.value('ankle.offsetMaxMm')) } }
		say('heel-raise', 'both', 'advise', `Estimate, for the clinician to edit: a ${height} mm heel raise in both shoes. It does not treat the cause. Check heel hold in the boot.`, [mm('heel raise', height)], held[0], 'heel raise to both feet')
	}
	const footwear = visit.footwear ?? []
	for (const pair of footwear) {
		const lift = pair.heelLiftMm ?? 0
		const over: ThresholdKey | undefined = lift > protocol.value('ankle.raiseStopMm') ? 'ankle.raiseStopMm' : lift > protocol.value('ankle.raiseWarnMm') ? 'ankle.raiseWarnMm' : undefined
		if (over) say(`lift-${pair.id}`, 'both', over === 'ankle.raiseStopMm' ? 'stop' : 'caution', `The heel raise of ${lift} mm in ${name(pair)} is above the ${protocol.value(over)} mm limit in use: check heel hold.`, [mm('heel raise inside', lift)], over, 'heel raise limit')
	}
	const ball = meanOf(lengths('heelToBallMm')), toe = meanOf(lengths('heelToToeMm'))
	const ballLength = ball ?? (toe === undefined ? undefined : toe * protocol.value('ankle.ballPerFoot'))
	const known = (soles: string[]) => footwear.filter((pair) => pair.heelToForefootOffsetMm !== undefined && soles.includes(pair.sole ?? ''))
	if (ballLength !== undefined) for (const a of known(trainers)) for (const b of known(boots)) {
		const change = netPitchChange({ offsetMm: a.heelToForefootOffsetMm!, liftMm: a.heelLiftMm ?? 0 }, { offsetMm: b.heelToForefootOffsetMm!, liftMm: b.heelLiftMm ?? 0 }, ballLength)
		if (Math.abs(change) < protocol.value('ankle.demandDeg')) continue
		say(`demand-${a.id}-${b.id}`, 'both', 'note', `${name(b)} asks ${rounded(Math.abs(change), 1)} degrees ${change > 0 ? 'more' : 'less'} of the ankle than ${name(a)}.`, [mm(`offset and raise, ${name(a)}`, a.heelToForefootOffsetMm! + (a.heelLiftMm ?? 0)), mm(`offset and raise, ${name(b)}`, b.heelToForefootOffsetMm! + (b.heelLiftMm ?? 0)), mm('heel to ball', ballLength)], 'ankle.demandDeg', 'change of demand between pairs')
	}
	return { left, right, ...(asymmetryCm === undefined ? {} : { asymmetryCm }), ...(asymmetryDeg === undefined ? {} : { asymmetryDeg }), asymmetry, ...raise, findings }
}
