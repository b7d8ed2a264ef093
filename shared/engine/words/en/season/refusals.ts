/** Why something about a season was refused, and what to do. */
import { sentence } from '../../sentence.ts'
import { amount, day, number } from '../format.ts'
import { flawWords, type ListFlaw } from './lists.ts'
import { type Barred, limitWords, type WeeklyLimit } from './wearing.ts'

/** A hard rule that a rotation breaks in a session, or in a week. */
export type Breach = { date?: string; start?: string } & (
	| { is: 'length'; expected: number; planned: number }
	| { is: 'settled' | 'soaked' | 'unshared' | 'crowded' | 'held'; pair?: string }
	| { is: 'minutes'; planned: number; minutes: number }
	| { is: 'short-part'; pair: string; minutes: number; leastMinutes: number }
	| { is: 'barred'; pair: string; barred: Barred }
	| { is: 'break-in'; pair: string; minutes: number; mostMinutes: number }
	| { is: 'match-too-early'; pair: string; minutes: number; fromMinutes: number }
	| { is: 'life'; pair: string; lifeMinutes: number }
	| { is: 'week'; minutes: number; limit: WeeklyLimit }
)
type Spoken = { [Kind in Breach['is']]: (breach: Extract<Breach, { is: Kind }>) => string }
const breachTable: Spoken = {
	length: ({ planned, expected }) => `${planned} sessions planned, ${expected} expected`,
	settled: ({ pair }) => `settled minutes of ${pair} are missing`,
	soaked: ({ pair }) => `${pair} is soaked from an earlier session`,
	held: () => 'a match that waits',
	unshared: () => 'more than one pair in a session that is not shared',
	crowded: () => 'more than two pairs in one session',
	minutes: ({ planned, minutes }) =>
		`${number(planned)} of ${amount(minutes, 'minutes')} are planned`,
	'short-part': ({ pair, minutes, leastMinutes }) =>
		`${pair} is worn for ${amount(minutes, 'minutes')} only, at least ${number(leastMinutes)} are ` +
		'wanted',
	barred: ({ pair }) => `${pair} may not be worn`,
	'break-in': ({ pair, minutes, mostMinutes }) =>
		`${pair} is worn ${amount(minutes, 'minutes')}, break-in allows ${number(mostMinutes)}`,
	'match-too-early': ({ pair, minutes, fromMinutes }) =>
		`${pair} has ${amount(minutes, 'minutes')} of ${number(fromMinutes)} before a match`,
	life: ({ pair, lifeMinutes }) =>
		`${pair} is worn past its life of ${amount(lifeMinutes, 'minutes')}`,
	week: ({ minutes, limit }) => `${amount(minutes, 'minutes')} in the week, ${limitWords(limit)}`,
}
const breachWords = (breach: Breach): string =>
	[breach.date && day(breach.date), breach.start].filter(Boolean).join(', ') +
	(breach.date === undefined ? '' : ': ') +
	(breachTable[breach.is] as (breach: Breach) => string)(breach)

const planning = {
	'season.merged-away': sentence({
		clinician: () => 'This record was merged into another player. Open that player.',
	}),
	'season.no-assessment': sentence({
		clinician: () =>
			'This player has no assessment yet. Start one and enter the pairs they wear, then plan the ' +
			'season.',
	}),
	'season.no-sole-recorded': sentence<{ visitDate: string }>({
		clinician: ({ visitDate }) =>
			`No pair with its sole is recorded on ${day(visitDate)}. Enter the pairs in the assessment, ` +
			'each with its sole, then plan.',
	}),
	'season.empty': sentence({
		clinician: () =>
			'The season is empty. Enter its first and last day and its sessions, then plan.',
	}),
	'season.planned-already': sentence({
		clinician: () => 'This season is being planned already. Wait for it, or cancel it.',
	}),
	'season.left-meanwhile': sentence({
		clinician: () =>
			'The records were locked or another person took over while the season was planned. Nothing ' +
			'was kept: plan again.',
	}),
	'season.nothing-to-take': sentence({
		clinician: () => 'No plan waits to be taken. Plan again, and look at what would change.',
	}),
	'season.changed-since': sentence({
		clinician: () =>
			'Sessions, pairs or the plan changed since this plan was made. Nothing was kept: plan again.',
	}),
	'season.cancelled': sentence({
		clinician: () => 'Planning was cancelled. Nothing was changed.',
	}),
	'season.solver-stopped': sentence({
		clinician: () => 'The season could not be planned: the solver stopped. Try again.',
	}),
	'season.solver-failed': sentence<{ reported?: string }>({
		clinician: ({ reported }) =>
			`The season could not be planned (${reported ?? 'the solver gave no reason'}). Try again.`,
	}),
	'season.plan-unsound': sentence<{ breaches: readonly Breach[] }>({
		clinician: ({ breaches }) =>
			'The plan breaks a rule and was not kept: ' +
			`${breaches.slice(0, 3).map(breachWords).join('; ')}.`,
	}),
}
const keeping = {
	'season.not-planned': sentence({
		clinician: () => 'The season is not planned yet. Plan it first.',
	}),
	'season.out-of-date': sentence({
		clinician: () =>
			'The sessions, pairs or findings changed since this plan was made. Plan the season again ' +
			'first.',
	}),
	'season.changed-elsewhere': sentence({
		clinician: () =>
			'The season was changed elsewhere since you opened it. Nothing was overwritten: open it ' +
			'again and repeat the change.',
	}),
	'season.ends-before-it-begins': sentence({
		clinician: () => 'The season ends before it begins. Nothing was changed.',
	}),
	'season.exception-ends-before-it-begins': sentence({
		clinician: () => 'An exception ends before it begins. Nothing was changed.',
	}),
	'season.day-too-early': sentence<{ given: string; earliest: string }>({
		clinician: ({ given, earliest }) =>
			`before the first day, given ${day(given)}, allowed: ${day(earliest)} or later`,
	}),
	'season.pattern-twice': sentence({
		clinician: () => 'Two rows of the weekly pattern have the same id. Nothing was changed.',
	}),
	'season.id-twice': sentence<{ given: string }>({
		clinician: ({ given }) =>
			`not unique, given "${given}" twice, allowed: an id of its own for each row`,
	}),
	'season.wrong-record': sentence<{ record: string; what: string }>({
		clinician: ({ record, what }) =>
			`Record ${record} is not the ${what} that its card says. Nothing was changed: restore it ` +
			'from a backup.',
	}),
	'season.answer-unusable': sentence({
		clinician: () => 'An answer cannot be used. Nothing was changed.',
	}),
	'season.no-days': sentence({
		clinician: () =>
			'The season has no first and last day yet. Enter them first: sessions outside it are left ' +
			'out.',
	}),
	'season.list-too-slow': sentence<{ seconds: number; at?: string }>({
		clinician: ({ seconds, at }) =>
			`The list could not be read within ${amount(seconds, 'seconds', 0)}. Nothing was changed. ` +
			(at === undefined
				? 'Export this season alone and read it again.'
				: `It stopped at "${at}": take this event out, or enter it by hand.`),
	}),
	'season.list-unreadable': sentence<{ flaw: ListFlaw }>({
		clinician: ({ flaw }) =>
			`The list could not be read (${flawWords(flaw)}). Nothing was changed. Export it again.`,
	}),
}
export const seasonRefusalSentences = { ...planning, ...keeping }
