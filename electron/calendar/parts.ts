/** A calendar file that cannot be parsed as a whole, taken apart so that only its bad parts go. */
import ICAL from 'ical.js'
import type { ListFlaw } from '../../shared/engine/words/en/season/lists.ts'
import { flawIn } from './reason.ts'

/** A part of the file that was left out, and why. */
export interface LeftOut {
	/** as the file says it: an event by its title, a time zone by its name */
	name: string
	kind: 'event' | 'time-zone'
	/** among the parts of its kind, from 1 */
	number: number
	flaw: ListFlaw
}
interface Part {
	kind: LeftOut['kind']
	number: number
	lines: string[]
	ended: boolean
}
const kinds: Readonly<Record<string, LeftOut['kind']>> = {
	VEVENT: 'event',
	VTIMEZONE: 'time-zone',
}
const marks = /^(BEGIN|END):(VEVENT|VTIMEZONE|VCALENDAR)\s*$/i

/** The events and time zones of a text, in its order; a part whose end is lost ends at the next. */
function partsOf(text: string): Part[] {
	const parts: Part[] = []
	const counts = { event: 0, 'time-zone': 0 }
	let open: Part | undefined
	for (const line of text.split(/\r?\n/)) {
		const [, mark = '', name = ''] = marks.exec(line) ?? []
		const kind = kinds[name.toUpperCase()]
		if (mark.toUpperCase() === 'BEGIN' && kind) {
			counts[kind]++
			open = { kind, number: counts[kind], lines: [line], ended: false }
			parts.push(open)
			continue
		}
		open?.lines.push(line)
		if (!mark || !open) continue
		open.ended = kind === open.kind
		open = undefined
	}
	return parts
}
const asCalendar = (lines: readonly string[]): string =>
	['BEGIN:VCALENDAR', 'VERSION:2.0', ...lines, 'END:VCALENDAR', ''].join('\r\n')
/** Why a part cannot be parsed by itself; undefined where it can. */
function flawOf({ lines, ended }: Part): ListFlaw | undefined {
	if (!ended) return { is: 'no-end-line' }
	try {
		ICAL.parse(asCalendar(lines))
		return undefined
	} catch (error) {
		return flawIn(error)
	}
}
function nameOf({ kind, lines, number }: Part): string {
	const wanted = kind === 'event' ? /^SUMMARY[^:]*:(.*)$/i : /^TZID[^:]*:(.*)$/i
	const named = lines.map((line) => wanted.exec(line)?.[1]?.trim()).find(Boolean)
	return named?.slice(0, 80) ?? `${number}`
}
/**
 * The calendar made of the parts that can be read by themselves, and those left out; undefined
 * where the text holds no part that can.
 */
export function readableParts(text: string): { text: string; leftOut: LeftOut[] } | undefined {
	if (!/^BEGIN:VCALENDAR\s*$/im.test(text)) return undefined
	const judged = partsOf(text).map((part) => ({ part, flaw: flawOf(part) }))
	const good = judged.filter(({ flaw }) => flaw === undefined)
	if (good.length === 0) return undefined
	return {
		text: asCalendar(good.flatMap(({ part }) => part.lines)),
		leftOut: judged.flatMap(({ part, flaw }) =>
			flaw === undefined
				? []
				: [{ name: nameOf(part), kind: part.kind, number: part.number, flaw }],
		),
	}
}
