/** What the growth room says. */
import { sentence } from '../sentence.ts'
import { amount, day, number, together } from './format.ts'
import { type Lacking, lackingList, maturitySentences } from './growth-maturity.ts'

const parentWords = {
	reported: "The parents' reported statures were adjusted for the usual overstatement.",
	measured: '',
	'not-recorded':
		'Whether the parents were measured or asked is not recorded: their statures are taken as ' +
		'measured.',
} as const
interface RunsOut {
	runsOutOn?: string
	earliest: string
	latest?: string
}
/** When the room of a pair runs out. */
function whenWords({ runsOutOn, earliest, latest }: RunsOut): string {
	const atEarliest = `${day(earliest)} at the earliest`
	if (!runsOutOn) return `${atEarliest}, or not at all`
	return `about ${day(runsOutOn)}, ${atEarliest}${latest ? ` and ${day(latest)} at the latest` : ''}`
}

const statureSentences = {
	'growth.adult-stature': sentence<{
		predictedCm: number
		errorCm: number
		held: boolean
		parents: keyof typeof parentWords
	}>({
		clinician: ({ predictedCm, errorCm, held, parents }) =>
			together(
				`Predicted adult stature about ${amount(predictedCm, 'cm', 0)}, nine times in ten within ` +
					`${amount(errorCm, 'cm')}.`,
				held && 'The equation gave less than the present stature, which is used instead.',
				parentWords[parents],
			),
	}),
	'growth.adult-stature-entered': sentence<{ enteredCm: number; held: boolean }>({
		clinician: ({ enteredCm, held }) =>
			together(
				`An adult stature of ${amount(enteredCm, 'cm')} was entered and stands in place of the ` +
					'equation; its error is not known.',
				held && 'It is below the present stature, which is used instead: check the entry.',
			),
	}),
	'growth.adult-stature-missing': sentence<{ lacking: Lacking }>({
		clinician: ({ lacking }) =>
			`Adult stature cannot be predicted: ${lackingList(lacking)} not recorded. Both parents are ` +
			'needed.',
	}),
	'growth.adult-stature-age': sentence<{ ageYears: number; min: number; max: number }>({
		clinician: ({ ageYears, min, max }) =>
			`Adult stature is not predicted at ${amount(ageYears, 'years', 2)}: the table runs from ` +
			`${number(min)} to ${amount(max, 'years')}.`,
	}),
	'growth.centile-age': sentence<{ fromMonths: number }>({
		clinician: ({ fromMonths }) =>
			`No growth centiles: the reference table starts at ${amount(fromMonths, 'months')} of age.`,
	}),
	'growth.centiles': sentence({
		private: 'weight',
		clinician: () =>
			'Centiles of stature and mass are background for shoe fit and load, not a diagnosis.',
	}),
	'growth.shrunk': sentence<{ since: string }>({
		clinician: ({ since }) =>
			`No growth rate: stature is lower than on ${day(since)}. Measure it again, by the same ` +
			'observer and at the same time of day.',
	}),
	'growth.velocity-short': sentence<{ since: string; days: number; leastDays: number }>({
		clinician: ({ since, days, leastDays }) =>
			`No growth rate: only ${amount(days, 'days')} since the stature of ${day(since)}; at least ` +
			`${number(leastDays)} are needed.`,
	}),
	'growth.velocity': sentence<{
		since: string
		cmPerYear: number
		errorCmPerYear: number
		trendOnly: boolean
		withinError: boolean
	}>({
		clinician: ({ since, cmPerYear, errorCmPerYear, trendOnly, withinError }) =>
			together(
				`Growth since ${day(since)}: ${amount(cmPerYear, 'cm')} a year, give or take ` +
					`${number(errorCmPerYear)}${trendOnly ? ' (short interval: a trend only)' : ''}.`,
				withinError && 'This is no more than measuring error.',
			),
	}),
	'growth.fast': sentence<{ sure: boolean; fastCmPerYear: number }>({
		clinician: ({ sure, fastCmPerYear }) =>
			`${
				sure
					? 'Growth this fast'
					: `With its error the rate may lie below ${amount(fastCmPerYear, 'cm')} a year, but ` +
						'growth that fast'
			} has been associated with more injuries in one group of boys. Watch the load and the ` +
			'growing heel and knee.',
		player: ({ sure }) =>
			`You ${sure ? 'are' : 'may be'} growing fast. Tell us if a heel or a knee hurts.`,
		guardian: ({ sure }) =>
			`Your child ${sure ? 'is' : 'may be'} growing fast. Tell us if a heel or a knee hurts.`,
	}),
}
const footSentences = {
	'growth.foot-forecast': sentence({
		clinician: () =>
			'The foot forecast uses the mean growth of one group of children; the width of its band is ' +
			'a choice. Growth of one player cannot be foretold.',
	}),
	'growth.foot-fast': sentence<{ real: boolean; since: string }>({
		clinician: ({ real, since }) =>
			real
				? 'The foot is growing fast. Foot growth often comes before the height spurt, about two ' +
					'years at group level: measure feet and stature again soon.'
				: `The foot may be growing fast, but the change since ${day(since)} is within measuring ` +
					'error: measure again soon.',
		player: ({ real }) =>
			`Your feet ${real ? 'are' : 'may be'} growing fast. Have them measured again soon.`,
	}),
	'growth.toe-room': sentence<{
		pair: string
		toeRoomMm: number
		leastMm: number
		runsOutOn?: string
		earliest: string
		latest?: string
		measureBefore: boolean
	}>({
		clinician: ({ pair, toeRoomMm, leastMm, measureBefore, ...when }) =>
			together(
				`Toe room in ${pair} (${amount(toeRoomMm, 'mm')}) falls to ${amount(leastMm, 'mm')} ` +
					`${whenWords(when)}, by the mean growth of one group of children.`,
				measureBefore && 'Measure again before then.',
			),
		player: ({ pair, earliest }) =>
			`You may outgrow ${pair} from ${day(earliest)}. Have your feet measured before then.`,
	}),
}
export const growthSentences = {
	...maturitySentences,
	...statureSentences,
	...footSentences,
}
/** Names of its numbers that are no measure of the visit. */
export const growthReadings = {
	ageYears: 'age',
	ageMonths: 'age in months',
	predictedAdultStatureCm: 'predicted adult stature',
	lowerBoundCm: 'lower bound',
	upperBoundCm: 'upper bound',
	percentAdultStature: 'share of predicted adult stature',
	maturityOffsetYears: 'maturity offset',
	sittingRatio: 'sitting height / stature',
	stageMethod: 'method now',
	stageMethodBefore: 'method then',
	statureCentile: 'stature centile',
	massCentile: 'mass centile',
	statureChangeCm: 'change of stature',
	intervalDays: 'interval',
	growthRate: 'growth rate',
	growthRateError: 'error (95 %)',
	footGrowthRate: 'foot growth',
	footChangeMm: 'change of the longer foot',
	toeRoomMm: 'toe room now',
}
