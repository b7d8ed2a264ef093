/** Calendars and lists in and out, with ical.js as the other side. */

import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import {
	foldLine,
	previewCalendar,
	readCalendar,
	writeCalendar,
} from '../../electron/calendar/calendar.ts'
import {
	dateOrderOf,
	decodeCsv,
	previewCsv,
	readCsv,
	timeFrom,
} from '../../electron/calendar/calendar-csv.ts'
import { readList } from '../../electron/calendar/calendar-read.ts'
import { icalZone, knownZone } from '../../electron/calendar/calendar-zones.ts'
import { planSeason } from '../../electron/solver/plan.ts'
import { isCalendarBytes, unfolded } from '../../shared/engine/season/decode-list.ts'
import { applyImport, type ImportChoices } from '../../shared/engine/season/preview.ts'
import { seasonVisit } from '../engine/random-season.ts'

const choices: ImportChoices = {
	zone: 'Australia/Melbourne',
	from: '2027-02-01',
	to: '2027-09-30',
	source: 'club',
	surface: 'natural-firm',
	trainingMinutes: 75,
	matchMinutes: 90,
}
const calendar = (...lines: string[]): string =>
	['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Test//EN', ...lines, 'END:VCALENDAR', ''].join(
		'\r\n',
	)
const event = (uid: string, ...lines: string[]): string[] => [
	'BEGIN:VEVENT',
	`UID:${uid}`,
	'DTSTAMP:20270101T000000Z',
	...lines,
	'END:VEVENT',
]
const starts = (text: string, more: Partial<ImportChoices> = {}) =>
	readCalendar(text, { ...choices, ...more }).sessions.map(
		(one) => `${one.date} ${one.start ?? 'all day'}`,
	)

describe('reading a calendar', () => {
	it('instants land on the clinic wall clock on both sides of a change of clocks', () =>
		expect(
			starts(
				calendar(
					...event('a', 'DTSTART:20270403T030000Z', 'DTEND:20270403T043000Z', 'SUMMARY:Match'),
					...event('b', 'DTSTART:20270410T040000Z', 'DURATION:PT1H30M', 'SUMMARY:Match'),
				),
			),
		).toEqual(['2027-04-03 14:00', '2027-04-10 14:00']))
	it('a weekly training keeps its hour over the change, to the last day of a UNTIL in UTC', () =>
		expect(
			starts(
				calendar(
					...event(
						'a',
						'DTSTART;TZID=Australia/Melbourne:20270325T180000',
						'DTEND;TZID=Australia/Melbourne:20270325T191500',
						'RRULE:FREQ=WEEKLY;UNTIL=20270415T080000Z',
						'SUMMARY:Training',
					),
				),
			),
		).toEqual(['2027-03-25 18:00', '2027-04-01 18:00', '2027-04-08 18:00', '2027-04-15 18:00']))
	it('another zone is brought to the clinic', () =>
		expect(
			starts(
				calendar(
					...event(
						'a',
						'DTSTART;TZID=Pacific/Auckland:20270501T140000',
						'DTEND;TZID=Pacific/Auckland:20270501T153000',
						'SUMMARY:Match',
					),
				),
			),
		).toEqual(['2027-05-01 12:00']))
	it("the file's own zone rules count", () =>
		expect(
			starts(
				calendar(
					'BEGIN:VTIMEZONE',
					'TZID:Club Time',
					'BEGIN:STANDARD',
					'DTSTART:20200101T000000',
					'TZOFFSETFROM:+0800',
					'TZOFFSETTO:+0800',
					'END:STANDARD',
					'END:VTIMEZONE',
					...event(
						'a',
						'DTSTART;TZID=Club Time:20270601T100000',
						'DTEND;TZID=Club Time:20270601T110000',
						'SUMMARY:Match',
					),
				),
			),
		).toEqual(['2027-06-01 12:00']))
	it('a zone nobody knows is asked for, and the answer used', () => {
		const text = calendar(
			...event(
				'a',
				'DTSTART;TZID=Clubland:20270601T100000',
				'DTEND;TZID=Clubland:20270601T110000',
				'SUMMARY:Match',
			),
		)
		expect(readCalendar(text, choices).questions.map((one) => one.key)).toEqual(['zones.Clubland'])
		expect(starts(text, { zones: { Clubland: 'Australia/Perth' } })).toEqual(['2027-06-01 12:00'])
	})
	it('floating times are the clinic own, with a note', () => {
		const read = readCalendar(
			calendar(...event('a', 'DTSTART:20270601T100000', 'DTEND:20270601T110000', 'SUMMARY:Match')),
			choices,
		)
		expect([read.sessions[0]!.start, read.notes[0]]).toEqual([
			'10:00',
			expect.stringContaining("clinic's own"),
		])
	})
	it('EXDATE, RDATE, a moved and a cancelled occurrence', () => {
		const text = calendar(
			...event(
				'a',
				'DTSTART;TZID=Australia/Melbourne:20270302T180000',
				'DTEND;TZID=Australia/Melbourne:20270302T190000',
				'RRULE:FREQ=WEEKLY;COUNT=5',
				'EXDATE;TZID=Australia/Melbourne:20270309T180000',
				'RDATE;TZID=Australia/Melbourne:20270401T180000',
				'SUMMARY:Training',
			),
			...event(
				'a',
				'RECURRENCE-ID;TZID=Australia/Melbourne:20270316T180000',
				'DTSTART;TZID=Australia/Melbourne:20270317T190000',
				'DTEND;TZID=Australia/Melbourne:20270317T200000',
				'SUMMARY:Training',
			),
			...event(
				'a',
				'RECURRENCE-ID;TZID=Australia/Melbourne:20270323T180000',
				'DTSTART;TZID=Australia/Melbourne:20270323T180000',
				'DTEND;TZID=Australia/Melbourne:20270323T190000',
				'STATUS:CANCELLED',
				'SUMMARY:Training',
			),
		)
		const read = readCalendar(text, choices).sessions.sort((a, b) => (a.date < b.date ? -1 : 1))
		expect(read.map((one) => [one.date, one.start, one.status])).toEqual([
			['2027-03-02', '18:00', undefined],
			['2027-03-17', '19:00', undefined],
			['2027-03-23', '18:00', 'cancelled'],
			['2027-03-30', '18:00', undefined],
			['2027-04-01', '18:00', undefined],
		])
		expect(new Set(read.map((one) => one.id)).size).toBe(5)
	})
	it('an all-day end is the day after; a missing end takes the usual length, marked', () => {
		const read = readCalendar(
			calendar(
				...event(
					'a',
					'DTSTART;VALUE=DATE:20270403',
					'DTEND;VALUE=DATE:20270405',
					'SUMMARY:Training camp',
				),
				...event('b', 'DTSTART:20270601T100000Z', 'SUMMARY:Match'),
			),
			choices,
		)
		expect(
			read.sessions.map((one) => [one.date, one.start, one.minutes, one.minutesAssumed]),
		).toEqual([
			['2027-04-03', undefined, 75, true],
			['2027-04-04', undefined, 75, true],
			['2027-06-01', '20:00', 90, true],
		])
	})
	it('a recurrence without end stops with the season', () =>
		expect(
			starts(
				calendar(
					...event(
						'a',
						'DTSTART:20200101T080000Z',
						'DTEND:20200101T090000Z',
						'RRULE:FREQ=DAILY',
						'SUMMARY:Training',
					),
				),
			).length,
		).toBe(242))
	it('folded lines and escapes are read; what is unclear is asked', () => {
		const read = readCalendar(
			calendar(
				...event(
					'a',
					'DTSTART:20270601T080000Z',
					'DTEND:20270601T090000Z',
					'SUMMARY:Match\\, round 3 at the v',
					' ery long ground name',
					'LOCATION:East Oval',
				),
			),
			{ ...choices, surface: undefined as never },
		)
		expect(read.questions.map((one) => one.key)).toEqual(['surfaces.East Oval'])
		expect(
			readCalendar(calendar(...event('a', 'DTSTART:20270601T080000Z', 'SUMMARY:Barbecue')), choices)
				.questions[0]!.key,
		).toBe('kinds.Barbecue')
	})
	it('the same file twice changes nothing; a newer one changes, cancels and takes out', () => {
		const one = event('a', 'DTSTART:20270601T080000Z', 'DTEND:20270601T090000Z', 'SUMMARY:Match')
		const two = event('b', 'DTSTART:20270608T080000Z', 'DTEND:20270608T090000Z', 'SUMMARY:Match')
		const sessions = applyImport([], previewCalendar(calendar(...one, ...two), [], choices)).map(
			(session) => ({ ...session, ...(session.id === 'a' ? { pinned: 'p1' } : {}) }),
		)
		expect(previewCalendar(calendar(...one, ...two), sessions, choices)).toMatchObject({
			add: [],
			change: [],
			remove: [],
			same: 2,
		})
		const later = previewCalendar(
			calendar(
				...event(
					'a',
					'DTSTART:20270601T090000Z',
					'DTEND:20270601T100000Z',
					'SEQUENCE:1',
					'STATUS:CANCELLED',
					'SUMMARY:Match',
				),
			),
			sessions,
			choices,
		)
		expect([later.change[0]!.after, later.remove.map((gone) => gone.id)]).toEqual([
			expect.objectContaining({ start: '19:00', status: 'cancelled', pinned: 'p1' }),
			['b'],
		])
		expect(later.change[0]!.says).toContain('start: 18:00 becomes 19:00')
	})
	it('nonsense is named, never thrown', () => {
		for (const text of [
			'',
			'hello',
			'BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n',
			calendar(...event('a', 'DTSTART:notadate', 'SUMMARY:Match')),
		])
			expect(
				readCalendar(text, choices).problems.length + readCalendar(text, choices).sessions.length,
			).toBeGreaterThan(0)
	})
})

describe('hostile calendars', () => {
	const repeating = (rule: string, from = '20270301') =>
		calendar(
			...event(
				'a',
				`DTSTART:${from}T080000Z`,
				`DTEND:${from}T090000Z`,
				`RRULE:${rule}`,
				'SUMMARY:Training',
			),
		)
	it.each(['SECONDLY', 'MINUTELY', 'HOURLY;COUNT=100000'])(
		'FREQ=%s is named and not counted out',
		(freq) => {
			const read = readCalendar(repeating(`FREQ=${freq}`), choices)
			expect([read.sessions.length, read.problems[0]?.says]).toEqual([
				0,
				expect.stringMatching(
					/"Training" could not be read \(it repeats every (second|minute|hour).*Enter it by hand/,
				),
			])
		},
	)
	it('what began long before and cannot be counted out says so', () =>
		expect(readCalendar(repeating('FREQ=DAILY', '16000301'), choices).problems[0]?.says).toMatch(
			/more than 20000 times/,
		))
	it('a rule without any day, and a zone without end, stop in time and are named', async () => {
		await expect(
			readList(repeating('FREQ=DAILY;BYMONTH=2;BYMONTHDAY=31'), 'ics', choices, 3000),
		).rejects.toThrow(/within 3 seconds.*It stopped at "Training"/)
		const zone = calendar(
			'BEGIN:VTIMEZONE',
			'TZID:X',
			'BEGIN:STANDARD',
			'DTSTART:16010101T000000',
			'RRULE:FREQ=SECONDLY',
			'TZOFFSETFROM:+1000',
			'TZOFFSETTO:+1000',
			'END:STANDARD',
			'END:VTIMEZONE',
			...event('a', 'DTSTART;TZID=X:20270301T080000', 'SUMMARY:Match'),
		)
		await expect(readList(zone, 'ics', choices, 3000)).rejects.toThrow(/within 3 seconds/)
	}, 30_000)
	it('more sessions than a season holds are refused as a whole', async () => {
		const read = await readList(
			calendar(
				...Array.from({ length: 1600 }, (_, n) =>
					event(`u${n}`, 'DTSTART:20270601T080000Z', 'DTEND:20270601T090000Z', 'SUMMARY:Match'),
				).flat(),
			),
			'ics',
			choices,
		)
		expect([read.sessions.length, read.problems[0]?.says]).toEqual([
			0,
			expect.stringContaining('given 1600, allowed: at most 1500'),
		])
	}, 30_000)
	it('a day that is none, an end before the start, a year of all days', () => {
		expect(
			readCalendar(calendar(...event('a', 'DTSTART:20271399T998877Z', 'SUMMARY:Match')), choices)
				.problems[0]?.says,
		).toMatch(/DTSTART is no date, given 2027-13-99T99:88:77Z/)
		expect(
			readCalendar(calendar(...event('a', 'DTSTART;VALUE=DATE:20270230', 'SUMMARY:Match')), choices)
				.problems[0]?.says,
		).toMatch(/DTSTART is no date/)
		expect(
			readCalendar(
				calendar(
					...event('a', 'DTSTART:20270304T080000Z', 'DTEND:20270303T080000Z', 'SUMMARY:Match'),
				),
				choices,
			).sessions[0],
		).toMatchObject({ minutes: 90, minutesAssumed: true })
		expect(
			readCalendar(
				calendar(
					...event(
						'a',
						'DTSTART;VALUE=DATE:20270306',
						'DTEND;VALUE=DATE:29990306',
						'SUMMARY:Match',
					),
				),
				choices,
			).problems[0]?.says,
		).toMatch(/at most 31 days/)
	})
	it('a change of this and all that follow moves them all, under the same ids', () => {
		const weekly = event(
			'a',
			'DTSTART;TZID=Australia/Melbourne:20270302T180000',
			'DTEND;TZID=Australia/Melbourne:20270302T190000',
			'RRULE:FREQ=WEEKLY;COUNT=5',
			'SUMMARY:Training',
		)
		const moved = event(
			'a',
			'RECURRENCE-ID;RANGE=THISANDFUTURE;TZID=Australia/Melbourne:20270316T180000',
			'DTSTART;TZID=Australia/Melbourne:20270317T190000',
			'DTEND;TZID=Australia/Melbourne:20270317T203000',
			'SUMMARY:Training',
		)
		const read = readCalendar(calendar(...weekly, ...moved), choices).sessions.sort((a, b) =>
			a.date < b.date ? -1 : 1,
		)
		expect(read.map((one) => `${one.date} ${one.start} ${one.minutes}`)).toEqual([
			'2027-03-02 18:00 60',
			'2027-03-09 18:00 60',
			'2027-03-17 19:00 90',
			'2027-03-24 19:00 90',
			'2027-03-31 19:00 90',
		])
		expect(read.map((one) => one.id).sort()).toEqual(
			readCalendar(calendar(...weekly), choices)
				.sessions.map((one) => one.id)
				.sort(),
		)
	})
	it('a character split over a fold is put together again', () => {
		const line = Buffer.from('SUMMARY:Match at Café Zoë\r\n')
		const cut = line.indexOf(Buffer.from('é')) + 1
		const bytes = Buffer.concat([
			Buffer.from(
				'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nBEGIN:VEVENT\r\nUID:a\r\nDTSTART:20270601T080000Z\r\n',
			),
			line.subarray(0, cut),
			Buffer.from('\r\n '),
			line.subarray(cut),
			Buffer.from('END:VEVENT\r\nEND:VCALENDAR\r\n'),
		])
		expect(isCalendarBytes(bytes)).toBe(true)
		expect(readCalendar(decodeCsv(unfolded(bytes)), choices).sessions[0]?.title).toBe(
			'Match at Café Zoë',
		)
	})
})

describe('writing a calendar', () => {
	const sessions = [
		{
			id: 'x',
			date: '2027-04-03',
			start: '14:00',
			minutes: 90,
			kind: 'match' as const,
			surface: 'natural-firm' as const,
		},
		{
			id: 'y',
			date: '2027-04-10',
			start: '14:00',
			minutes: 90,
			kind: 'match' as const,
			surface: 'natural-firm' as const,
		},
	]
	const plan = (list = sessions) =>
		planSeason(
			seasonVisit([{ id: 'p1', name: 'boots', sole: 'firm-ground', minutesWorn: 900 }], list, {
				conditions: [{ condition: 'blister', side: 'left', status: 'current' }],
			}),
		)
	const options = { zone: 'Australia/Melbourne', stamp: new Date('2027-01-10T00:00:00Z') }
	it('ical.js reads the instants back', async () => {
		const text = writeCalendar(await plan(), options)
		ICAL.TimezoneService.reset()
		const root = new ICAL.Component(ICAL.parse(text))
		for (const zone of root.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone)
		const events = root.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one))
		expect(events.map((one) => one.startDate.toJSDate().toISOString())).toEqual([
			'2027-04-03T03:00:00.000Z',
			'2027-04-10T04:00:00.000Z',
		])
		expect(events.map((one) => one.duration.toSeconds())).toEqual([5400, 5400])
		expect([
			text.endsWith('END:VCALENDAR\r\n'),
			text.replaceAll('\r\n', '').includes('\n'),
			text.includes('CLASS:PRIVATE'),
			/blister|boots/i.test(text),
		]).toEqual([true, false, true, false])
		expect(
			Math.max(...text.split('\r\n').map((line) => Buffer.byteLength(line))),
		).toBeLessThanOrEqual(75)
	})
	it('what we write we read, and again without change', async () => {
		const text = writeCalendar(await plan(), options)
		expect(starts(text)).toEqual(['2027-04-03 14:00', '2027-04-10 14:00'])
	})
	it('ids stay, SEQUENCE grows only with a change, what is gone is cancelled', async () => {
		const first = writeCalendar(await plan(), options)
		const uids = (text: string) => [...text.matchAll(/^UID:(.*)\r$/gm)].map((one) => one[1])
		const again = writeCalendar(await plan(), {
			...options,
			stamp: new Date('2027-02-01T00:00:00Z'),
			previous: first,
		})
		expect([uids(again), again.includes('SEQUENCE:1')]).toEqual([uids(first), false])
		const moved = writeCalendar(await plan([{ ...sessions[0]!, start: '15:00' }]), {
			...options,
			previous: first,
		})
		expect([...moved.matchAll(/SEQUENCE:(\d)/g)].map((one) => one[1])).toEqual(['1', '1'])
		expect([uids(moved), moved.match(/STATUS:CANCELLED/g)?.length]).toEqual([uids(first), 1])
	})
	it('folds between characters, at 75 octets', () =>
		fc.assert(
			fc.property(
				fc.string({
					unit: fc.constantFrom('a', 'è', '–', '日', '🙂'),
					minLength: 1,
					maxLength: 300,
				}),
				(text) => {
					const folded = foldLine(`SUMMARY:${text}`)
					expect(folded.split('\r\n').every((line) => Buffer.byteLength(line) <= 75)).toBe(true)
					expect(folded.replaceAll('\r\n ', '')).toBe(`SUMMARY:${text}`)
				},
			),
		))
	it.each([
		'Australia/Melbourne',
		'Europe/London',
		'America/New_York',
		'Asia/Kolkata',
		'Pacific/Auckland',
	])('the rules written for %s agree with the machine all year', (zone) => {
		const rules = icalZone(zone, 2026, 2028)
		for (let day = 0; day < 365; day++) {
			const time = ICAL.Time.fromJSDate(
				new Date(Date.UTC(2027, 0, 1 + day, 11)),
				true,
			).convertToZone(rules)
			const [, hour] = new Intl.DateTimeFormat('en-GB', {
				timeZone: zone,
				hour: '2-digit',
				minute: '2-digit',
				day: '2-digit',
			})
				.format(Date.UTC(2027, 0, 1 + day, 11))
				.split(', ')
			expect(`${String(time.hour).padStart(2, '0')}:${String(time.minute).padStart(2, '0')}`).toBe(
				hour,
			)
		}
	})
	it('knows its zones', () =>
		expect([knownZone('Europe/Paris'), knownZone('Clubland')]).toEqual([true, false]))
})

describe('reading a CSV list', () => {
	it('BOM, semicolons, decimal comma, AM and PM, quoted separators', () => {
		const read = readCsv(
			'\uFEFFDate;Time;Hours;Opponent;Type;Surface\r\n2027-03-06;2:30 pm;1,5;"Example; ' +
				'Alex";match;natural firm\r\n2027-03-09;18:00;1,25;;training;artificial (3G)\r\n\r\n',
			choices,
		)
		expect(read.problems).toEqual([])
		expect(
			read.sessions.map((one) => [
				one.date,
				one.start,
				one.minutes,
				one.kind,
				one.surface,
				one.title,
			]),
		).toEqual([
			['2027-03-06', '14:30', 90, 'match', 'natural-firm', 'Example; Alex'],
			['2027-03-09', '18:00', 75, 'training', 'artificial-3g', 'training'],
		])
	})
	it('tabs, and windows-1252', () =>
		expect(
			readCsv(
				decodeCsv(
					Uint8Array.from(
						Buffer.from('Date\tTime\tTitle\n2027-03-06\t14:00\tMatch v Caf\xe9', 'latin1'),
					),
				),
				choices,
			).sessions[0],
		).toMatchObject({ title: 'Match v Café', start: '14:00' }))
	it('any number above 12 decides the order of day and month; otherwise it is asked', () => {
		expect(
			[
				['03/04/2027', '13/04/2027'],
				['03/04/2027', '04/13/2027'],
				['03/04/2027'],
				['13/04/2027', '04/13/2027'],
				['2027-04-03'],
				['04/04/2027'],
			].map(dateOrderOf),
		).toEqual(['day-month', 'month-day', 'unknown', 'mixed', 'plain', 'day-month'])
		const text = 'Date,Time,Type\n03/04/2027,14:00,match\n'
		expect(readCsv(text, choices)).toMatchObject({
			sessions: [],
			questions: [
				{
					key: 'dateOrder',
					says: 'Is 03/04/2027 3 April 2027 (day first) or 4 March 2027 (month first)?',
				},
			],
		})
		expect(
			(['day-month', 'month-day'] as const).map(
				(dateOrder) => readCsv(text, { ...choices, dateOrder }).sessions[0]!.date,
			),
		).toEqual(['2027-04-03', '2027-03-04'])
	})
	it('times as lists write them', () =>
		expect(
			['18:00', '6:30 PM', '12 am', '12:15 pm', 'TBA', 't.b.d.', '', '25:00', 'noon'].map(timeFrom),
		).toEqual([
			'18:00',
			'18:30',
			'00:00',
			'12:15',
			'unset',
			'unset',
			'unset',
			undefined,
			undefined,
		]))
	it('names the row, the value and the remedy', () => {
		const read = readCsv(
			'Date,Time,Type\n2027-02-30,14:00,match\n2027-03-01,noon,match\n2027-03-02,14:00,match\n',
			choices,
		)
		expect(read.problems.map((one) => one.says)).toEqual([
			expect.stringContaining('Row 2: date not understood, given "2027-02-30"'),
			expect.stringContaining('Row 3: time not understood, given "noon"'),
		])
		expect(read.sessions.length).toBe(1)
		expect(readCsv('What,When\na,b\n', choices).problems[0]!.says).toContain('No column of dates')
	})
	it('the same list twice changes nothing; a new time is a change, a bye is a bye', () => {
		const list = (time: string, status = '') =>
			`Date,Time,Type,Opponent,Status\n2027-03-06,${time},match,Reds,${status}\n`
		const first = applyImport([], previewCsv(list('14:00'), [], choices))
		expect(previewCsv(list('14:00'), first, choices)).toMatchObject({
			add: [],
			change: [],
			remove: [],
			same: 1,
		})
		expect(previewCsv(list('15:00', 'bye'), first, choices).change[0]!.after).toMatchObject({
			start: '15:00',
			status: 'bye',
		})
	})
})
