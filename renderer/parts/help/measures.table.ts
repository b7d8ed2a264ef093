/** How each measure is taken: position, steps, its error from the protocol table, and what the picture shows. Offline, in plain words. */
import type { ThresholdKey } from '../../../shared/engine/protocol/protocol.ts'

export type View = 'top' | 'side' | 'rear' | 'lunge' | 'lying' | 'body'
/** Parts of a picture that can light up; drawn in parts/FootPicture.tsx. */
export type Part = 'length' | 'ball-length' | 'width' | 'girth' | 'heel-width' | 'toe-depth' | 'instep' | 'navicular' | 'big-toe' | 'big-toe-standing' | 'first-ray' | 'heel-rise' | 'heel-tilt' | 'forefoot' | 'push-up' | 'wall' | 'shin' | 'straight' | 'bent' | 'end' | 'stature' | 'sitting' | 'mass' | 'legs'
export interface MeasureHelp {
	title: string
	view: View
	part: Part
	/** How the player stands, sits or lies. */
	position: string
	steps: readonly string[]
	/** Thresholds that say what is beyond error; their value and source are read from the protocol in force. */
	errors: readonly ThresholdKey[]
}
/** Ways of measuring are common practice with no source unless an error row names one. */
export const waySource = 'Way of measuring: common practice, no source.'
export const noError = 'No error is held for this measure: common practice is to take it twice.'

const standing = 'Standing barefoot, weight on both feet, knees straight, looking ahead.'
const relaxed = 'Relaxed standing, barefoot, arms at the sides, after a few steps on the spot.'
const wall = 'Facing a wall, foot square to it, hands on the wall, other foot behind.'
const lying = 'Lying face down, foot over the edge of the couch, heel held neutral.'
const footErrors = ['sizing.realLengthSameMm', 'sizing.realLengthOtherMm', 'sizing.readingSemMm'] as const

export const measureHelp: Readonly<Record<string, MeasureHelp>> = {
	heelToToeMm: {
		title: 'Heel to toe',
		view: 'top',
		part: 'length',
		position: standing,
		steps: ['Set the heel firmly in the cup of the device.', 'Lay the toes flat; do not let them claw.', 'Bring the slider to the longest toe, whichever it is, without pressing.', 'Read, lift the foot, and take it a second time.'],
		errors: footErrors,
	},
	heelToBallMm: { title: 'Heel to ball', view: 'top', part: 'ball-length', position: standing, steps: ['Heel firmly in the cup.', 'Feel for the joint of the big toe on the inner side: bend the toe and find the hinge.', 'Set the ball pointer to the middle of the joint and read.'], errors: [] },
	ballWidthMm: { title: 'Ball width', view: 'top', part: 'width', position: standing, steps: ['Find the widest part: from the first to the fifth joint of the toes.', 'Close the jaws until they touch the skin; do not squeeze.', 'Read straight across the foot line of the device.'], errors: ['sizing.realWidthMm'] },
	ballGirthMm: { title: 'Ball girth', view: 'top', part: 'girth', position: standing, steps: ['Lay the tape under the ball, over both joints.', 'Close it on top so that it lies on the skin without a dent.', 'Read on the top of the foot.'], errors: ['sizing.realGirthMm'] },
	toeDepthMm: { title: 'Toe depth', view: 'side', part: 'toe-depth', position: standing, steps: ['Find the highest point of the toes, often the big toe at its end joint or a bent toe.', 'Set the height gauge down until it touches and read from the ground.'], errors: [] },
	instepHeightMm: { title: 'Instep height', view: 'side', part: 'instep', position: standing, steps: ['Mark half of the foot length on the top of the foot.', 'Set the height gauge on the mark and read from the ground.'], errors: [] },
	heelWidthMm: { title: 'Heel width', view: 'top', part: 'heel-width', position: standing, steps: ['Close the jaws on the widest part of the heel, just above the ground.', 'Touch the skin without squeezing and read.'], errors: [] },
	lungeCm: {
		title: 'Knee to wall',
		view: 'lunge',
		part: 'wall',
		position: wall,
		steps: ['Move the foot back step by step while the knee still touches the wall.', 'The heel stays down and the knee goes over the second toe.', 'At the last place where both hold, read from the big toe to the wall.', 'Three times, both legs.'],
		errors: ['ankle.realCmSame', 'ankle.realCmOther'],
	},
	lungeDeg: {
		title: 'Lunge angle',
		view: 'lunge',
		part: 'shin',
		position: wall,
		steps: ['In the same end position, heel down.', 'Set the inclinometer on the front of the shin, a hand below the knee.', 'Read the angle of the shin to the vertical.', 'Three times, both legs.'],
		errors: ['ankle.realDegSame', 'ankle.realDegOther'],
	},
	kneeStraightDeg: { title: 'Knee straight', view: 'lying', part: 'straight', position: lying, steps: ['Knee straight.', 'Bring the foot up with the hand under the outer forefoot.', 'Read between the outer edge of the foot and the fibula. Short of a right angle is below zero.'], errors: [] },
	kneeBentDeg: { title: 'Knee bent', view: 'lying', part: 'bent', position: lying, steps: ['Knee bent to a right angle.', 'Bring the foot up with the same hand and the same force.', 'Read in the same way.'], errors: ['ankle.gastrocnemiusGapDeg'] },
	endFeel: { title: 'End feel', view: 'lunge', part: 'end', position: wall, steps: ['Ask in the end position of the lunge where it stops.', 'Calf stretch behind, a pinch in front, a hard stop, a springy stop or joint pain.'], errors: [] },
	fpi6: {
		title: 'Foot posture index, six items',
		view: 'rear',
		part: 'heel-tilt',
		position: relaxed,
		steps: [
			'Score each item from -2 to 2, 0 for neutral.',
			'1: the head of the talus felt on both sides. 2: curves above and below the outer ankle. 3: the heel, seen from behind.',
			'4: bulge at the talonavicular joint. 5: height of the inner arch. 6: forefoot, turned in or out.',
			'Type the six with spaces: 1 1 1 0 2 1.',
		],
		errors: ['posture.asymmetryNormal', 'posture.asymmetrySevere'],
	},
	navicularDropMm: {
		title: 'Navicular drop',
		view: 'side',
		part: 'navicular',
		position: 'Seated with the foot set neutral, then relaxed standing.',
		steps: ['Mark the bump of the navicular on the inner side.', 'Seated, joint set neutral: note its height from the ground.', 'Standing relaxed: note it again. The drop is the difference.'],
		errors: ['posture.navicularDropMm'],
	},
	firstRay: { title: 'First ray', view: 'side', part: 'first-ray', position: 'Lying, foot set neutral.', steps: ['Hold the lesser heads with one hand, the first with the other.', 'Move the first up and down: it lies level, lower, higher, or moves too far.'], errors: [] },
	forefoot: { title: 'Forefoot to rearfoot', view: 'rear', part: 'forefoot', position: lying, steps: ['Set the heel neutral and load the outer forefoot until it stops.', 'Look along the heel: the forefoot lies level, tilts in or tilts out. Try whether it can be brought level.'], errors: [] },
	supinationResistance: { title: 'Supination resistance', view: 'rear', part: 'push-up', position: relaxed, steps: ['Two fingers under the navicular.', 'Lift straight up and judge the force: low, usual or high.'], errors: [] },
	firstMtpDegNonWeightBearing: {
		title: 'First MTP, off the ground',
		view: 'side',
		part: 'big-toe',
		position: 'Sitting or lying, foot off the ground, ankle relaxed.',
		steps: ['Axis of the goniometer on the inner side of the joint.', 'One arm along the first metatarsal, one along the toe.', 'Bring the toe up to the end and read.'],
		errors: ['posture.mtpFreeDeg', 'posture.mtpStructuralDeg'],
	},
	jackTestDeg: { title: 'First MTP, standing', view: 'side', part: 'big-toe-standing', position: relaxed, steps: ['Lift the big toe from the ground with the weight on the foot.', 'Read the angle of the toe to the ground at the end.'], errors: ['posture.jackDeg'] },
	heelRises: { title: 'Heel rises', view: 'side', part: 'heel-rise', position: 'On one leg, knee straight, fingertips on the wall for balance.', steps: ['Full rises at an even pace.', 'Stop when a full rise is not possible any more, or when the player stops.', 'Count the full ones.'], errors: ['posture.riseChange'] },
	statureCm: { title: 'Stature', view: 'body', part: 'stature', position: 'Barefoot, heels, seat and shoulders against the wall, looking level.', steps: ['Bring the headpiece down onto the head.', 'Breathe in, stand tall, read at eye level.', 'Step away and take it a second time.'], errors: ['growth.shrinkCm'] },
	sittingHeightCm: { title: 'Sitting height', view: 'body', part: 'sitting', position: 'Sitting tall on a box of known height, back against the wall.', steps: ['Bring the headpiece down onto the head and read.', 'Take off the height of the box.'], errors: [] },
	massKg: { title: 'Body mass', view: 'body', part: 'mass', position: 'Light clothing, no shoes, still on the scale.', steps: ['Zero the scale, step on, read when it is steady.'], errors: [] },
	legLengthDifferenceMm: { title: 'Leg-length difference', view: 'body', part: 'legs', position: 'Standing barefoot, knees straight.', steps: ['Feel the tops of both hips.', 'Put blocks under the shorter side until they are level. The height of the blocks is the difference.'], errors: ['posture.legLengthRecordMm'] },
}
