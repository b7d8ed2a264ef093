/** The list of who is due, as far as who works here may read it. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { answerWords } from '../../../shared/desk/recall/answer.ts'
import type { RecallItem, RecallLine } from '../../../shared/desk/recall/calls.ts'
import { chosenLines, countsOf, type PlacedLine } from '../../../shared/desk/recall/lines.ts'
import type { StandingDue } from '../../../shared/desk/recall/standing.ts'
import { treating } from '../../../shared/desk/workplace/call.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { type Gathered, gatherAll, type RecallNeeds } from './gather.ts'

const byWords = new Intl.Collator('en')
const distinct = (words: readonly (string | undefined)[]): string[] =>
	[...new Set(words.flatMap((word) => (word ? [word] : [])))].sort(byWords.compare)

/** What an item is about, for those who treat. */
function detailOf(item: StandingDue, { newest }: Gathered): string | undefined {
	if (item.kind === 'pair') return newest?.asks.pairs.get(item.pair ?? '')
	return item.kind === 'review' ? newest?.asks.why : undefined
}
function itemView(item: StandingDue, of: Gathered, seesWhy: boolean): RecallItem {
	const { answered, ...due } = item
	const detail = seesWhy ? detailOf(item, of) : undefined
	return {
		...due,
		...(detail !== undefined && { detail }),
		...(answered && {
			answered: { says: answerWords(answered.answer), by: answered.by, at: answered.at },
		}),
	}
}
/** The reminder made last for a player, of those since the newest visit. */
export function lastReminder(
	{ outbox, players }: Pick<Memory, 'outbox' | 'players'>,
	{ playerId, newest }: Gathered,
): OutboxItem | undefined {
	const ids = players.idsOf(playerId)
	return outbox.items
		.all()
		.findLast(
			(item) =>
				item.kind === 'reminder' &&
				ids.includes(item.playerId) &&
				item.createdAt >= (newest?.asks.signedAt ?? ''),
		)
}
function lineView(
	memory: RecallNeeds,
	{ day, week }: PlacedLine,
	of: Gathered,
	seesWhy: boolean,
): RecallLine {
	const { players } = memory
	const reminder = lastReminder(memory, of)
	return {
		playerId: of.playerId,
		name: players.nameOf(of.playerId),
		birthDate: players.entry(of.playerId).player.birthDate,
		...(of.club && { club: of.club }),
		isMinor: of.isMinor,
		clinician: of.clinician,
		visitDate: of.newest?.line.card.visitDate ?? '',
		day,
		week,
		items: of.items.map((item) => itemView(item, of, seesWhy)),
		...(reminder && {
			reminded: {
				at: reminder.history.at(-1)?.at ?? reminder.createdAt,
				state: reminder.state,
			},
		}),
	}
}
export async function listDue(
	memory: RecallNeeds,
	deps: Deps,
	{ limit, ...chosen }: InputOf<'recall.list'>,
): Promise<OutputOf<'recall.list'>> {
	const today = dayHere(deps.now())
	const seesWhy = (treating as readonly string[]).includes(memory.people.acts().role)
	const all = await gatherAll(memory, deps)
	const byId = new Map(all.map((one) => [one.playerId, one]))
	const placed = chosenLines(all, chosen, today)
	const due = all.filter(({ items }) => items.length > 0)
	return {
		today,
		total: placed.length,
		lines: placed.slice(0, limit).flatMap((line) => {
			const of = byId.get(line.playerId)
			return of ? [lineView(memory, line, of, seesWhy)] : []
		}),
		counts: countsOf(all, today),
		clubs: distinct(due.map(({ club }) => club)),
		clinicians: distinct(due.map(({ clinician }) => clinician)),
		followUps: all.filter(({ referral }) => referral !== undefined).length,
		// a visit that cannot be read says which it is, and nothing of what it holds
		troubles: all.flatMap(({ troubles }) => troubles),
	}
}
