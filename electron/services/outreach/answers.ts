/** Answers to what two places recorded differently: each is a record, and nothing is undone. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { isKind, kindsWhere } from '../../../shared/desk/ledger/ledger.ts'
import { headsOf, joinFields } from '../../../shared/desk/outreach/heads.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import type { Deps } from '../records/deps.ts'
import type { KeptRecord } from '../records/keep.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { openQuestions } from './questions.ts'
import { joinedOf, versionsAbout } from './versions.ts'

type Question = OutputOf<'outreach.list'>['questions'][number]
/** For each field of a question the record whose value stands. */
type Chosen = { field: string; record: string }[]
/** Kinds whose chosen version is written again behind both, so that it is the last one. */
const lastCounts = kindsWhere((kind) => kind.chained && kind.thingOf !== undefined)

/**
 * Answers a question; the answer names what it puts to rest.
 * @throws Refusal where it is answered already, or a field has no choice
 */
export function answerQuestion(
	memory: Memory,
	deps: Deps,
	{ what, id, playerId, choices }: InputOf<'outreach.answer'>,
): OutputOf<'outreach.answer'> {
	const { keepTogether, now } = deps
	const question = openQuestions(deps, playerId === undefined ? [] : [playerId]).find(
		(open) => open.what === what && open.id === id,
	)
	if (!question)
		throw new Refusal(
			'outreach.answered-already',
			'This question is answered already. Look at the list again.',
		)
	const chosen = chosenFrom(question, choices)
	const at = now().toISOString()
	const { joins, writes } = settle({ deps, question, chosen, playerId, at })
	const value = { what, of: id, joins, chosen, by: memory.people.acts().name }
	keepTogether([...writes, { kind: 'answer', at, value, about: playerId }])
	return {}
}
function chosenFrom({ fields }: Question, choices: Record<string, string>): Chosen {
	return fields.map(({ field, values }) => {
		const pick = values.find(({ record }) => record === choices[field])
		if (!pick)
			throw new Refusal(
				'outreach.fields-not-chosen',
				'Choose one of the values for each field. Nothing was changed.',
				[
					{
						path: `choices.${field}`,
						message: `given ${choices[field] ?? 'nothing'}, allowed: one of the values shown`,
					},
				],
			)
		return { field, record: pick.record }
	})
}
interface Settling {
	deps: Deps
	question: Question
	chosen: Chosen
	playerId: string | undefined
	at: string
}
/** What follows from an answer: ids of the records that it puts to rest, and records to write. */
interface Settled {
	joins: string[]
	writes: KeptRecord[]
}
function settle(settling: Settling): Settled {
	const { question, chosen, playerId } = settling
	const asked = question.fields.flatMap(({ values }) => values.map(({ record }) => record))
	const [first] = chosen
	if (question.what === 'details' && playerId !== undefined)
		return settleDetails(settling, playerId)
	if (question.what === 'consent' && playerId !== undefined)
		return settleConsent(settling, playerId, asked)
	if (question.what === 'version' && first)
		return { joins: asked, writes: writtenAgain(settling, first.record) }
	return { joins: asked, writes: [] }
}
/** One version of the player's details, with the chosen value of each field. */
function settleDetails({ deps, chosen, at }: Settling, playerId: string): Settled {
	const line = versionsAbout(deps, 'player', playerId)
	const { value, heads } = joinFields(line, ({ player }) => player, joinedOf(deps))
	const whole: Record<string, unknown> = { ...value }
	for (const { field, record } of chosen) {
		const version = line.find(({ id }) => id === record)
		const details: Record<string, unknown> = version?.value.player ?? {}
		const answer = details[field]
		if (answer === undefined) delete whole[field]
		else whole[field] = answer
	}
	const version: KeptRecord = {
		kind: 'player',
		at,
		follows: heads.at(-1),
		value: { playerId, player: playerSchema.parse(whole) },
		about: playerId,
	}
	return { joins: heads, writes: [version] }
}
/** Heads of the same place fall with the one that lost; the chosen one stands. */
function settleConsent(
	{ deps, chosen }: Settling,
	playerId: string,
	asked: readonly string[],
): Settled {
	const contested = new Set(asked)
	const stands = chosen[0]?.record
	const joins = headsOf(versionsAbout(deps, 'consent', playerId), joinedOf(deps))
		.filter(({ id }) => contested.has(id) && id !== stands)
		.map(({ id }) => id)
	return { joins, writes: [] }
}
function writtenAgain({ deps, playerId, at }: Settling, chosen: string): KeptRecord[] {
	const { store, openRecord } = deps
	const { kind } = store.read(chosen)
	if (!isKind(kind) || !lastCounts.includes(kind)) return []
	const { value } = openRecord(kind, chosen)
	const card =
		playerId === undefined
			? undefined
			: store.cardsAbout(kind, playerId).find(({ record }) => record === chosen)?.card
	return [{ kind, at, follows: chosen, value, about: playerId, card }]
}
