/** What an earlier plan settles for the next one. */
import { need } from '../../plain/need.ts'
import type { Fixed, Owned } from './problem.ts'
import type { TimelineEntry } from './slots.ts'

/**
 * A plan made earlier: what it said of the past stands where the visit does not say what was worn.
 */
export interface EarlierPlan {
	sessions: readonly {
		id?: string | undefined
		date: string
		pair?: string | undefined
		minutes: number
		fullMinutes?: number | undefined
		parts?: readonly { pair: string; minutes: number }[] | undefined
	}[]
	pairs?: readonly { id: string; letter: string }[]
}
type EarlierSession = EarlierPlan['sessions'][number]

/** By id of the pair: as the visit says, else as the earlier plan had it. */
function wornParts(
	{ session, slot }: TimelineEntry,
	was: EarlierSession | undefined,
): readonly { pair: string; minutes: number }[] {
	if (session.worn !== undefined) return [{ pair: session.worn, minutes: slot.minutes }]
	if (was?.parts) return was.parts
	return was?.pair === undefined ? [] : [{ pair: was.pair, minutes: slot.minutes }]
}
/** Minutes worn in the sessions that are over. */
export function settledBefore(
	timeline: readonly TimelineEntry[],
	pairs: readonly Owned[],
	earlier: EarlierPlan | undefined,
): Fixed[] {
	const places = new Map(pairs.map((pair, place) => [pair.id, place]))
	const before = new Map(
		(earlier?.sessions ?? []).map((session) => [session.id ?? session.date, session]),
	)
	return timeline.flatMap((entry, slot): Fixed[] =>
		entry.slot.past
			? wornParts(entry, before.get(entry.slot.id))
					.filter((part) => places.has(part.pair))
					.map(({ pair, minutes }) => ({
						slot,
						pair: need(places.get(pair), 'the place of the pair'),
						minutes,
						why: 'worn',
					}))
			: [],
	)
}
