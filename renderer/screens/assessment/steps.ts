/**
 * The walk of an assessment: which fields stand on which step. Labels, units and limits come from
 * the schema.
 */
import type { Topic } from '../../../shared/engine/findings/finding.ts'
import { need } from '../../../shared/engine/plain/need.ts'

interface StepRow {
	/** Fields of a row: one, or left and right. */
	paths: readonly [string] | readonly [string, string]
	hint?: string | undefined
}
export interface Step {
	name: string
	/** Whose findings stand first beside it. */
	topics: readonly Topic[]
	/** Prefixes of the measures this step answers for. */
	asks: readonly string[]
	groups: readonly { heading: string; fields: readonly StepRow[] }[]
	/** It takes the whole width: no findings beside it, and Enter is its own. */
	wide?: boolean
}
const single = (path: string, hint?: string): StepRow => ({
	paths: [path],
	hint,
})
const pair = (group: string, key: string, hint?: string): StepRow => ({
	paths: [`${group}.left.${key}`, `${group}.right.${key}`],
	hint,
})

export const steps: readonly Step[] = [
	{
		name: 'Player and play',
		topics: ['conditions', 'loading', 'footwear'],
		asks: ['play', 'footwear', 'body.massKg'],
		groups: [
			{
				heading: 'Play',
				fields: [
					'code',
					'position',
					'standard',
					'kickingFoot',
					'matchesPerWeek',
					'trainingsPerWeek',
					'organisedHoursPerWeek',
					'freePlayHoursPerWeek',
				].map((key) => single(`play.${key}`)),
			},
			{ heading: 'Body', fields: [single('body.massKg')] },
		],
	},
	{
		name: 'Feet',
		topics: ['sizing', 'footwear'],
		asks: ['feet'],
		groups: [
			{
				heading: 'Both feet, standing, weight on both',
				fields: [
					pair('feet', 'heelToToeMm', 'Heel firm in the cup, toes flat. Twice: 246 247'),
					pair('feet', 'heelToBallMm', 'Heel to the joint of the big toe'),
					pair('feet', 'ballWidthMm', 'Across the widest part of the ball'),
					pair('feet', 'ballGirthMm', 'Tape around the ball, no squeeze'),
					pair('feet', 'toeDepthMm'),
					pair('feet', 'instepHeightMm'),
					pair('feet', 'heelWidthMm'),
				],
			},
			{
				heading: 'How it was measured',
				fields: [single('feet.stance'), single('feet.sockMm'), single('feet.examiner')],
			},
		],
	},
	{
		name: 'Ankles',
		topics: ['ankle'],
		asks: ['ankles'],
		groups: [
			{
				heading: 'Weight-bearing lunge and range',
				fields: [
					pair('ankles', 'lungeCm', 'Big toe to wall, knee just touching, heel down. Three times'),
					pair('ankles', 'lungeDeg', 'Inclinometer on the shin, to the vertical'),
					pair('ankles', 'kneeStraightDeg', 'Off the ground, heel held neutral'),
					pair('ankles', 'kneeBentDeg', 'Off the ground, knee bent'),
					pair('ankles', 'endFeel', 'What stops the movement'),
				],
			},
		],
	},
	{
		name: 'Posture',
		topics: ['posture'],
		asks: ['posture'],
		groups: [
			{
				heading: 'Relaxed stance',
				fields: [
					pair('posture', 'fpi6', 'Six items from -2 to 2, with spaces: 1 1 1 0 2 1'),
					pair('posture', 'navicularDropMm'),
					pair('posture', 'firstRay'),
					pair('posture', 'firstMtpDegNonWeightBearing'),
					pair('posture', 'jackTestDeg'),
					pair('posture', 'heelRises', 'One leg, to failure'),
					pair('posture', 'forefoot'),
					pair('posture', 'supinationResistance'),
				],
			},
			{
				heading: 'Whole body',
				fields: [
					'beighton',
					'hypermobilityHistory',
					'puberty',
					'legLengthDifferenceMm',
					'shorterLeg',
					'legLengthSymptoms',
					'legLengthReason',
					'legLengthYears',
					'legLengthCompensation',
				].map((key) => single(`body.${key}`)),
			},
		],
	},
	{
		name: 'Growth',
		topics: ['growth'],
		asks: [
			'body.statureCm',
			'body.sittingHeightCm',
			'body.motherStatureCm',
			'body.fatherStatureCm',
		],
		groups: [
			{
				heading: 'Stature and family',
				fields: [
					single('body.statureCm'),
					single('body.sittingHeightCm', 'Take off the height of the stool'),
					single('body.massKg'),
					single('body.motherStatureCm'),
					single('body.fatherStatureCm'),
					single('body.parentStatures'),
					single('body.growthOrHormoneTreatment'),
				],
			},
		],
	},
	{ name: 'Flags', topics: ['screening'], asks: ['screening'], groups: [] },
	{
		name: 'Decide',
		topics: [
			'screening',
			'sizing',
			'ankle',
			'posture',
			'growth',
			'footwear',
			'loading',
			'conditions',
		],
		asks: [],
		groups: [],
		wide: true,
	},
	{ name: 'Sign and report', topics: [], asks: [], groups: [], wide: true },
]

/** The steps of a player; growth is looked at in minors. */
export const stepsFor = (minor: boolean): readonly Step[] =>
	steps.filter((step) => step.name !== 'Growth' || minor)
/** The step of a name, or the first where the draft names none that is shown. */
export const stepNamed = (name: string | undefined, shown: readonly Step[]): Step =>
	shown.find((step) => step.name === name) ?? need(shown[0], 'the first step')
/**
 * The key of a step. The step that is left out for an adult still has its number, so
 * that the hand can learn them.
 */
export const numberOf = (name: string): number => steps.findIndex((step) => step.name === name) + 1
