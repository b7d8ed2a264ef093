/**
 * Printing from the outbox. What waits goes on paper from then on, so that it does not leave by mail
 * as well; of what has left, a further copy counts as handed over.
 */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { moved, numberOf, type OutboxItem, roleWords } from '../../../shared/desk/outbox/item.ts'
import { fileNameFor } from '../../../shared/desk/outbox/message.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { storedDocument } from '../visits/documents.ts'
import { keepItemFromReception } from '../visits/private-pages.ts'
import { type Checking, comparedWords } from './checking.ts'
import { freeItem, noted, putItem, recordSending } from './items.ts'
import type { OutboxNeeds } from './needs.ts'
import type { Post } from './post.ts'
import { mustHold } from './recipients.ts'

const isWaiting = ({ state }: OutboxItem): boolean => state === 'to-check' || state === 'ready'

/** @throws Refusal where it was given up before it left, or went to the wrong one */
function refuseGone({ itemId, state, sentAt, taken, breachId }: OutboxItem): void {
	if (breachId !== undefined)
		throw new Refusal(
			'outbox.sent-in-error',
			'This was sent in error: nothing of it is printed for the same person. Go on with its steps.',
		)
	if (state === 'closed' && sentAt === undefined && taken === undefined)
		throw new Refusal(
			'outbox.not-ready',
			`${numberOf(itemId)} was closed before it left. Prepare it anew.`,
		)
}
/** The item as it goes by hand or by post: open, and no more by mail. */
const onPaper = (item: OutboxItem): OutboxItem => ({
	...item,
	channel: item.channel === 'print' ? 'print' : 'hand-over',
	protection: 'open',
	password: undefined,
})
/**
 * The stored pages for the printer. @throws Refusal where it was not compared with its page, must
 * not leave, or holds what is not for who is at work
 */
export function printItem(
	memory: OutboxNeeds,
	deps: Deps,
	{ post, checking }: { post: Pick<Post, 'inFlight'>; checking: Checking },
	{ itemId }: InputOf<'outbox.print'>,
): OutputOf<'outbox.print'> {
	const item = freeItem(memory, post, itemId)
	keepItemFromReception(memory, deps, item)
	refuseGone(item)
	const paper = onPaper(item)
	const { consentIds } = mustHold(memory, deps, paper)
	if (item.state === 'to-check') checking.needCompared(itemId)
	const { bytes } = storedDocument(deps, item.documentId, item.sha256)
	if (isWaiting(item)) printWaiting(memory, deps, { ...paper, consentIds }, checking)
	else printLeft(memory, deps, item, { ...paper, consentIds })
	return {
		base64: Buffer.from(bytes).toString('base64'),
		fileName: fileNameFor(numberOf(itemId)),
		toBeNoted: isWaiting(item),
	}
}
const forWhom = ({ recipient: { name, role } }: OutboxItem): string =>
	`${name} (${roleWords[role]})`

function printWaiting(
	memory: OutboxNeeds,
	deps: Deps,
	paper: OutboxItem,
	checking: Checking,
): void {
	const at = deps.now().toISOString()
	const by = memory.people.acts().name
	const before = memory.outbox.items.get(paper.itemId)
	const instead = before?.channel === paper.channel ? '' : ' It goes on paper, not by mail.'
	const ready: OutboxItem =
		paper.state === 'ready'
			? paper
			: { ...moved(paper, 'ready', { at, by, says: comparedWords }), ...checking.releasedNow() }
	const printed = noted(ready, at, by, `Printed for ${forWhom(paper)}.${instead}`)
	putItem(memory, deps, { ...printed, notBefore: undefined, taken: at }, 'print')
}
/** A further copy of what has left: who was given it is told of an amendment. */
function printLeft(memory: OutboxNeeds, deps: Deps, item: OutboxItem, paper: OutboxItem): void {
	const at = deps.now().toISOString()
	const by = memory.people.acts().name
	const says = `Printed for ${forWhom(paper)}: it counts as handed over on paper.`
	deps.store.together(() => {
		putItem(memory, deps, noted(item, at, by, says), 'print')
		recordSending(memory, deps, { ...paper, channel: 'hand-over' }, true)
	})
}
