/** What may be a passphrase and a PIN, and what the owner is told. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { namesToGuess } from '../../shared/desk/people/names.ts'
import { noticeKinds, noticesOf, tryKinds } from '../../shared/desk/people/notices.ts'
import { easyPin } from '../../shared/desk/people/pin.ts'
import { commonPins } from '../../shared/desk/people/pins.table.ts'
import { weaknessOf } from '../../shared/desk/people/strength.ts'
import { leastPassphrase } from '../../shared/desk/workplace/passphrase.ts'

const clinic = {
	name: 'Riverside Podiatry',
	phone: '01234 567890',
	clinician: { name: 'Rae Ashdown', registration: 'CH12345' },
}
const names = namesToGuess(clinic, [{ name: 'Ines Lindqvist', registration: '' }])

describe('a passphrase', () => {
	it.each([
		'correct horse battery staple',
		'correct horse',
		'seven grey herons',
		'three mild otters',
		'changed words',
		'clinician words',
		'new words here',
		'zwölf kleine Igel',
		'4vX9!kQz',
		'over and over and out',
	])('%s may be used', (passphrase) => expect(weaknessOf(passphrase, names)).toBeUndefined())
	it.each([
		['aaaaaaaa', /repeats one letter/],
		['abcabcabc', /repeats a few letters/],
		['12345678', /most used/],
		['password', /most used/],
		['Password1!', /most used/],
		['qwertyuiop', /most used/],
		['zxcvbnm,', /row of keys/],
		['iloveyou', /most used/],
		['liverpool1', /most used/],
		['12.04.1987', /date/],
		['riverside podiatry', /name of the clinic/],
		['RiversidePodiatry1', /name of the clinic/],
		['Riverside2026!', /name of the clinic/],
		['RiversideAshdown26', /name of the clinic or of a person/],
		['Rae Ashdown 2026!', /name of the clinic or of a person/],
		['ashdown1', /name of the clinic or of a person/],
		['Lindqvist2026', /name of the clinic or of a person/],
		['CH12345!', /name of the clinic or of a person/],
		['lastwright1', /name of the clinic/],
		['password password', /same word/],
		['Liverpool liverpool Liverpool', /same word/],
	])('%s is refused with why and what helps', (passphrase, why) => {
		expect(passphrase.length).toBeGreaterThanOrEqual(leastPassphrase)
		const weak = weaknessOf(passphrase, names)
		expect(weak?.why).toMatch(why)
		expect(weak?.helps).toMatch(/Add words/)
	})
	it('capital letters and digits for letters are said to help little', () =>
		expect(weaknessOf('P@ssw0rd', names)?.helps).toMatch(/help little/))
	it('of any letters is judged without a fault, and quickly enough to be typed', () =>
		fc.assert(
			fc.property(
				fc.string({ minLength: leastPassphrase, maxLength: 200, unit: 'binary' }),
				(text) => {
					const weak = weaknessOf(text, names)
					expect(weak === undefined || weak.why.length > 0).toBe(true)
				},
			),
			{ numRuns: 40 },
		))
})
describe('a PIN', () => {
	const digits = (from: number, to: number) =>
		fc.array(fc.integer({ min: 0, max: 9 }), { minLength: from, maxLength: to })
	it('of one digit, counted up or down, is easy', () =>
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 9 }),
				fc.integer({ min: 4, max: 10 }),
				fc.constantFrom(0, 1, 9),
				(first, long, step) => {
					const pin = Array.from({ length: long }, (_, at) => (first + at * step) % 10).join('')
					expect(easyPin(pin), pin).toBeDefined()
				},
			),
		))
	it('of the same digits again is easy', () =>
		fc.assert(
			fc.property(digits(2, 5), fc.integer({ min: 2, max: 2 }), (part, times) => {
				expect(easyPin(part.join('').repeat(times))).toBeDefined()
			}),
		))
	it('that is a year is easy', () =>
		fc.assert(
			fc.property(fc.integer({ min: 1900, max: 2099 }), (year) => {
				expect(easyPin(String(year))).toBeDefined()
			}),
		))
	it('of the table is easy, and no rule finds it without the table', () => {
		for (const pin of commonPins) {
			expect(pin).toMatch(/^\d{4,10}$/)
			expect(easyPin(pin)).toBe('it is one of the most used ones')
		}
	})
	it('without a pattern may be used: most of all there are', () => {
		const all = Array.from({ length: 10_000 }, (_, at) => String(at).padStart(4, '0'))
		expect(all.filter((pin) => easyPin(pin) === undefined).length).toBeGreaterThan(9500)
		for (const pin of ['2468', '7391', '8264']) expect(easyPin(pin)).toBeUndefined()
	})
})
const marks = fc.array(
	fc.record({
		seq: fc.integer({ min: 1, max: 60 }),
		upTo: fc.integer({ min: 1, max: 60 }),
		by: fc.constant('Owner'),
		at: fc.constant('2027-01-22T09:00:00.000Z'),
	}),
	{ maxLength: 3 },
)
const happenings = fc.uniqueArray(
	fc.record({
		seq: fc.integer({ min: 1, max: 60 }),
		what: fc.constantFrom(...noticeKinds),
		whom: fc.constantFrom(undefined, 'A', 'B'),
		by: fc.constantFrom(undefined, 'Owner'),
		at: fc.constantFrom('2027-01-20T09:00:00.000Z', '2027-01-21T09:00:00.000Z'),
	}),
	{ selector: ({ seq }) => seq },
)
describe('notices', () => {
	it('lose nothing: tries by kind and person, all else by itself, the latest first', () =>
		fc.assert(
			fc.property(happenings, marks, (all, seen) => {
				const told = noticesOf(all, seen)
				expect(told.reduce((sum, { times }) => sum + times, 0)).toBe(all.length)
				for (const { what, times, first, last } of told) {
					expect(first <= last).toBe(true)
					if (!tryKinds.some((kind) => kind === what)) expect(times).toBe(1)
				}
				expect(told.map(({ last }) => last)).toEqual(
					told.map(({ last }) => last).toSorted((a, b) => b.localeCompare(a)),
				)
			}),
		))
	it('are seen exactly where a mark covers them, and what came after it is new', () =>
		fc.assert(
			fc.property(happenings, marks, (all, seen) => {
				const newest = Math.max(0, ...seen.map(({ upTo }) => upTo))
				const unseen = noticesOf(all, seen)
					.filter((notice) => !notice.seen)
					.reduce((sum, { times }) => sum + times, 0)
				expect(unseen).toBe(all.filter(({ seq }) => seq > newest).length)
			}),
		))
})
