/** The findings of a planned season. */
import type { Holdable, HoldUntil } from '../../../visit/holdables.ts'
import { alsoTo, sentence } from '../../sentence.ts'
import { amount, count, fullDay, number, ofSide, plural, terms, together } from '../format.ts'
import { holdableNames, untilNames } from '../gate.ts'
import { type OpenLevel, openLevelWords } from './levels.ts'
import { called, type NamedPair } from './wearing.ts'

type Conditions = readonly string[]
type Held = { holds: readonly { what: Holdable; until: HoldUntil }[] }
/** 'Held: matches, until the result of imaging is recorded'. */
const heldWords = (holds: Held['holds']): string =>
	`Held: ${holds
		.map(({ what, until }) => `${holdableNames[what]}, until ${untilNames[until]}`)
		.join('; ')}`
const whole = {
	'season.screening-first': sentence<{ action: string }>({
		clinician: () =>
			'The warning signs of this visit come first: the plan holds only once what was done about ' +
			'them is recorded.',
		player: () => 'The warning signs come first. Do what you were told before you play.',
	}),
	'season.held': sentence<Held>({
		clinician: ({ holds }) => `Nothing is planned. ${heldWords(holds)}.`,
		player: () => 'No session is planned for you now. First it must be looked at.',
		coach: () => 'No session is planned for now.',
	}),
	'season.match-held': sentence<Held>({
		clinician: ({ holds }) => `No match is planned. ${heldWords(holds)}.`,
		player: () => 'No match is planned for you now. You may train as you were told.',
		coach: () => 'No match for now; trainings as planned.',
	}),
	'season.impact-held': sentence<Held>({
		clinician: ({ holds }) =>
			`Trainings are planned without running and jumping. ${heldWords(holds)}.`,
		player: () => 'Train without running and jumping for now.',
		coach: () => 'Trains without running and jumping for now.',
	}),
	'season.time-limit': sentence<{ gapPercent: number; open?: readonly OpenLevel[] }>({
		clinician: ({ gapPercent, open = [] }) =>
			'The time limit was reached: this is the best plan found, ' +
			(open.length > 0
				? `${open.map(openLevelWords).join('; ')}.`
				: `within ${amount(gapPercent, '%', 2)} of the best possible.`),
	}),
	'season.no-sessions': sentence({
		clinician: () => 'No session lies ahead: nothing was planned.',
	}),
	'season.stop-bone-stress': sentence<{ conditions: Conditions }>({
		clinician: ({ conditions }) =>
			`No session is planned while ${terms(conditions)} is current: stop impact first. Set it to ` +
			'recovering when play may begin again.',
		player: () => 'No session is planned for you now. Stop running and jumping first.',
	}),
	'season.stop-sensation': sentence<{ conditions: Conditions }>({
		clinician: ({ conditions }) =>
			`No rotation is planned with ${terms(conditions)}: each boot needs a review of its own ` +
			'before it is worn.',
		player: () => 'No boots are planned for you yet. Each pair must be checked first.',
	}),
	'season.stopped-by-sign': sentence<{
		sides: readonly string[]
		/** ids of the signs, and each as the clinician reads it */
		items: readonly string[]
		signs: readonly string[]
		/** the assessment is signed: a new one is needed to record it */
		isSigned: boolean
	}>({
		clinician: ({ sides, signs, isSigned }) =>
			together(
				`The rotation is stopped for ${ofSide(sides.length > 1 ? 'both' : (sides[0] ?? 'none'), 'foot', 'feet')} by a warning sign.`,
				...new Set(signs),
				`Record in Decide what was done about it${isSigned ? ' (open a new assessment)' : ''}, ` +
					'then plan.',
			),
	}),
	'season.lay-off': sentence<{
		days: number
		from: string
		weekMinutes: readonly number[]
		usualMinutes: number
	}>({
		clinician: ({ days, from, weekMinutes, usualMinutes }) =>
			`After ${amount(days, 'days', 0)} off from ${fullDay(from)} the load comes back step by ` +
			`step: ${weekMinutes
				.map((minutes, week) => `at most ${amount(minutes, 'minutes', 0)} in week ${week + 1}`)
				.join(', ')}, then the usual ${number(usualMinutes, 0)}. The sessions are shortened for ` +
			'it. This is advice, no release to play.',
		player: ({ weekMinutes }) =>
			`After your time off you come back step by step. Play at most ` +
			`${amount(weekMinutes[0] ?? 0, 'minutes', 0)} in the first week. Ask first if you may play.`,
		coach: ({ weekMinutes, usualMinutes }) =>
			`Comes back step by step: ${weekMinutes
				.map((minutes, week) => `at most ${amount(minutes, 'minutes', 0)} in week ${week + 1}`)
				.join(', ')}, then the usual ${number(usualMinutes, 0)}. This is no release to play.`,
	}),
}
const limits = {
	'season.cap-low-offset': sentence<{
		conditions: Conditions
		leastMm: number
		mostMinutes: number
	}>({
		clinician: ({ conditions, leastMm, mostMinutes }) =>
			`Boots with less than ${amount(leastMm, 'mm')} from heel to forefoot, inserts included, are ` +
			`limited to ${amount(mostMinutes, 'minutes', 0)} a week while ${terms(conditions)} ` +
			`${plural(conditions.length, 'lasts', 'last')}. A heel raise inside them lifts the limit.`,
		player: ({ mostMinutes }) =>
			`Wear your flat boots for at most ${amount(mostMinutes, 'minutes', 0)} a week for now.`,
		coach: ({ mostMinutes }) =>
			`Wears flat boots for at most ${amount(mostMinutes, 'minutes', 0)} a week.`,
	}),
	'season.cap-studs': sentence<{
		conditions: Conditions
		firstMinutes: number
		secondMinutes: number
		fourthMinutes: number
	}>({
		clinician: ({ conditions, firstMinutes, secondMinutes, fourthMinutes }) =>
			`Studded boots come back step by step after ${terms(conditions)}: at most ` +
			`${amount(firstMinutes, 'minutes', 0)} in the first week, ${number(secondMinutes, 0)} in ` +
			`the second, ${number(fourthMinutes, 0)} in the fourth.`,
		player: ({ firstMinutes }) =>
			'Boots with studs come back step by step. Wear them for at most ' +
			`${amount(firstMinutes, 'minutes', 0)} in the first week.`,
		coach: ({ firstMinutes, secondMinutes, fourthMinutes }) =>
			`Wears studs for at most ${amount(firstMinutes, 'minutes', 0)} in the first week, ` +
			`${number(secondMinutes, 0)} in the second, ${number(fourthMinutes, 0)} in the fourth.`,
	}),
}
const calendar = {
	'season.overlap': sentence<{ sessions: number }>({
		clinician: ({ sessions }) =>
			`${count(sessions, 'session')} ${plural(sessions, 'overlaps', 'overlap')} another. Cancel ` +
			'one of the two.',
		player: () => 'Some of your sessions are at the same time. Ask which one to leave out.',
	}),
	'season.matches-close': sentence<{ matches: number; hours: number }>({
		clinician: ({ matches, hours }) =>
			`${count(matches, 'match', 'matches')} ${plural(matches, 'follows', 'follow')} another ` +
			`within ${amount(hours, 'hours')}.`,
	}),
	'season.turf-share': sentence<{ percent: number }>({
		clinician: ({ percent }) =>
			`${amount(percent, '%', 0)} of the season's time is on artificial turf. Playing mostly on ` +
			'it is associated with fifth metatarsal stress fracture; no choice of boots changes this ' +
			'share.',
	}),
	'season.no-pair': sentence<{ sessions: number }>({
		clinician: ({ sessions }) =>
			`In ${count(sessions, 'session')} no pair may be worn. See what to buy, or change the ` +
			`${plural(sessions, 'session')}.`,
		player: ({ sessions }) => `You have no pair for ${count(sessions, 'session')} yet.`,
		coach: ({ sessions }) => `No pair to wear yet in ${count(sessions, 'session')}.`,
	}),
	'season.not-dry': sentence<{ sessions: number }>({
		clinician: ({ sessions }) => `In ${count(sessions, 'session')} the boots may not be dry yet.`,
		player: ({ sessions }) =>
			`In ${count(sessions, 'session')} your boots may not be dry yet. Dry them well.`,
	}),
	'season.unfamiliar': sentence<{ sessions: number }>({
		clinician: ({ sessions }) =>
			`${count(sessions, 'match', 'matches')} ${plural(sessions, 'is', 'are')} played in a pair ` +
			'not worn in training shortly before.',
	}),
	'season.pin': sentence<{ sessions: number }>({
		clinician: ({ sessions }) =>
			`${number(sessions, 0)} pinned ${plural(sessions, 'session')} could not be given the ` +
			'pinned pair.',
	}),
	'season.pin-unknown': sentence<{ date: string }>({
		clinician: ({ date }) =>
			`The pair pinned on ${fullDay(date)} is not among the pairs that can be planned.`,
	}),
}
const pairs = {
	'season.left-off': sentence<NamedPair>({
		clinician: (pair) => `Pair ${called(pair)} is not planned: it is not worn as it is.`,
		player: (pair) => `Do not wear pair ${called(pair)} as it is.`,
	}),
	'season.training-only': sentence<NamedPair>({
		clinician: (pair) => `Pair ${called(pair)} is planned for trainings only.`,
		player: (pair) => `Wear pair ${called(pair)} in training only.`,
		coach: (pair) => `Pair ${called(pair)} is for training only.`,
	}),
	'season.replace-by': sentence<NamedPair & { by: string }>({
		clinician: ({ by, ...pair }) =>
			`Pair ${called(pair)} is to be replaced by ${fullDay(by)}: it is not planned after that day.`,
		player: ({ by, ...pair }) =>
			`Replace pair ${called(pair)} by ${fullDay(by)}. Do not wear it after that day.`,
		coach: ({ by, ...pair }) => `Pair ${called(pair)} is not worn after ${fullDay(by)}.`,
	}),
	'season.no-sole': sentence<NamedPair>({
		clinician: (pair) => `Pair ${called(pair)} is left out: its sole is not recorded.`,
	}),
	'season.minutes-unknown': sentence<NamedPair>({
		clinician: (pair) =>
			`Minutes worn are not recorded for pair ${called(pair)}: its wear is counted from 0.`,
	}),
	'season.worn-out': sentence<NamedPair & { by: string }>({
		clinician: ({ by, ...pair }) =>
			`Pair ${called(pair)} reaches the end of its expected life by ${fullDay(by)}.`,
		player: ({ by, ...pair }) => `Pair ${called(pair)} will be worn out by ${fullDay(by)}.`,
	}),
	'season.wear-or-buy': sentence<NamedPair & { matches: number; minutes: number }>({
		clinician: ({ matches, minutes, ...pair }) =>
			`${count(matches, 'match', 'matches')} ${plural(matches, 'has', 'have')} no pair, as the ` +
			`expected life of pair ${called(pair)} ends. Choose: wear it ` +
			`${amount(minutes, 'minutes', 0)} longer (look at studs, counter and sole, then raise its ` +
			'expected life), or buy.',
	}),
	'season.wear-check': alsoTo(
		sentence<NamedPair & { by: string }>({
			clinician: ({ by, ...pair }) =>
				`Check studs, counter and sole of pair ${called(pair)} by ${fullDay(by)}.`,
			player: ({ by, ...pair }) =>
				`Look at the studs, heel and sole of pair ${called(pair)} by ${fullDay(by)}.`,
		}),
		'player',
	),
	'season.outgrown': sentence<NamedPair & { by: string; measureBy: string }>({
		clinician: ({ by, measureBy, ...pair }) =>
			`At the usual rate of growth pair ${called(pair)} is too short by ${fullDay(by)}; measure ` +
			`the feet again by ${fullDay(measureBy)}.`,
		player: ({ by, measureBy, ...pair }) =>
			`Pair ${called(pair)} may be too short by ${fullDay(by)}. Have your feet measured again by ` +
			`${fullDay(measureBy)}.`,
	}),
	'season.too-short': sentence<NamedPair>({
		clinician: (pair) => `Pair ${called(pair)} is too short already. Replace it now.`,
		player: (pair) => `Pair ${called(pair)} is too short for you now. You need a new pair.`,
	}),
	'season.break-in': sentence<
		NamedPair & {
			firstMinutes: number
			trainings: number
			until: string
			/** the share of the usual step, where an insert is new too */
			insertPercent?: number
		}
	>({
		clinician: ({ firstMinutes, trainings, until, insertPercent, ...pair }) =>
			together(
				`Break in pair ${called(pair)}: twice at home for ${amount(firstMinutes, 'minutes', 0)}, ` +
					`then in ${count(trainings, 'training')} until ${fullDay(until)}, and only then in a ` +
					'match, with no hot spot left. With a blister or bone pain go back one step.',
				insertPercent !== undefined &&
					`Steps are ${amount(insertPercent, '%', 0)} of the usual ones, as an insert is new too.`,
			),
		player: ({ firstMinutes, trainings, until, ...pair }) =>
			`Wear in pair ${called(pair)} step by step. Start at home: twice for ` +
			`${amount(firstMinutes, 'minutes', 0)}. Then wear it in ${count(trainings, 'training')} until ` +
			`${fullDay(until)}. Do not play a match in it before. If it rubs or hurts, go back one step.`,
		coach: ({ until, ...pair }) =>
			`Wears in pair ${called(pair)} in training until ${fullDay(until)}; no match in it before.`,
	}),
	'season.break-in-late': sentence<NamedPair>({
		clinician: (pair) =>
			`Pair ${called(pair)} is not broken in before the season ends: too few trainings suit it.`,
		player: (pair) =>
			`Pair ${called(pair)} will not be worn in this season. Do not play a match in it.`,
	}),
	'season.share-over': sentence<NamedPair & { percent: number; mostPercent: number }>({
		clinician: ({ percent, mostPercent, ...pair }) =>
			`Pair ${called(pair)} is worn in ${amount(percent, '%', 0)} of the training time; at most ` +
			`${amount(mostPercent, '%', 0)} was asked for. Other rules and wishes of the plan weigh more.`,
	}),
	'season.share-under': sentence<NamedPair & { percent: number; leastPercent: number }>({
		clinician: ({ percent, leastPercent, ...pair }) =>
			`Pair ${called(pair)} is worn in ${amount(percent, '%', 0)} of the training time; at least ` +
			`${amount(leastPercent, '%', 0)} was asked for. Other rules and wishes of the plan weigh more.`,
	}),
}
export const seasonFindingSentences = { ...whole, ...limits, ...calendar, ...pairs }
