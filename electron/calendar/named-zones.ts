/** The time zones that a calendar names. */
import ICAL from 'ical.js'
import { present } from '../../shared/engine/plain/present.ts'
import { ask, type ImportChoices, type Incoming } from '../../shared/engine/season/preview.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { type Component, textOf } from './properties.ts'
import { flawIn } from './reason.ts'
import { icalZone, knownZone } from './zones.ts'

/** Every zone that an event of the calendar names, in the order they first come. */
const zoneNames = (calendar: Component): Set<string> =>
	new Set(
		calendar
			.getAllSubcomponents('vevent')
			.flatMap((event) => event.getAllProperties())
			.map((property) => property.getParameter('tzid'))
			.filter((name) => typeof name === 'string'),
	)
/** The IANA name of a zone: by the person's answer, else its own name. */
const ianaName = (name: string, choices: ImportChoices): string | undefined =>
	[choices.zones?.[name], name].find((zone) => zone !== undefined && knownZone(zone))

/** What is told while zones are read. */
interface ZoneReading {
	choices: ImportChoices
	incoming: Incoming
	/** told which zone is being read, so that one without an end can be named */
	at: (title: string) => void
}
/**
 * Whether the rules of a zone give an offset at all: one without rules would be taken for UTC.
 * @throws Error where its rules fail once they are asked
 */
function hasOffset(zone: ICAL.Timezone, { from }: ImportChoices): boolean {
	const { component } = zone
	if (!['standard', 'daylight'].some((name) => component.getFirstSubcomponent(name))) return false
	const noon = ICAL.Time.fromDateTimeString(`${from}T12:00:00`)
	return Number.isFinite(zone.utcOffset(noon))
}
/** Takes a zone of the file over; one without a name or with rules that fail is told instead. */
function registerOwn(component: Component, { choices, incoming, at }: ZoneReading): void {
	let name: string | undefined
	try {
		name = textOf(component, 'tzid')
		if (name === undefined) {
			incoming.notes.push(state('season.zone-nameless'))
			return
		}
		at(`time zone ${name}`.slice(0, 80))
		const zone = new ICAL.Timezone({ component, tzid: name } as never)
		if (hasOffset(zone, choices)) ICAL.TimezoneService.register(zone, name)
		else incoming.notes.push(state('season.zone-no-offset', { name }))
	} catch (error) {
		const named = present({ name: name?.slice(0, 80) })
		incoming.notes.push(state('season.zone-unreadable', { ...named, flaw: flawIn(error) }))
	}
}
/**
 * Gives every zone named in the calendar its rules: the file's own, else the machine's, else the
 * person's answer.
 * @returns the zones that nobody knows, each asked about
 */
export function registerZones(calendar: Component, reading: ZoneReading): Set<string> {
	const { choices, incoming } = reading
	ICAL.TimezoneService.reset()
	for (const zone of calendar.getAllSubcomponents('vtimezone')) registerOwn(zone, reading)
	const [firstYear, lastYear] = [
		Number(choices.from.slice(0, 4)) - 3,
		Number(choices.to.slice(0, 4)) + 1,
	]
	const unknown = new Set<string>()
	for (const name of zoneNames(calendar)) {
		if (ICAL.TimezoneService.has(name)) continue
		const zone = ianaName(name, choices)
		if (zone !== undefined) {
			ICAL.TimezoneService.register(icalZone(zone, firstYear, lastYear, name), name)
			continue
		}
		unknown.add(name)
		ask(incoming.questions, {
			key: `zones.${name}`,
			...state('season.ask-zone', { name }),
			options: [choices.zone, 'UTC'],
		})
	}
	return unknown
}
