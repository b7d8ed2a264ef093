/** Sends what was released: one at a time, in order, waiting while there is no network. */
import { numberOf, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { testBody, testSubject } from '../../../shared/desk/outbox/message.ts'
import { waitMs } from '../../../shared/desk/outbox/retry.ts'
import { composeMessage } from '../../mail/compose.ts'
import { type Outcome, type SendMail, sendBySmtp } from '../../mail/send.ts'
import type { PersonEntry } from '../people/memory.ts'
import { acting } from '../records/acting.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { putItem, recover } from './items.ts'
import { documentToSend, letterFor } from './letter.ts'
import type { OutboxNeeds } from './needs.ts'
import { mustHold } from './recipients.ts'
import { backToCheck, settle } from './settle.ts'

/** Roles that may send; asked again when the message leaves. */
const senders = ['owner', 'clinician', 'reception']

/** Who released an item acts when it leaves; a person who is gone is nobody. */
const actorOf = (person: PersonEntry | undefined) => ({
	personId: person?.personId ?? null,
	role: person?.role ?? 'nobody',
	purpose: 'outbox',
})

export class Post {
	readonly #memory: OutboxNeeds
	readonly #deps: Deps
	readonly #send: SendMail
	#running: Promise<void> | undefined
	#flying: string | undefined
	#network = { failures: 0, notBefore: 0 }
	#stopped = false
	#says = ''
	/** An outcome that could not be written because the records were locked meanwhile. */
	#late: { itemId: string; outcome: Outcome } | undefined
	#again = false
	#hurry = false
	#ended = false
	constructor(memory: OutboxNeeds, deps: Deps, send: SendMail = sendBySmtp) {
		this.#memory = memory
		this.#deps = deps
		this.#send = send
	}

	/** Whether a message is on its way, or its outcome is still to be written. */
	get isSending(): boolean {
		return this.#flying !== undefined || this.#late !== undefined
	}
	inFlight = (itemId: string): boolean => this.#flying === itemId || this.#late?.itemId === itemId
	end(): void {
		this.#ended = true
	}
	/** The settings were changed, or a person wants it now: forget the waits. */
	freshStart(): void {
		this.#stopped = false
		this.#network = { failures: 0, notBefore: 0 }
		this.#says = ''
	}
	/** What waits for the mail server, in the order in which it was released. */
	#queue(): OutboxItem[] {
		const { outbox, players } = this.#memory
		return outbox.items
			.all()
			.filter(
				(item) =>
					item.state === 'ready' &&
					item.channel === 'smtp' &&
					!item.handing &&
					players.byId.has(item.playerId),
			)
			.sort((left, right) => ((left.released?.at ?? '') < (right.released?.at ?? '') ? -1 : 1))
	}
	/** How the queue stands. @returns `retryAt`: when it is tried again, an ISO moment */
	status(): { waiting: number; busy: boolean; says: string; retryAt?: string } {
		const waiting = this.#queue().length
		const { notBefore } = this.#network
		const waits = waiting > 0 && notBefore > this.#deps.now().getTime()
		return {
			waiting,
			busy: this.#running !== undefined,
			says: waiting > 0 ? (this.#memory.restored.inTheWay ?? this.#says) : '',
			...(waits && { retryAt: new Date(notBefore).toISOString() }),
		}
	}
	/**
	 * Sends what is due. A call while one runs has it look once more before it ends. @param now true:
	 * does not wait for the time of the next try
	 */
	run(now = false): Promise<void> {
		if (now) this.freshStart()
		if (this.#running) {
			this.#again = true
			this.#hurry ||= now
			return this.#running
		}
		this.#running = this.#walks(now)
			.catch(() => {
				this.#says =
					'The outbox could not write to the records. Free some space on the disk; it is tried ' +
					'again.'
				this.#waitForNextTry()
			})
			.finally(() => {
				this.#running = undefined
			})
		return this.#running
	}
	async #walks(now: boolean): Promise<void> {
		this.#hurry = now
		do {
			this.#again = false
			const hurry = this.#hurry
			this.#hurry = false
			await this.#walk(hurry)
		} while (this.#again)
	}
	get #canGoOn(): boolean {
		const { isOpen, isHeld } = this.#deps.store
		return isOpen && !isHeld && !this.#ended
	}
	async #walk(now: boolean): Promise<void> {
		if (!this.#canGoOn) return
		this.#settleLate()
		acting.run(actorOf(undefined), () => recover(this.#memory, this.#deps, this.inFlight))
		// after a restore nothing leaves by itself until a person has decided
		if (this.#memory.restored.inTheWay !== undefined) return
		const waits = !now && this.#network.notBefore > this.#deps.now().getTime()
		if (this.#stopped || waits) return
		for (const { itemId } of this.#queue()) {
			if (!this.#canGoOn || !this.#memory.outbox.mail.smtp) return
			const item = this.#dueNow(itemId, now)
			if (item && (await this.#sendItem(item)) === 'halt') return
		}
	}
	/**
	 * An item of the queue, unless it was called back or printed while others were sent, or has to
	 * wait.
	 */
	#dueNow(itemId: string, now: boolean): OutboxItem | undefined {
		const item = this.#memory.outbox.items.get(itemId)
		if (item?.state !== 'ready' || item.channel !== 'smtp' || item.handing) return undefined
		const { notBefore } = item
		const waits = notBefore !== undefined && notBefore > this.#deps.now().toISOString()
		return waits && !now ? undefined : item
	}
	#releasedBy(item: OutboxItem | undefined): PersonEntry | undefined {
		return item?.released && this.#memory.people.byId.get(item.released.personId)
	}
	#sendItem(item: OutboxItem): Promise<'on' | 'halt'> {
		const person = this.#releasedBy(item)
		return acting.run(actorOf(person), async () => {
			this.#flying = item.itemId
			try {
				return await this.#trySending(item, person)
			} catch (error) {
				return this.#notSent(item, error)
			} finally {
				this.#flying = undefined
			}
		})
	}
	/** @throws Refusal where it must not leave; anything else where it could not be prepared */
	async #trySending(item: OutboxItem, person: PersonEntry | undefined): Promise<'on' | 'halt'> {
		const memory = this.#memory
		const deps = this.#deps
		if (!person?.active || !senders.includes(person.role))
			throw new Refusal(
				'outbox.releaser-left',
				'The person who released this does not work here any more. Somebody else has to ' +
					'check and release it.',
			)
		const { smtp } = memory.outbox.mail
		const clinic = memory.clinic.letterhead
		if (!smtp || !clinic) return 'halt'
		const { recipient } = mustHold(memory, deps, item)
		const document = await documentToSend(deps, item)
		const { from } = smtp
		const date = deps.now()
		const message = await composeMessage(
			letterFor({ item, recipient, clinic, from, date, document }),
		)
		const outcome = await this.#send(smtp, {
			from: from.email,
			to: recipient.email ?? '',
			message,
			envelopeId: item.itemId,
			beforeEnd: () => this.#noteLeaving(item),
		})
		if (deps.store.isOpen) return this.#settle(item.itemId, outcome)
		// before the end nothing was sent and nothing is to be written; after it the answer is kept
		// until the unlock
		if (outcome.kind !== 'stopped' && outcome.kind !== 'network')
			this.#late = { itemId: item.itemId, outcome }
		return 'halt'
	}
	/** The last look before the end of the message is sent. @throws Refusal where it must not be */
	#noteLeaving(item: OutboxItem): void {
		if (!this.#deps.store.isOpen)
			throw new Refusal(
				'outbox.locked',
				'The records were locked. It is sent after the next unlock.',
			)
		const { consentIds } = mustHold(this.#memory, this.#deps, item)
		putItem(this.#memory, this.#deps, { ...item, handing: true, consentIds })
	}
	#notSent(item: OutboxItem, error: unknown): 'on' | 'halt' {
		if (!this.#deps.store.isOpen) return 'halt'
		if (error instanceof Refusal) {
			const now = this.#memory.outbox.items.get(item.itemId) ?? item
			backToCheck(this.#memory, this.#deps, now, error)
			return 'on'
		}
		const number = numberOf(item.itemId)
		this.#says = `${number} could not be prepared for sending. It waits; nothing was sent.`
		this.#waitForNextTry()
		return 'halt'
	}
	#waitForNextTry(): void {
		const failures = this.#network.failures + 1
		const notBefore = this.#deps.now().getTime() + waitMs('network', failures)
		this.#network = { failures, notBefore }
	}
	#settleLate(): void {
		const late = this.#late
		this.#late = undefined
		const item = late && this.#memory.outbox.items.get(late.itemId)
		if (!late || !item?.released) return
		const role = this.#releasedBy(item)?.role ?? 'nobody'
		acting.run({ personId: item.released.personId, role, purpose: 'outbox' }, () =>
			this.#settle(late.itemId, late.outcome),
		)
	}
	#settle(itemId: string, outcome: Outcome): 'on' | 'halt' {
		const item = this.#memory.outbox.items.get(itemId)
		if (!item) return 'on'
		const after = settle(this.#memory, this.#deps, item, outcome)
		if (after.go === 'on') {
			if (after.networkWorks) this.freshStart()
			return 'on'
		}
		this.#says = after.says
		if (after.until === 'settings-change') this.#stopped = true
		else this.#waitForNextTry()
		return 'halt'
	}
	/** A message to the clinic's own address. */
	async test(): Promise<string> {
		const { smtp } = this.#memory.outbox.mail
		if (!smtp)
			throw new Refusal(
				'outbox.no-mail-server',
				'No mail server is set. Fill in the mail settings and save them first.',
			)
		const { from } = smtp
		const at = this.#deps.now()
		const message = await composeMessage({
			from,
			to: from,
			subject: testSubject,
			body: testBody,
			messageId: `<test-${at.getTime()}@${from.email.split('@')[1]}>`,
			date: at,
		})
		const outcome = await this.#send(smtp, {
			from: from.email,
			to: from.email,
			message,
			envelopeId: `test-${at.getTime()}`,
			beforeEnd: () => {},
		})
		if (outcome.kind === 'accepted')
			return `The mail server took a test message to ${from.email}. Look whether it arrives.`
		throw new Refusal(
			'outbox.test-failed',
			outcome.kind === 'stopped' ? 'The test was stopped.' : outcome.says,
		)
	}
}
