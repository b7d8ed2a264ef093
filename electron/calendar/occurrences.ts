/** When an event of a calendar takes place: once, or each time that its rules repeat it. */
import { createHash } from 'node:crypto'
import ICAL from 'ical.js'
import { twoDigits } from '../../shared/engine/plain/days.ts'
import type { ImportChoices } from '../../shared/engine/season/preview.ts'
import { type Component, dateOf, isCancelled, recurrenceOf, type Time } from './properties.ts'
import { Unreadable } from './reason.ts'
import { wallClock } from './zones.ts'

type Event = InstanceType<typeof ICAL.Event>
/** An event on its day. */
export interface Occurrence {
	/** where its title and place stand */
	event: Component
	start: Time
	/** undefined where the list does not say */
	end: Time | undefined
	id: string
	cancelled: boolean
}
const maxOccurrences = 20_000
/** Repetitions that are no sessions of a player. */
const tooOften = new Map([
	['SECONDLY', 'second'],
	['MINUTELY', 'minute'],
	['HOURLY', 'hour'],
] as const)

/** A time of day that names no zone. */
export const isFloating = (time: Time): boolean =>
	!time.isDate && time.zone === ICAL.Timezone.localTimezone
/** The clinic's date and time of an event's start: a floating time is taken as the clinic's own. */
export function placed(time: Time, choices: ImportChoices): { date: string; start?: string } {
	if (time.isDate) return { date: dateOf(time) }
	if (isFloating(time))
		return { date: dateOf(time), start: `${twoDigits(time.hour)}:${twoDigits(time.minute)}` }
	const { date, start } = wallClock(time.toUnixTime() * 1000, choices.zone)
	return { date, start }
}
/** Ids fit the visit file: a very long UID is kept as its digest. */
function idOf(uid: string, recurrence?: string): string {
	const id = recurrence === undefined ? uid : `${uid}/${recurrence}`
	return id.length <= 380 ? id : createHash('sha256').update(id).digest('hex')
}
const hasEnd = (component: Component): boolean =>
	component.hasProperty('dtend') || component.hasProperty('duration')

/** @throws Unreadable where an event repeats within the day */
function refuseTooOften(master: Component): void {
	const often = master
		.getAllProperties('rrule')
		.map((rule) => String((rule.getFirstValue() as { freq?: unknown } | null)?.freq))
		.map((freq) => [...tooOften].find(([known]) => known === freq)?.[1])
		.find((every) => every !== undefined)
	if (often) throw new Unreadable({ is: 'repeats-within-a-day', every: often })
}
/**
 * Every time that an event repeats until the season ends. @throws Unreadable where that is no end
 */
function repetitions(event: Event, choices: ImportChoices): Time[] {
	const times: Time[] = []
	const iterator = event.iterator()
	for (let next = iterator.next(); next; next = iterator.next()) {
		if (times.length >= maxOccurrences)
			throw new Unreadable({ is: 'repeats-without-end', most: maxOccurrences })
		if (placed(next, choices).date > choices.to) break
		times.push(next)
	}
	return times
}
/** Changes that hold for all occurrences that follow, in order of time. */
const lastingChanges = (changed: readonly Component[]): { event: Component; from: Time }[] =>
	changed
		.filter(
			(change) =>
				change.getFirstProperty('recurrence-id')?.getParameter('range') === 'THISANDFUTURE',
		)
		.map((event) => ({ event, from: recurrenceOf(event) }))
		.sort((left, right) => left.from.compare(right.from))
/** Whether an occurrence is one of those that a change replaces. */
function isReplaced(replaced: readonly Time[], time: Time): boolean {
	const written = time.toString()
	return replaced.some((other) => other.toString() === written || other.compare(time) === 0)
}

/** An occurrence moved as far as the change that holds from then on. */
function movedBy(
	change: { event: Component; from: Time },
	time: Time,
): Pick<Occurrence, 'event' | 'start' | 'end'> {
	const moved = new ICAL.Event(change.event)
	const start = time.clone()
	start.addDuration(moved.startDate.subtractDate(change.from))
	const until = start.clone()
	until.addDuration(moved.duration)
	return { event: change.event, start, end: hasEnd(change.event) ? until : undefined }
}
/** An occurrence as the event itself has it. */
function asWritten(
	master: Component,
	duration: Event['duration'],
	start: Time,
): Pick<Occurrence, 'event' | 'start' | 'end'> {
	const end = start.clone()
	end.addDuration(duration)
	return { event: master, start, end: hasEnd(master) ? end : undefined }
}
/**
 * Every occurrence of an event until the season ends, without those that a change replaces.
 * @throws Unreadable where it repeats too often to be counted out
 */
function ofMaster(
	master: Component,
	changed: readonly Component[],
	uid: string,
	choices: ImportChoices,
): Occurrence[] {
	const event = new ICAL.Event(master, { exceptions: [] })
	if (!event.isRecurring())
		return [
			{
				event: master,
				start: event.startDate,
				end: hasEnd(master) ? event.endDate : undefined,
				id: idOf(uid),
				cancelled: isCancelled(master),
			},
		]
	refuseTooOften(master)
	const lasting = lastingChanges(changed)
	const replaced = changed.map(recurrenceOf)
	const { duration } = event
	return repetitions(event, choices)
		.filter((time) => !isReplaced(replaced, time))
		.map((time) => {
			const change = lasting.findLast(({ from }) => from.compare(time) < 0)
			return {
				...(change ? movedBy(change, time) : asWritten(master, duration, time)),
				id: idOf(uid, time.toString()),
				cancelled: isCancelled(master) || (change !== undefined && isCancelled(change.event)),
			}
		})
}
/** A single occurrence that was changed. */
function ofChange(change: Component, master: Component | undefined, uid: string): Occurrence {
	const event = new ICAL.Event(change)
	return {
		event: change,
		start: event.startDate,
		end: hasEnd(change) ? event.endDate : undefined,
		id: idOf(uid, String(change.getFirstPropertyValue('recurrence-id'))),
		cancelled: isCancelled(change) || (master !== undefined && isCancelled(master)),
	}
}
/**
 * Every occurrence of an event until the season ends; the changed ones come last.
 * @param master the event itself; undefined where a list holds changes alone
 * @throws Error where the event cannot be read
 */
export const occurrences = (
	master: Component | undefined,
	changed: readonly Component[],
	uid: string,
	choices: ImportChoices,
): Occurrence[] => [
	...(master ? ofMaster(master, changed, uid, choices) : []),
	...changed.map((change) => ofChange(change, master, uid)),
]
