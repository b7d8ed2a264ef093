/** Joints that should have no stud under them, from conditions, findings and answers alike. */
import { conditionReasons } from '../conditions/query.ts'
import type { PerSide, PostureSide } from '../findings/assessment.ts'
import type { JointAtRisk, LimbFacts } from '../findings/player-facts.ts'
import { canonicalJson } from '../plain/canonical.ts'
import type { Because } from '../protocol/basis.ts'
import type { JointName } from '../visit/shelf.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { jointNames, riskRows, siteJoints } from './joint-risks.table.ts'

/** The reasons of each joint; none: it is not at risk. */
export type JointRisks = Record<JointName, Because[]>

/** What of the posture speaks of the first joint. */
export type FirstJoint = Pick<PostureSide, 'firstRay' | 'firstMtp'>
function fromPosture(posture: PerSide<FirstJoint>, joint: JointName, side: Side): Because[] {
	if (joint !== 'first metatarsal head') return []
	const { firstRay, firstMtp } = posture[side]
	return [
		...(firstRay === 'plantarflexed' ? [{ measure: 'firstRay', side, value: firstRay }] : []),
		...(firstMtp === 'structural-limit' ? [{ measure: 'firstMtp', side, value: firstMtp }] : []),
	]
}
/** A bone that is sore by the answers, though no stress injury is recorded. */
function fromBoneStress({ screening }: Visit, joint: JointName, side: Side): Because[] {
	const bone = screening?.boneStress
	if (bone?.site === undefined || (bone.side !== side && bone.side !== 'both')) return []
	const sore = [bone.focalTenderness, bone.loadPain, bone.hopPain, bone.nightPain].includes(true)
	const near = siteJoints.some((row) => row.site === bone.site && row.joint === joint)
	return sore && near ? [{ measure: 'site', side, value: bone.site }] : []
}
const fromConditions = (visit: Visit, joint: JointName, side: Side): Because[] =>
	riskRows
		.filter(({ joints }) => joints.includes(joint))
		.flatMap(({ conditions, when }) => conditionReasons(visit, conditions, { side, when }))
const onceEach = (reasons: readonly Because[]): Because[] => [
	...new Map(reasons.map((because) => [canonicalJson({ ...because }), because])).values(),
]
/** @param atRisk why the foot is at risk: then each of its joints is */
export const jointsAtRisk = (
	visit: Visit,
	posture: PerSide<FirstJoint>,
	side: Side,
	atRisk: readonly Because[],
): JointAtRisk[] =>
	jointNames
		.map((joint) => ({
			joint,
			because: onceEach([
				...fromPosture(posture, joint, side),
				...fromConditions(visit, joint, side),
				...fromBoneStress(visit, joint, side),
				...atRisk,
			]),
		}))
		.filter(({ because }) => because.length > 0)
/** Each joint of a limb with its reasons: none where it is not at risk. */
export function jointRisksOf({ jointsAtRisk: found }: Pick<LimbFacts, 'jointsAtRisk'>): JointRisks {
	const of = (joint: JointName): Because[] =>
		found.find((risk) => risk.joint === joint)?.because ?? []
	return {
		'first metatarsal head': of('first metatarsal head'),
		'fifth metatarsal head': of('fifth metatarsal head'),
		'heel centre': of('heel centre'),
	}
}
