/**
 * The figure of each foot in one pair. What is for both heels is the same in both; the correction
 * of the leg length comes on top of it on the shorter side, and what is for both gives way first.
 * All heights mm.
 */
import type { PerSide, RaiseInFoot, RaiseInPair, WornVerdict } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { otherSide, perSide, rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import type { Aimed } from './aim.ts'
import type { RaisedPair } from './pairs.ts'
import type { RaiseReason } from './reasons.ts'

/** How the figure of a pair came about. */
export interface InPair {
	pair: RaisedPair
	entry: RaiseInPair
	/** For both heels before the limits; absent where an offset is needed and not known. */
	wantedMm?: number
	/** After the limits. */
	baseMm: number
	/** The reason that asked for most in this pair. */
	reason?: RaiseReason
	insideLimitMm: number
	pitchLimitMm: number
}
/** The most that may lie under the heel in a pair, and the most a heel may stand above the ball. */
function limitsOf({ roomy }: RaisedPair, forefootAtRisk: boolean, protocol: Protocol) {
	const boot = Math.min(protocol.value('ankle.raiseWarnMm'), protocol.value('ankle.raiseStopMm'))
	return {
		insideLimitMm: roomy ? protocol.value('ankle.raiseTrainerMm') : boot,
		pitchLimitMm: protocol.value(
			forefootAtRisk ? 'raise.heelAboveForefootAtRiskMm' : 'raise.heelAboveForefootMaxMm',
		),
	}
}
/** What a reason adds in a pair; undefined where it needs an offset that is not known. */
function addedBy({ mm, offsetShare }: RaiseReason, offsetMm: number | undefined) {
	if (offsetShare === 0) return mm
	return offsetMm === undefined ? undefined : Math.max(0, mm - offsetShare * offsetMm)
}
/** The reason that adds most in a pair; undefined where none can be worked out. */
function mostAdded(reasons: readonly RaiseReason[], offsetMm: number | undefined) {
	return reasons
		.flatMap((reason) => {
			const mm = addedBy(reason, offsetMm)
			return mm === undefined ? [] : [{ reason, mm }]
		})
		.sort((one, other) => other.mm - one.mm)[0]
}
interface Room {
	/** Under the heel inside, beside an insert that is worn. */
	insideMm: number
	/** Above the offset of the pair; without an end where that is not known. */
	pitchMm: number
	/** By the insert that lies there. */
	insertMm: PerSide<number>
}
function roomIn(
	pair: RaisedPair,
	{ insideLimitMm, pitchLimitMm }: ReturnType<typeof limitsOf>,
	protocol: Protocol,
): Room {
	const wornMm = pair.insertWorn ? protocol.value('raise.insertUnderHeelMm') : 0
	const insertMm = perSide((side) => (pair.insertMm ? (pair.insertMm[side] ?? 0) : wornMm))
	return {
		insertMm,
		insideMm: Math.max(0, insideLimitMm - Math.max(insertMm.left, insertMm.right)),
		pitchMm: pair.offsetMm === undefined ? Infinity : Math.max(0, pitchLimitMm - pair.offsetMm),
	}
}
/** What is given to both heels: held by the limits, none where too little is left of it. */
function baseOf(wantedMm: number, leftMm: number, protocol: Protocol): number {
	const mm = rounded(Math.min(wantedMm, leftMm), 1)
	return mm < protocol.value('raise.leastMm') ? 0 : mm
}
interface Given {
	baseMm: number
	correctionMm: number
	shorter?: Side
	outsole: boolean
}
function foot(
	side: Side,
	pair: RaisedPair,
	{ baseMm, correctionMm, shorter, outsole }: Given,
	insertMm: number,
	protocol: Protocol,
): RaiseInFoot {
	const ownMm = side === shorter ? correctionMm : 0
	const inside = insertMm + baseMm + (outsole ? 0 : ownMm)
	const ballMm = outsole ? ownMm * protocol.value('raise.outsoleBallShare') : 0
	const addMm = rounded(baseMm + ownMm, 1)
	const byInsert = pair.insertMm ? pair.insertMm[side] !== undefined : pair.insertWorn
	const insideBy = byInsert ? 'insert' : 'wedge'
	const madeBy = outsole && ownMm > 0 ? 'outsole' : insideBy
	return present({
		addMm,
		madeBy: addMm === 0 ? ('none' as const) : (madeBy as RaiseInFoot['madeBy']),
		outsoleMm: outsole && ownMm > 0 ? ownMm : undefined,
		addedUnderHeelMm: rounded(inside, 1),
		heelAboveForefootMm:
			pair.offsetMm === undefined ? undefined : rounded(pair.offsetMm + addMm - ballMm, 1),
	})
}
/** What becomes of a raise that is worn: left where it is what is given, or where nothing is asked. */
function wornVerdict(
	{ wornMm }: RaisedPair,
	{ baseMm, correctionMm }: Given,
	room: Room,
	{ aim, against }: Aimed,
	wantedMm: number | undefined,
	protocol: Protocol,
): WornVerdict {
	const fits = wornMm <= Math.min(room.insideMm, room.pitchMm)
	const hurtsBehind = against.some(({ why }) => why === 'back-of-ankle')
	if (!fits || hurtsBehind || correctionMm > 0) return 'take-out'
	if (aim.kind === 'none' || wantedMm === undefined) return 'leave'
	return Math.abs(wornMm - baseMm) <= protocol.value('raise.sameMm') ? 'leave' : 'take-out'
}
/** What a pair was asked for and got, for what is said of it. */
interface Outcome extends Given {
	asked: boolean
	wantedMm: number | undefined
	room: Room
	insideLimitMm: number
	pitchLimitMm: number
	forefootAtRisk: boolean
	leastMm: number
}
/** Limits that held back what was wanted for both heels. */
function limitsReached(outcome: Outcome): Statement[] {
	const { baseMm, correctionMm, outsole, room, insideLimitMm, pitchLimitMm } = outcome
	const wantedMm = rounded(outcome.wantedMm ?? 0, 1)
	if (wantedMm < outcome.leastMm) return []
	const besideMm = outsole ? 0 : correctionMm
	const given = { wantedMm, givenMm: baseMm }
	const insertMm = Math.max(room.insertMm.left, room.insertMm.right)
	const { forefootAtRisk } = outcome
	return [
		...(room.insideMm - besideMm < wantedMm
			? [state('raise.limit-inside', { ...given, limitMm: insideLimitMm, insertMm })]
			: []),
		...(room.pitchMm - besideMm < wantedMm
			? [state('raise.limit-pitch', { ...given, limitMm: pitchLimitMm, forefootAtRisk })]
			: []),
	]
}
/** What the offset of the pair has to do with the figure. */
function offsetSaid({ offsetMm, offsetFrom }: RaisedPair, outcome: Outcome): Statement[] {
	const { asked, wantedMm, leastMm } = outcome
	if (!asked) return []
	if (wantedMm === undefined) return [state('raise.measure-offset')]
	if (offsetMm === undefined) return []
	return [
		...(wantedMm < leastMm ? [state('raise.offset-enough', { offsetMm })] : []),
		...(offsetFrom === 'stated' ? [state('raise.offset-of-kind', { offsetMm })] : []),
	]
}
/** Why a pair has no figure, or less than was wanted. */
function limitsSaid(pair: RaisedPair, outcome: Outcome): Statement[] {
	const { baseMm, correctionMm, shorter, outsole } = outcome
	return [
		...offsetSaid(pair, outcome),
		...limitsReached(outcome),
		...(outsole && shorter
			? [state('raise.outsole', { side: shorter, mm: correctionMm, beside: baseMm > 0 })]
			: []),
		...(pair.heelSlips && baseMm + correctionMm > 0 ? [state('raise.heel-slips')] : []),
	]
}
/** A pair that is left off, or in which nothing was given: what it has by itself. */
function leftOff(pair: RaisedPair, limits: Pick<InPair, 'insideLimitMm' | 'pitchLimitMm'>): InPair {
	const { id, offsetMm, offsetFrom } = pair
	const none: RaiseInFoot = { addMm: 0, madeBy: 'none', addedUnderHeelMm: 0 }
	return {
		pair,
		wantedMm: 0,
		baseMm: 0,
		...limits,
		entry: present({
			pair: id,
			offsetMm,
			offsetFrom,
			...perSide(() => ({ ...none })),
			limits: [state('raise.left-off')],
		}),
	}
}
/**
 * What is given in a pair within its limits: the correction inside where it has room, unless painful
 * heels would be left without; then it goes on the outsole.
 */
function givenIn(
	{ aim, correctionMm, shorter }: Aimed,
	wantedMm: number | undefined,
	room: Room,
	protocol: Protocol,
): Given {
	const roomMm = Math.min(room.insideMm, room.pitchMm)
	const baseBeside = (insideMm: number) =>
		wantedMm === undefined ? 0 : baseOf(wantedMm, roomMm - insideMm, protocol)
	const inside = correctionMm > roomMm ? undefined : baseBeside(correctionMm)
	const alone = baseBeside(0)
	const isLeftWithout = inside === 0 && alone > 0 && aim.kind === 'pain'
	return present({
		baseMm: inside === undefined || isLeftWithout ? alone : inside,
		correctionMm,
		shorter,
		outsole: inside === undefined || isLeftWithout,
	})
}
/**
 * Under a heel whose shoe has no insert of its own lies as much as the insert of the other has, where
 * that is enough to be made.
 */
function levelMm(
	{ insertMm }: Room,
	side: Side,
	{ insertMm: made }: RaisedPair,
	protocol: Protocol,
): number {
	const ofOther = insertMm[otherSide(side)]
	const isBare = made !== undefined && made[side] === undefined
	return isBare && ofOther >= protocol.value('raise.leastMm') ? ofOther : insertMm[side]
}
/** The figure of each foot in one pair, with what became of what lies inside. */
export function raiseInPair(
	pair: RaisedPair,
	aimed: Aimed,
	forefootAtRisk: boolean,
	protocol: Protocol,
): InPair {
	const limits = limitsOf(pair, forefootAtRisk, protocol)
	if (pair.leftOff) return leftOff(pair, limits)
	const room = roomIn(pair, limits, protocol)
	const most = mostAdded(aimed.reasons, pair.offsetMm)
	// a forefoot that bears no more load needs the offset before anything is put under the heel
	const unmeasured = pair.offsetMm === undefined && forefootAtRisk
	const wantedMm = aimed.reasons.length === 0 ? 0 : unmeasured ? undefined : most?.mm
	const first = givenIn(aimed, wantedMm, room, protocol)
	const wears = pair.wornMm > 0
	const verdict = wears ? wornVerdict(pair, first, room, aimed, wantedMm, protocol) : 'leave'
	const stays = wears && verdict === 'leave'
	// what is left inside is the figure of the pair
	const given = stays && first.baseMm > 0 ? { ...first, baseMm: pair.wornMm } : first
	const alone = stays && first.baseMm === 0
	const besideMm = (side: Side) => levelMm(room, side, pair, protocol) + (alone ? pair.wornMm : 0)
	const feet = perSide((side) => foot(side, pair, given, besideMm(side), protocol))
	const said = limitsSaid(pair, {
		...given,
		...limits,
		asked: aimed.reasons.length > 0,
		wantedMm,
		room,
		forefootAtRisk,
		leastMm: protocol.value('raise.leastMm'),
	})
	const worn = { raiseMm: pair.wornMm, insert: pair.insertWorn, verdict }
	return present({
		pair,
		wantedMm,
		baseMm: given.baseMm,
		reason: most?.reason,
		...limits,
		entry: present({
			pair: pair.id,
			offsetMm: pair.offsetMm,
			offsetFrom: pair.offsetFrom,
			...(alone ? perSide((side) => withWorn(feet[side], pair.wornMm)) : feet),
			limits: said,
			worn: wears || pair.insertWorn ? worn : undefined,
		}),
	})
}
/** A raise that lies inside and is not asked for still lifts the heel. */
const withWorn = (given: RaiseInFoot, wornMm: number): RaiseInFoot =>
	given.heelAboveForefootMm === undefined
		? given
		: { ...given, heelAboveForefootMm: rounded(given.heelAboveForefootMm + wornMm, 1) }
