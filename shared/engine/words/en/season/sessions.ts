/** Why this pair is worn in a session, and what of the wishes could not be met. */
import type { Sole, Surface } from '../../../visit/terms.ts'
import { alsoTo, sentence } from '../../sentence.ts'
import { amount, article, capital, count, fullDay, number, term } from '../format.ts'
import {
	codeRuleWords,
	type Ground,
	groundWords,
	type Hindrance,
	hindranceWords,
	type Part,
	partsInWords,
	type Seen,
	seenWords,
} from './wearing.ts'

/** Why a pair is needed that the player does not own. */
export type PurchaseNeed =
	| { is: 'worn-out' | 'outgrown' | 'judged'; pair: string; by: string }
	| { is: 'no-pair'; date: string; surface: Surface; ground: Ground }
const replacedAs = {
	'worn-out': 'worn out',
	outgrown: 'likely outgrown',
	judged: 'to be replaced',
} as const
function needWords(need: PurchaseNeed): string {
	if (need.is === 'no-pair')
		return (
			`no pair may be worn on ${fullDay(need.date)} ` + `(${term(need.surface)}, ${need.ground})`
		)
	return `to replace ${need.pair}, ${replacedAs[need.is]} by ${fullDay(need.by)}`
}
type Purchase = {
	sole: Sole
	buyBy: string
	need: PurchaseNeed
	/** sessions without a pair that it could be worn in; older plans have none */
	covers?: { matches: number; trainings: number }
	/** too few trainings that suit it lie before the day it is needed */
	late?: true
}
/** ' It covers 4 matches and 6 trainings that have no pair.'; empty where it covers none. */
function coversWords({ matches, trainings }: NonNullable<Purchase['covers']>): string {
	const told = [
		...(matches > 0 ? [count(matches, 'match', 'matches')] : []),
		...(trainings > 0 ? [count(trainings, 'training')] : []),
	]
	return told.length > 0 ? ` It covers ${told.join(' and ')} that have no pair.` : ''
}
const reasons = {
	'season.already-played': alsoTo(
		sentence({ clinician: () => 'already played' }),
		'player',
		'coach',
	),
	'season.chosen': sentence({
		clinician: () => 'chosen by the clinician',
		player: () => 'Your clinician chose this pair.',
	}),
	'season.step': sentence<{ pair: string; minutes: number }>({
		clinician: ({ pair, minutes }) =>
			`start in ${pair} for ${amount(minutes, 'minutes', 0)} to break them in, then change`,
		player: ({ pair, minutes }) =>
			`Start in ${pair} for ${amount(minutes, 'minutes', 0)}. Then change your boots.`,
		coach: ({ pair, minutes }) =>
			`Starts in ${pair} for ${amount(minutes, 'minutes', 0)}, then changes boots.`,
	}),
	'season.last-step': sentence<{ pair: string }>({
		clinician: ({ pair }) => `${pair} whole session: last steps of breaking in`,
		player: ({ pair }) => `Wear ${pair} for the whole session. They are almost worn in.`,
		coach: ({ pair }) => `Wears ${pair} for the whole session.`,
	}),
	'season.eased': sentence<{ week: number; days: number; minutes: number; fullMinutes: number }>({
		clinician: ({ week, days, minutes, fullMinutes }) =>
			`week ${number(week, 0)} back after ${amount(days, 'days', 0)} off: ` +
			`${number(minutes, 0)} of ${amount(fullMinutes, 'minutes', 0)}`,
		player: ({ minutes, fullMinutes }) =>
			`You are coming back step by step. Play ${number(minutes, 0)} of the ` +
			`${amount(fullMinutes, 'minutes', 0)}.`,
		coach: ({ minutes, fullMinutes }) =>
			`Plays ${number(minutes, 0)} of the ${amount(fullMinutes, 'minutes', 0)}.`,
	}),
	'season.shared': sentence<{ parts: readonly Part[] }>({
		clinician: ({ parts }) => `shared: ${partsInWords(parts)}`,
		player: ({ parts }) => `Wear ${partsInWords(parts)}.`,
		coach: ({ parts }) => `Wears ${partsInWords(parts)}.`,
	}),
	'season.sole-suits': sentence<{ sole: Sole; surface: Surface; ground: Ground }>({
		clinician: ({ sole, surface, ground }) =>
			`${term(sole)} sole suits ${groundWords(surface, ground)}`,
		player: ({ sole, surface, ground }) =>
			`${capital(article(`${term(sole)} sole`))} suits ${groundWords(surface, ground)}.`,
	}),
	'season.hindered': sentence<{ hindrance: Hindrance }>({
		clinician: ({ hindrance }) => hindranceWords(hindrance),
	}),
	'season.worn-for-share': sentence<{ leastPercent: number }>({
		clinician: ({ leastPercent }) =>
			`worn for a share of at least ${amount(leastPercent, '%', 0)} of the training time`,
	}),
	'season.better-elsewhere': sentence<{ pair: string }>({
		clinician: ({ pair }) => `${pair} suit the surface better but are needed elsewhere this week`,
		player: ({ pair }) => `Keep ${pair} for another session this week.`,
	}),
	'season.shares-wear': sentence<{ pair: string }>({
		clinician: ({ pair }) => `shares the wear with ${pair}`,
		player: ({ pair }) => `Take turns with ${pair}, so that both last longer.`,
	}),
	'season.only-pair': sentence({
		clinician: () => 'the only pair that may be worn here',
		player: () => 'This is your only pair for this session.',
	}),
	'season.most-suitable': sentence<{ surface: Surface; ground: Ground }>({
		clinician: ({ surface, ground }) =>
			`the most suitable pair for ${groundWords(surface, ground)}`,
		player: ({ surface, ground }) => `This is your best pair for ${groundWords(surface, ground)}.`,
	}),
}
const unmet = {
	'season.unmet-none-recorded': sentence({
		clinician: () => 'no pair to wear: none is recorded with its sole',
		player: () => 'You have no pair for this session yet. Ask your clinician.',
		coach: () => 'No pair to wear yet.',
	}),
	'season.unmet-no-pair': sentence<{ begun: boolean; hindrances: readonly Hindrance[] }>({
		clinician: ({ begun, hindrances }) =>
			`no pair ${begun ? 'for the rest of the session' : 'to wear'}: ` +
			hindrances.map(hindranceWords).join('; '),
		player: ({ begun }) =>
			begun
				? 'You have no pair for the rest of this session. Ask your clinician.'
				: 'You have no pair for this session yet. Ask your clinician.',
		coach: ({ begun }) =>
			begun ? 'No pair for the rest of the session yet.' : 'No pair to wear yet.',
	}),
	'season.unmet-not-dry': sentence<{
		pair: string
		worn: Seen
		hoursSince: number
		hoursWanted: number
	}>({
		clinician: ({ pair, worn, hoursSince, hoursWanted }) =>
			`${pair} may not be dry: worn ${worn.date === worn.from ? 'earlier ' : ''}` +
			`${seenWords(worn)}, ${number(hoursSince, 0)} h before, ${number(hoursWanted)} h wanted`,
		player: ({ pair }) => `Dry ${pair} well before this session. There is little time.`,
	}),
	'season.unmet-unfamiliar': sentence<{ pair: string; days: number }>({
		clinician: ({ pair, days }) =>
			`no training in ${pair} in the ${amount(days, 'days', 0)} before this match`,
		player: ({ pair }) => `Wear ${pair} once in training before this match.`,
	}),
	'season.unmet-pin': sentence<{ hindrance: Hindrance }>({
		clinician: ({ hindrance }) => `the pinned pair could not be worn. ${hindranceWords(hindrance)}`,
	}),
	'season.unmet-pin-barred': sentence<{ hindrance: Hindrance }>({
		clinician: ({ hindrance }) => `the pinned pair may not be worn. ${hindranceWords(hindrance)}`,
	}),
}
export const seasonSessionSentences = {
	...reasons,
	...unmet,
	'season.buy': sentence<Purchase>({
		clinician: ({ sole, buyBy, need, covers, late }) =>
			`Buy ${article(`${term(sole)} pair`)} by ${fullDay(buyBy)}: ${needWords(need)}. ` +
			(late
				? 'Too few trainings that suit it come before: its breaking in is not over by then.'
				: 'Bought by then, its breaking in is over in time.') +
			(covers ? coversWords(covers) : ''),
		player: ({ sole, buyBy, late }) =>
			`Buy ${article(`${term(sole)} pair`)} by ${fullDay(buyBy)}. ` +
			(late ? 'Wear it in before you play a match in it.' : 'Then you can wear it in first.'),
	}),
	'season.code-rule': sentence<{
		letter: string
		name: string
		code: string
		rule: 'stud-length'
		valueMm: number
		mostMm: number
	}>({
		clinician: ({ letter, name, code, rule, valueMm, mostMm }) =>
			`Pair ${letter} (${name}) is not planned for ${term(code)}: ` +
			`${codeRuleWords[rule](valueMm, mostMm)} are allowed. Put in shorter studs, measure again, ` +
			'then plan.',
		player: ({ name, code, mostMm }) =>
			`Do not wear ${name} for ${term(code)}: the studs are too long. The rule is at most ` +
			`${amount(mostMm, 'mm')}.`,
		coach: ({ name, code }) => `${name}: the studs are too long for ${term(code)}.`,
	}),
}
