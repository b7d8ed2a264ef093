/** Reading the properties of an event as iCalendar (RFC 5545) has them. */

import type ICAL from 'ical.js'
import { daysInMonth, twoDigits } from '../../shared/engine/plain/days.ts'

export type Component = InstanceType<typeof ICAL.Component>
export type Time = InstanceType<typeof ICAL.Time>

/** A property as text; undefined where it is missing or blank. */
export const textOf = (component: Component, name: string): string | undefined => {
	const value = component.getFirstPropertyValue(name)
	return value === null || value === undefined ? undefined : String(value).trim() || undefined
}
/** The title of an event; undefined where it has none. */
export const titleOf = (event: Component): string | undefined => textOf(event, 'summary')
/** A property as it stands in the file. */
export const rawOf = (component: Component, name: string): string =>
	String(component.getFirstProperty(name)?.toJSON()[3] ?? '')
/** The ISO date of a time by its own clock. */
export const dateOf = (time: Time): string =>
	`${String(time.year).padStart(4, '0')}-${twoDigits(time.month)}-${twoDigits(time.day)}`
/** Which occurrence of a repeated event a component replaces. */
export const recurrenceOf = (component: Component): Time =>
	component.getFirstPropertyValue('recurrence-id') as unknown as Time
export const isCancelled = (event: Component): boolean =>
	(textOf(event, 'status') ?? '').toUpperCase() === 'CANCELLED'
/** The number of its revision: a later one counts. */
export const sequenceOf = (event: Component): number => Number(textOf(event, 'sequence') ?? 0)

const written = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d):(\d\d)Z?)?$/
/**
 * Whether a time is one of the calendar: the reader would turn a 13th month into the next year
 * without a word.
 */
export function isRealTime(component: Component, name: string): boolean {
	if (!component.hasProperty(name)) return true
	const found = written.exec(rawOf(component, name))
	if (!found) return false
	const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = found
		.slice(1)
		.map((part) => Number(part ?? 0))
	const lastDay = daysInMonth(year, month)
	return [
		month >= 1 && month <= 12,
		day >= 1 && day <= lastDay,
		hour <= 23,
		minute <= 59,
		second <= 60,
	].every(Boolean)
}
