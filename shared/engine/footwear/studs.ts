/**
 * Stud against joint. Geometry, in mm on the sole of one shoe, own choice where no source is named:
 * x runs from the inside of the heel to the toe, y from the middle line to the outer edge (inner
 * edge negative), for either side alike.
 * The foot sits against the heel and in the middle of the sole. First metatarsal head: at the
 * measured heel-to-ball length, one inset
 * of the ball width in from the inner edge of the foot. Fifth: a share of the heel-to-ball length,
 * an inset in from the outer edge.
 * Heel centre: on the middle line. A stud stands at xFraction of the inside length and yFraction of
 * half the inside ball width.
 * Limits: a foot slides and turns in the boot, and the pressure of a stud spreads through plate and
 * insert; the distance says where to look.
 */

import { jointNames } from '../facts/joint-risks.table.ts'
import { type JointRisks, jointRisksOf, jointsAtRisk } from '../facts/joint-risks.ts'
import type {
	PlayerFacts,
	PostureResult,
	SizingResult,
	StudDistance,
} from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { JointName, Model, ShelfSize } from '../visit/shelf.ts'
import { rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'

export interface Point {
	xMm: number
	yMm: number
}
export type Joints = Record<JointName, Point>
/**
 * Where the joints of a foot lie on a sole. Undefined unless length, heel-to-ball length and ball
 * width of that side are measured.
 */
export function jointsOf(sizing: SizingResult, side: Side, protocol: Protocol): Joints | undefined {
	const { lengthMm, ballLengthMm, widthMm } = sizing[side]
	if (lengthMm === undefined || ballLengthMm === undefined || widthMm === undefined)
		return undefined
	return {
		'first metatarsal head': {
			xMm: ballLengthMm,
			yMm: -widthMm * (0.5 - protocol.value('footwear.firstHeadInset')),
		},
		'fifth metatarsal head': {
			xMm: ballLengthMm * protocol.value('footwear.fifthHeadAlong'),
			yMm: widthMm * (0.5 - protocol.value('footwear.fifthHeadInset')),
		},
		'heel centre': { xMm: lengthMm * protocol.value('footwear.heelCentreAlong'), yMm: 0 },
	}
}
/** A model's stud centres at a size, mm. */
export const studPoints = (
	model: Model,
	size: Pick<ShelfSize, 'insideLengthMm' | 'ballWidthMm'>,
): Point[] =>
	(model.studs ?? []).map((stud) => ({
		xMm: stud.xFraction * size.insideLengthMm,
		yMm: (stud.yFraction * size.ballWidthMm) / 2,
	}))

/**
 * The reasons that put each joint of a side at risk, recorded, measured or suspected; none: it is
 * not. @param facts of the player, where they are known; else from what the visit records
 */
export const jointRisks = (
	visit: Visit,
	posture: PostureResult,
	side: Side,
	facts?: PlayerFacts,
): JointRisks =>
	jointRisksOf(facts ? facts[side] : { jointsAtRisk: jointsAtRisk(visit, posture, side, []) })
/**
 * @returns each joint with its distance to every stud, mm to 0.1; studs closer than the limit, and
 * tall enough to count, are listed in `under`
 */
export function studDistances(
	model: Model,
	size: ShelfSize,
	joints: Joints,
	risks: JointRisks,
	underMm: number,
	leastHeightMm: number,
): StudDistance[] {
	const points = studPoints(model, size)
	if (points.length === 0) return []
	const tall = (index: number) => (model.studs?.[index]?.heightMm ?? 0) >= leastHeightMm
	return jointNames.map((joint) => {
		const at = joints[joint]
		const eachMm = points.map((point) =>
			rounded(Math.sqrt((point.xMm - at.xMm) ** 2 + (point.yMm - at.yMm) ** 2), 1),
		)
		const nearestMm = Math.min(...eachMm)
		return {
			joint,
			nearestMm,
			nearestStud: eachMm.indexOf(nearestMm),
			eachMm,
			under: eachMm.flatMap((mm, index) => (mm <= underMm && tall(index) ? [index] : [])),
			atRisk: risks[joint],
		}
	})
}
/** Whether each of these studs comes out: what can be done about them differs. */
export const allRemovable = (model: Model, studs: readonly number[]): boolean =>
	studs.every((index) => model.studs?.[index]?.removable)
