/** A list from another zone, across two changes of clocks that fall on other days. */
import { expect, it } from 'vitest'
import { calendar, event, starts } from './calendar-text.ts'

const weekly = (zone: string) =>
	calendar(
		...event(
			'a',
			`DTSTART;TZID=${zone}:20270327T100000`,
			`DTEND;TZID=${zone}:20270327T113000`,
			'RRULE:FREQ=WEEKLY;COUNT=3',
			'SUMMARY:Match',
		),
	)
it('an hour that stays there moves here, by either change of clocks', () => {
	// London goes forward on 28 March, Melbourne back on 4 April
	expect(starts(weekly('Europe/London'))).toEqual([
		'2027-03-27 21:00',
		'2027-04-03 20:00',
		'2027-04-10 19:00',
	])
	// of the same list at home nothing moves
	expect(starts(weekly('Australia/Melbourne'))).toEqual([
		'2027-03-27 10:00',
		'2027-04-03 10:00',
		'2027-04-10 10:00',
	])
})
it('an hour past midnight there is the day before or after here', () =>
	expect(
		starts(
			calendar(
				...event(
					'b',
					'DTSTART;TZID=America/New_York:20270313T200000',
					'DTEND;TZID=America/New_York:20270313T213000',
					'RRULE:FREQ=WEEKLY;COUNT=2',
					'SUMMARY:Match',
				),
			),
		),
		// New York goes forward on 14 March
	).toEqual(['2027-03-14 12:00', '2027-03-21 11:00']))
it('instants and a zone of their own name the same moment', () => {
	const instants = calendar(
		...event('a', 'DTSTART:20270403T090000Z', 'DTEND:20270403T103000Z', 'SUMMARY:Match'),
	)
	expect(starts(instants)).toEqual([starts(weekly('Europe/London'))[1]])
})
