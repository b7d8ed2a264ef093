/** Calendars and tables with lines lost, doubled, cut and exchanged: told, never thrown. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../../electron/calendar/csv.ts'
import { readCalendar } from '../../electron/calendar/read.ts'
import type { Incoming } from '../../shared/engine/season/preview.ts'
import { calendar, choices, event } from './calendar-text.ts'

const zoneOf = (...first: string[]) => [
	'BEGIN:VTIMEZONE',
	...first,
	'BEGIN:STANDARD',
	'DTSTART:20200405T030000',
	'RRULE:FREQ=YEARLY;BYMONTH=4;BYDAY=1SU',
	'TZOFFSETFROM:+1100',
	'TZOFFSETTO:+1000',
	'END:STANDARD',
	'BEGIN:DAYLIGHT',
	'DTSTART:20201004T020000',
	'RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=1SU',
	'TZOFFSETFROM:+1000',
	'TZOFFSETTO:+1100',
	'END:DAYLIGHT',
	'END:VTIMEZONE',
]
const plain = event('plain', 'DTSTART:20270401T080000Z', 'DTEND:20270401T093000Z', 'SUMMARY:Match')
const zoned = (zone: string) =>
	event(
		'zoned',
		`DTSTART;TZID=${zone}:20270302T180000`,
		`DTEND;TZID=${zone}:20270302T193000`,
		'SUMMARY:Training',
	)
const titles = ({ sessions }: Incoming) => sessions.map(({ title }) => title)

describe('one bad part of a calendar', () => {
	it('a time zone without a name is left out and told', () => {
		const read = readCalendar(calendar(...zoneOf(), ...plain), choices)
		expect([titles(read), read.problems]).toEqual([['Match'], []])
		expect(read.notes.map(({ code }) => code)).toEqual(['season.zone-nameless'])
	})
	it.each<[string, string[]]>([
		['without rules', ['BEGIN:VTIMEZONE', 'TZID:Club time', 'END:VTIMEZONE']],
		['of an offset that is none', zoneOf('TZID:Club time').map((line) => line.slice(0, 14))],
	])('a time zone %s is asked about, never taken for another', (_, zone) => {
		const read = readCalendar(calendar(...zone, ...zoned('Club time'), ...plain), choices)
		expect([titles(read), read.questions.map(({ key }) => key)]).toEqual([
			['Match'],
			['zones.Club time'],
		])
	})
	it.each<[string, string[]]>([
		['a rule of no frequency', ['DTSTART:20270302T180000Z', 'RRULE:COUNT=3', 'SUMMARY:Swim']],
		['a line without a colon', ['DTSTART:20270302T180000Z', 'nothing at all', 'SUMMARY:Swim']],
		['a start that is a length', ['DTSTART;VALUE=DURATION:Swim', 'SUMMARY:Swim']],
	])('an event with %s is named, the others are read', (_, lines) => {
		const read = readCalendar(calendar(...event('bad', ...lines), ...plain), choices)
		expect(titles(read)).toEqual(['Match'])
		expect(read.problems).toHaveLength(1)
		const { code, params } = read.problems[0]!
		expect(['season.event-unreadable', 'season.part-unreadable', 'season.event-no-date']).toContain(
			code,
		)
		expect(params.title ?? params.name ?? params.number).toSatisfy(
			(named: unknown) => named === 'Swim' || named === 1,
		)
	})
	it('an event whose end is lost is named, the one after it is read', () => {
		const text = calendar(
			...event('bad', 'DTSTART:20270302T180000Z', 'SUMMARY:Swim').slice(0, -1),
			...plain,
		)
		const read = readCalendar(text, choices)
		expect([titles(read), read.problems]).toMatchObject([
			['Match'],
			[
				{
					code: 'season.part-unreadable',
					params: { kind: 'event', name: 'Swim', flaw: { is: 'no-end-line' } },
				},
			],
		])
	})
})

const whole = calendar(
	...zoneOf('TZID:Club time'),
	...event(
		'weekly',
		'DTSTART;TZID=Club time:20270302T180000',
		'DTEND;TZID=Club time:20270302T193000',
		'RRULE:FREQ=WEEKLY;BYDAY=TU;UNTIL=20270430T000000Z',
		'EXDATE;TZID=Club time:20270309T180000',
		'SUMMARY:Training',
		'SEQUENCE:3',
	),
	...event(
		'weekly',
		'RECURRENCE-ID;TZID=Club time;RANGE=THISANDFUTURE:20270316T180000',
		'DTSTART;TZID=Club time:20270317T190000',
		'DURATION:PT1H30M',
		'SUMMARY:Training',
	),
	...event(
		'camp',
		'DTSTART;VALUE=DATE:20270306',
		'DTEND;VALUE=DATE:20270308',
		'SUMMARY:Match camp',
	),
	...plain,
)
const table = [
	'Date;Time;Opponent;Venue;Type;Minutes',
	'2027-03-02;18:00;Training;Oval;training;90',
	'03/04/2027;2pm;Match v Reds;Park;match;',
	'2027-03-09;;"Match, big";Oval;;45',
].join('\n')
const scraps = [
	...['', ':', ';', '=', '"', '-1', '0', 'T', 'Z', 'PT1H', '20270230', 'FREQ=', 'COUNT=0', '\\'],
	...['VALUE=DATE', 'VALUE=BINARY', 'VALUE=DURATION', 'VALUE=PERIOD', 'TZID=', 'P1W', '\u0000'],
	...['BEGIN:VEVENT', 'END:VEVENT', 'BEGIN:VTIMEZONE', '__proto__', 'constructor', ' ', '\t'],
]
type Change = (line: string, other: string, scrap: string, at: number) => string[]
const changes: readonly Change[] = [
	() => [],
	(line) => [line, line],
	(line, other) => [other, line],
	(line, _, __, at) => [line.slice(0, at)],
	(line, _, __, at) => [line.slice(0, at) + line.slice(at + 1)],
	(line, _, scrap, at) => [line.slice(0, at) + scrap + line.slice(at)],
	(line, other) => [line.replace(/:.*/, other.replace(/^[^:]*/, ''))],
	(line, _, scrap) => [line.replace(/:.*/, `:${scrap}`)],
	(line, _, scrap) => [line.replace(/[:;]/, `;${scrap}$&`)],
]
/** A text with a few of its lines changed. */
const mutated = (text: string, lineEnd: string) => {
	const lines = text.split(lineEnd)
	const place = fc.nat(lines.length - 1)
	const change = fc.tuple(place, place, fc.constantFrom(...changes), fc.constantFrom(...scraps))
	return fc.array(fc.tuple(change, fc.nat(40)), { minLength: 1, maxLength: 4 }).map((wanted) => {
		const made = lines.map((line) => [line])
		for (const [[at, from, act, scrap], cut] of wanted)
			made[at] = act(lines[at] ?? '', lines[from] ?? '', scrap, cut)
		return made.flat().join(lineEnd)
	})
}
/** Words of a fault in the program, which nobody should read. */
const faultWords = /undefined|NaN|\[object|Cannot read|is not a function|of null|not iterable/
function expectSound({ sessions, problems, notes }: Incoming): void {
	for (const { date, start = '00:00', minutes, id = '' } of sessions) {
		expect(date).toMatch(/^\d{4}-\d\d-\d\d$/)
		expect(start).toMatch(/^\d\d:\d\d$/)
		expect(minutes >= 1 && minutes <= 600).toBe(true)
		expect(id.length >= 1 && id.length <= 400).toBe(true)
	}
	const said = [...problems, ...notes].map(({ says }) => says)
	expect(said.filter((says) => faultWords.test(says))).toEqual([])
}
describe('a list with changed lines', () => {
	it('is read as far as it goes: calendars', () =>
		fc.assert(
			fc.property(mutated(whole, '\r\n'), (text) => expectSound(readCalendar(text, choices))),
		))
	it('is read as far as it goes: tables', () =>
		fc.assert(fc.property(mutated(table, '\n'), (text) => expectSound(readCsv(text, choices)))))
})
