/** What the ankle room says. */
import { otherSide } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, day, listed, number, together } from './format.ts'

type LimitedBy = 'gastrocnemius' | 'soleus-or-capsule' | 'anterior-block' | 'none' | 'unknown'
const limitWords: Partial<Record<LimitedBy, string>> = {
	gastrocnemius: ' The gap between knee bent and knee straight points to the gastrocnemius.',
	'soleus-or-capsule':
		' The pattern points to the soleus or the joint capsule, not to the gastrocnemius alone.',
	'anterior-block':
		' The end feel points to a block at the front of the ankle: do not stretch into pain, and ' +
		'consider imaging.',
	unknown: ' What stops it is unclear.',
}
/** How the band was found, where that is not by the angle or an adult's distance. */
const byStature =
	" Judged by the distance scaled to stature: the cut-off in centimetres is an adult's. The angle " +
	'is better.'
const unsure = ' It lies within measuring error of the cut-off: measure again.'
const lunge = {
	lungeCm: { name: 'knee to wall', unit: 'cm' },
	lungeDeg: { name: 'lunge angle', unit: 'deg' },
} as const
type Change = { side: Side; measure: 'lungeCm' | 'lungeDeg'; by: number; since: string }
const changeWords = ({ side, measure, by, since }: Change): string =>
	`The ${side} ${lunge[measure].name} is ${amount(Math.abs(by), lunge[measure].unit)} ` +
	`${by < 0 ? 'less' : 'more'} than on ${day(since)}: more than measuring error.`
const gaps = (gapCm: number | undefined, gapDeg: number | undefined): string =>
	listed([
		...(gapCm === undefined ? [] : [amount(gapCm, 'cm')]),
		...(gapDeg === undefined ? [] : [amount(gapDeg, 'deg')]),
	])
/** A height for each foot; they differ only where one leg is shorter. */
interface PerSide {
	left: number
	right: number
}
const raises = (mm: PerSide, shorter: Side | undefined): string =>
	shorter === undefined
		? `a heel raise of ${amount(mm.left, 'mm')} in both shoes`
		: `a heel raise of ${amount(mm[shorter], 'mm')} on the ${shorter} (shorter leg) and ` +
			`${amount(mm[otherSide(shorter)], 'mm')} on the other side`
export const ankleSentences = {
	'ankle.restricted': sentence<{
		side: Side
		limitedBy: LimitedBy
		/** Absent in records of before 0.4. */
		bandSure?: boolean
		bandBy?: 'angle' | 'distance' | 'distance-for-stature'
	}>({
		clinician: ({ side, limitedBy, bandSure, bandBy }) =>
			`The ${side} ankle bends less than the cut-off in use.${limitWords[limitedBy] ?? ''}` +
			`${bandSure === false ? unsure : ''}${bandBy === 'distance-for-stature' ? byStature : ''}`,
		player: ({ side }) => `Your ${side} ankle does not bend as far as most.`,
		doctor: ({ side, limitedBy }) =>
			`Dorsiflexion of the ${side} ankle is restricted in the weight-bearing ` +
			`lunge.${limitWords[limitedBy] ?? ''}`,
	}),
	'ankle.front-end-feel': sentence<{ side: Side; rangeIsAdequate: boolean }>({
		clinician: ({ side, rangeIsAdequate }) =>
			`The ${side} ankle stops at the front` +
			`${rangeIsAdequate ? ' although its range is adequate' : ''}: do not stretch into pain.`,
		player: ({ side }) => `Your ${side} ankle stops at the front. Do not stretch into pain.`,
		doctor: ({ side }) => `Dorsiflexion of the ${side} ankle ends at a block at the front.`,
	}),
	'ankle.recorded-only': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`The ${side} lunge is recorded and compared with nothing: the limb is injured or is not to ` +
			'be tested today.',
	}),
	'ankle.distance-of-minor': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`The distance of the ${side} lunge is not judged: the cut-off in centimetres is an adult's. ` +
			'Measure the angle, or the stature.',
	}),
	'ankle.pair': sentence<{ side: Side; lungeCm: number; lungeDeg: number; expectedDeg: number }>({
		clinician: ({ side, lungeCm, lungeDeg, expectedDeg }) =>
			`The ${side} lunge readings do not fit each other: ${amount(lungeCm, 'cm')} would be near ` +
			`${amount(expectedDeg, 'deg')}, ${number(lungeDeg)} was entered. Check both.`,
	}),
	'ankle.asymmetry': sentence<{ verdict: 'flag' | 'act'; gapCm?: number; gapDeg?: number }>({
		clinician: ({ verdict }) =>
			verdict === 'act'
				? 'The ankles differ enough to look for a reason, and to treat the stiffer side once it is known.'
				: 'The ankles differ by more than measurement error: keep watching.',
		player: ({ verdict }) =>
			verdict === 'act'
				? 'Your two ankles do not bend the same. This is worth working on.'
				: 'Your two ankles bend a little differently. We keep an eye on it.',
		doctor: ({ gapCm, gapDeg }) =>
			`The ankles differ in the weight-bearing lunge, by ${gaps(gapCm, gapDeg)}.`,
	}),
	'ankle.change': sentence<Change>({
		clinician: (change) => changeWords(change),
		player: ({ side, by, since }) =>
			`Your ${side} ankle bends ${by < 0 ? 'less' : 'further'} than on ${day(since)}.`,
	}),
	// a distance where the angle changed as well, or that changes because the leg grows
	'ankle.change-of-distance': sentence<Change & { growing: boolean }>({
		clinician: ({ growing, ...change }) =>
			`${changeWords(change)}${
				growing ? ' In a growing player compare degrees rather than centimetres.' : ''
			}`,
	}),
	'ankle.lift': sentence<{
		pair: string
		liftMm: number
		limitMm: number
		limit: 'boot' | 'trainer'
	}>({
		clinician: ({ pair, liftMm, limitMm, limit }) =>
			`The heel raise of ${amount(liftMm, 'mm')} in ${pair} is above ` +
			(limit === 'trainer'
				? `${amount(limitMm, 'mm')}, the most tried in daily shoes`
				: `the ${amount(limitMm, 'mm')} limit in use`) +
			': check heel hold.',
		player: ({ pair }) => `The heel raise in ${pair} is high. Check that your heel does not slip.`,
	}),
	'ankle.demand': sentence<{ from: string; to: string; moreDeg: number }>({
		clinician: ({ from, to, moreDeg }) =>
			`The ankle is asked for ${amount(moreDeg, 'deg')} more in ${to} than in ${from}.`,
		player: ({ from, to }) => `Your ankle has to bend more in ${to} than in ${from}.`,
	}),
	'ankle.heel-raise': sentence<{ mm: PerSide; shorter?: Side; capped: boolean }>({
		clinician: ({ mm, shorter, capped }) =>
			together(
				`Estimate, for the clinician to edit: ${raises(mm, shorter)}.`,
				shorter && 'The sides differ because a reason to correct the leg length is recorded.',
				'It does not treat the cause. Check heel hold in the boot.',
				capped && 'The rest of the correction would go on the outsole.',
			),
		player: ({ mm, shorter }) =>
			shorter === undefined
				? `A heel raise of ${amount(mm.left, 'mm')} in both shoes may ease your ankle. It does not ` +
					'treat the cause.'
				: `A heel raise may help: ${amount(mm[shorter], 'mm')} on the ${shorter}${
						mm[otherSide(shorter)] > 0
							? `, ${amount(mm[otherSide(shorter)], 'mm')} on the ${otherSide(shorter)}`
							: ''
					}.`,
		doctor: ({ mm, shorter }) => `Proposed, as an estimate: ${raises(mm, shorter)}.`,
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const ankleReadings = {
	expectedLungeDeg: 'angle expected from the geometry',
	lungeGapCm: 'difference, knee to wall',
	lungeGapDeg: 'difference, lunge angle',
	heelHeightMm: 'offset and raise',
	heelRaiseMm: 'heel raise',
	pairName: 'pair',
}
