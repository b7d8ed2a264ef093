/** One act on several items: each by the rules and checks of one. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { numberOf } from '../../../shared/desk/outbox/item.ts'
import type { Deps } from '../records/deps.ts'
import type { Checking } from './checking.ts'
import { eachInTurn } from './in-turn.ts'
import { itemOf } from './items.ts'
import type { OutboxNeeds } from './needs.ts'
import { callBack, closeItem } from './outcome.ts'
import type { Post } from './post.ts'

type Input = InputOf<'outbox.many'>
/** @returns for each whether it was done, and why not */
export async function actOnMany(
	memory: OutboxNeeds,
	deps: Deps,
	{ post, checking }: { post: Post; checking: Checking },
	{ act, itemIds, note }: Input,
): Promise<OutputOf<'outbox.many'>> {
	const acts: Record<Input['act'], (itemId: string) => void> = {
		release: (itemId) => checking.releaseCompared(itemId),
		back: (itemId) => void callBack(memory, deps, post, { itemId, reason: note }),
		close: (itemId) => void closeItem(memory, deps, post, { itemId, note }),
	}
	const ids = [...new Set(itemIds)]
	const ended = await eachInTurn(memory, ids, (itemId) => {
		itemOf(memory, itemId)
		acts[act](itemId)
	})
	return {
		lines: ended.map((how, index) => {
			const itemId = ids[index] ?? ''
			const number = numberOf(itemId)
			return 'says' in how
				? { itemId, number, done: false, says: how.says }
				: { itemId, number, done: true, says: '' }
		}),
	}
}
