/** The foot at risk in diabetes (NICE NG19), and signs of a clot in the leg. */
import type { Side } from '../../../visit/visit.ts'
import { sentence } from '../../sentence.ts'
import { amount, count, number, plural } from '../format.ts'
import { noSport } from './no-sport.ts'

type Span = readonly [from: number, to: number]
/** To whom the check belongs: the child's family, the paediatric team, or nobody else. */
export type DiabetesCare = 'family' | 'paediatric-team' | 'usual'
type Foot = { side: Side; care: DiabetesCare; belowYears: number; minorBelowYears: number }
type Pathway = Foot & { seenWeeks: Span; reviewMonths: Span }
const span = ([from, to]: Span, unit: string): string => `${number(from)} to ${amount(to, unit)}`
const careWords = ({ care, belowYears, minorBelowYears }: Foot): string => {
	if (care === 'family') return ` Under ${amount(belowYears, 'years')}: advice to child and family.`
	return care === 'paediatric-team'
		? ` From ${number(belowYears)} to ${amount(minorBelowYears - 1, 'years')} the paediatric team ` +
				'checks the feet every year.'
		: ''
}
const service = ({ seenWeeks, reviewMonths }: Pathway): string =>
	`foot protection service within ${span(seenWeeks, 'weeks')}, then review every ` +
	span(reviewMonths, 'months')

export const diabetesAndClotSentences = {
	'screening.diabetic-foot-low': sentence<Foot>({
		clinician: (foot) =>
			`Diabetic foot, ${foot.side}: low risk: foot check every year.${careWords(foot)}`,
		player: ({ side }) => `Have your ${side} foot checked every year because of your diabetes.`,
		guardian: ({ side }) => `Have the ${side} foot checked every year because of the diabetes.`,
		doctor: ({ side }) => `Diabetic foot, ${side}: low risk.`,
	}),
	'screening.diabetic-foot-moderate': sentence<Pathway>({
		clinician: (foot) =>
			`Diabetic foot, ${foot.side}: moderate risk: ${service(foot)}.${careWords(foot)}`,
		player: ({ side, seenWeeks }) =>
			`A foot clinic should see your ${side} foot within ${amount(seenWeeks[1], 'weeks')}. Diabetes ` +
			'can harm feet without pain. Look at them for sores every day.',
		guardian: ({ side, seenWeeks }) =>
			`A foot clinic should see the ${side} foot within ${amount(seenWeeks[1], 'weeks')}. Diabetes ` +
			'can harm feet without pain. Look at them for sores every day.',
		doctor: (foot) => `Diabetic foot, ${foot.side}: moderate risk; ${service(foot)}, please.`,
	}),
	'screening.diabetic-foot-high': sentence<Pathway>({
		clinician: (foot) =>
			`Diabetic foot, ${foot.side}: high risk: ${service(foot)}; no new boot without review and no ` +
			`stud under a place of high pressure.${careWords(foot)}`,
		player: ({ side, seenWeeks }) =>
			`A foot clinic should see your ${side} foot within ${amount(seenWeeks[1], 'weeks')}.`,
		guardian: ({ side, seenWeeks }) =>
			`A foot clinic should see the ${side} foot within ${amount(seenWeeks[1], 'weeks')}.`,
		doctor: (foot) => `Diabetic foot, ${foot.side}: high risk; ${service(foot)}, please.`,
	}),
	'screening.diabetic-foot-active': sentence<Foot & { days: number }>({
		clinician: ({ days, ...foot }) =>
			`Diabetic foot, ${foot.side}: active foot problem: refer within ` +
			`${count(days, 'working day')}, off the foot meanwhile.${careWords(foot)}`,
		player: ({ side }) =>
			`A foot clinic must see your ${side} foot by the next working day. Stay off it until then. ` +
			'Go to the emergency department if you feel ill.',
		guardian: ({ side }) =>
			`A foot clinic must see the ${side} foot by the next working day. No weight on it until then. ` +
			'Go to the emergency department if the player feels ill.',
		doctor: ({ side, days }) =>
			`Diabetic foot, ${side}: active foot problem; to be seen within ${count(days, 'working day')}.`,
		coach: noSport,
	}),
	'screening.diabetic-foot-incomplete': sentence<Foot>({
		clinician: (foot) =>
			`Diabetic foot, ${foot.side}: risk not established: complete the questions.${careWords(foot)}`,
	}),
	'screening.diabetic-foot-open': sentence<{
		side: Side
		risk: 'low' | 'moderate' | 'high' | 'active' | 'incomplete'
	}>({
		clinician: ({ side, risk }) =>
			`Not every question about the ${side} foot was asked: the risk may be higher than ${risk}.`,
	}),
	'screening.diabetic-threat': sentence({
		clinician: () => 'Limb or life in danger from a diabetic foot: emergency department now.',
		player: () =>
			'Go to the emergency department now. Your foot is in danger because of your diabetes. Do not ' +
			'walk on it.',
		guardian: () =>
			'Go to the emergency department now. The foot is in danger because of the diabetes. No ' +
			'walking on it.',
		doctor: () => 'Limb- or life-threatening diabetic foot problem; emergency assessment.',
		coach: noSport,
	}),
	'screening.wells': sentence<{
		score: 'used' | 'too-young' | 'pregnant'
		minorBelowYears: number
	}>({
		clinician: ({ score, minorBelowYears }) => {
			const use = {
				used: 'The score goes into the letter; it does not decide the referral.',
				'too-young': `The score is not used under ${amount(minorBelowYears, 'years')}.`,
				pregnant: 'The score is not used in pregnancy.',
			}
			return `Signs that can go with a clot in the leg: medical review the same day. ${use[score]}`
		},
		player: () =>
			'See a doctor today. Your leg has signs that can mean a blood clot. Do not rub or stretch it.',
		guardian: () =>
			'See a doctor today. The leg has signs that can mean a blood clot. Do not rub or stretch it.',
		doctor: () =>
			'Signs that can go with deep vein thrombosis of the leg; assessment today, please.',
		coach: noSport,
	}),
	'screening.wells-incomplete': sentence<{ notAsked: number; all: number }>({
		clinician: ({ notAsked, all }) =>
			`${number(notAsked)} of the ${number(all)} clot questions ${plural(notAsked, 'was', 'were')} ` +
			'not asked: the score may be different.',
	}),
}
