/** The time zones that a calendar names. */
import ICAL from 'ical.js'
import { ask, type ImportChoices, type Incoming } from '../../shared/engine/season/preview.ts'
import type { Component } from './properties.ts'
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

/**
 * Gives every zone named in the calendar its rules: the file's own, else the machine's, else the
 * person's answer.
 * @returns the zones that nobody knows, each asked about
 */
export function registerZones(
	calendar: Component,
	choices: ImportChoices,
	incoming: Incoming,
): Set<string> {
	ICAL.TimezoneService.reset()
	for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone)
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
			says: `The list names a time zone nobody here knows: "${name}". Which zone is it?`,
			options: [choices.zone, 'UTC'],
		})
	}
	return unknown
}
