/** What the shelf may learn of pairs measured at signed visits; it learns what a person answers. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { learned, type MeasuredPair, toLearn } from '../../../shared/desk/shelf/learning.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { visitsOf } from '../visits/visits.ts'
import { refuseChanged } from './shelf.ts'

type Needs = Pick<Memory, 'shelf' | 'players'>
/** As many as are asked about at once. */
const mostAsked = 500

/** By the cards of the visits: none is opened. One entered in error teaches nothing. */
function measuredIn({ players }: Needs, deps: Deps, visitId?: string): MeasuredPair[] {
	return [...players.byId.keys()].flatMap((playerId) =>
		visitsOf({ idsOf: () => [playerId] }, deps, playerId)
			.filter(({ inError, card }) => !inError && (visitId ?? card.visitId) === card.visitId)
			.flatMap(({ card }) => card.measured ?? []),
	)
}
export function pairsToLearn(
	memory: Needs,
	deps: Deps,
	{ visitId }: InputOf<'shelf.toLearn'>,
): OutputOf<'shelf.toLearn'> {
	const { shelf, recordId } = memory.shelf
	const pairs = shelf ? toLearn(shelf, measuredIn(memory, deps, visitId)) : []
	return present({ pairs: pairs.slice(0, mostAsked), savedAs: recordId })
}
/** @throws Refusal where the shelf was saved elsewhere meanwhile, or there is no such pair or size */
export function learnPair(
	memory: Needs,
	deps: Deps,
	{ of, answer, follows }: InputOf<'shelf.learn'>,
): OutputOf<'shelf.learn'> {
	const { shelf, recordId } = memory.shelf
	refuseChanged(recordId, follows)
	const pair = measuredIn(memory, deps)
		.filter((one) => one.of === of)
		.toSorted((one, other) => (one.on < other.on ? -1 : 1))
		.at(-1)
	const next = shelf && pair && learned(shelf, pair, answer)
	if (!next)
		throw new Refusal(
			'shelf.nothing-to-learn',
			'This pair, or its model or size, is no longer there. Nothing was changed: open the shelf again.',
		)
	return { savedAs: deps.keep({ kind: 'shelf', follows: recordId, value: next }) }
}
