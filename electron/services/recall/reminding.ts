/**
 * Reminders for many: each becomes an item of the outbox, under the outbox's own rules. Who cannot
 * be written to is named with what is left.
 */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type Channel, numberOf, type Recipient } from '../../../shared/desk/outbox/item.ts'
import { nameOnPaper } from '../../../shared/desk/outbox/recipients.ts'
import type { Reminded } from '../../../shared/desk/recall/calls.ts'
import { reminderPage } from '../../../shared/desk/recall/reminder.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { keptForm } from '../../../shared/engine/report/kept/keep.ts'
import { fullPaperName } from '../../../shared/engine/words/names.ts'
import type { OutboxNeeds } from '../outbox/needs.ts'
import { addOpenPage } from '../outbox/preparing.ts'
import { blocked, consentsFor, mailWay, recipientsOf } from '../outbox/recipients.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { mayLeave } from '../visits/composing.ts'
import { draw, sha256Of } from '../visits/drawing.ts'
import { type Gathered, gatherOne, type RecallNeeds } from './gather.ts'
import { lastReminder } from './list.ts'
import { phonesOf } from './referrals.ts'

type Needs = RecallNeeds & OutboxNeeds
type Way = InputOf<'recall.remind'>['way']
type Said = Pick<Reminded, 'list' | 'says' | 'to'> & { itemId?: string }
/** States of a reminder that is still on its way. */
const waiting: readonly string[] = ['to-check', 'ready', 'uncertain']

/** Makes them one after another. @throws Refusal where another person took over meanwhile */
export async function remind(
	memory: Needs,
	deps: Deps,
	{ playerIds, way }: InputOf<'recall.remind'>,
): Promise<OutputOf<'recall.remind'>> {
	const { players, people } = memory
	const person = people.acts()
	const lines: Reminded[] = []
	for (const playerId of new Set(playerIds.map((id) => players.rootOf(id)))) {
		if (people.atWork !== person)
			throw new Refusal(
				'outbox.taken-over',
				`Another person took over. ${lines.length} of the reminders stand in the outbox; the rest ` +
					'were not made.',
			)
		const said = await remindOne(memory, deps, playerId, way)
		lines.push({
			playerId,
			name: players.nameOf(playerId),
			...said,
			phones: said.list === 'made' ? [] : phonesOf(memory, playerId, ['player', 'guardian']),
		})
	}
	return { lines }
}
async function remindOne(memory: Needs, deps: Deps, playerId: string, way: Way): Promise<Said> {
	const of = gatherOne(memory, deps, playerId)
	const nothing = nothingToAsk(memory, of)
	if (nothing !== undefined) return { list: 'nothing', to: '', says: nothing }
	const recipient = recipientFor(memory, of)
	if (!recipient)
		return {
			list: 'by-telephone',
			to: '',
			says: 'The player is a minor and no guardian is on record. Add the guardian to the record.',
		}
	const to = recipient.name
	if (!of.newest)
		return {
			list: 'by-telephone',
			to,
			says: 'No visit is signed, or the last one cannot be read: no letter is made.',
		}
	try {
		const trouble = inTheWay(memory, deps, of, recipient, way)
		if (trouble) return { ...trouble, to }
		return { list: 'made', to, says: '', itemId: await make(memory, deps, of, recipient, way) }
	} catch (error) {
		if (error instanceof Refusal) return { list: 'by-telephone', to, says: error.message }
		throw error
	}
}
/** Why nobody is asked; undefined where somebody is. */
function nothingToAsk(memory: Needs, of: Gathered): string | undefined {
	if (!of.items.some(({ standing }) => standing === 'due'))
		return of.items.some(({ standing }) => standing !== 'ended')
			? 'What is due is booked or asked to wait.'
			: 'Nothing is due any more.'
	const before = lastReminder(memory, of)
	return before && waiting.includes(before.state)
		? `A reminder waits in the outbox already: ${numberOf(before.itemId)}.`
		: undefined
}
/** The guardian of a minor, else the player. */
const recipientFor = (memory: Needs, { playerId, isMinor }: Gathered): Recipient | undefined =>
	recipientsOf(memory, playerId).find(
		({ recipientId }) => recipientId === (isMinor ? 'guardian' : 'player'),
	)
const channelOf = (memory: Needs, way: Way): Channel =>
	way === 'letter' ? 'print' : mailWay(memory)
const visitOf = ({ newest }: Gathered): string => newest?.line.card.visitId ?? ''

/** Why it cannot go this way, and what is left; undefined where it can. @throws Refusal */
function inTheWay(
	memory: Needs,
	deps: Deps,
	of: Gathered,
	recipient: Recipient,
	way: Way,
): Pick<Said, 'list' | 'says'> | undefined {
	const { playerId } = of
	// whoever signed it, and whether it was in error: the outbox asks the same
	mayLeave(memory.players, deps, visitOf(of))
	const delivery = { playerId, recipient, kind: 'reminder' as const }
	const byLetter = blocked(memory, deps, { ...delivery, channel: 'print' })
	if (byLetter) return { list: 'by-telephone', says: byLetter.says }
	if (way === 'letter') return undefined
	const channel = channelOf(memory, way)
	const byMail = blocked(memory, deps, { ...delivery, channel })
	if (byMail) return { list: 'by-letter', says: byMail.says }
	const missing = consentsFor(memory, deps, { ...delivery, channel }).find(
		({ inForce }) => !inForce,
	)
	return missing && { list: 'by-letter', says: missing.because }
}
async function make(
	memory: Needs,
	deps: Deps,
	of: Gathered,
	recipient: Recipient,
	way: Way,
): Promise<string> {
	const { players, clinic, people } = memory
	const { player } = players.entry(of.playerId)
	const today = dayHere(deps.now())
	const day = of.items.find(({ standing }) => standing === 'due')?.day
	const at = deps.now().toISOString()
	const by = people.acts().name
	const page = reminderPage({
		clinic: clinic.needLetterhead(),
		recipient: nameOnPaper(recipient, player),
		player: fullPaperName(player),
		isOwn: recipient.role === 'player',
		by: day !== undefined && day >= today ? day : undefined,
		on: today,
		at,
	})
	const bytes = await draw(deps, page)
	const { itemId } = addOpenPage(
		memory,
		deps,
		{ recipient, kind: 'reminder', channel: channelOf(memory, way) },
		{
			documentId: randomUUID(),
			visitId: visitOf(of),
			playerId: of.newest?.line.card.playerId ?? of.playerId,
			kind: 'reminder',
			version: of.newest?.line.card.version ?? 1,
			sha256: sha256Of(bytes),
			base64: Buffer.from(bytes).toString('base64'),
			document: keptForm(page),
			recipientId: recipient.recipientId,
			at,
			by,
		},
	)
	return itemId
}
