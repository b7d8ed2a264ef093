/** Fixture lists as CSV: RFC 4180, and what spreadsheets really write. */
import Papa from 'papaparse'
import {
	ask,
	type ImportChoices,
	type ImportPreview,
	type Incoming,
	kindOf,
	previewImport,
} from '../../shared/engine/season/preview.ts'
import { dayInWords, twoDigits } from '../../shared/engine/visit/age.ts'
import { type Surface, surfaces, termWords } from '../../shared/engine/visit/terms.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'

/** Headers by which lists name their columns, lower case. */
const headers = {
	date: ['date', 'day', 'match date', 'game date', 'start date', 'datum'],
	time: ['time', 'start', 'start time', 'kick off', 'kick-off', 'kickoff'],
	end: ['end', 'end time', 'finish'],
	minutes: ['minutes', 'duration', 'length', 'min', 'minutes planned'],
	hours: ['hours', 'h'],
	kind: ['kind', 'type', 'event type'],
	surface: ['surface', 'pitch'],
	ground: ['ground', 'condition', 'wetness', 'weather'],
	team: ['team', 'squad'],
	title: ['title', 'subject', 'summary', 'name', 'opponent', 'opposition', 'event', 'description'],
	place: ['place', 'venue', 'location'],
	id: ['id', 'uid', 'game id', 'match id', 'fixture id'],
	status: ['status'],
} as const
type Column = keyof typeof headers
/** UTF-8, or windows-1252 where the bytes are not UTF-8. */
export function decodeCsv(bytes: Uint8Array): string {
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
	} catch {
		return new TextDecoder('windows-1252').decode(bytes)
	}
}
const numeric = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{2}|\d{4})$/
const real = (year: number, month: number, day: number): string | undefined => {
	const date = new Date(Date.UTC(year, month - 1, day))
	return date.getUTCMonth() === month - 1 && date.getUTCDate() === day && month >= 1
		? `${year}-${twoDigits(month)}-${twoDigits(day)}`
		: undefined
}
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
/** Which comes first in a column of dates: decided by any number above 12, otherwise unknown. */
export function dateOrderOf(
	values: readonly string[],
): 'day-month' | 'month-day' | 'unknown' | 'mixed' | 'plain' {
	const found = values.map((value) => numeric.exec(value.trim())).filter((one) => one !== null)
	if (found.length === 0) return 'plain'
	const [first, second] = [
		found.some((array) => Number(array[1]) > 12),
		found.some((array) => Number(array[2]) > 12),
	]
	return first && second
		? 'mixed'
		: first
			? 'day-month'
			: second
				? 'month-day'
				: found.every((array) => array[1] === array[2])
					? 'day-month'
					: 'unknown'
}
function dateFrom(text: string, order: 'day-month' | 'month-day'): string | undefined {
	const value = text
		.trim()
		.replace(/^(mon|tues?|wed(nes)?|thu(rs)?|fri|satur|sat|sun)(day)?,?\s+/i, '')
	const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(value)
	if (iso) return real(Number(iso[1]), Number(iso[2]), Number(iso[3]))
	const short = numeric.exec(value)
	if (short) {
		const [a, b] = [Number(short[1]), Number(short[2])]
		const year = Number(short[3]) + (short[3]!.length === 2 ? 2000 : 0)
		return order === 'day-month' ? real(year, b, a) : real(year, a, b)
	}
	const named = /^(\d{1,2})\.?[ -]([a-z]{3})[a-z]*\.?,?[ -](\d{4})$/i.exec(value) ?? undefined
	if (named)
		return real(Number(named[3]), months.indexOf(named[2]!.toLowerCase()) + 1, Number(named[1]))
	return undefined
}
const wordsOf = (date: string | undefined): string =>
	date === undefined ? 'no date' : dayInWords(date)
/** HH:MM from 24 h or AM/PM; undefined where unknown; 'unset' for TBA and blanks. */
export function timeFrom(text: string): string | 'unset' | undefined {
	const value = text.trim().toLowerCase()
	if (value === '' || /^t\.?b\.?[adc]\.?$/.test(value)) return 'unset'
	const found = /^(\d{1,2})(?:[:.h](\d{2}))?(?::\d{2})?\s*(am|pm|a\.m\.|p\.m\.)?$/.exec(value)
	if (!found || (found[2] === undefined && found[3] === undefined)) return undefined
	let hour = Number(found[1])
	if (found[3] !== undefined) {
		if (hour < 1 || hour > 12) return undefined
		hour = (hour % 12) + (found[3].startsWith('p') ? 12 : 0)
	}
	const minute = Number(found[2] ?? 0)
	return hour > 23 || minute > 59 ? undefined : `${twoDigits(hour)}:${twoDigits(minute)}`
}
const decimal = (text: string): number => Number(text.trim().replace(',', '.'))
const clock = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))
function surfaceFrom(text: string, choices: ImportChoices): Surface | undefined {
	const value = text.trim().toLowerCase()
	return (
		choices.surfaces?.[text.trim()] ??
		surfaces.find(
			(surface) =>
				surface === value.replaceAll(' ', '-') || termWords(surface).toLowerCase() === value,
		)
	)
}
function statusFrom(text: string): Session['status'] | undefined {
	const value = text.trim().toLowerCase()
	return /^cancel|postponed|abandoned/.test(value)
		? 'cancelled'
		: value === 'bye'
			? 'bye'
			: value === 'injured'
				? 'injured'
				: undefined
}
/**
 * Every session of a CSV list within the season. Rows that cannot be read are named by their
 * number.
 */
export function readCsv(text: string, choices: ImportChoices): Incoming {
	const incoming: Incoming = { sessions: [], problems: [], questions: [], notes: [] }
	const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
		skipEmptyLines: 'greedy',
		delimitersToGuess: [';', '\t', ',', '|'],
	})
	const [head, ...rows] = parsed.data
	for (const error of parsed.errors)
		if (error.code !== 'UndetectableDelimiter')
			incoming.problems.push({
				where: `row ${(error.row ?? 0) + 1}`,
				says: `Row ${(error.row ?? 0) + 1}: ${error.message}. Check its quotation marks.`,
			})
	if (!head) {
		incoming.problems.push({
			where: 'file',
			says: 'The file is empty. Export the list again as CSV.',
		})
		return incoming
	}
	const names = head.map((one) => one.trim().toLowerCase())
	const at = Object.fromEntries(
		(Object.keys(headers) as Column[]).map((column) => [
			column,
			headers[column].map((name) => names.indexOf(name)).find((index) => index >= 0) ?? -1,
		]),
	) as Record<Column, number>
	if (at.date < 0) {
		incoming.problems.push({
			where: 'row 1',
			says:
				`No column of dates was found, given ${head.join(', ')}, allowed: a first row with ` +
				'a column named Date.',
		})
		return incoming
	}
	const cell = (row: readonly string[], column: Column): string =>
		at[column] < 0 ? '' : (row[at[column]] ?? '').trim()
	const order = dateOrderOf(rows.map((row) => cell(row, 'date')))
	if (order === 'mixed') {
		incoming.problems.push({
			where: 'Date',
			says: 'The column Date mixes day first and month first. Write the dates as YYYY-MM-DD.',
		})
		return incoming
	}
	if (order === 'unknown' && !choices.dateOrder) {
		const example = rows.map((row) => cell(row, 'date')).find((one) => numeric.test(one))!
		const read = (way: 'day-month' | 'month-day') => wordsOf(dateFrom(example, way))
		ask(incoming.questions, {
			key: 'dateOrder',
			says: `Is ${example} ${read('day-month')} (day first) or ${read('month-day')} (month first)?`,
			options: ['day-month', 'month-day'],
		})
		return incoming
	}
	const used: 'day-month' | 'month-day' =
		order === 'day-month' || order === 'month-day' ? order : (choices.dateOrder ?? 'day-month')
	const ids = new Map<string, number>()
	let assumed = 0
	for (const [index, row] of rows.entries()) {
		const where = `row ${index + 2}`
		const problem = (says: string) =>
			incoming.problems.push({ where, says: `Row ${index + 2}: ${says}` })
		const date = dateFrom(cell(row, 'date'), used)
		if (!date) {
			problem(
				`date not understood, given "${cell(row, 'date')}", allowed: YYYY-MM-DD or ` +
					`${used === 'day-month' ? 'DD/MM/YYYY' : 'MM/DD/YYYY'}`,
			)
			continue
		}
		if (date < choices.from || date > choices.to) continue
		const start = timeFrom(cell(row, 'time'))
		if (start === undefined) {
			problem(`time not understood, given "${cell(row, 'time')}", allowed: HH:MM, or 6:30 pm`)
			continue
		}
		const title = cell(row, 'title') || cell(row, 'kind') || 'without title'
		const typed = cell(row, 'kind').toLowerCase()
		const kind =
			typed === 'training' || typed === 'match'
				? typed
				: (kindOf(cell(row, 'kind') || title, choices) ?? kindOf(title, choices))
		if (!kind) {
			ask(incoming.questions, {
				key: `kinds.${title}`,
				says: `Is "${title}" a training or a match?`,
				options: ['training', 'match'],
			})
			continue
		}
		const place = cell(row, 'place')
		const named = cell(row, 'surface')
		const surface =
			(named === '' ? undefined : surfaceFrom(named, choices)) ??
			(place === '' ? undefined : choices.surfaces?.[place]) ??
			(named === '' ? choices.surface : undefined)
		if (!surface) {
			const asked = named || place
			ask(
				incoming.questions,
				asked === ''
					? {
							key: 'surface',
							says: 'The list names no surface. Which one is it?',
							options: [...surfaces],
						}
					: {
							key: `surfaces.${asked}`,
							says: named ? `Which surface is "${named}"?` : `Which surface is at "${place}"?`,
							options: [...surfaces],
						},
			)
			continue
		}
		const ground = cell(row, 'ground').toLowerCase()
		if (!['', 'dry', 'damp', 'wet'].includes(ground)) {
			problem(`ground not understood, given "${ground}", allowed: dry, damp, wet`)
			continue
		}
		const end = timeFrom(cell(row, 'end'))
		const span =
			cell(row, 'minutes') !== ''
				? decimal(cell(row, 'minutes'))
				: cell(row, 'hours') !== ''
					? decimal(cell(row, 'hours')) * 60
					: end !== undefined && end !== 'unset' && start !== 'unset'
						? (clock(end) - clock(start) + 1440) % 1440
						: undefined
		if (span !== undefined && !(span >= 1 && span <= 600)) {
			problem(
				'length not understood, given ' +
					`"${cell(row, 'minutes') || cell(row, 'hours') || cell(row, 'end')}", allowed: 1 to 600 ` +
					'minutes',
			)
			continue
		}
		if (span === undefined) assumed++
		const status = statusFrom(cell(row, 'status')) ?? (/^bye$/i.test(title) ? 'bye' : undefined)
		const team = cell(row, 'team') || choices.team
		// without an id of its own a row is known by its day, kind, team and title, so that a new start
		// time is a change and not a new session
		const base = cell(row, 'id')
			? `${choices.source}/${cell(row, 'id')}`
			: `${choices.source}/${date}/${kind}/${team ?? ''}/${title}`
		const seen = (ids.get(base) ?? 0) + 1
		ids.set(base, seen)
		incoming.sessions.push({
			date,
			...(start === 'unset' ? {} : { start }),
			minutes:
				span === undefined
					? kind === 'match'
						? choices.matchMinutes
						: choices.trainingMinutes
					: Math.round(span),
			kind,
			surface,
			...(ground === ''
				? choices.ground === undefined
					? {}
					: { ground: choices.ground }
				: { ground: ground as 'dry' | 'damp' | 'wet' }),
			...(team ? { team } : {}),
			...(choices.code === undefined ? {} : { code: choices.code }),
			id: (seen === 1 ? base : `${base}/${seen}`).slice(0, 400),
			title: title.slice(0, 200),
			...(place === '' ? {} : { place: place.slice(0, 200) }),
			...(status === undefined ? {} : { status }),
			...(span === undefined ? { minutesAssumed: true } : {}),
			source: choices.source,
		})
	}
	if (assumed > 0)
		incoming.notes.push(
			`${assumed} ${assumed === 1 ? 'session has' : 'sessions have'} no length in the list: the ` +
				'usual one was taken.',
		)
	return incoming
}
export const previewCsv = (
	text: string,
	existing: readonly Session[],
	choices: ImportChoices,
): ImportPreview => previewImport(existing, readCsv(text, choices), choices.source)
