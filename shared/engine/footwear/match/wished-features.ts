/** Has it what is sought, and is it free of what is to be avoided? */
import type { MatchReason, StudDistance } from '../../findings/assessment.ts'
import type { JointName } from '../../visit/shelf.ts'
import type { Feature } from '../../visit/terms.ts'
import { state } from '../../words/statement.ts'
import { type Fitted, hasAvoided, hasFeature } from '../features.ts'
import { allRemovable } from '../studs.ts'
import { type Answer, noAnswers, penalty, reason, together } from './answer.ts'
import { depthMarginIn } from './depth.ts'
import type { Fitter, Trial } from './fitter.ts'
import type { StudsBySide } from './studs-and-joints.ts'
import { widthMarginIn } from './width.ts'
import type { Wish } from './wishes.ts'

/** What a feature to avoid is the opposite of: the two are told, and counted, in one line. */
const opposite: Partial<Record<Feature, Feature>> = {
	'low-heel': 'raised-heel',
	'firm-heel-counter': 'soft-heel-counter',
	'soft-heel-counter': 'firm-heel-counter',
	'flexible-forefoot': 'stiff-forefoot',
	'stiff-forefoot': 'flexible-forefoot',
	'bladed-studs': 'round-studs',
}
const studWishes: readonly Feature[] = [
	'stud-clear-of-first-joint',
	'stud-clear-of-fifth-metatarsal',
]
/** Soles are judged on the ground they are worn on: no boot has two. */
const ofTheGround: readonly Feature[] = [
	'soft-ground-sole',
	'firm-ground-sole',
	'artificial-ground-sole',
	'turf-sole',
	'indoor-sole',
]
const jointOf: Partial<Record<Feature, JointName>> = {
	'stud-clear-of-first-joint': 'first metatarsal head',
	'stud-clear-of-fifth-metatarsal': 'fifth metatarsal head',
}
/** A stud under a joint that comes out can be taken out: the model is one with changes. */
const isMended = (feature: Feature, { model, joints }: Fitted): boolean => {
	const under = joints.filter(({ joint }) => joint === jointOf[feature]).flatMap((at) => at.under)
	return under.length > 0 && allRemovable(model, under)
}
const mustHave = ({ feature, rules, because, basis }: Wish): MatchReason =>
	reason(`seek-${feature}`, state('match.must-have', { feature, rules }), because, basis)
/** The joints at risk where there are any, else all that can be placed. */
function jointsThatCount({ left = [], right = [] }: StudsBySide): StudDistance[] {
	const joints = [...left, ...right]
	const atRisk = joints.filter((joint) => joint.atRisk.length > 0)
	return atRisk.length > 0 ? atRisk : joints
}

/**
 * Width and depth wishes are already paid for by the margins, stud wishes by the distances.
 * @param studsPaid whether a stud under a joint at risk was already counted
 */
export function askFeatures(
	{ model, size }: Trial,
	studs: StudsBySide,
	studsPaid: boolean,
	fitter: Fitter,
): Answer {
	const { needs, limits, seek, avoid } = fitter
	const fitted: Fitted = {
		model,
		widthMarginMm: widthMarginIn(size, needs),
		depthMarginMm: depthMarginIn(model, needs),
		joints: jointsThatCount(studs),
	}
	const toAvoid = avoid.filter(
		({ feature }) => !ofTheGround.includes(feature) && hasAvoided(feature, fitted, limits) === true,
	)
	const answers = noAnswers()
	for (const wish of seek) {
		const has = hasFeature(wish.feature, fitted, limits)
		if (ofTheGround.includes(wish.feature)) continue
		if (has === undefined) answers.unknown.push(wish.feature)
		else if (has) answers.for.push(wish.has)
		else if (wish.strict && !isMended(wish.feature, fitted)) answers.stops.push(mustHave(wish))
		else if (!paidElsewhere(wish, toAvoid, studsPaid)) answers.against.push(wish.lacks)
	}
	return together([answers, ...toAvoid.map((wish) => avoided(wish, seek))])
}
const paidElsewhere = (wish: Wish, toAvoid: readonly Wish[], studsPaid: boolean): boolean =>
	wish.feature === 'wide-fitting' ||
	(studsPaid && studWishes.includes(wish.feature)) ||
	toAvoid.some(({ feature }) => opposite[feature] === wish.feature)
function avoided(wish: Wish, seek: readonly Wish[]): Answer {
	if (wish.strict)
		return {
			stops: [
				reason(
					`avoid-${wish.feature}`,
					state('match.must-avoid', { feature: wish.feature, rules: wish.rules }),
					wish.because,
					wish.basis,
				),
			],
		}
	const wanted = seek.find(({ feature }) => feature === opposite[wish.feature])
	if (wanted) return { against: [inPlaceOf(wish, wanted)] }
	const paid = wish.feature === 'wide-fitting' || wish.feature === 'narrow-fitting'
	return paid ? {} : { against: [wish.betterAvoided] }
}
const inPlaceOf = (wish: Wish, wanted: Wish): MatchReason =>
	penalty(
		`avoid-${wish.feature}`,
		state('match.in-place-of', {
			feature: wish.feature,
			sought: wanted.feature,
			rules: wanted.rules,
		}),
		wish.points + wanted.points,
		wanted.because,
		wanted.basis,
	)
