/** Comparing a document with its recipient, and releasing it: the second look before it leaves. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { numberOf, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { fileNameFor } from '../../../shared/desk/outbox/message.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { storedDocument } from '../visits/documents.ts'
import { keepItemFromReception, readablePart } from '../visits/private-pages.ts'
import { alertsFor } from './alerts.ts'
import { freeItem, itemOf, move } from './items.ts'
import type { OutboxNeeds } from './needs.ts'
import type { Post } from './post.ts'
import { blocked, consentsFor, mustHold, recipientOf } from './recipients.ts'

/** What the history says of a release. */
export const comparedWords = 'First page, name, birth date and recipient were compared.'

/** What somebody saw of an item. */
interface Looked {
	sha256: string
	/** the warnings that stood beside the page */
	warnings: readonly string[]
	/** found right, its warnings read: it may be released without being opened again */
	compared: boolean
}
type Compared = Pick<InputOf<'outbox.release'>, 'itemId' | 'sha256' | 'warningsRead'>

export class Checking {
	readonly #memory: OutboxNeeds
	readonly #deps: Deps
	readonly #post: Post
	/** what who is at work saw in this session: releasing asks for it */
	readonly #looked = new Map<string, Looked>()
	constructor(memory: OutboxNeeds, deps: Deps, post: Post) {
		this.#memory = memory
		this.#deps = deps
		this.#post = post
	}
	#lookKey(itemId: string): string {
		return `${itemId} ${this.#memory.people.acts().personId}`
	}
	/** The document, or its first page, beside what to read of it and its recipient. */
	async look({ itemId }: InputOf<'outbox.look'>): Promise<OutputOf<'outbox.look'>> {
		const memory = this.#memory
		const deps = this.#deps
		const item = itemOf(memory, itemId)
		const { playerId, documentId, sha256 } = item
		keepItemFromReception(memory, deps, item)
		const { bytes } = storedDocument(deps, documentId, sha256)
		const shown = await readablePart(memory, deps, bytes)
		const recipient = recipientOf(memory, playerId, item.recipient.recipientId)
		const delivery = { ...item, recipient }
		const block = blocked(memory, deps, delivery)
		const answers = consentsFor(memory, deps, delivery)
		const warnings = alertsFor(memory, deps, item, recipient)
		const before = this.#looked.get(this.#lookKey(itemId))
		const compared =
			this.#isCompared(item) && warnings.every((warning) => before?.warnings.includes(warning))
		this.#looked.set(this.#lookKey(itemId), { sha256, warnings, compared })
		deps.store.audit({ function: 'read', objectRef: `document:${documentId}`, playerId })
		return {
			base64: Buffer.from(shown).toString('base64'),
			sha256,
			fileName: fileNameFor(numberOf(itemId)),
			warnings,
			consents: answers.filter((answer) => answer.inForce).map((answer) => answer.because),
			missing: answers.filter((answer) => !answer.inForce).map((answer) => answer.because),
			...(block && { blocked: block.says }),
		}
	}
	#isCompared({ itemId, sha256 }: Pick<OutboxItem, 'itemId' | 'sha256'>): boolean {
		const looked = this.#looked.get(this.#lookKey(itemId))
		return looked?.compared === true && looked.sha256 === sha256
	}
	/** Whether who is at work found it right and may release it without opening it again. */
	isCompared = (item: OutboxItem): boolean => item.state === 'to-check' && this.#isCompared(item)

	/** @throws Refusal where it was not looked at, must not leave, or has warnings not read */
	#needRight({ itemId, sha256, warningsRead }: Compared): OutboxItem {
		const memory = this.#memory
		const deps = this.#deps
		const item = freeItem(memory, this.#post, itemId)
		if (item.state !== 'to-check')
			throw new Refusal('outbox.not-waiting', `${numberOf(itemId)} is not waiting to be checked.`)
		const looked = this.#looked.get(this.#lookKey(itemId))
		if (sha256 !== item.sha256 || looked?.sha256 !== item.sha256)
			throw new Refusal(
				'outbox.page-not-seen',
				'The first page was not looked at yet. Open it beside the recipient first.',
			)
		const { recipient } = mustHold(memory, deps, item)
		refuseUnread(alertsFor(memory, deps, item, recipient), looked.warnings, warningsRead)
		return item
	}
	/** Found right beside its page: several are then released in one step. @throws Refusal like release */
	compare(found: InputOf<'outbox.compared'>): Record<string, never> {
		this.#needRight(found)
		const key = this.#lookKey(found.itemId)
		const looked = this.#looked.get(key)
		if (looked) this.#looked.set(key, { ...looked, compared: true })
		return {}
	}
	/** @throws Refusal where it was not looked at, must not leave, or has warnings not read */
	release(found: Compared): Record<string, never> {
		const item = this.#needRight(found)
		if (item.channel === 'smtp' && !this.#memory.outbox.mail.smtp)
			throw new Refusal(
				'outbox.no-mail-server',
				'No mail server is set. Fill in the mail settings first, or choose the draft for the ' +
					'mail program.',
			)
		move(this.#memory, this.#deps, item, 'ready', comparedWords, this.releasedNow())
		void this.#post.run()
		return {}
	}
	/** What a release writes into an item. */
	releasedNow(): Pick<OutboxItem, 'released'> & { notBefore: undefined; taken: undefined } {
		const { personId, name } = this.#memory.people.acts()
		const at = this.#deps.now().toISOString()
		return { released: { personId, name, at }, notBefore: undefined, taken: undefined }
	}
	/** Releases what was found right before. @throws Refusal where it was not, or like release */
	releaseCompared(itemId: string): void {
		const { sha256 } = this.needCompared(itemId)
		this.release({ itemId, sha256, warningsRead: true })
	}
	/**
	 * An item that waits to be checked and was found right by who is at work.
	 * @throws Refusal where it was not, or must not leave now
	 */
	needCompared(itemId: string): OutboxItem {
		const item = freeItem(this.#memory, this.#post, itemId)
		if (item.state === 'to-check' && !this.#isCompared(item))
			throw new Refusal(
				'outbox.page-not-seen',
				'It was not compared with its first page yet. Look at it beside its recipient first.',
			)
		return this.#needRight({ itemId, sha256: item.sha256, warningsRead: true })
	}
}
/** @throws Refusal where a warning was not ticked, or came up after the page was looked at */
function refuseUnread(
	warnings: readonly string[],
	shown: readonly string[],
	areRead: boolean,
): void {
	const problems = (some: readonly string[]) =>
		some.map((message) => ({ path: 'warningsRead', message }))
	const unshown = warnings.filter((warning) => !shown.includes(warning))
	if (unshown.length > 0)
		throw new Refusal(
			'outbox.warnings-not-read',
			'A warning came up since the page was opened. Read it beside the page first.',
			problems(unshown),
		)
	if (warnings.length > 0 && !areRead)
		throw new Refusal(
			'outbox.warnings-not-read',
			`There ${warnings.length === 1 ? 'is a warning' : `are ${warnings.length} warnings`}. ` +
				'Read and tick that it was checked.',
			problems(warnings),
		)
}
