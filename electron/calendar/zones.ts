/**
 * Time zones by name: wall clock and instant, and the VTIMEZONE of a zone, all from the machine's
 * own zone tables.
 */
import ICAL from 'ical.js'
import { Temporal } from 'temporal-polyfill'
import { twoDigits } from '../../shared/engine/plain/days.ts'

/** Whether the machine's zone tables have a zone of this name. */
export const knownZone = (name: string): boolean => {
	try {
		new Intl.DateTimeFormat('en', { timeZone: name })
		return true
	} catch {
		return false
	}
}
/** The machine's own zone. */
export const zoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone
const formats = new Map<string, Intl.DateTimeFormat>()
/** Kept, as making a format is slow and a list asks for the same zone thousands of times. */
function formatOf(zone: string): Intl.DateTimeFormat {
	const made =
		formats.get(zone) ??
		new Intl.DateTimeFormat('en-CA', {
			timeZone: zone,
			hourCycle: 'h23',
			year: 'numeric',
			month: '2-digit',
			day: '2-digit',
			hour: '2-digit',
			minute: '2-digit',
		})
	formats.set(zone, made)
	return made
}
/** The wall clock of a zone at an instant: ISO date, and HH:MM. */
export function wallClock(instantMs: number, zone: string): { date: string; start: string } {
	const part = Object.fromEntries(
		formatOf(zone)
			.formatToParts(instantMs)
			.map(({ type, value }) => [type, value]),
	)
	return {
		date: `${part.year}-${part.month}-${part.day}`,
		start: `${part.hour}:${part.minute}`,
	}
}

const offsetMsOf = (moment: Temporal.ZonedDateTime): number => moment.offsetNanoseconds / 1e6
/** +1030 for ten hours and a half ahead of UTC. */
function offsetText(offsetMs: number): string {
	const minutes = Math.round(Math.abs(offsetMs) / 60_000)
	const sign = offsetMs < 0 ? '-' : '+'
	return `${sign}${twoDigits(Math.floor(minutes / 60))}${twoDigits(minutes % 60)}`
}
/** A moment by the clock that is so far ahead of UTC, as calendars write it. */
const clockText = (moment: Temporal.ZonedDateTime, offsetMs: number): string =>
	new Date(moment.epochMilliseconds + offsetMs).toISOString().slice(0, 19).replace(/[-:]/g, '')
/** The offset from a moment on, and before it, by the clock that ends there. */
function changeLines(moment: Temporal.ZonedDateTime, beforeMs: number): string[] {
	const afterMs = offsetMsOf(moment)
	const name = afterMs > beforeMs ? 'DAYLIGHT' : 'STANDARD'
	return [
		`BEGIN:${name}`,
		`DTSTART:${clockText(moment, beforeMs)}`,
		`TZOFFSETFROM:${offsetText(beforeMs)}`,
		`TZOFFSETTO:${offsetText(afterMs)}`,
		`END:${name}`,
	]
}
const newYear = (year: number, zone: string): Temporal.ZonedDateTime =>
	Temporal.Instant.fromEpochMilliseconds(Date.UTC(year, 0, 1)).toZonedDateTimeISO(zone)
/** VTIMEZONE lines of a zone for the years from..to, each change written out. */
export function zoneLines(zone: string, fromYear: number, toYear: number): string[] {
	const end = newYear(toYear + 1, zone).epochMilliseconds
	let moment = newYear(fromYear, zone)
	const lines = ['BEGIN:VTIMEZONE', `TZID:${zone}`, ...changeLines(moment, offsetMsOf(moment))]
	for (;;) {
		const next = moment.getTimeZoneTransition('next')
		if (!next || next.epochMilliseconds > end) return [...lines, 'END:VTIMEZONE']
		lines.push(...changeLines(next, offsetMsOf(moment)))
		moment = next
	}
}
/** The zone for ical.js. */
export function icalZone(
	zone: string,
	fromYear: number,
	toYear: number,
	name = zone,
): ICAL.Timezone {
	return new ICAL.Timezone({
		component: new ICAL.Component(
			ICAL.parse(zoneLines(zone, fromYear, toYear).join('\r\n')) as unknown as unknown[],
		),
		tzid: name,
	} as never)
}
