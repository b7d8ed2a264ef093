/** The rotation as a calendar (RFC 5545) that a player may subscribe to or open. */
import { createHash } from 'node:crypto'
import { addDays, twoDigits } from '../../shared/engine/plain/days.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import { termWords } from '../../shared/engine/visit/terms.ts'
import { zoneLines } from './zones.ts'

interface CalendarOptions {
	/** IANA zone of the sessions' wall clock */
	zone: string
	/** moment of writing */
	stamp: Date
	/**
	 * an earlier export of the same season: unchanged events keep their SEQUENCE, changed ones gain
	 * 1, vanished ones are cancelled
	 */
	previous?: string
}
const escaped = (text: string): string =>
	text.replace(/[\\;,]/g, (mark) => `\\${mark}`).replace(/\r?\n/g, '\\n')
/** Folds at 75 octets, never inside a character. @internal */
export function foldLine(line: string): string {
	const parts: string[] = []
	let [part, octets] = ['', 0]
	for (const char of line) {
		const size = Buffer.byteLength(char)
		if (octets + size > 75) {
			parts.push(part)
			;[part, octets] = [' ', 1]
		}
		part += char
		octets += size
	}
	return [...parts, part].join('\r\n')
}

/** Neutral words only: letters of pairs, no name, no diagnosis. */
function summaryOf(session: PlanSession, plan: Plan): string {
	const letter = (id: string) => `Pair ${plan.pairs.find((pair) => pair.id === id)?.letter ?? id}`
	const { parts = [], pair, kind } = session
	if (parts.length > 1) {
		const worn = parts.map((part) => `${letter(part.pair)} ${Math.round(part.minutes)} min`)
		return `${worn.join(', then ')} (${kind})`
	}
	return `${pair === undefined ? 'No pair yet' : letter(pair)} (${kind})`
}
function descriptionOf({ surface, ground, minutes, fullMinutes }: PlanSession): string {
	const eased = fullMinutes === undefined ? '' : `, ${minutes} of ${fullMinutes} minutes`
	return `${termWords(surface)}, ${ground}${eased}`
}
const compact = (date: string, time: string): string =>
	`${date.replaceAll('-', '')}T${time.replace(':', '')}00`
function endOf(session: PlanSession): string {
	const [hour = 0, minute = 0] = session.start.split(':').map(Number)
	const total = hour * 60 + minute + Math.round(session.minutes)
	return compact(
		addDays(session.date, Math.floor(total / 1440)),
		`${twoDigits(Math.floor((total % 1440) / 60))}:${twoDigits(total % 60)}`,
	)
}
const uidOf = (sessionId: string): string =>
	`${createHash('sha256').update(sessionId).digest('hex').slice(0, 32)}@lastwright.invalid`

/** An event of an earlier export. */
interface Before {
	sequence: number
	body: string
}
const bodyOf = (lines: readonly string[]): string =>
	lines.filter((line) => !/^(DTSTAMP|SEQUENCE)/.test(line)).join('\n')
/** The events of an earlier export by their UID. */
function eventsBefore(text = ''): Map<string, Before> {
	const events = new Map<string, Before>()
	const [, ...blocks] = text.replace(/\r\n[ \t]/g, '').split('BEGIN:VEVENT\r\n')
	for (const block of blocks) {
		const [event = ''] = block.split('END:VEVENT')
		const lines = event.split('\r\n').filter(Boolean)
		const value = (name: string) =>
			lines.find((line) => line.startsWith(`${name}:`))?.slice(name.length + 1)
		const uid = value('UID')
		if (uid) events.set(uid, { sequence: Number(value('SEQUENCE') ?? 0), body: bodyOf(lines) })
	}
	return events
}
/** An event has the number 0 at first, and one more with every change. */
function sequenceOf(body: readonly string[], before: Before | undefined): number {
	if (before === undefined) return 0
	return before.body === bodyOf(body) ? before.sequence : before.sequence + 1
}
function eventLines(
	uid: string,
	body: readonly string[],
	before: Before | undefined,
	stamp: string,
): string[] {
	const sequence = sequenceOf([`UID:${uid}`, ...body], before)
	return [
		'BEGIN:VEVENT',
		`UID:${uid}`,
		`DTSTAMP:${stamp}`,
		`SEQUENCE:${sequence}`,
		...body,
		'END:VEVENT',
	]
}
const sessionBody = (session: PlanSession, plan: Plan, zone: string): string[] => [
	`DTSTART;TZID=${zone}:${compact(session.date, session.start)}`,
	`DTEND;TZID=${zone}:${endOf(session)}`,
	`SUMMARY:${escaped(summaryOf(session, plan))}`,
	`DESCRIPTION:${escaped(descriptionOf(session))}`,
	'CLASS:PRIVATE',
	'TRANSP:TRANSPARENT',
	'STATUS:CONFIRMED',
]
const cancelledBody = (before: Before): string[] => [
	...before.body.split('\n').filter((line) => !/^(UID|STATUS):/.test(line)),
	'STATUS:CANCELLED',
]
/** Events of the sessions ahead, and cancellations of those that are no longer in the plan. */
function allEvents(plan: Plan, { zone, stamp, previous }: CalendarOptions): string[] {
	const before = eventsBefore(previous)
	const stamped = `${stamp.toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`
	const stays = new Set(plan.sessions.map((session) => uidOf(session.id)))
	const ahead = plan.sessions.filter((session) => !session.past)
	return [
		...ahead.flatMap((session) => {
			const uid = uidOf(session.id)
			return eventLines(uid, sessionBody(session, plan, zone), before.get(uid), stamped)
		}),
		...[...before]
			.filter(([uid]) => !stays.has(uid))
			.flatMap(([uid, old]) => eventLines(uid, cancelledBody(old), old, stamped)),
	]
}
/** The player's calendar of a plan: stable UIDs, private, CRLF to the last line. */
export function writeCalendar(plan: Plan, options: CalendarOptions): string {
	const { season, sessions } = plan
	const years = [season.from, season.to, ...sessions.map((session) => session.date)].map((date) =>
		Number(date.slice(0, 4)),
	)
	const lines = [
		'BEGIN:VCALENDAR',
		'VERSION:2.0',
		'PRODID:-//Lastwright//Season//EN',
		'CALSCALE:GREGORIAN',
		'METHOD:PUBLISH',
		...zoneLines(options.zone, Math.min(...years) - 1, Math.max(...years)),
		...allEvents(plan, options),
		'END:VCALENDAR',
	]
	return `${lines.map(foldLine).join('\r\n')}\r\n`
}
