/** What the outcome of a sending means for its item, and for the queue after it. */
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { givesUp, waitMs } from '../../../shared/desk/outbox/retry.ts'
import type { Outcome } from '../../mail/send.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { move, noted, putItem, sent } from './items.ts'

type Needs = Pick<Memory, 'outbox' | 'people'>
/** Whether the queue goes on with the next item, or halts, why, and until when. */
export type After =
	| { go: 'on'; networkWorks: boolean }
	| { go: 'halt'; says: string; until: 'next-try' | 'settings-change' }
const on: After = { go: 'on', networkWorks: false }
const haltUntilNextTry = (says: string): After => ({ go: 'halt', says, until: 'next-try' })

export function settle(memory: Needs, deps: Deps, item: OutboxItem, outcome: Outcome): After {
	const at = deps.now().toISOString()
	const tried = {
		attempts: item.attempts + 1,
		firstTriedAt: item.firstTriedAt ?? at,
	}
	switch (outcome.kind) {
		case 'accepted': {
			const says = 'The mail server took it. That is no proof that it arrived.'
			sent(memory, deps, item, says, 'sent', tried)
			return { go: 'on', networkWorks: true }
		}
		case 'uncertain': {
			const says = `${outcome.says} Ask the recipient before sending again.`
			move(memory, deps, item, 'uncertain', says, { ...tried, handing: false })
			return haltUntilNextTry(outcome.says)
		}
		case 'refused': {
			const { status } = outcome
			const change = { ...tried, handing: false, ...(status && { statusCode: status }) }
			move(memory, deps, item, 'returned', outcome.says, change)
			return on
		}
		case 'later':
			tryLater(memory, deps, item, outcome.says, tried)
			return on
		case 'settings':
			notHanding(memory, deps, item)
			return {
				go: 'halt',
				says:
					`${outcome.says} The queue waits until the settings are saved anew or ` +
					'"Send now" is chosen.',
				until: 'settings-change',
			}
		case 'stopped':
			return settleStopped(memory, deps, item, outcome.error)
		case 'network':
			notHanding(memory, deps, item)
			return haltUntilNextTry(outcome.says)
	}
}
/** Nothing of it left: what was noted before the last byte is taken back. */
function notHanding(memory: Needs, deps: Deps, item: OutboxItem): void {
	if (item.handing) putItem(memory, deps, { ...item, handing: false })
}
/** The server will have it later: it is tried again, for so many days. */
function tryLater(
	memory: Needs,
	deps: Deps,
	item: OutboxItem,
	says: string,
	tried: { attempts: number; firstTriedAt: string },
): void {
	const now = deps.now()
	const at = now.toISOString()
	if (givesUp(tried.firstTriedAt, at)) {
		const change = { ...tried, handing: false }
		move(memory, deps, item, 'returned', `${says} It was tried for five days.`, change)
		return
	}
	const notBefore = new Date(now.getTime() + waitMs('refusal', tried.attempts)).toISOString()
	putItem(memory, deps, {
		...noted(item, at, 'Lastwright', says),
		...tried,
		handing: false,
		notBefore,
	})
}
/** It must not leave after all, or that it leaves could not be written down. */
function settleStopped(memory: Needs, deps: Deps, item: OutboxItem, error: Error): After {
	if (!(error instanceof Refusal))
		return haltUntilNextTry(
			'It could not be noted that the message leaves, so it was not sent. It is tried again.',
		)
	backToCheck(memory, deps, item, error)
	return on
}
/** What must not leave goes back to be checked, with the reason. */
export function backToCheck(memory: Needs, deps: Deps, item: OutboxItem, why: Refusal): void {
	const change = { released: undefined, handing: false }
	move(memory, deps, item, 'to-check', why.message, change)
}
