/** What became of a sending, as a person notes it; and who looks after an item. */
import type { InputOf } from '../../../shared/contract.ts'
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { freeItem, move, noted, putItem, sent } from './items.ts'
import type { OutboxNeeds } from './needs.ts'
import type { Post } from './post.ts'

type InFlight = Pick<Post, 'inFlight'>
type Nothing = Record<string, never>

/** How something left that no mail server took. */
const leftWords: Record<Exclude<OutboxItem['channel'], 'smtp'>, string> = {
	eml: 'Sent from the mail program',
	print: 'Printed and posted',
	'hand-over': 'Handed over',
}

/** Notes what a person knows of a sending. @throws Refusal where the item does not stand so */
export function confirm(
	memory: OutboxNeeds,
	deps: Deps,
	post: InFlight,
	{ itemId, what, note }: InputOf<'outbox.confirm'>,
): Nothing {
	const item = freeItem(memory, post, itemId)
	const words = note ? ` ${note}` : ''
	if (what === 'again') sendAgain(memory, deps, item, words)
	else if (what === 'returned') move(memory, deps, item, 'returned', `Noted as returned.${words}`)
	else if (item.state === 'uncertain')
		sent(memory, deps, item, `Noted as ${what} after asking.${words}`, what)
	else if (what === 'delivered')
		move(memory, deps, item, 'delivered', `Noted as delivered.${words}`)
	else noteAsSent(memory, deps, item, words)
	return {}
}
function sendAgain(memory: OutboxNeeds, deps: Deps, item: OutboxItem, words: string): void {
	if (item.state !== 'uncertain')
		throw new Refusal('outbox.not-uncertain', 'Only an uncertain sending is asked about like this.')
	const says = `Held as not arrived, to be sent again; it may arrive twice.${words}`
	move(memory, deps, item, 'to-check', says, { released: undefined })
}
function noteAsSent(memory: OutboxNeeds, deps: Deps, item: OutboxItem, words: string): void {
	if (item.channel === 'smtp')
		throw new Refusal('outbox.server-says', 'The mail server says by itself when it took this.')
	if (item.taken === undefined)
		throw new Refusal(
			'outbox.not-given-out',
			'It was not given out yet. Print it, save the draft or open it first.',
		)
	sent(memory, deps, item, `${leftWords[item.channel]}.${words}`)
}
/** Calls an item back, to be checked anew. */
export function callBack(
	memory: OutboxNeeds,
	deps: Deps,
	post: InFlight,
	{ itemId, reason }: InputOf<'outbox.back'>,
): Nothing {
	const item = freeItem(memory, post, itemId)
	move(memory, deps, item, 'to-check', reason, { released: undefined })
	return {}
}
export function closeItem(
	memory: OutboxNeeds,
	deps: Deps,
	post: InFlight,
	{ itemId, note }: InputOf<'outbox.close'>,
): Nothing {
	const item = freeItem(memory, post, itemId)
	move(memory, deps, item, 'closed', note || 'Closed.', { released: undefined })
	return {}
}
/** Whoever acts looks after the item from now on. */
export function takeOver(
	memory: OutboxNeeds,
	deps: Deps,
	post: InFlight,
	{ itemId, due }: InputOf<'outbox.mine'>,
): Nothing {
	const item = freeItem(memory, post, itemId)
	const { personId, name } = memory.people.acts()
	const at = deps.now().toISOString()
	const owner = { personId, name }
	putItem(memory, deps, { ...noted(item, at, name, `Taken over, due ${due}.`), owner, due })
	return {}
}
