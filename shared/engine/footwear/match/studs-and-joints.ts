/** Do its studs stand clear of the joints at risk? */

import { jointNames } from '../../facts/joint-risks.table.ts'
import type { StudDistance } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import type { JointName } from '../../visit/shelf.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { allRemovable, studDistances } from '../studs.ts'
import { type Answer, change, mm, penalty, reason, together } from './answer.ts'
import type { Fitter, Trial } from './fitter.ts'

/** The distances of a side whose joints can be placed. */
export interface StudsBySide {
	left?: StudDistance[]
	right?: StudDistance[]
}
/** Empty for a sole without studs, and for a side not measured. */
export function studsUnder({ model, size }: Trial, { needs, value }: Fitter): StudsBySide {
	if (model.studs === undefined || model.studs.length === 0) return {}
	const distances = (side: Side): StudDistance[] | undefined => {
		const joints = needs.joints[side]
		return (
			joints &&
			studDistances(
				model,
				size,
				joints,
				needs.risks[side],
				value('footwear.underJointMm'),
				value('footwear.studLeastMm'),
			)
		)
	}
	return present({ left: distances('left'), right: distances('right') })
}
/** A joint at risk, on a side that could be measured. */
interface JointAtRisk extends StudDistance {
	side: Side
}
const jointsAtRisk = (joint: JointName, studs: StudsBySide): JointAtRisk[] =>
	bothSides.flatMap((side) =>
		(studs[side] ?? [])
			.filter((distance) => distance.joint === joint && distance.atRisk.length > 0)
			.map((distance) => ({ ...distance, side })),
	)
/** Of each joint: its part of a rule's name, and what the distance to it is called. */
const jointKeys: Record<JointName, { rule: string; reading: string }> = {
	'first metatarsal head': { rule: 'first', reading: 'studToFirstHeadMm' },
	'fifth metatarsal head': { rule: 'fifth', reading: 'studToFifthHeadMm' },
	'heel centre': { rule: 'heel', reading: 'studToHeelMm' },
}
const reasonsFor = ({ atRisk, side, joint, nearestMm }: JointAtRisk) => [
	...atRisk,
	mm(jointKeys[joint].reading, nearestMm, side),
]

/** Points for a stud under a joint at risk, joint by joint; a distance without a risk is silent. */
export function askStuds(trial: Trial, studs: StudsBySide, fitter: Fitter): Answer {
	return together(
		jointNames.map((joint) => askJoint(trial, joint, jointsAtRisk(joint, studs), fitter)),
	)
}
/**
 * The same joint of the sides where it is at risk: their studs are changed as one piece of work.
 */
function askJoint(
	{ model }: Trial,
	joint: JointName,
	sides: readonly JointAtRisk[],
	{ limits, value, basis }: Fitter,
): Answer {
	if (sides.length === 0) return {}
	const { rule } = jointKeys[joint]
	const shared = (model.studs ?? []).length >= limits.manyStuds
	const under = sides.filter((at) => at.under.length > 0)
	const clear = sides.filter(
		(at) => at.under.length === 0 && at.nearestMm >= value('footwear.nearJointMm'),
	)
	const removable = allRemovable(model, [...new Set(under.flatMap((at) => at.under))])
	return {
		for: clear.map((at) =>
			reason(
				`stud-clear-${rule}-${at.side}`,
				state('match.stud-clear', { side: at.side, joint, nearestMm: at.nearestMm }),
				reasonsFor(at),
				basis('stud clear of a joint', 'footwear.nearJointMm'),
			),
		),
		against: under.map((at) =>
			penalty(
				`stud-${rule}-${at.side}`,
				state('match.stud-under', { side: at.side, joint, nearestMm: at.nearestMm, shared }),
				value('footwear.pointsStud') * (shared ? value('footwear.pointsStudMany') : 1),
				reasonsFor(at),
				basis('stud under a joint', 'footwear.underJointMm'),
			),
		),
		changes:
			under.length > 0
				? [
						change(
							state('match.change-stud', { sides: under.map((at) => at.side), joint, removable }),
						),
					]
				: [],
	}
}
