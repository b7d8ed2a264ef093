/** The sessions of a season as the numbers of the rotation. */
import { type Finding, findingOf } from '../../findings/finding.ts'
import { addDays, dayNumber, twoDigits } from '../../plain/days.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Visit } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { ownRule } from '../finding.ts'
import { mondayOf, type SeasonSession } from '../pattern.ts'
import type { EarlierPlan } from './earlier.ts'
import type { Owned, Slot } from './problem.ts'

/** A session that takes place, and its numbers. */
export interface TimelineEntry {
	session: SeasonSession
	slot: Slot
}
/** Protocol hours such as 18.5 as '18:30'. */
const clockOf = (hours: number): string =>
	`${twoDigits(Math.floor(hours))}:${twoDigits(Math.round((hours % 1) * 60))}`

function slotOf(
	session: SeasonSession,
	protocol: Protocol,
	from: string,
	{ visitDate, play }: Visit,
): Slot {
	const usual = protocol.value(
		session.kind === 'match' ? 'season.matchStartHour' : 'season.trainingStartHour',
	)
	const start = session.start ?? clockOf(usual)
	const [hour = 0, minute = 0] = start.split(':').map(Number)
	return present({
		id: session.id,
		date: session.date,
		start,
		startHour: dayNumber(session.date) * 24 + hour + minute / 60,
		minutes: session.minutes,
		kind: session.kind,
		surface: session.surface,
		ground: session.ground ?? 'dry',
		team: session.team,
		title: session.title,
		code: session.code ?? play?.code,
		past: session.date < from,
		// what lies ahead was not worn, whatever the day of the visit
		counts: session.date >= visitDate || session.date >= from,
		split: false,
	})
}
/** The sessions that take place, in order of time. */
export const timelineOf = (
	sessions: readonly SeasonSession[],
	protocol: Protocol,
	from: string,
	visit: Visit,
): TimelineEntry[] =>
	sessions.map((session) => ({ session, slot: slotOf(session, protocol, from, visit) }))

/** A session that a lay-off had shortened was played short: it counts as it was planned. */
export function keepShortened(slots: readonly Slot[], earlier: EarlierPlan | undefined): void {
	const before = new Map((earlier?.sessions ?? []).map((session) => [session.id, session]))
	for (const slot of slots) {
		const was = before.get(slot.id)
		if (!slot.past || was?.fullMinutes !== slot.minutes) continue
		slot.fullMinutes = slot.minutes
		slot.minutes = was.minutes
	}
}
/**
 * Marks the sessions whose pair the clinician pinned.
 * @returns a finding for each pin on a pair that cannot be planned
 */
export function markPins(timeline: readonly TimelineEntry[], pairs: readonly Owned[]): Finding[] {
	return timeline.flatMap(({ session, slot }) => {
		if (session.pinned === undefined) return []
		const pin = pairs.findIndex((pair) => pair.id === session.pinned)
		if (pin >= 0) {
			slot.pin = pin
			return []
		}
		return [
			findingOf(state('season.pin-unknown', { date: session.date }), {
				id: `season.pin-unknown-${session.id}`,
				side: 'none',
				level: 'caution',
				because: [{ measure: 'pinNotWorn', at: session.date, value: session.pinned }],
				basis: ownRule('a pin names a pair of this visit'),
			}),
		]
	})
}
/** Marks the sessions ahead with the pair that an earlier plan told for the whole of each. */
export function markTold(
	slots: readonly Slot[],
	pairs: readonly Owned[],
	earlier: EarlierPlan | undefined,
): void {
	const before = new Map((earlier?.sessions ?? []).map((session) => [session.id, session]))
	for (const slot of slots) {
		const was = slot.past ? undefined : before.get(slot.id)
		const told = pairs.findIndex(({ id }) => id === was?.pair)
		if (told >= 0 && was?.parts === undefined) slot.told = told
	}
}
/** Lets the trainings of the first weeks be shared between two pairs. */
export function markShared(slots: readonly Slot[], protocol: Protocol): void {
	const open = slots.filter((slot) => !slot.past)
	const [first] = open
	if (!first) return
	const end = addDays(mondayOf(first.date), 7 * protocol.value('season.splitWeeks'))
	for (const slot of open)
		slot.split = slot.kind === 'training' && slot.pin === undefined && slot.date < end
}
