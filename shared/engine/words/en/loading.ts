/** What the loading room says. */
import { sentence } from '../sentence.ts'
import { amount, day, number, plural, together } from './format.ts'

const difference = (percent: number): string =>
	`${amount(Math.abs(percent), '%', 0)} ${percent < 0 ? 'less' : 'more'}`
const inAll = (hours: number, freePlayKnown: boolean): string =>
	`${freePlayKnown ? '' : 'at least '}${amount(hours, 'hours')} of sport a week in all`

export const loadingSentences = {
	'loading.hours-over-age': sentence<{ hours: number; ageYears: number; overAge: number }>({
		clinician: ({ hours, ageYears, overAge }) =>
			`${amount(hours, 'hours')} of organised sport a week is more than the age in years ` +
			`(${ageYears})${overAge === 0 ? '' : ` and ${number(overAge)}`}. This has been associated ` +
			'with more serious overuse injuries.',
		player: ({ hours }) =>
			`You do ${amount(hours, 'hours')} of organised sport a week. That is a lot for your age.`,
		guardian: ({ hours }) =>
			`Your child does ${amount(hours, 'hours')} of organised sport a week. That is a lot for ` +
			'this age.',
	}),
	'loading.hours-high': sentence<{ hours: number; mostHours: number; freePlayKnown: boolean }>({
		clinician: ({ hours, mostHours, freePlayKnown }) =>
			`${amount(hours, 'hours')} of sport a week in all` +
			`${freePlayKnown ? '' : ' (free play not recorded)'} is above ${number(mostHours)}, which ` +
			'has been associated with more injuries.',
		player: ({ hours, freePlayKnown }) =>
			`You do ${inAll(hours, freePlayKnown)}. Rest is part of training.`,
		guardian: ({ hours, freePlayKnown }) =>
			`Your child does ${inAll(hours, freePlayKnown)}. Rest is part of training.`,
	}),
	'loading.organised-to-free': sentence<{ mostTimes: number; noFreePlay: boolean }>({
		clinician: ({ mostTimes, noFreePlay }) =>
			`Organised sport is more than ${number(mostTimes)} times free play` +
			`${noFreePlay ? ' (no free play at all)' : ''}. This has been associated with more overuse ` +
			'injuries.',
		player: () => 'Most of your sport is organised. Play more just for fun.',
		guardian: () => 'Most of this sport is organised. More free play would be good.',
	}),
	'loading.one-sport': sentence<{ months: number; mostMonths: number }>({
		clinician: ({ months, mostMonths }) =>
			`${amount(months, 'months')} a year in one sport is more than ${number(mostMonths)}. Playing ` +
			'one sport most of the year has been associated with more injuries.',
		player: ({ months }) =>
			`You play one sport for ${amount(months, 'months')} a year. Try another sport as well.`,
		guardian: ({ months }) =>
			`Your child plays one sport for ${amount(months, 'months')} a year. Another sport as well ` +
			'would be good.',
	}),
	'loading.no-day-off': sentence<{ daysOff: number; leastDays: number }>({
		clinician: ({ daysOff, leastDays }) =>
			`${
				daysOff === 0
					? 'No day of the week is free of sport'
					: `Only ${amount(daysOff, 'days')} of the week ${plural(daysOff, 'is', 'are')} free of sport`
			}: plan at least ${number(leastDays)}.`,
		player: ({ leastDays }) => `Keep at least ${amount(leastDays, 'days')} a week free of sport.`,
		coach: ({ leastDays }) => `Plan at least ${amount(leastDays, 'days')} a week without sport.`,
	}),
	'loading.week': sentence<{
		from: string
		load: number
		changePercent?: number
		/** Where the rise is above what is usual: the usual rise and the most. */
		usual?: { risePercent: number; mostPercent: number }
	}>({
		clinician: ({ from, load, changePercent, usual }) =>
			together(
				`Week from ${day(from)}: session load ${number(load)}.`,
				changePercent !== undefined && `That is ${difference(changePercent)} than the week before.`,
				usual &&
					`Planned rises are usually kept to ${amount(usual.risePercent, '%')} a week and at most ` +
						`${amount(usual.mostPercent, '%')}.`,
				'The studies disagree on whether such changes go with injury, so no risk is shown.',
			),
	}),
	'loading.return-steps': sentence<{
		startPercent: number
		risePercent: number
		easierWeekEvery: number
		weeks: number
	}>({
		clinician: ({ startPercent, risePercent, easierWeekEvery, weeks }) =>
			`Coming back after a bone stress injury: start near ${amount(startPercent, '%')} of the ` +
			`usual weekly load and add at most ${amount(risePercent, '%')} a week, with an easier week ` +
			`every ${amount(easierWeekEvery, 'weeks')}; about ${amount(weeks, 'weeks')} in all. Only once ` +
			'the treating doctor allows impact, free of bone pain; any focal bone pain: back one step ' +
			'and have it seen.',
		player: ({ startPercent, risePercent }) =>
			'Start again only when your doctor allows it and the bone does not hurt. ' +
			`Begin with about ${amount(startPercent, '%')} of a usual week. Add at most ` +
			`${amount(risePercent, '%')} a week. If the bone hurts, go back one step and have it seen.`,
		doctor: ({ startPercent, risePercent, weeks }) =>
			`Return by weekly steps is suggested once you allow impact: from ` +
			`${amount(startPercent, '%')} of the usual load, at most ${amount(risePercent, '%')} more a ` +
			`week, about ${amount(weeks, 'weeks')} in all.`,
	}),
	'loading.force': sentence<{ lowN: number; highN: number }>({
		private: 'weight',
		clinician: ({ lowN, highN }) =>
			`A sidestep puts roughly ${number(lowN, 0)} to ${number(highN, 0)} newtons on one foot: an ` +
			'order of size, not a measurement.',
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const loadingReadings = {
	sessionLoad: 'session load of the week',
	monotony: 'monotony (sample standard deviation)',
	changeFromWeekBefore: 'change from the week before',
}
