/**
 * One step after a screening day: for each signed player the page for the family is put into the
 * outbox, under the outbox's own rules. Each is still checked and released by itself.
 */
import { setImmediate } from 'node:timers/promises'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Channel, OutboxKind, Recipient } from '../../../shared/desk/outbox/item.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { OutboxNeeds } from '../outbox/needs.ts'
import { addItem } from '../outbox/preparing.ts'
import { blocked, consentsFor, isMinor, mailWay, recipientsOf } from '../outbox/recipients.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { type BoardNeeds, signedRows } from './board.ts'

type Needs = BoardNeeds & OutboxNeeds
type Line = OutputOf<'squad.toFamilies'>['lines'][number]
type SignedRow = ReturnType<typeof signedRows>[number]

/** @throws Refusal where nobody is signed, or another person took over meanwhile */
export async function toFamilies(
	memory: Needs,
	deps: Deps,
	{ squadId }: InputOf<'squad.toFamilies'>,
): Promise<OutputOf<'squad.toFamilies'>> {
	const rows = signedRows(memory, deps, squadId)
	if (rows.length === 0)
		throw new Refusal(
			'squad.nobody-signed',
			'Nobody of this day is signed yet. Sign one by one from the board first.',
		)
	const person = memory.people.acts()
	const lines: Line[] = []
	for (const row of rows) {
		if (memory.people.atWork !== person)
			throw new Refusal(
				'outbox.taken-over',
				`Another person took over. ${lines.length} of ${rows.length} stand in the outbox; the rest ` +
					'were not made.',
			)
		lines.push({ name: row.name, ...(await putOne(memory, deps, row)) })
		await setImmediate()
	}
	return { lines }
}
/** A refusal is about one player; the next one is begun. */
async function putOne(memory: Needs, deps: Deps, row: SignedRow): Promise<Omit<Line, 'name'>> {
	const minor = isMinor(memory, deps, row.playerId)
	const recipient = recipientsOf(memory, row.playerId).find(
		({ role }) => role === (minor ? 'guardian' : 'player'),
	)
	if (!recipient)
		return { to: '', says: 'No guardian is on record. Add the guardian to the record first.' }
	const kind = minor ? 'guardian' : 'player'
	const channel = channelFor(memory, deps, { playerId: row.playerId, recipient, kind })
	const { recipientId, name: to } = recipient
	const due = dayHere(deps.now())
	try {
		const input = { visitId: row.visitId, kind, recipientId, channel, due } as const
		const { itemId } = await addItem(memory, deps, input)
		return { to, itemId, channel, says: '' }
	} catch (error) {
		if (error instanceof Refusal) return { to, says: error.message }
		throw error
	}
}
interface Family {
	playerId: string
	recipient: Recipient
	kind: OutboxKind
}
/** By mail where there is an address and a consent to use it, else on paper. */
function channelFor(memory: Needs, deps: Deps, family: Family): Channel {
	const mail = mailWay(memory)
	const delivery = { ...family, channel: mail }
	if (blocked(memory, deps, delivery)) return 'print'
	return consentsFor(memory, deps, delivery).every(({ inForce }) => inForce) ? mail : 'print'
}
