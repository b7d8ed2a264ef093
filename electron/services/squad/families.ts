/**
 * One step after a screening day: for each signed player the page for the family is put into the
 * outbox, under the outbox's own rules. Each is still checked and released by itself.
 */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { eachInTurn } from '../outbox/in-turn.ts'
import type { OutboxNeeds } from '../outbox/needs.ts'
import { putEach } from '../outbox/put-many.ts'
import { isMinor, recipientsOf, wayFor } from '../outbox/recipients.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { type BoardNeeds, signedRows } from './board.ts'

type Needs = BoardNeeds & OutboxNeeds
type Line = OutputOf<'squad.toFamilies'>['lines'][number]
type SignedRow = ReturnType<typeof signedRows>[number]

/** @throws Refusal where nobody is signed */
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
	const due = dayHere(deps.now())
	const ended = await eachInTurn(memory, rows, (row) => putOne(memory, deps, row, due))
	return {
		lines: ended.map((how, index): Line => {
			const name = rows[index]?.name ?? ''
			return 'says' in how ? { name, to: '', says: how.says } : { name, ...how.value }
		}),
	}
}
async function putOne(
	memory: Needs,
	deps: Deps,
	{ playerId, visitId }: SignedRow,
	due: string,
): Promise<Omit<Line, 'name'>> {
	const minor = isMinor(memory, deps, playerId)
	const recipient = recipientsOf(memory, playerId).find(
		({ role }) => role === (minor ? 'guardian' : 'player'),
	)
	if (!recipient)
		return { to: '', says: 'No guardian is on record. Add the guardian to the record first.' }
	const { recipientId, name: to } = recipient
	const kind = minor ? 'guardian' : 'player'
	const channel = wayFor(memory, deps, { playerId, recipient, kind })
	const [put] = await putEach(memory, deps, [{ visitId, kind, recipientId, channel }], due)
	if (put?.itemId === undefined) return { to, says: put?.says ?? '' }
	return { to, itemId: put.itemId, channel, says: '' }
}
