/** What the gate comes to in few words, for a line that is always in sight. Pure. */
import type { Gate, Holdable } from '../../../shared/engine/findings/assessment.ts'

/** In few words, the gravest first. */
const shortNames: Readonly<Record<Holdable, string>> = {
	weight: 'weight-bearing',
	sport: 'sport',
	match: 'matches',
	impact: 'running',
	test: 'tests',
	exercise: 'exercises',
	raise: 'raise',
	insert: 'insert',
	purchase: 'buying',
	shelf: 'models',
	season: 'season',
}
const gravest = Object.keys(shortNames) as readonly Holdable[]
const limbNames = { left: 'left leg', right: 'right leg' } as const
/** More than this many are counted, not named. */
const mostNamed = 4

export interface GateInFew {
	state: 'held' | 'not-established' | 'nothing-held'
	says: string
	/** All that is held, in a row; empty where nothing is. */
	whole: string
}
/** What is held of the player, then of each limb what is not held of the player anyway. */
function heldNames(gate: Gate): string[] {
	const of = (part: keyof Gate) =>
		gravest.filter((what) => gate[part].holds.some((hold) => hold.what === what))
	const whole = of('person')
	const limbs = (['left', 'right'] as const).flatMap((side) =>
		of(side)
			.filter((what) => !whole.includes(what))
			.map((what) => ({ side, what })),
	)
	const both = (what: Holdable) => limbs.filter((limb) => limb.what === what).length === 2
	const ofLimbs = limbs.flatMap(({ side, what }) => {
		if (!both(what)) return [{ what, name: `${limbNames[side]} ${shortNames[what]}` }]
		return side === 'left' ? [{ what, name: `both legs ${shortNames[what]}` }] : []
	})
	return [...whole.map((what) => ({ what, name: shortNames[what] })), ...ofLimbs]
		.toSorted((one, other) => gravest.indexOf(one.what) - gravest.indexOf(other.what))
		.map(({ name }) => name)
}
/** 'Held: sport, matches, left leg tests'. */
export function gateInFew(gate: Gate): GateInFew {
	const names = heldNames(gate)
	if (names.length > 0) {
		const more = names.length > mostNamed ? ` +${names.length - mostNamed}` : ''
		return {
			state: 'held',
			says: `Held: ${names.slice(0, mostNamed).join(', ')}${more}`,
			whole: `Held: ${names.join(', ')}`,
		}
	}
	const open = Object.values(gate).some(({ state }) => state === 'not-established')
	return open
		? { state: 'not-established', says: 'Safety not established', whole: '' }
		: { state: 'nothing-held', says: 'Nothing held', whole: '' }
}
