/** Documents of several visits put into the outbox in one step, each by the rules of one. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { PutRow } from '../../../shared/desk/outbox/many.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { eachInTurn } from './in-turn.ts'
import type { OutboxNeeds } from './needs.ts'
import { addItem, mayBePut } from './preparing.ts'
import { consentsFor } from './recipients.ts'

/** @throws Refusal where a right is missing that the outbox would ask for when it leaves */
function needConsents(memory: OutboxNeeds, deps: Deps, row: PutRow): void {
	const { playerId, recipient } = mayBePut(memory, deps, row)
	const missing = consentsFor(memory, deps, { playerId, recipient, channel: row.channel }).find(
		({ inForce }) => !inForce,
	)
	if (missing) throw new Refusal('outbox.no-consent', missing.because)
}
/** @returns the item of each row, or why there is none, in the order of the rows */
export async function putEach(
	memory: OutboxNeeds,
	deps: Deps,
	rows: readonly PutRow[],
	due: string,
): Promise<{ itemId?: string; says: string }[]> {
	const ended = await eachInTurn(memory, rows, async (row) => {
		needConsents(memory, deps, row)
		return (await addItem(memory, deps, { ...row, due })).itemId
	})
	return ended.map((how) => ('says' in how ? how : { itemId: how.value, says: '' }))
}
export const putMany = async (
	memory: OutboxNeeds,
	deps: Deps,
	{ rows, due }: InputOf<'outbox.putMany'>,
): Promise<OutputOf<'outbox.putMany'>> => ({ lines: await putEach(memory, deps, rows, due) })
