/** The season: its sessions, the same session each week, and what departs from it. */
import { z } from 'zod'
import { choice, count, isoDate, measure, text, yesNo } from '../fields.ts'
import { codes, surfaces } from '../terms.ts'

const startTime = z
	.string()
	.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time HH:MM, 00:00 to 23:59')
	.meta({ title: 'Start' })
const sessionShape = {
	start: startTime.optional(),
	minutes: measure('Minutes', 'min', [1, 600], [20, 180]),
	kind: choice('Kind', ['training', 'match']),
	surface: choice('Surface', surfaces),
	ground: choice('Ground', ['dry', 'damp', 'wet']).optional(),
	team: text('Team', 80).optional(),
	code: choice('Code', codes).optional(),
}
export const sessionSchema = z.strictObject({
	date: isoDate('Date'),
	...sessionShape,
	/** Stays the same when the session moves; from a calendar its UID and recurrence id. */
	id: text('Session id', 400).optional(),
	title: text('Title', 200).optional(),
	place: text('Place', 200).optional(),
	/** Absent: it takes place. */
	status: choice('Status', ['cancelled', 'bye', 'injured']).optional(),
	/** The pair the clinician wants worn, by id. */
	pinned: text('Pinned pair', 40).optional(),
	/** The pair that was worn, by id, once the session is past. */
	worn: text('Worn pair', 40).optional(),
	/** The list gave no length: the usual one was taken. */
	minutesAssumed: yesNo('Length assumed'),
	/** The imported list it came from. */
	source: text('Source', 120).optional(),
	sequence: count('Sequence', 'count', [0, 1000000]).optional(),
})
/** The same session each week, and what departs from it. */
export const patternSchema = z.strictObject({
	...sessionShape,
	id: text('Pattern id', 80),
	weekday: choice('Weekday', [
		'monday',
		'tuesday',
		'wednesday',
		'thursday',
		'friday',
		'saturday',
		'sunday',
	]),
	from: isoDate('From').optional(),
	to: isoDate('To').optional(),
})
export const exceptionSchema = z.strictObject({
	from: isoDate('From'),
	to: isoDate('To').optional(),
	status: choice('Status', ['cancelled', 'bye', 'injured']).optional(),
	/** Only sessions of this pattern; absent: all. */
	pattern: text('Pattern id', 80).optional(),
	surface: choice('Surface', surfaces).optional(),
	ground: choice('Ground', ['dry', 'damp', 'wet']).optional(),
	start: startTime.optional(),
	minutes: measure('Minutes', 'min', [1, 600], [20, 180]).optional(),
})
export const seasonSchema = z.strictObject({
	from: isoDate('Season from'),
	to: isoDate('Season to'),
	sessions: z.array(sessionSchema).max(1500).optional(),
	pattern: z.array(patternSchema).max(30).optional(),
	exceptions: z.array(exceptionSchema).max(200).optional(),
})
export type Session = z.infer<typeof sessionSchema>
export type Pattern = z.infer<typeof patternSchema>
export type PatternException = z.infer<typeof exceptionSchema>
export type Season = z.infer<typeof seasonSchema>
