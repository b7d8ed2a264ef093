/** From the values of the variables to a rotation, and back. */
import type { Level } from '../problem/levels.ts'
import { type Rotation, type SeasonProblem, usesIn } from '../problem/problem.ts'
import type { Checked } from '../verify/checked.ts'
import { verify } from '../verify/verify.ts'
import { type Choice, type Model, worth } from './programme.ts'
import { nameOf, type Variable } from './variables.ts'

/** What values of the variables come to on a level. */
export const reachedOn = (
	level: Level,
	model: Pick<Model, 'goals'>,
	values: ReadonlyMap<string, number>,
): number => worth(model.goals[level], values)

function minutesChosen(use: Choice, values: ReadonlyMap<string, number>): number {
	if (use.part !== undefined) return values.get(use.part) ?? 0
	return (values.get(use.name) ?? 0) > 0.5 ? use.minutes : 0
}
/** The rotation that values of the variables mean; settled minutes come first in each session. */
export function rotationOf(model: Model, values: ReadonlyMap<string, number>): Rotation {
	return {
		uses: model.fixed.map((settled, slot) => {
			const chosen = model.uses
				.filter((use) => use.slot === slot)
				.map((use) => ({ pair: use.pair, minutes: minutesChosen(use, values) }))
				.filter(({ minutes }) => minutes > 1e-4)
				.map(({ pair, minutes }) => ({ pair, minutes: Math.round(minutes * 1e4) / 1e4 }))
			return [...settled, ...chosen]
		}),
	}
}
const valued = (variable: Variable, value: number): [string, number] => [nameOf(variable), value]
/** The variables of wishes that a rotation leaves unmet. */
const unmetValues = (checked: Checked): [string, number][] => [
	...checked.noPair.map((slot) => valued({ is: 'without', slot }, 1)),
	...checked.pinMissed.map((slot) => valued({ is: 'pin-missed', slot }, 1)),
	...checked.toldMissed.map((slot) => valued({ is: 'told-missed', slot }, 1)),
	...checked.notDry.map(({ slot, pair }) => valued({ is: 'not-dry', slot, pair }, 1)),
	...checked.unfamiliar.map(({ slot, pair }) => valued({ is: 'unfamiliar', slot, pair }, 1)),
	...checked.share.map(({ pair, minutes }) =>
		valued({ is: minutes > 0 ? 'share-over' : 'share-under', pair }, Math.abs(minutes)),
	),
]
/** The variables of a pair in a session: whether it is worn, and for how long. */
function choiceValues(choice: Choice, rotation: Rotation): [string, number][] {
	const worn = usesIn(rotation, choice.slot).find((use) => use.pair === choice.pair)
	const whether: [string, number] = [choice.name, worn ? 1 : 0]
	return choice.part === undefined ? [whether] : [whether, [choice.part, worn?.minutes ?? 0]]
}
const isAllowing = (variable: Variable | undefined): boolean =>
	variable?.is === 'switch' || variable?.is === 'not-dry'
/** The values of every variable of the model that a rotation of whole sessions means. */
export function valuesOf(
	problem: SeasonProblem,
	model: Model,
	rotation: Rotation,
): Map<string, number> {
	// what only allows is switched on: a later level finds out how little of it is needed
	const allowing = model.bounds.filter((name) => isAllowing(model.variables.get(name)))
	return new Map([
		valued({ is: 'most-worn' }, 1),
		valued({ is: 'most-minutes' }, 1),
		...allowing.map((name): [string, number] => [name, 1]),
		...model.uses.flatMap((choice) => choiceValues(choice, rotation)),
		...unmetValues(verify(problem, rotation)),
	])
}
