/** A fixture list as iCalendar (RFC 5545). */
import ICAL from 'ical.js'
import { addDays } from '../../shared/engine/plain/days.ts'
import { present } from '../../shared/engine/plain/present.ts'
import type { ImportChoices, Incoming } from '../../shared/engine/season/preview.ts'
import { type Statement, state } from '../../shared/engine/words/statement.ts'
import { assumedLengthNotes } from './lengths.ts'
import { registerZones } from './named-zones.ts'
import { isFloating, type Occurrence, occurrences, placed } from './occurrences.ts'
import { readableParts } from './parts.ts'
import { type Component, isRealTime, rawOf, sequenceOf, textOf, titleOf } from './properties.ts'
import { flawIn } from './reason.ts'
import { mostDays, sessionsOf } from './sessions.ts'

/** A list while it is read. */
interface Reading {
	choices: ImportChoices
	incoming: Incoming
	/** told what is being read, so that what takes too long can be named */
	at: (title: string) => void
}
/** The calendars of a text. @throws Error where it is none */
function parsedCalendars(text: string): Component[] {
	const parsed = ICAL.parse(text) as unknown as unknown[]
	const roots = typeof parsed[0] === 'string' ? [parsed] : (parsed as unknown[][])
	return roots
		.map((root) => new ICAL.Component(root as never))
		.filter((component) => component.name === 'vcalendar')
}
/**
 * The calendars of a file, without the parts that spoil it, each told. @throws Error where it is
 * none
 */
function calendarsOf(file: string, { problems }: Incoming): Component[] {
	const text = file.replace(/^\uFEFF/, '').trim()
	try {
		return parsedCalendars(text)
	} catch (error) {
		const parts = readableParts(text)
		if (!parts) throw error
		problems.push(...parts.leftOut.map((part) => state('season.part-unreadable', { ...part })))
		return parsedCalendars(parts.text)
	}
}
/** Why an event cannot be read at all; undefined where it can. */
function flawOf(event: Component, number: number): Statement | undefined {
	try {
		return missingIn(event, number)
	} catch (error) {
		return state('season.event-unreadable', { number, flaw: flawIn(error) })
	}
}
/** What an event lacks that it cannot be without. @throws Error where it cannot be looked at */
function missingIn(event: Component, number: number): Statement | undefined {
	const uid = textOf(event, 'uid')
	if (!uid) return state('season.event-no-uid', { number, ...present({ title: titleOf(event) }) })
	const title = titleOf(event) ?? uid
	if (!event.hasProperty('dtstart')) return state('season.event-no-start', { title })
	const unreal = ['dtstart', 'dtend', 'recurrence-id'].find((name) => !isRealTime(event, name))
	if (!unreal) return undefined
	return state('season.event-no-date', {
		title,
		property: unreal.toUpperCase(),
		given: rawOf(event, unreal),
	})
}
/** The events of a calendar that can be read, those of one UID together. */
function eventsByUid(
	calendar: Component,
	unknownZones: ReadonlySet<string>,
	{ incoming }: Reading,
): Map<string, Component[]> {
	const groups = new Map<string, Component[]>()
	for (const [index, event] of calendar.getAllSubcomponents('vevent').entries()) {
		const flaw = flawOf(event, index + 1)
		if (flaw) {
			incoming.problems.push(flaw)
			continue
		}
		const zone = event.getFirstProperty('dtstart')?.getParameter('tzid')
		if (typeof zone === 'string' && unknownZones.has(zone)) continue
		const uid = textOf(event, 'uid') ?? ''
		groups.set(uid, [...(groups.get(uid) ?? []), event])
	}
	return groups
}
const isChange = (event: Component): boolean => event.hasProperty('recurrence-id')
/** The event that counts where a list holds several of the same UID: its latest revision. */
const latest = (events: readonly Component[]): Component | undefined =>
	events
		.filter((event) => !isChange(event))
		.sort((left, right) => sequenceOf(right) - sequenceOf(left))[0]

/** Sessions of an occurrence that lie within the season. */
function addSessions(found: Occurrence, { choices, incoming }: Reading): void {
	const { date } = placed(found.start, choices)
	if (date < addDays(choices.from, -mostDays) || date > choices.to) return
	incoming.sessions.push(
		...sessionsOf(found, choices, incoming).filter(
			(session) => session.date >= choices.from && session.date <= choices.to,
		),
	)
}
/** Adds the sessions of all events of one UID. @returns whether a time of them names no zone */
function readEvents(uid: string, events: readonly Component[], reading: Reading): boolean {
	const { choices, incoming, at } = reading
	const [first] = events
	const title = (first && titleOf(first)) ?? uid
	let floating = false
	try {
		at(title.slice(0, 80))
		for (const found of occurrences(latest(events), events.filter(isChange), uid, choices)) {
			floating ||= isFloating(found.start)
			addSessions(found, reading)
		}
	} catch (error) {
		incoming.problems.push(state('season.event-unreadable', { title, flaw: flawIn(error) }))
	}
	return floating
}
/** Reads one calendar of a file. @returns whether a time in it names no zone */
function readOne(calendar: Component, reading: Reading): boolean {
	const unknown = registerZones(calendar, reading)
	let floating = false
	for (const [uid, events] of eventsByUid(calendar, unknown, reading))
		if (readEvents(uid, events, reading)) floating = true
	return floating
}
/** Every session of a calendar within the season. */
export function readCalendar(
	text: string,
	choices: ImportChoices,
	at: (title: string) => void = () => {},
): Incoming {
	const incoming: Incoming = { sessions: [], problems: [], questions: [], notes: [] }
	let calendars: Component[]
	try {
		calendars = calendarsOf(text, incoming)
	} catch (error) {
		incoming.problems.push(state('season.calendar-unreadable', { flaw: flawIn(error) }))
		return incoming
	}
	if (calendars.length === 0) incoming.problems.push(state('season.calendar-none'))
	const floating = calendars.map((calendar) => readOne(calendar, { choices, incoming, at }))
	if (floating.includes(true))
		incoming.notes.push(state('season.times-floating', { zone: choices.zone }))
	incoming.notes.push(...assumedLengthNotes(incoming.sessions))
	return incoming
}
