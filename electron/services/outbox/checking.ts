/** Comparing a document with its recipient, and releasing it: the second look before it leaves. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { numberOf } from '../../../shared/desk/outbox/item.ts'
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

export class Checking {
	readonly #memory: OutboxNeeds
	readonly #deps: Deps
	readonly #post: Post
	/** who looked at which bytes in this session: releasing asks for it */
	readonly #looked = new Map<string, string>()
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
		this.#looked.set(this.#lookKey(itemId), sha256)
		deps.store.audit({ function: 'read', objectRef: `document:${documentId}`, playerId })
		return {
			base64: Buffer.from(shown).toString('base64'),
			sha256,
			fileName: fileNameFor(numberOf(itemId)),
			warnings: alertsFor(memory, deps, item, recipient),
			consents: answers.filter((answer) => answer.inForce).map((answer) => answer.because),
			missing: answers.filter((answer) => !answer.inForce).map((answer) => answer.because),
			...(block && { blocked: block.says }),
		}
	}
	/** @throws Refusal where it was not looked at, must not leave, or has warnings not read */
	release({ itemId, sha256, warningsRead }: InputOf<'outbox.release'>): Record<string, never> {
		const memory = this.#memory
		const deps = this.#deps
		const item = freeItem(memory, this.#post, itemId)
		if (item.state !== 'to-check')
			throw new Refusal('outbox.not-waiting', `${numberOf(itemId)} is not waiting to be checked.`)
		if (sha256 !== item.sha256 || this.#looked.get(this.#lookKey(itemId)) !== item.sha256)
			throw new Refusal(
				'outbox.page-not-seen',
				'The first page was not looked at yet. Open it beside the recipient first.',
			)
		const { recipient } = mustHold(memory, deps, item)
		const warnings = alertsFor(memory, deps, item, recipient)
		if (warnings.length > 0 && !warningsRead)
			throw new Refusal(
				'outbox.warnings-not-read',
				`There ${warnings.length === 1 ? 'is a warning' : `are ${warnings.length} warnings`}. ` +
					'Read and tick that it was checked.',
				warnings.map((message) => ({ path: 'warningsRead', message })),
			)
		if (item.channel === 'smtp' && !memory.outbox.mail.smtp)
			throw new Refusal(
				'outbox.no-mail-server',
				'No mail server is set. Fill in the mail settings first, or choose the draft for the ' +
					'mail program.',
			)
		const { personId, name } = memory.people.acts()
		const says = 'First page, name, birth date and recipient were compared.'
		move(memory, deps, item, 'ready', says, {
			released: { personId, name, at: deps.now().toISOString() },
			notBefore: undefined,
			taken: undefined,
		})
		void this.#post.run()
		return {}
	}
}
