/** What the pages of a player leave out while the gate holds it. */
import { isHeld } from '../facts/held.ts'
import { type Action, actions, type Gate, type Holdable } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { isUrgent } from './gate-before.ts'

/**
 * Whether a page for the player is silent about something: where it is held, and all that serves
 * sport while sport is.
 */
export const waits = (gate: Gate, what: Holdable, side?: Side): boolean =>
	isHeld(gate, 'sport') || isHeld(gate, what, side)
/** Nothing of buying: neither a purchase, nor a model of the shelf. */
export const buyingWaits = (gate: Gate): boolean => waits(gate, 'purchase') || isHeld(gate, 'shelf')
/** Whether a review of the foot comes before new footwear. */
export const awaitsFootReview = (gate: Gate): boolean =>
	[gate.person, gate.left, gate.right].some(({ holds }) =>
		holds.some(({ until }) => until === 'foot-protection-review'),
	)
/** What stops the player from sport, most of it first. */
const stops = ['sport', 'match', 'impact'] as const
export interface Danger {
	/** The most urgent action that is asked for. */
	action: Action
	/** Whether that is more than a letter. */
	isUrgent: boolean
	/** What is stopped, most first; where it is all of sport, that alone. */
	stops: (typeof stops)[number][]
	/** Limbs that bear no weight. */
	noWeight: Side[]
	/** Ids of the findings behind it. */
	because: ReadonlySet<string>
	/** The first day of what was found at an earlier visit and is not cleared yet, ISO date. */
	since?: string
}
/** What stands over everything else on a page; undefined where nothing does. @param today ISO date */
export function dangerOf(gate: Gate, today: string): Danger | undefined {
	const parts = [gate.person, gate.left, gate.right]
	const action = parts
		.map((part) => part.action)
		.reduce((one, other) => (actions.indexOf(one) >= actions.indexOf(other) ? one : other))
	const held = stops.filter((what) => isHeld(gate, what))
	const noWeight = bothSides.filter((side) =>
		gate[side].holds.some(({ what }) => what === 'weight'),
	)
	if (!isUrgent(action) && held.length === 0 && noWeight.length === 0) return undefined
	const [since] = parts
		.flatMap(({ holds }) => holds.map((hold) => hold.since))
		.filter((day) => day < today)
		.toSorted()
	return {
		action,
		isUrgent: isUrgent(action),
		noWeight,
		stops: held.includes('sport') ? ['sport'] : held,
		because: new Set(parts.flatMap(({ because }) => because)),
		...(since !== undefined && { since }),
	}
}
