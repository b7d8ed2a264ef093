/** iCalendar (RFC 5545): fixture lists in, the rotation out. */
import { createHash } from 'node:crypto'
import ICAL from 'ical.js'
import { fullDay } from '../../shared/engine/season/pattern.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import {
	ask,
	type ImportChoices,
	type ImportPreview,
	type Incoming,
	kindOf,
	previewImport,
} from '../../shared/engine/season/preview.ts'
import { addDays, twoDigits } from '../../shared/engine/visit/age.ts'
import { surfaces, termWords } from '../../shared/engine/visit/terms.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { icalZone, knownZone, wallClock, zoneLines } from './calendar-zones.ts'

type Component = InstanceType<typeof ICAL.Component>
type Time = InstanceType<typeof ICAL.Time>
const maxOccurrences = 20_000
/**
 * The longest all-day event taken for sessions, a camp; and how far back one may begin and still
 * reach into the season.
 */
const mostDays = 31
/** Repetitions that are no sessions of a player. */
const tooOften = {
	SECONDLY: 'every second',
	MINUTELY: 'every minute',
	HOURLY: 'every hour',
} as Partial<Record<string, string>>
/** A refusal of one event, in words. */
class Unreadable extends Error {}
const textOf = (component: Component, name: string): string | undefined => {
	const value = component.getFirstPropertyValue(name)
	return value === null || value === undefined ? undefined : String(value).trim() || undefined
}
const dateOf = (time: Time): string =>
	`${String(time.year).padStart(4, '0')}-${twoDigits(time.month)}-${twoDigits(time.day)}`

const rawOf = (component: Component, name: string): string =>
	String(component.getFirstProperty(name)?.toJSON()[3] ?? '')
/**
 * Whether a time is one of the calendar: the reader would turn a 13th month into the next year
 * without a word.
 */
function realTime(component: Component, name: string): boolean {
	if (!component.hasProperty(name)) return true
	const [, year, month = 0, day = 0, hour = 0, minute = 0, second = 0] = (
		/^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d):(\d\d)Z?)?$/.exec(rawOf(component, name)) ?? []
	).map((one) => (one === undefined ? 0 : Number(one)))
	return (
		year !== undefined &&
		month >= 1 &&
		month <= 12 &&
		day >= 1 &&
		day <= new Date(Date.UTC(year, month, 0)).getUTCDate() &&
		hour <= 23 &&
		minute <= 59 &&
		second <= 60
	)
}
/**
 * Gives every zone named in the calendar its rules: the file's own, else the machine's, else the
 * person's answer.
 */
function registerZones(
	calendar: Component,
	choices: ImportChoices,
	incoming: Incoming,
): Set<string> {
	ICAL.TimezoneService.reset()
	for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone)
	const unknown = new Set<string>()
	const years: [number, number] = [
		Number(choices.from.slice(0, 4)) - 3,
		Number(choices.to.slice(0, 4)) + 1,
	]
	for (const event of calendar.getAllSubcomponents('vevent'))
		for (const property of event.getAllProperties()) {
			const name = property.getParameter('tzid')
			if (typeof name !== 'string' || ICAL.TimezoneService.has(name) || unknown.has(name)) continue
			const answer = choices.zones?.[name]
			const real =
				answer !== undefined && knownZone(answer) ? answer : knownZone(name) ? name : undefined
			if (real) ICAL.TimezoneService.register(icalZone(real, ...years, name), name)
			else {
				unknown.add(name)
				ask(incoming.questions, {
					key: `zones.${name}`,
					says: `The list names a time zone nobody here knows: "${name}". Which zone is it?`,
					options: [choices.zone, 'UTC'],
				})
			}
		}
	return unknown
}
/** The clinic's date and time of an event's start: a floating time is taken as the clinic's own. */
function placed(time: Time, choices: ImportChoices): { date: string; start?: string } {
	if (time.isDate) return { date: dateOf(time) }
	if (time.zone === ICAL.Timezone.localTimezone)
		return { date: dateOf(time), start: `${twoDigits(time.hour)}:${twoDigits(time.minute)}` }
	const { date, start } = wallClock(time.toUnixTime() * 1000, choices.zone)
	return { date, start }
}
interface Found {
	event: Component
	start: Time
	end: Time | undefined
	id: string
	cancelled: boolean
}
function sessionsOf(
	found: Found,
	choices: ImportChoices,
	incoming: Incoming,
): (Session & { id: string })[] {
	const { event, start, end } = found
	const at = placed(start, choices)
	const title = textOf(event, 'summary') ?? 'without title'
	const place = textOf(event, 'location')
	const kind = kindOf(title, choices)
	if (!kind) {
		ask(incoming.questions, {
			key: `kinds.${title}`,
			says: `Is "${title}" a training or a match?`,
			options: ['training', 'match'],
		})
		return []
	}
	const surface = (place === undefined ? undefined : choices.surfaces?.[place]) ?? choices.surface
	if (!surface) {
		ask(
			incoming.questions,
			place === undefined
				? {
						key: 'surface',
						says: 'The list names no place for some sessions. Which surface are they on?',
						options: [...surfaces],
					}
				: {
						key: `surfaces.${place}`,
						says: `Which surface is at "${place}"?`,
						options: [...surfaces],
					},
		)
		return []
	}
	if (start.isDate && end && addDays(at.date, mostDays) < addDays(dateOf(end), -1)) {
		incoming.problems.push({
			where: title,
			says:
				`${title} from ${fullDay(at.date)}: too long, given an all-day event until ` +
				`${fullDay(addDays(dateOf(end), -1))}, allowed: at most ${mostDays} days. Enter its ` +
				'sessions by hand.',
		})
		return []
	}
	const lasting =
		!start.isDate && end ? Math.round((end.toUnixTime() - start.toUnixTime()) / 60) : 0
	const assumed = lasting <= 0
	if (lasting > 600) {
		incoming.problems.push({
			where: title,
			says:
				`${title} on ${fullDay(at.date)}: too long, given ${lasting} minutes, allowed: 1 to ` +
				'600. Enter it by hand.',
		})
		return []
	}
	const sequence = Number(textOf(event, 'sequence') ?? 0)
	const base: Session & { id: string } = {
		...at,
		id: found.id,
		kind,
		surface,
		title: title.slice(0, 200),
		minutes: assumed
			? kind === 'match'
				? choices.matchMinutes
				: choices.trainingMinutes
			: lasting,
		...(place === undefined ? {} : { place: place.slice(0, 200) }),
		...(assumed ? { minutesAssumed: true } : {}),
		...(choices.ground === undefined ? {} : { ground: choices.ground }),
		...(choices.team === undefined ? {} : { team: choices.team }),
		...(choices.code === undefined ? {} : { code: choices.code }),
		...(found.cancelled ? { status: 'cancelled' as const } : {}),
		source: choices.source,
		...(Number.isInteger(sequence) && sequence > 0 ? { sequence } : {}),
	}
	if (!start.isDate || !end) return [base]
	// the end of an all-day event is the day after its last
	const last = addDays(dateOf(end), -1)
	const days: (Session & { id: string })[] = []
	for (let date = at.date, n = 0; date <= last || n === 0; date = addDays(date, 1), n++)
		days.push({ ...base, date, id: n === 0 ? base.id : `${base.id}/day${n + 1}` })
	return days
}
/** Ids fit the visit file: a very long UID is kept as its digest. */
const idOf = (uid: string, recurrence?: string): string => {
	const id = recurrence === undefined ? uid : `${uid}/${recurrence}`
	return id.length <= 380 ? id : createHash('sha256').update(id).digest('hex')
}
const statusOf = (event: Component): boolean =>
	(textOf(event, 'status') ?? '').toUpperCase() === 'CANCELLED'

function occurrences(
	master: Component,
	exceptions: Component[],
	uid: string,
	choices: ImportChoices,
): Found[] {
	const event = new ICAL.Event(master, { exceptions: [] })
	const endFor = (component: Component, one: InstanceType<typeof ICAL.Event>): Time | undefined =>
		component.hasProperty('dtend') || component.hasProperty('duration') ? one.endDate : undefined
	if (!event.isRecurring())
		return [
			{
				event: master,
				start: event.startDate,
				end: endFor(master, event),
				id: idOf(uid),
				cancelled: statusOf(master),
			},
		]
	const often = master
		.getAllProperties('rrule')
		.map((rule) => tooOften[String((rule.getFirstValue() as { freq?: unknown } | null)?.freq)])
		.find(Boolean)
	if (often) throw new Unreadable(`it repeats ${often}, which no session does`)
	// an exception may hold for all that follow it
	const ranges = exceptions
		.filter(
			(exception) =>
				exception.getFirstProperty('recurrence-id')?.getParameter('range') === 'THISANDFUTURE',
		)
		.map((exception) => ({
			event: exception,
			from: exception.getFirstPropertyValue('recurrence-id') as unknown as Time,
		}))
		.sort((a, b) => a.from.compare(b.from))
	const replaced = new Map(
		exceptions.map((exception) => [
			String(exception.getFirstPropertyValue('recurrence-id')),
			exception,
		]),
	)
	const found: Found[] = []
	const iterator = event.iterator()
	const duration = event.duration
	for (let n = 0, next = iterator.next(); next; n++, next = iterator.next()) {
		if (n >= maxOccurrences)
			throw new Unreadable(
				`it repeats more than ${maxOccurrences} times before the season ends; let it begin later`,
			)
		if (placed(next, choices).date > choices.to) break
		const recurrence = next.toString()
		const own =
			replaced.get(recurrence) ??
			[...replaced].find(
				([, one]) =>
					(one.getFirstPropertyValue('recurrence-id') as unknown as Time).compare(next as Time) ===
					0,
			)?.[1]
		if (own) continue
		const range = ranges.findLast((one) => next && one.from.compare(next) < 0)
		if (range) {
			const moved = new ICAL.Event(range.event)
			const start = next.clone()
			start.addDuration(moved.startDate.subtractDate(range.from))
			const until = start.clone()
			until.addDuration(moved.duration)
			found.push({
				event: range.event,
				start,
				end: endFor(range.event, moved) ? until : undefined,
				id: idOf(uid, recurrence),
				cancelled: statusOf(range.event) || statusOf(master),
			})
			continue
		}
		const end = next.clone()
		end.addDuration(duration)
		found.push({
			event: master,
			start: next,
			end: endFor(master, event) ? end : undefined,
			id: idOf(uid, recurrence),
			cancelled: statusOf(master),
		})
	}
	return found
}
/** Every session of a calendar within the season. */
export function readCalendar(
	text: string,
	choices: ImportChoices,
	reading: (title: string) => void = () => {},
): Incoming {
	const incoming: Incoming = { sessions: [], problems: [], questions: [], notes: [] }
	const calendars: Component[] = []
	try {
		const parsed = ICAL.parse(text.replace(/^\uFEFF/, '').trim()) as unknown as unknown[]
		const roots = typeof parsed[0] === 'string' ? [parsed] : (parsed as unknown[][])
		calendars.push(
			...roots
				.map((root) => new ICAL.Component(root as never))
				.filter((component) => component.name === 'vcalendar'),
		)
	} catch (error) {
		incoming.problems.push({
			where: 'file',
			says:
				'This is not an iCalendar file ' +
				`(${error instanceof Error ? error.message.slice(0, 100) : 'not readable'}). Export ` +
				'the calendar again as .ics.',
		})
		return incoming
	}
	if (calendars.length === 0)
		incoming.problems.push({
			where: 'file',
			says: 'The file holds no calendar. Export the calendar again as .ics.',
		})
	let floating = false
	for (const calendar of calendars) {
		for (const zone of calendar.getAllSubcomponents('vtimezone'))
			reading(`time zone ${textOf(zone, 'tzid') ?? 'without a name'}`)
		const unknown = registerZones(calendar, choices, incoming)
		const groups = new Map<string, Component[]>()
		for (const [index, event] of calendar.getAllSubcomponents('vevent').entries()) {
			const uid = textOf(event, 'uid')
			if (!uid) {
				incoming.problems.push({
					where: `event ${index + 1}`,
					says:
						`Event ${index + 1} (${textOf(event, 'summary') ?? 'without title'}) has no UID ` +
						'and cannot be kept up to date. Ask for a list with UIDs, or enter it by hand.',
				})
				continue
			}
			if (!event.hasProperty('dtstart')) {
				incoming.problems.push({
					where: uid,
					says: `"${textOf(event, 'summary') ?? uid}" has no start. Enter it by hand.`,
				})
				continue
			}
			const unreal = ['dtstart', 'dtend', 'recurrence-id'].find((name) => !realTime(event, name))
			if (unreal) {
				incoming.problems.push({
					where: uid,
					says:
						`"${textOf(event, 'summary') ?? uid}": ${unreal.toUpperCase()} is no date, ` +
						`given ${rawOf(event, unreal)}, allowed: a day and time of the calendar. Enter ` +
						'it by hand.',
				})
				continue
			}
			const zone = event.getFirstProperty('dtstart')?.getParameter('tzid')
			if (typeof zone === 'string' && unknown.has(zone)) continue
			groups.set(uid, [...(groups.get(uid) ?? []), event])
		}
		for (const [uid, events] of groups) {
			const sequence = (one: Component) => Number(textOf(one, 'sequence') ?? 0)
			const changed = events.filter((event) => event.hasProperty('recurrence-id'))
			const master = events
				.filter((event) => !event.hasProperty('recurrence-id'))
				.sort((a, b) => sequence(b) - sequence(a))[0]
			const title = textOf(events[0]!, 'summary') ?? uid
			try {
				reading(title.slice(0, 80))
				const found = master ? occurrences(master, changed, uid, choices) : []
				for (const component of changed) {
					const event = new ICAL.Event(component)
					found.push({
						event: component,
						start: event.startDate,
						end:
							component.hasProperty('dtend') || component.hasProperty('duration')
								? event.endDate
								: undefined,
						id: idOf(uid, String(component.getFirstPropertyValue('recurrence-id'))),
						cancelled: statusOf(component) || (master !== undefined && statusOf(master)),
					})
				}
				for (const one of found) {
					if (!one.start.isDate && one.start.zone === ICAL.Timezone.localTimezone) floating = true
					const inside =
						placed(one.start, choices).date >= addDays(choices.from, -mostDays) &&
						placed(one.start, choices).date <= choices.to
					if (inside)
						incoming.sessions.push(
							...sessionsOf(one, choices, incoming).filter(
								(session) => session.date >= choices.from && session.date <= choices.to,
							),
						)
				}
			} catch (error) {
				incoming.problems.push({
					where: uid,
					says:
						`"${textOf(events[0]!, 'summary') ?? uid}" could not be read ` +
						`(${error instanceof Error ? error.message.slice(0, 100) : 'not readable'}). ` +
						'Enter it by hand.',
				})
			}
		}
	}
	if (floating)
		incoming.notes.push(
			`Some times name no time zone: they were taken as the clinic's own (${choices.zone}).`,
		)
	const assumed = incoming.sessions.filter((session) => session.minutesAssumed).length
	if (assumed > 0)
		incoming.notes.push(
			`${assumed} ${assumed === 1 ? 'session has' : 'sessions have'} no length in the list: the ` +
				'usual one was taken.',
		)
	return incoming
}
export const previewCalendar = (
	text: string,
	existing: readonly Session[],
	choices: ImportChoices,
): ImportPreview => previewImport(existing, readCalendar(text, choices), choices.source)

export interface CalendarOptions {
	/** IANA zone of the sessions' wall clock */ zone: string
	/** moment of writing */ stamp: Date
	/**
	 * an earlier export of the same season: unchanged events keep their SEQUENCE, changed ones gain
	 * 1, vanished ones are cancelled
	 */
	previous?: string
	/** minutes before the session at which the calendar reminds; none unless given */ remindMinutes?: number
}
const escaped = (text: string): string =>
	text.replace(/[\\;,]/g, (mark) => `\\${mark}`).replace(/\r?\n/g, '\\n')
/** Folds at 75 octets, never inside a character. */
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
	const worn =
		session.parts && session.parts.length > 1
			? session.parts
					.map((part) => `${letter(part.pair)} ${Math.round(part.minutes)} min`)
					.join(', then ')
			: session.pair === undefined
				? 'No pair yet'
				: letter(session.pair)
	return `${worn} (${session.kind})`
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
export const uidOf = (sessionId: string): string =>
	`${createHash('sha256').update(sessionId).digest('hex').slice(0, 32)}@lastwright.invalid`
interface Before {
	sequence: number
	body: string
	cancelled: boolean
}
const bodyOf = (lines: readonly string[]): string =>
	lines.filter((line) => !/^(DTSTAMP|SEQUENCE)/.test(line)).join('\n')
function eventsBefore(text: string | undefined): Map<string, Before> {
	const events = new Map<string, Before>()
	for (const block of (text ?? '')
		.replace(/\r\n[ \t]/g, '')
		.split('BEGIN:VEVENT\r\n')
		.slice(1)) {
		const lines = block.split('END:VEVENT')[0]!.split('\r\n').filter(Boolean)
		const value = (name: string) =>
			lines.find((line) => line.startsWith(`${name}:`))?.slice(name.length + 1)
		const uid = value('UID')
		if (uid)
			events.set(uid, {
				sequence: Number(value('SEQUENCE') ?? 0),
				body: bodyOf(lines),
				cancelled: value('STATUS') === 'CANCELLED',
			})
	}
	return events
}
/** The player's calendar of a plan: stable UIDs, private, CRLF to the last line. */
export function writeCalendar(
	plan: Plan,
	{ zone, stamp, previous, remindMinutes }: CalendarOptions,
): string {
	const before = eventsBefore(previous)
	const stamped = `DTSTAMP:${stamp.toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`
	const event = (uid: string, body: string[]): string[] => {
		const old = before.get(uid)
		const sequence =
			old === undefined
				? 0
				: old.body === bodyOf([`UID:${uid}`, ...body])
					? old.sequence
					: old.sequence + 1
		return ['BEGIN:VEVENT', `UID:${uid}`, stamped, `SEQUENCE:${sequence}`, ...body, 'END:VEVENT']
	}
	const written = new Set<string>()
	const lines: string[] = []
	for (const session of plan.sessions) {
		if (session.past) {
			written.add(uidOf(session.id))
			continue
		}
		const uid = uidOf(session.id)
		written.add(uid)
		const summary = summaryOf(session, plan)
		lines.push(
			...event(uid, [
				`DTSTART;TZID=${zone}:${compact(session.date, session.start)}`,
				`DTEND;TZID=${zone}:${endOf(session)}`,
				`SUMMARY:${escaped(summary)}`,
				`DESCRIPTION:${escaped(`${termWords(session.surface)}, ` + `${session.ground}${session.fullMinutes === undefined ? '' : `, ${session.minutes} of ${session.fullMinutes} minutes`}`)}`,
				'CLASS:PRIVATE',
				'TRANSP:TRANSPARENT',
				'STATUS:CONFIRMED',
				...(remindMinutes === undefined
					? []
					: [
							'BEGIN:VALARM',
							'ACTION:DISPLAY',
							`DESCRIPTION:${escaped(summary)}`,
							`TRIGGER:-PT${Math.round(remindMinutes)}M`,
							'END:VALARM',
						]),
			]),
		)
	}
	for (const [uid, old] of before) {
		if (written.has(uid)) continue
		const kept = old.body.split('\n').filter((line) => !/^(UID|STATUS):/.test(line))
		lines.push(...event(uid, [...kept, 'STATUS:CANCELLED']))
	}
	const years = [
		plan.season.from,
		plan.season.to,
		...plan.sessions.map((session) => session.date),
	].map((date) => Number(date.slice(0, 4)))
	const all = [
		'BEGIN:VCALENDAR',
		'VERSION:2.0',
		'PRODID:-//Lastwright//Season//EN',
		'CALSCALE:GREGORIAN',
		'METHOD:PUBLISH',
		...zoneLines(zone, Math.min(...years) - 1, Math.max(...years)),
		...lines,
		'END:VCALENDAR',
	]
	return `${all.map(foldLine).join('\r\n')}\r\n`
}
