/** What the growth room says of maturity: estimates and cautions, for the clinician alone. */
import { sentence } from '../sentence.ts'
import { amount, day, listed, number, together } from './format.ts'

type Stage = 'before' | 'around' | 'after'
type Sex = 'male' | 'female'
type OffsetMethod = 'mirwald' | 'moore' | 'mooreSitting' | 'fransen'
type StageMethod = 'percentAdultStature' | 'mirwald' | 'moore'
const stageWords: Record<Stage, string> = {
	before: 'before the growth spurt',
	around: 'around the growth spurt',
	after: 'after the growth spurt',
}
/** The equations by the name of who published them. */
export const offsetMethodWords: Record<OffsetMethod, string> = {
	mirwald: 'Mirwald 2002',
	moore: 'Moore 2015 (stature)',
	mooreSitting: 'Moore 2015 (sitting height)',
	fransen: 'Fransen 2018',
}
/** What a growth stage can rest on. */
export const stageMethodWords: Record<StageMethod, string> = {
	percentAdultStature: 'share of predicted adult stature',
	mirwald: offsetMethodWords.mirwald,
	moore: offsetMethodWords.moore,
}
/** Measures that an estimate asks for. */
const lackingWords = {
	statureCm: 'stature',
	sittingHeightCm: 'sitting height',
	massKg: 'body mass',
	motherStatureCm: "mother's stature",
	fatherStatureCm: "father's stature",
} as const
export type Lacking = readonly (keyof typeof lackingWords)[]
/** The measures that are missing, in a row. */
export const lackingList = (lacking: Lacking): string =>
	listed(lacking.map((measure) => lackingWords[measure]))
export const maturitySentences = {
	'growth.treatment': sentence({
		private: 'medication',
		clinician: () =>
			'No maturity or adult stature estimate is made, and the stage stays uncertain: with a ' +
			'growth disorder, or steroid or hormone treatment, the equations do not hold. Nor may a ' +
			'forecast of the foot: go by measuring again.',
	}),
	'growth.offset-missing': sentence<{ lacking: Lacking }>({
		clinician: ({ lacking }) =>
			`Not every maturity estimate can be computed: ${lackingList(lacking)} not measured.`,
	}),
	'growth.sitting-ratio': sentence({
		clinician: () =>
			'Sitting height is unusual for this stature. Measure it again and take off the height of ' +
			'the stool before using the maturity estimates.',
	}),
	'growth.outside-ages': sentence<{
		method: OffsetMethod
		ageYears: number
		low: number
		high: number
	}>({
		clinician: ({ method, ageYears, low, high }) =>
			`No maturity estimate by ${offsetMethodWords[method]}: at ${amount(ageYears, 'years', 2)} ` +
			`the player is outside its ages of ${number(low)} to ${amount(high, 'years')}.`,
	}),
	'growth.outside-result': sentence<{ method: OffsetMethod; limitYears: number }>({
		clinician: ({ method, limitYears }) =>
			`No maturity estimate by ${offsetMethodWords[method]}: the result lies more than ` +
			`${amount(limitYears, 'years')} from peak height velocity, where the equation does not ` +
			'hold. Check stature, sitting height and mass.',
	}),
	'growth.best-ages': sentence<{ sex: Sex; ageYears: number; low: number; high: number }>({
		clinician: ({ sex, ageYears, low, high }) =>
			`The maturity offset is most useful from ${number(low)} to ${amount(high, 'years')} in ` +
			`${sex === 'male' ? 'boys' : 'girls'}; at ${amount(ageYears, 'years', 2)} expect a larger ` +
			'error.',
	}),
	'growth.stage-unknown': sentence({
		clinician: () =>
			'The growth stage cannot be judged: too few measures, or the player lies outside the ' +
			'limits of the equations.',
	}),
	'growth.uncertain': sentence<{ byPercent: Stage; byOffset: Stage }>({
		clinician: ({ byPercent, byOffset }) =>
			`The growth stage is uncertain: by adult stature ${stageWords[byPercent]}, by maturity ` +
			`offset ${stageWords[byOffset]}. Treat the player as around the growth spurt.`,
	}),
	'growth.stage': sentence<{ stage: Stage; byPercent: boolean; offsetErrorYears?: number }>({
		clinician: ({ stage, byPercent, offsetErrorYears }) =>
			together(
				`The player is probably ${stageWords[stage]}.`,
				byPercent &&
					'It rests on the share of predicted adult stature, which has an error of its own.',
				offsetErrorYears !== undefined &&
					`The offset is good to about ${amount(offsetErrorYears, 'years')} either way.`,
			),
	}),
	'growth.near-boundary': sentence<{
		percent: number
		low: number
		high: number
		boundaryPercent: number
	}>({
		clinician: ({ percent, low, high, boundaryPercent }) =>
			`The share of adult stature is ${amount(percent, '%')}, good to between ${number(low)} and ` +
			`${amount(high, '%')}: the stage is near the boundary at ${amount(boundaryPercent, '%')}.`,
	}),
	'growth.method-changed': sentence<{
		method: StageMethod
		before: StageMethod
		since: string
	}>({
		clinician: ({ method, before, since }) =>
			`The growth stage now rests on ${stageMethodWords[method]}; on ${day(since)} it rested on ` +
			`${stageMethodWords[before]}, which cannot be computed today. Do not compare the two.`,
	}),
	'growth.apophysis-foot': sentence({
		clinician: () =>
			'At this stage ask about and feel the growing heel and the base of the fifth metatarsal.',
	}),
	'growth.apophysis-knee': sentence({
		clinician: () => 'At this stage ask about and feel the growing bone below the kneecap.',
	}),
	'growth.apophysis-hip': sentence({
		clinician: () => 'At this stage ask about the growing bone around hip and groin.',
	}),
	'growth.estimate': sentence({
		clinician: () =>
			'These are estimates, not measurements of maturity. They must not be used to select or ' +
			'deselect a player.',
	}),
	'growth.one-method': sentence({
		clinician: () =>
			'Keep to one method for a player over time: the methods do not agree with each other ' +
			'closely enough to be mixed.',
	}),
	'growth.bias': sentence({
		clinician: () =>
			'The estimated age at peak growth moves later as the player gets older; it comes out late ' +
			'in early maturers and early in late maturers.',
	}),
	'growth.not-for': sentence({
		clinician: () =>
			'Do not use the estimates with a growth disorder, steroid or hormone treatment, or a major ' +
			'deformity of limb or spine.',
	}),
	'growth.population': sentence({
		clinician: () =>
			'The equations come from white North American and European children; they may fit other ' +
			'players less well.',
	}),
	'growth.privacy': sentence({
		clinician: () =>
			'Stature and mass of a young player are private: obtain the consent of a parent or guardian ' +
			'before passing them on.',
	}),
	'growth.girls': sentence({
		clinician: () =>
			'In girls the maturity offset is least reliable: prefer the percentage of adult stature and ' +
			'her own growth record.',
	}),
}
