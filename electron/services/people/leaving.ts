/** What a person who leaves would leave behind, and who looks after it from then on. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { clinicians, desk } from '../../../shared/desk/workplace/call.ts'
import { noted, putItem } from '../outbox/items.ts'
import { gatherAll, type RecallNeeds } from '../recall/gather.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { storedTypists } from '../visits/drafts.ts'
import { tryVisit } from '../visits/reading.ts'
import { lastTypist } from '../visits/typists.ts'
import { visitsOf } from '../visits/visits.ts'
import type { PersonEntry } from './memory.ts'

export type LeavingNeeds = RecallNeeds & Pick<Memory, 'drafts'>

/** Whether somebody still has to look at it. */
const isOpen = ({ state }: OutboxItem): boolean => state !== 'closed' && state !== 'delivered'
const itemsOf = ({ outbox, players }: Pick<Memory, 'outbox' | 'players'>, personId: string) =>
	outbox.items
		.all()
		.filter(
			(item) => item.owner.personId === personId && isOpen(item) && players.byId.has(item.playerId),
		)
/** Who may look after documents in the outbox in another's place. */
const takersOf = ({ people }: Pick<Memory, 'people'>, personId: string): PersonEntry[] =>
	people.all().filter((one) => one.active && one.personId !== personId && desk.includes(one.role))

/** Visits of students that nobody has countersigned: all, and those that one person signed. */
function uncountersigned({ players }: LeavingNeeds, deps: Deps, personId: string) {
	const waiting = players
		.ordered()
		.flatMap(({ card }) => visitsOf(players, deps, card.playerId))
		.filter(({ awaits, inError }) => awaits && !inError)
	const theirs = waiting.filter((line) => {
		const read = tryVisit(deps, line)
		return 'visit' in read && read.visit.signer?.personId === personId
	})
	return { all: waiting.length, theirs: theirs.length }
}
/** @throws Refusal where this person is not at work here any more */
export async function whatLeaves(
	memory: LeavingNeeds,
	deps: Deps,
	{ personId }: InputOf<'people.leaving'>,
): Promise<OutputOf<'people.leaving'>> {
	const person = memory.people.byId.get(personId)
	if (!person?.active)
		throw new Refusal('people.unknown', 'This person is not in the list, or was taken off already.')
	const drafts = [...memory.drafts.byId.keys()].filter(
		(draftId) => lastTypist(storedTypists(deps, draftId)) === personId,
	)
	const waiting = uncountersigned(memory, deps, personId)
	const due = (await gatherAll(memory, deps)).filter(
		({ clinician, items }) => clinician === person.name && items.length > 0,
	)
	return {
		drafts: drafts.length,
		theirsToCountersign: waiting.theirs,
		waitForAny: clinicians.includes(person.role) ? waiting.all : 0,
		outbox: itemsOf(memory, personId).length,
		recall: due.length,
		takers: takersOf(memory, personId).map(({ personId: id, name }) => ({ personId: id, name })),
	}
}
/**
 * Another person looks after the documents; one that is being sent just now stays as it is. Belongs
 * into the transaction of the caller. @returns how many
 * @throws Refusal where who takes them may not
 */
export function handOutbox(
	memory: Pick<Memory, 'outbox' | 'people' | 'players'>,
	deps: Deps,
	from: PersonEntry,
	to: string,
): number {
	const taker = takersOf(memory, from.personId).find((one) => one.personId === to)
	if (!taker)
		throw new Refusal(
			'people.cannot-take-over',
			'The outbox cannot be handed to this person. Nothing was changed.',
			[
				{
					path: 'outboxTo',
					message: `given ${memory.people.nameOf(to) ?? to}, allowed: a clinician, reception or the owner who works here`,
				},
			],
		)
	const owner = { personId: taker.personId, name: taker.name }
	const at = deps.now().toISOString()
	const by = memory.people.acts().name
	const items = itemsOf(memory, from.personId).filter(({ handing }) => !handing)
	const says = `${from.name} was taken off: ${taker.name} looks after it.`
	for (const item of items) putItem(memory, deps, { ...noted(item, at, by, says), owner })
	return items.length
}
