/**
 * Reading a date as people type it. A date that can be read two ways is asked for, never guessed.
 * Pure.
 */
export type ParsedDate = { ok: true; iso: string } | { ok: false; says: string }
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const names = [
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

function checked(text: string, year: number, month: number, day: number): ParsedDate {
	const date = new Date(Date.UTC(year, month - 1, day))
	const real =
		date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day
	return real
		? { ok: true, iso: date.toISOString().slice(0, 10) }
		: {
				ok: false,
				says: `${text} is not a day of the calendar. Write it as 2 May 2013 or 2013-05-02.`,
			}
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
		const month = months.indexOf((word[2] ?? '').slice(0, 3).toLowerCase())
		if (month >= 0 && names[month]?.toLowerCase().startsWith((word[2] ?? '').toLowerCase()))
			return checked(text, Number(word[3]), month + 1, Number(word[1]))
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
				`${text} can be read two ways: ${first} ${names[second - 1]} or ${second} ` +
				`${names[first - 1]}. Write the month as a word.`,
		}
	}
	return { ok: false, says: `${text} is not a date. Write it as 2 May 2013 or 2013-05-02.` }
}
