/**
 * Time zones by name: wall clock and instant, and the VTIMEZONE of a zone, all from the machine's
 * own zone tables.
 */
import ICAL from 'ical.js'
import { twoDigits } from '../../shared/engine/visit/age.ts'

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
			second: '2-digit',
		})
	formats.set(zone, made)
	return made
}
/** The wall clock of a zone at an instant. */
export function wallClock(
	instantMs: number,
	zone: string,
): { date: string; start: string; asUtcMs: number } {
	const part = Object.fromEntries(
		formatOf(zone)
			.formatToParts(instantMs)
			.map(({ type, value }) => [type, value]),
	)
	const date = `${part.year}-${part.month}-${part.day}`
	return {
		date,
		start: `${part.hour}:${part.minute}`,
		asUtcMs: Date.parse(`${date}T${part.hour}:${part.minute}:${part.second}Z`),
	}
}
const offsetMs = (instantMs: number, zone: string): number =>
	wallClock(instantMs, zone).asUtcMs - Math.floor(instantMs / 1000) * 1000

function transitions(
	zone: string,
	fromMs: number,
	toMs: number,
): { at: number; before: number; after: number }[] {
	const found: { at: number; before: number; after: number }[] = []
	const day = 86_400_000
	for (let at = fromMs; at < toMs; at += day) {
		let [low, high] = [at, at + day]
		const [before, after] = [offsetMs(low, zone), offsetMs(high, zone)]
		if (before === after) continue
		while (high - low > 1000) {
			const middle = Math.floor((low + high) / 2000) * 1000
			if (offsetMs(middle, zone) === before) low = middle
			else high = middle
		}
		found.push({ at: high, before, after })
	}
	return found
}
const offsetText = (ms: number): string => {
	const minutes = Math.round(Math.abs(ms) / 60_000)
	const sign = ms < 0 ? '-' : '+'
	return `${sign}${twoDigits(Math.floor(minutes / 60))}${twoDigits(minutes % 60)}`
}
const local = (ms: number): string => new Date(ms).toISOString().slice(0, 19).replace(/[-:]/g, '')
/** VTIMEZONE lines of a zone for the years from..to, each change written out. */
export function zoneLines(zone: string, fromYear: number, toYear: number): string[] {
	const start = Date.UTC(fromYear, 0, 1)
	const first = offsetMs(start, zone)
	const lines = [
		'BEGIN:VTIMEZONE',
		`TZID:${zone}`,
		'BEGIN:STANDARD',
		`DTSTART:${local(start + first)}`,
		`TZOFFSETFROM:${offsetText(first)}`,
		`TZOFFSETTO:${offsetText(first)}`,
		'END:STANDARD',
	]
	for (const { at, before, after } of transitions(zone, start, Date.UTC(toYear + 1, 0, 1))) {
		const name = after > before ? 'DAYLIGHT' : 'STANDARD'
		lines.push(
			`BEGIN:${name}`,
			`DTSTART:${local(at + before)}`,
			`TZOFFSETFROM:${offsetText(before)}`,
			`TZOFFSETTO:${offsetText(after)}`,
			`END:${name}`,
		)
	}
	return [...lines, 'END:VTIMEZONE']
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
