/** Referrals that nobody has heard from, and what is written about them. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { RecipientRole } from '../../../shared/desk/outbox/item.ts'
import type { NotHeardView } from '../../../shared/desk/recall/calls.ts'
import { type FollowUp, heardOf, type NotHeard } from '../../../shared/desk/recall/referral.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { actions } from '../../../shared/engine/findings/assessment.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { actionWords, capital } from '../../../shared/engine/words/words.ts'
import { recipientsOf } from '../outbox/recipients.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { type Gathered, gatherAll, gatherOne, type RecallNeeds } from './gather.ts'

/** Outcomes that are shown beside, to be taken back: a choice of this program. */
const mostHeard = 20

/** Those of these roles on the record who can be rung. */
export const phonesOf = (
	memory: RecallNeeds,
	playerId: string,
	roles: readonly RecipientRole[],
): NotHeardView['phones'] =>
	recipientsOf(memory, playerId).flatMap(({ name, role, phone }) =>
		phone && roles.includes(role) ? [{ name, role, phone }] : [],
	)
/** Who may know what came of a referral: neither club nor laboratory. */
const whoKnows = ['doctor', 'guardian', 'player'] as const
const distinct = (words: readonly (string | undefined)[]): string[] => [
	...new Set(words.flatMap((word) => (word ? [word] : []))),
]
function lettersOf({ outbox }: RecallNeeds, ids: readonly string[]): NotHeardView['letters'] {
	return outbox.items
		.all()
		.filter(({ kind, visitId }) => kind === 'referral' && ids.includes(visitId))
		.map(({ recipient, state, history, createdAt }) => ({
			to: recipient.name,
			state,
			at: history.at(-1)?.at ?? createdAt,
		}))
}
function viewOf(memory: RecallNeeds, of: Gathered, referral: NotHeard): NotHeardView {
	const { players } = memory
	const { playerId, newest } = of
	const { visits, tries, asked } = referral
	const ids = visits.map(({ visitId }) => visitId)
	const review = newest?.asks.review
	return {
		playerId,
		name: players.nameOf(playerId),
		birthDate: players.entry(playerId).player.birthDate,
		visitIds: ids,
		since: visits[0]?.visitDate ?? '',
		asked: capital(actionWords[asked]),
		signs: distinct(visits.flatMap(({ signs }) => signs.map(({ says }) => says))),
		done: distinct(visits.map(({ done }) => done)),
		question: distinct(visits.map(({ question }) => question)),
		letters: lettersOf(memory, ids),
		...(review !== undefined && { review }),
		phones: phonesOf(memory, playerId, whoKnows),
		tries: tries.flatMap(({ entry, by, at }) =>
			entry.what === 'try'
				? [{ says: entry.says, ...(entry.again && { again: entry.again }), by, at }]
				: [],
		),
	}
}
const urgency = ({ asked }: NotHeard): number => actions.indexOf(asked)

/** The most urgent first, of these the one that waits longest. */
export async function listReferrals(
	memory: RecallNeeds,
	deps: Deps,
): Promise<OutputOf<'recall.referrals'>> {
	const all = await gatherAll(memory, deps)
	const open = all.flatMap((of) => (of.referral ? [{ of, referral: of.referral }] : []))
	const since = ({ visits }: NotHeard): string => visits[0]?.visitDate ?? ''
	return {
		today: dayHere(deps.now()),
		referrals: open
			.toSorted(
				({ referral: one }, { referral: other }) =>
					urgency(other) - urgency(one) || since(one).localeCompare(since(other)),
			)
			.map(({ of, referral }) => viewOf(memory, of, referral)),
		heard: heardHere(memory).slice(0, mostHeard),
		troubles: all.flatMap(({ troubles }) => troubles),
	}
}
/** Outcomes that stand, newest first. */
function heardHere({
	recall,
	players,
}: Pick<RecallNeeds, 'players' | 'recall'>): OutputOf<'recall.referrals'>['heard'] {
	return [...recall.followUpsByPlayer()]
		.filter(([playerId]) => players.byId.has(playerId))
		.flatMap(([playerId, written]) =>
			written
				.filter((one) => one.visitIds.some((id) => heardOf(id, written) === one))
				.map((one) => ({ ...one, root: players.rootOf(playerId) })),
		)
		.toSorted((one, other) => other.at.localeCompare(one.at))
		.map(({ followUpId, root, visitIds, entry, by, at }) => ({
			followUpId,
			playerId: root,
			name: players.nameOf(root),
			visitIds,
			says: entry.what === 'outcome' ? heardWords(entry) : '',
			by,
			at,
		}))
}
type Outcome = Extract<FollowUp['entry'], { what: 'outcome' }>
const heardWords = ({ result, found, how, from, on }: Outcome): string =>
	`${capital(result)}: ${found} (${how}, ${from}, ${dayInWords(on)}).`

/** @throws Refusal where it is about another player's visits, or its day cannot stand */
export function followUp(
	memory: RecallNeeds,
	deps: Deps,
	{ playerId: of, visitIds, entry }: InputOf<'recall.followUp'>,
): OutputOf<'recall.followUp'> {
	const playerId = memory.players.rootOf(of)
	const today = dayHere(deps.now())
	const problem = entryProblem(entry, today)
	if (problem)
		throw new Refusal('recall.day', 'This day cannot stand. Nothing was changed.', [problem])
	const open = gatherOne(memory, deps, playerId).referral?.visits ?? []
	const isOpen = (id: string): boolean => open.some(({ visitId }) => visitId === id)
	if (entry.what === 'taken-back') mustStand(memory, playerId, entry.of)
	else if (!visitIds.every(isOpen))
		throw new Refusal(
			'recall.not-open',
			'This referral does not stand open any more: its outcome was written meanwhile. Open the ' +
				'list again. Nothing was changed.',
		)
	const at = deps.now().toISOString()
	const value: FollowUp = {
		followUpId: randomUUID(),
		playerId,
		visitIds,
		entry,
		by: memory.people.acts().name,
		at,
	}
	deps.keep({ kind: 'follow-up', at, value, about: playerId })
	return { followUpId: value.followUpId }
}
function entryProblem(
	entry: InputOf<'recall.followUp'>['entry'],
	today: string,
): { path: string; message: string } | undefined {
	if (entry.what === 'outcome' && entry.on > today)
		return { path: 'entry.on', message: `given ${entry.on}, allowed: a day up to today, ${today}` }
	if (entry.what === 'try' && entry.again !== undefined && entry.again < today)
		return {
			path: 'entry.again',
			message: `given ${entry.again}, allowed: today, ${today}, or a later day`,
		}
	return undefined
}
/** @throws Refusal where there is no such outcome that could be taken back */
function mustStand(
	memory: Pick<RecallNeeds, 'players' | 'recall'>,
	playerId: string,
	followUpId: string,
): void {
	const stands = heardHere(memory).some(
		(one) => one.followUpId === followUpId && one.playerId === playerId,
	)
	if (!stands)
		throw new Refusal(
			'recall.not-written',
			'This outcome does not stand any more. Open the list again. Nothing was changed.',
		)
}
