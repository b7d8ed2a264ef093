/** Do its studs stand clear of the joints at risk? */
import type { JointName, StudDistance } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { jointNames, studDistances, studWork } from '../studs.ts'
import { type Answer, listed, mm, penalty, reason, together } from './answer.ts'
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
const reasonsFor = ({ atRisk, side, joint, nearestMm }: JointAtRisk) => [
	...atRisk,
	mm(`Nearest stud to the ${side} ${joint}`, nearestMm),
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
	const [name] = joint.split(' ')
	const shared = (model.studs ?? []).length >= limits.manyStuds
	const under = sides.filter((at) => at.under.length > 0)
	const clear = sides.filter(
		(at) => at.under.length === 0 && at.nearestMm >= value('footwear.nearJointMm'),
	)
	const work = studWork(model, [...new Set(under.flatMap((at) => at.under))])
	return {
		for: clear.map((at) =>
			reason(
				`stud-clear-${name}-${at.side}`,
				`No stud near the ${at.side} ${joint} (nearest ${at.nearestMm} mm).`,
				reasonsFor(at),
				basis('stud clear of a joint', 'footwear.nearJointMm'),
			),
		),
		against: under.map((at) =>
			penalty(
				`stud-${name}-${at.side}`,
				`A stud stands ${at.nearestMm} mm from the ${at.side} ${joint}, a joint at ` +
					`risk${shared ? '; its many studs share the load' : ''}.`,
				value('footwear.pointsStud') * (shared ? value('footwear.pointsStudMany') : 1),
				reasonsFor(at),
				basis('stud under a joint', 'footwear.underJointMm'),
			),
		),
		changes:
			under.length > 0
				? [
						{
							says:
								`At the ${listed(under.map((at) => at.side))} ${joint}: ${work.says}. ` +
								`${work.limits}`,
							toThisModel: true,
						},
					]
				: [],
	}
}
