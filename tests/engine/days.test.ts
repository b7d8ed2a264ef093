/**
 * Days of the calendar against plain counting in UTC, in zones east and west and on the days when
 * clocks change or, once, a whole day was left out.
 */
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { dayHere } from '../../shared/desk/workplace/local-day.ts'
import {
	addDays,
	addMonths,
	addYears,
	completedYears,
	dateOfDay,
	dayInWords,
	dayNumber,
	daysBetween,
	daysInMonth,
	isDay,
	isoDateOf,
	monthName,
	shortDayInWords,
} from '../../shared/engine/plain/days.ts'
import { ageMonths, ageYears, decimalAgeYears } from '../../shared/engine/visit/age.ts'

const dayMs = 86_400_000
const monthNames = [
	'January',
	'February',
	'March',
	'April',
	'May',
	'June',
	'July',
	'August',
	'September',
	'October',
	'November',
	'December',
]
interface Parts {
	year: number
	month: number
	day: number
}
const utcIso = ({ year, month, day }: Parts): string =>
	new Date(Date.UTC(year, month - 1, day)).toISOString().slice(0, 10)
const partsOf = (iso: string): Parts => {
	const [year = 0, month = 0, day = 0] = iso.split('-').map(Number)
	return { year, month, day }
}
const utcDay = (iso: string): number => {
	const { year, month, day } = partsOf(iso)
	return Date.UTC(year, month - 1, day) / dayMs
}
/** Days on which clocks change or a day is missing somewhere, beside any day of two centuries. */
const anyDay = fc.oneof(
	fc.integer({ min: utcDay('1900-01-01'), max: utcDay('2100-12-31') }),
	fc.constantFrom(
		...['2011-12-30', '2026-03-08', '2026-04-05', '2026-09-27', '2026-11-01', '2024-02-29'].map(
			utcDay,
		),
	),
)
const anyDate = anyDay.map((day) => new Date(day * dayMs).toISOString().slice(0, 10))

describe.each(['Pacific/Auckland', 'America/New_York', 'UTC', 'Pacific/Apia'])('in %s', (zone) => {
	const before = process.env.TZ
	beforeAll(() => {
		process.env.TZ = zone
	})
	afterAll(() => {
		if (before === undefined) delete process.env.TZ
		else process.env.TZ = before
	})
	it('the zone is in force', () => {
		expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(zone)
		expect(dayHere(new Date(2026, 8, 27, 12))).toBe('2026-09-27')
	})
	it('days are counted and added', () => {
		fc.assert(
			fc.property(anyDate, anyDate, fc.integer({ min: -40_000, max: 40_000 }), (from, to, days) => {
				expect(dayNumber(from)).toBe(utcDay(from))
				expect(dateOfDay(utcDay(from))).toBe(from)
				expect(daysBetween(from, to)).toBe(utcDay(to) - utcDay(from))
				expect(addDays(from, days)).toBe(
					utcIso({ ...partsOf(from), day: partsOf(from).day + days }),
				)
				expect(decimalAgeYears(from, to)).toBe((utcDay(to) - utcDay(from)) / 365.25)
				expect(ageMonths(from, to)).toBe((utcDay(to) - utcDay(from)) / 30.4375)
			}),
		)
	})
	it('months end where the month ends, years go on to 1 March', () => {
		fc.assert(
			fc.property(anyDate, fc.integer({ min: -1200, max: 1200 }), (from, months) => {
				const { year, month, day } = partsOf(from)
				const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate()
				expect(addMonths(from, months)).toBe(
					utcIso({ year, month: month + months, day: Math.min(day, last) }),
				)
				const years = Math.trunc(months / 12)
				expect(addYears(from, years)).toBe(utcIso({ year: year + years, month, day }))
			}),
		)
	})
	it('years are completed on the birthday', () => {
		fc.assert(
			fc.property(anyDate, anyDate, (from, to) => {
				const years = partsOf(to).year - partsOf(from).year
				const completed = to.slice(5) < from.slice(5) ? years - 1 : years
				expect(completedYears(from, to)).toBe(completed)
				expect(ageYears(from, to)).toBe(completed)
			}),
		)
	})
	it('days are read as words', () => {
		fc.assert(
			fc.property(anyDate, (date) => {
				const { year, month, day } = partsOf(date)
				const name = monthNames[month - 1] ?? ''
				expect(dayInWords(date)).toBe(`${day} ${name} ${year}`)
				expect(dayInWords(`${date}T23:59:59.000Z`)).toBe(`${day} ${name} ${year}`)
				expect(shortDayInWords(date)).toBe(`${day} ${name.slice(0, 3)}`)
				expect(monthName(month)).toBe(name)
				expect(isoDateOf(year, month, day)).toBe(date)
			}),
		)
	})
	it('what is no day is told', () => {
		expect(isoDateOf(2013, 2, 29)).toBeUndefined()
		expect(isoDateOf(2013, 4, 31)).toBeUndefined()
		expect(isoDateOf(2013, 13, 1)).toBeUndefined()
		expect(isoDateOf(99, 1, 1)).toBeUndefined()
		expect(dayInWords('soon')).toBe('soon')
		expect(dayInWords('')).toBe('')
	})
})

describe('days that the calendar does not have', () => {
	it.each(['2027-02-30', '2011-31-31', '2011-00-10', '2011-04-31', 'soon', ''])(
		'%j is no day, is counted without a fault or not at all, and is shown as it was typed',
		(text) => {
			expect(isDay(text)).toBe(false)
			expect(() => dayNumber(text)).not.toThrow()
			expect(dayInWords(text)).toBe(text)
		},
	)
	it.each(['2024-02-29', '2011-12-30', '1900-03-01'])('%s is one', (day) =>
		expect(isDay(day)).toBe(true),
	)
	it('a day past the end of its month runs on into the next', () => {
		expect(addDays('2027-02-30', 0)).toBe('2027-03-02')
		expect(addDays('2011-31-31', 0)).toBe('2013-07-31')
	})
	it('knows how long a month is', () => {
		expect([daysInMonth(2024, 2), daysInMonth(2100, 2), daysInMonth(2027, 12)]).toEqual([
			29, 28, 31,
		])
	})
})
