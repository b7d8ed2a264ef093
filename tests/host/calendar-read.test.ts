/** Fixture lists as calendars, as clubs and leagues write them. */
import { describe, expect, it } from 'vitest'
import { readCalendar } from '../../electron/calendar/read.ts'
import { applyImport } from '../../shared/engine/season/preview.ts'
import { calendar, choices, event, previewOf, starts } from './calendar-text.ts'

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
		expect(readCalendar(text, choices).questions.map(({ key }) => key)).toEqual(['zones.Clubland'])
		expect(starts(text, { zones: { Clubland: 'Australia/Perth' } })).toEqual(['2027-06-01 12:00'])
	})
	it('floating times are the clinic own, with a note', () => {
		const read = readCalendar(
			calendar(...event('a', 'DTSTART:20270601T100000', 'DTEND:20270601T110000', 'SUMMARY:Match')),
			choices,
		)
		expect([read.sessions[0]!.start, read.notes[0]?.code]).toEqual([
			'10:00',
			'season.times-floating',
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
		expect(read.map(({ date, start, status }) => [date, start, status])).toEqual([
			['2027-03-02', '18:00', undefined],
			['2027-03-17', '19:00', undefined],
			['2027-03-23', '18:00', 'cancelled'],
			['2027-03-30', '18:00', undefined],
			['2027-04-01', '18:00', undefined],
		])
		expect(new Set(read.map(({ id }) => id)).size).toBe(5)
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
			read.sessions.map(({ date, start, minutes, minutesAssumed }) => [
				date,
				start,
				minutes,
				minutesAssumed,
			]),
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
		expect(read.questions.map(({ key }) => key)).toEqual(['surfaces.East Oval'])
		expect(
			readCalendar(calendar(...event('a', 'DTSTART:20270601T080000Z', 'SUMMARY:Barbecue')), choices)
				.questions[0]!.key,
		).toBe('kinds.Barbecue')
	})
	it('the same file twice changes nothing; a newer one changes, cancels and takes out', () => {
		const first = event('a', 'DTSTART:20270601T080000Z', 'DTEND:20270601T090000Z', 'SUMMARY:Match')
		const second = event('b', 'DTSTART:20270608T080000Z', 'DTEND:20270608T090000Z', 'SUMMARY:Match')
		const sessions = applyImport(
			[],
			previewOf(readCalendar(calendar(...first, ...second), choices), []),
		).map((session) => ({ ...session, ...(session.id === 'a' ? { pinned: 'p1' } : {}) }))
		expect(previewOf(readCalendar(calendar(...first, ...second), choices), sessions)).toMatchObject(
			{
				add: [],
				change: [],
				remove: [],
				same: 2,
			},
		)
		const later = previewOf(
			readCalendar(
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
				choices,
			),
			sessions,
		)
		expect([later.change[0]!.after, later.remove.map((gone) => gone.id)]).toEqual([
			expect.objectContaining({ start: '19:00', status: 'cancelled', pinned: 'p1' }),
			['b'],
		])
		expect(later.change[0]!.params.changed).toContainEqual({
			field: 'start',
			before: '18:00',
			after: '19:00',
		})
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
