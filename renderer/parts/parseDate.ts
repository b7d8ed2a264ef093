/**
 * Reading a date as people type it. A date that can be read two ways is asked for, never guessed.
 * Pure.
 */
import { isoDateOf, monthName } from '../../shared/engine/plain/days.ts'
import { monthOfWord } from '../../shared/engine/plain/month-word.ts'

type ParsedDate = { ok: true; iso: string } | { ok: false; says: string }

function checked(text: string, year: number, month: number, day: number): ParsedDate {
	const iso = isoDateOf(year, month, day)
	return iso === undefined
		? {
				ok: false,
				says: `${text} is not a day of the calendar. Write it as 2 May 2013 or 2013-05-02.`,
			}
		: { ok: true, iso }
}
/**
 * @returns the ISO date of '2013-05-02', '2 May 2013', '2.5.2013', or '25/5/2013' (only one
 * reading); else what to do
 */
export function parseDate(typed: string): ParsedDate {
	const text = typed.trim()
	const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text)
	if (iso) return checked(text, Number(iso[1]), Number(iso[2]), Number(iso[3]))
	const word = /^(\d{1,2})\.?\s+([a-z]{3,9})\.?,?\s+(\d{4})$/i.exec(text)
	if (word) {
		const month = monthOfWord(word[2] ?? '')
		if (month !== undefined) return checked(text, Number(word[3]), month, Number(word[1]))
	}
	const figures = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/.exec(text)
	if (figures) {
		const [first, second, year] = [Number(figures[1]), Number(figures[3]), Number(figures[4])]
		// with points the day always comes first; with strokes only a figure above 12 tells
		if (figures[2] === '.' || first > 12 || first === second)
			return checked(text, year, second, first)
		if (second > 12) return checked(text, year, first, second)
		return {
			ok: false,
			says:
				`${text} can be read two ways: ${first} ${monthName(second)} or ${second} ` +
				`${monthName(first)}. Write the month as a word.`,
		}
	}
	return { ok: false, says: `${text} is not a date. Write it as 2 May 2013 or 2013-05-02.` }
}
