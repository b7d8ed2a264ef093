/** What is said of a fixture list that is read in: what is wrong, what is asked, what is noted. */
import { sentence } from '../../sentence.ts'
import { amount, count, day, fullDay, listed, number, plural } from '../format.ts'

/** Why a part of a calendar cannot be read. */
export type ListFlaw =
	| { is: 'repeats-within-a-day'; every: 'second' | 'minute' | 'hour' }
	| { is: 'repeats-without-end'; most: number }
	| { is: 'no-end-line' }
	/** `met`: what the reader of the format says of the text it met, where it says it */
	| { is: 'not-as-written'; met?: string }
type DateOrder = 'day-month' | 'month-day'
type PartKind = 'event' | 'time-zone'

/** Why a part of a calendar cannot be read, inside a sentence. */
export function flawWords(flaw: ListFlaw): string {
	if (flaw.is === 'repeats-within-a-day')
		return `it repeats every ${flaw.every}, which no session does`
	if (flaw.is === 'repeats-without-end')
		return (
			`it repeats more than ${number(flaw.most, 0)} times before the season ends; let it begin ` +
			'later'
		)
	if (flaw.is === 'no-end-line') return 'its END line is missing'
	return flaw.met ?? 'its lines are not as a calendar has them'
}
const zonesInstead = 'Times that name it go by the zones of this PC, or are asked about.'
const byHand = 'Enter it by hand.'
const partWords: Record<PartKind, string> = { event: 'event', 'time-zone': 'time zone' }
const dateForms: Record<DateOrder, string> = {
	'day-month': 'DD/MM/YYYY',
	'month-day': 'MM/DD/YYYY',
}
type Typed = {
	/** as a spreadsheet counts it */
	row: number
	given: string
}
const rowWords = ({ row, given }: Typed, what: string, allowed: string): string =>
	`Row ${row}: ${what} not understood, given "${given}", allowed: ${allowed}`

const tables = {
	'season.row-marks': sentence<{ row: number }>({
		clinician: ({ row }) =>
			`Row ${row}: a quotation mark is not closed, or stands inside a cell. Check its quotation ` +
			'marks.',
	}),
	'season.row-date': sentence<Typed & { order: DateOrder }>({
		clinician: ({ order, ...typed }) =>
			rowWords(typed, 'date', `YYYY-MM-DD or ${dateForms[order]}`),
	}),
	'season.row-time': sentence<Typed>({
		clinician: (typed) => rowWords(typed, 'time', 'HH:MM, or 6:30 pm'),
	}),
	'season.row-ground': sentence<Typed & { allowed: readonly string[] }>({
		clinician: ({ allowed, ...typed }) => rowWords(typed, 'ground', allowed.join(', ')),
	}),
	'season.row-length': sentence<Typed & { leastMinutes: number; mostMinutes: number }>({
		clinician: ({ leastMinutes, mostMinutes, ...typed }) =>
			rowWords(
				typed,
				'length',
				`${number(leastMinutes, 0)} to ${amount(mostMinutes, 'minutes', 0)}`,
			),
	}),
	'season.table-mixed-dates': sentence({
		clinician: () =>
			'The column Date mixes day first and month first. Write the dates as YYYY-MM-DD.',
	}),
	'season.table-empty': sentence({
		clinician: () => 'The file is empty. Export the list again as CSV.',
	}),
	'season.table-no-dates': sentence<{ given: readonly string[] }>({
		clinician: ({ given }) =>
			`No column of dates was found, given ${given.join(', ')}, allowed: a first row with a column ` +
			'named Date.',
	}),
}
const calendars = {
	'season.calendar-none': sentence({
		clinician: () => 'The file holds no calendar. Export the calendar again as .ics.',
	}),
	'season.calendar-unreadable': sentence<{ flaw: ListFlaw }>({
		clinician: ({ flaw }) =>
			`This is not an iCalendar file (${flawWords(flaw)}). Export the calendar again as .ics.`,
	}),
	'season.part-unreadable': sentence<{
		kind: PartKind
		/** among the parts of its kind, from 1 */
		number: number
		/** as the file says it */
		name: string
		flaw: ListFlaw
	}>({
		clinician: ({ kind, name, flaw }) =>
			`The ${partWords[kind]} "${name}" could not be read (${flawWords(flaw)}). ` +
			(kind === 'event' ? byHand : zonesInstead),
	}),
	'season.event-unreadable': sentence<{ number?: number; title?: string; flaw: ListFlaw }>({
		clinician: ({ number: place, title, flaw }) =>
			`${title === undefined ? `Event ${place}` : `"${title}"`} could not be read ` +
			`(${flawWords(flaw)}). ${byHand}`,
	}),
	'season.event-no-uid': sentence<{ number: number; title?: string }>({
		clinician: ({ number: place, title }) =>
			`Event ${place} (${title ?? 'without title'}) has no UID and cannot be kept up to date. Ask ` +
			'for a list with UIDs, or enter it by hand.',
	}),
	'season.event-no-start': sentence<{ title: string }>({
		clinician: ({ title }) => `"${title}" has no start. ${byHand}`,
	}),
	'season.event-no-date': sentence<{ title: string; property: string; given: string }>({
		clinician: ({ title, property, given }) =>
			`"${title}": ${property} is no date, given ${given}, allowed: a day and time of the ` +
			`calendar. ${byHand}`,
	}),
	'season.event-too-many-days': sentence<{
		title: string
		date: string
		last: string
		mostDays: number
	}>({
		clinician: ({ title, date, last, mostDays }) =>
			`${title} from ${fullDay(date)}: too long, given an all-day event until ${fullDay(last)}, ` +
			`allowed: at most ${amount(mostDays, 'days', 0)}. Enter its sessions by hand.`,
	}),
	'season.event-too-long': sentence<{
		title: string
		date: string
		minutes: number
		mostMinutes: number
	}>({
		clinician: ({ title, date, minutes, mostMinutes }) =>
			`${title} on ${fullDay(date)}: too long, given ${amount(minutes, 'minutes', 0)}, allowed: 1 ` +
			`to ${number(mostMinutes, 0)}. ${byHand}`,
	}),
	'season.list-too-many': sentence<{ given: number; most: number }>({
		clinician: ({ given, most }) =>
			`The list holds too many sessions within the season, given ${number(given, 0)}, allowed: at ` +
			`most ${number(most, 0)}. Nothing of it is taken over: export fewer calendars, or a shorter ` +
			'time.',
	}),
}
const notes = {
	'season.zone-nameless': sentence({
		clinician: () => 'A time zone of the list has no name, and was left out.',
	}),
	'season.zone-no-offset': sentence<{ name: string }>({
		clinician: ({ name }) => `The time zone "${name}" of the list has no offset. ${zonesInstead}`,
	}),
	'season.zone-unreadable': sentence<{ name?: string; flaw: ListFlaw }>({
		clinician: ({ name, flaw }) =>
			`${name === undefined ? 'A time zone' : `The time zone "${name}"`} of the list cannot be ` +
			`read (${flawWords(flaw)}). ${zonesInstead}`,
	}),
	'season.times-floating': sentence<{ zone: string }>({
		clinician: ({ zone }) =>
			`Some times name no time zone: they were taken as the clinic's own (${zone}).`,
	}),
	'season.length-assumed': sentence<{ sessions: number }>({
		clinician: ({ sessions }) =>
			`${count(sessions, 'session')} ${plural(sessions, 'has', 'have')} no length in the list: ` +
			'the usual one was taken.',
	}),
}
const questions = {
	'season.ask-kind': sentence<{ title: string }>({
		clinician: ({ title }) => `Is "${title}" a training or a match?`,
	}),
	'season.ask-surface': sentence<{ of: 'list' | 'sessions-without-place' }>({
		clinician: ({ of }) =>
			of === 'list'
				? 'The list names no surface. Which one is it?'
				: 'The list names no place for some sessions. Which surface are they on?',
	}),
	'season.ask-surface-named': sentence<{ named: string }>({
		clinician: ({ named }) => `Which surface is "${named}"?`,
	}),
	'season.ask-surface-at': sentence<{ place: string }>({
		clinician: ({ place }) => `Which surface is at "${place}"?`,
	}),
	'season.ask-zone': sentence<{ name: string }>({
		clinician: ({ name }) =>
			`The list names a time zone nobody here knows: "${name}". Which zone is it?`,
	}),
	'season.ask-date-order': sentence<{ given: string; dayFirst?: string; monthFirst?: string }>({
		clinician: ({ given, dayFirst, monthFirst }) =>
			`Is ${given} ${dayFirst === undefined ? 'no date' : day(dayFirst)} (day first) or ` +
			`${monthFirst === undefined ? 'no date' : day(monthFirst)} (month first)?`,
	}),
}
/** What is wrong with an answer to a question of a list. */
const answers = {
	'season.answer-unknown': sentence<{ given: string; allowed: readonly string[] }>({
		clinician: ({ given, allowed }) =>
			`unknown, given "${given}", allowed: ${listed(allowed, 'or')}`,
	}),
	'season.answer-none-of': sentence<{ given: string; allowed: readonly string[] }>({
		clinician: ({ given, allowed }) =>
			`not one of the answers, given "${given}", allowed: ${listed(allowed, 'or')}`,
	}),
}
/** What is offered of what was entered under play. */
const offered = {
	'season.from-play': sentence<{
		matches: number
		trainings: number
		matchMinutes: number
		trainingMinutes: number
		surfaceGiven: boolean
	}>({
		clinician: ({ matches, trainings, matchMinutes, trainingMinutes, surfaceGiven }) =>
			'From play: ' +
			[
				...(matches > 0
					? [`${count(matches, 'match', 'matches')} of ${amount(matchMinutes, 'minutes', 0)}`]
					: []),
				...(trainings > 0
					? [`${count(trainings, 'training')} of ${amount(trainingMinutes, 'minutes', 0)}`]
					: []),
			].join(' and ') +
			` a week. Days${surfaceGiven ? '' : ', surface'} and lengths are chosen by this program, no ` +
			'source: change what differs.',
	}),
}
export const seasonListSentences = {
	...offered,
	...tables,
	...calendars,
	...notes,
	...questions,
	...answers,
}
