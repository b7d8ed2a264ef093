/** Calendars written by hand, and the answers a clinic in Melbourne would give about them. */
import { readCalendar } from '../../electron/calendar/read.ts'
import {
	type ImportChoices,
	type ImportPreview,
	type Incoming,
	previewImport,
} from '../../shared/engine/season/preview.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'

export const choices: ImportChoices = {
	zone: 'Australia/Melbourne',
	from: '2027-02-01',
	to: '2027-09-30',
	source: 'club',
	surface: 'natural-firm',
	trainingMinutes: 75,
	matchMinutes: 90,
}
/** A whole calendar of these lines. */
export const calendar = (...lines: string[]): string =>
	['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Test//EN', ...lines, 'END:VCALENDAR', ''].join(
		'\r\n',
	)
/** The lines of one event. */
export const event = (uid: string, ...lines: string[]): string[] => [
	'BEGIN:VEVENT',
	`UID:${uid}`,
	'DTSTAMP:20270101T000000Z',
	...lines,
	'END:VEVENT',
]
/** Day and time of every session that is read. */
export const starts = (text: string, more: Partial<ImportChoices> = {}) =>
	readCalendar(text, { ...choices, ...more }).sessions.map(
		({ date, start }) => `${date} ${start ?? 'all day'}`,
	)

/** What taking over a list that was read would change. */
export const previewOf = (read: Incoming, existing: readonly Session[]): ImportPreview =>
	previewImport(existing, read, choices.source)
