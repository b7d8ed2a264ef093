/** Calendars that would hold up the program, or mislead it. */

import { describe, expect, it } from 'vitest'
import { readList } from '../../electron/calendar/list.ts'
import { readCalendar } from '../../electron/calendar/read.ts'
import { decodedText } from '../../renderer/parts/tableText.ts'
import { isCalendarBytes, unfolded } from '../../shared/engine/season/decode-list.ts'
import { calendar, choices, event } from './calendar-text.ts'

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
			expect([read.sessions.length, read.problems]).toMatchObject([
				0,
				[
					{
						code: 'season.event-unreadable',
						params: { title: 'Training', flaw: { is: 'repeats-within-a-day' } },
					},
				],
			])
		},
	)
	it('what began long before and cannot be counted out says so', () =>
		expect(readCalendar(repeating('FREQ=DAILY', '16000301'), choices).problems).toMatchObject([
			{ params: { flaw: { is: 'repeats-without-end', most: 20_000 } } },
		]))
	it('a rule without any day, and a zone without end, stop in time and are named', async () => {
		await expect(
			readList(repeating('FREQ=DAILY;BYMONTH=2;BYMONTHDAY=31'), 'ics', choices, 3000),
		).rejects.toMatchObject({
			said: { code: 'season.list-too-slow', params: { seconds: 3, at: 'Training' } },
		})
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
		await expect(readList(zone, 'ics', choices, 3000)).rejects.toMatchObject({
			said: { code: 'season.list-too-slow', params: { seconds: 3, at: 'time zone X' } },
		})
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
		expect([read.sessions.length, read.problems]).toMatchObject([
			0,
			[{ code: 'season.list-too-many', params: { given: 1600, most: 1500 } }],
		])
	}, 30_000)
	it('a day that is none, an end before the start, a year of all days', () => {
		expect(
			readCalendar(calendar(...event('a', 'DTSTART:20271399T998877Z', 'SUMMARY:Match')), choices)
				.problems,
		).toMatchObject([
			{
				code: 'season.event-no-date',
				params: { property: 'DTSTART', given: '2027-13-99T99:88:77Z' },
			},
		])
		expect(
			readCalendar(calendar(...event('a', 'DTSTART;VALUE=DATE:20270230', 'SUMMARY:Match')), choices)
				.problems,
		).toMatchObject([{ code: 'season.event-no-date', params: { property: 'DTSTART' } }])
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
			).problems,
		).toMatchObject([{ code: 'season.event-too-many-days', params: { mostDays: 31 } }])
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
		expect(read.map(({ date, start, minutes }) => `${date} ${start} ${minutes}`)).toEqual([
			'2027-03-02 18:00 60',
			'2027-03-09 18:00 60',
			'2027-03-17 19:00 90',
			'2027-03-24 19:00 90',
			'2027-03-31 19:00 90',
		])
		expect(read.map(({ id }) => id).sort()).toEqual(
			readCalendar(calendar(...weekly), choices)
				.sessions.map(({ id }) => id)
				.sort(),
		)
	})
	it('a character split over a fold is put together again', () => {
		const line = Buffer.from('SUMMARY:Match at Café Zoë\r\n')
		const cut = line.indexOf(Buffer.from('é')) + 1
		const bytes = Buffer.concat([
			Buffer.from(
				'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nBEGIN:VEVENT\r\nUID:a\r\n' +
					'DTSTART:20270601T080000Z\r\n',
			),
			line.subarray(0, cut),
			Buffer.from('\r\n '),
			line.subarray(cut),
			Buffer.from('END:VEVENT\r\nEND:VCALENDAR\r\n'),
		])
		expect(isCalendarBytes(bytes)).toBe(true)
		expect(readCalendar(decodedText(unfolded(bytes)), choices).sessions[0]?.title).toBe(
			'Match at Café Zoë',
		)
	})
})
