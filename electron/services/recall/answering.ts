/** Keeping what the desk answered about what a player is due for. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayProblem, mayAnswer, type RecallRecord } from '../../../shared/desk/recall/answer.ts'
import { dueWords, keyOf } from '../../../shared/desk/recall/item.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { addDays, dayInWords } from '../../../shared/engine/plain/days.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { gatherOne, type RecallNeeds } from './gather.ts'

/** @throws Refusal where an item is not due any more, the day cannot stand, or the role may not */
export function answerDue(
	memory: RecallNeeds,
	deps: Deps,
	{ playerId: of, items, answer }: InputOf<'recall.answer'>,
): OutputOf<'recall.answer'> {
	const playerId = memory.players.rootOf(of)
	const { name: by, role } = memory.people.acts()
	const problem = dayProblem(answer, dayHere(deps.now()), addDays)
	if (problem)
		throw new Refusal('recall.day', 'This day cannot stand. Nothing was changed.', [problem])
	const standing = new Map(
		gatherOne(memory, deps, playerId).items.map((item) => [keyOf(item), item]),
	)
	for (const item of items) {
		const named = `${dueWords[item.kind]} by ${dayInWords(item.on)}`
		if (!standing.has(keyOf(item)))
			throw new Refusal(
				'recall.not-due',
				`${named} does not stand any more: the player was seen, or the day was changed. Open the ` +
					'list again. Nothing was changed.',
			)
		if (!mayAnswer(role, item, answer))
			throw new Refusal(
				'recall.only-who-treats',
				`${named} was set by the clinician, and only who treats says that it is not needed or was ` +
					'done. Book it, let it wait, or ask a clinician. Nothing was changed.',
			)
	}
	const at = deps.now().toISOString()
	deps.keepTogether(
		items.map((item) => {
			const value: RecallRecord = { playerId, item, answer, by, at }
			return { kind: 'recall', at, value, about: playerId }
		}),
	)
	return { answered: items.length }
}
