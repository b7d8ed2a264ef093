/** Sends what was released: one at a time, in order, waiting while there is no network. */

import { numberOf, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import {
	bodyFor,
	fileNameFor,
	subjectFor,
	testBody,
	testSubject,
} from '../../../shared/desk/outbox/message.ts'
import { givesUp, waitMs } from '../../../shared/desk/outbox/retry.ts'
import { composeMessage } from '../../mail/compose.ts'
import { type Outcome, type SendMail, sendBySmtp } from '../../mail/send.ts'
import { acting, type Deps, Refusal, type State } from '../records/state.ts'
import { protectedCopy, storedDocument } from '../visits/documents.ts'
import { mustHold } from './contacts.ts'
import { move, putItem, recover, sent } from './items.ts'

/** Roles that may send; asked again when the message leaves. */
const senders = ['owner', 'clinician', 'reception']

export class Post {
	readonly #state: State
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
	constructor(state: State, deps: Deps, send: SendMail = sendBySmtp) {
		this.#state = state
		this.#deps = deps
		this.#send = send
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
	queue(): OutboxItem[] {
		return [...this.#state.outbox.values()]
			.map(({ item }) => item)
			.filter(
				(item) =>
					item.state === 'ready' &&
					item.channel === 'smtp' &&
					!item.handing &&
					this.#state.players.has(item.playerId),
			)
			.sort((a, b) => ((a.released?.at ?? '') < (b.released?.at ?? '') ? -1 : 1))
	}
	status(): { waiting: number; busy: boolean; says: string; retryAt?: string } {
		const waiting = this.queue().length
		const { notBefore } = this.#network
		return {
			waiting,
			busy: this.#running !== undefined,
			says: waiting > 0 ? this.#says : '',
			...(waiting > 0 && notBefore > this.#deps.now().getTime()
				? { retryAt: new Date(notBefore).toISOString() }
				: {}),
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
				this.#waitForNetwork()
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
	async #walk(now: boolean): Promise<void> {
		const { store } = this.#deps
		if (!store.isOpen || this.#ended) return
		if (this.#late) this.#settleLate()
		acting.run({ personId: null, role: 'nobody', purpose: 'outbox' }, () =>
			recover(this.#state, this.#deps, this.inFlight),
		)
		if (this.#stopped || (!now && this.#network.notBefore > this.#deps.now().getTime())) return
		for (const { itemId } of this.queue()) {
			if (!store.isOpen || this.#ended || !this.#state.mail.smtp) return
			// it may have been called back while others were sent
			const item = this.#state.outbox.get(itemId)?.item
			if (item?.state !== 'ready' || item.handing) continue
			if (!now && item.notBefore !== undefined && item.notBefore > this.#deps.now().toISOString())
				continue
			if ((await this.#one(item)) === 'halt') return
		}
	}
	async #one(item: OutboxItem): Promise<'on' | 'halt'> {
		const state = this.#state
		const deps = this.#deps
		const person = item.released ? state.people.get(item.released.personId) : undefined
		return acting.run(
			{ personId: person?.personId ?? null, role: person?.role ?? 'nobody', purpose: 'outbox' },
			async () => {
				this.#flying = item.itemId
				try {
					if (!person?.active || !senders.includes(person.role))
						throw new Refusal(
							'The person who released this does not work here any more. Somebody else has to ' +
								'check and release it.',
						)
					const { smtp } = state.mail
					if (!smtp || !state.clinic) return 'halt'
					const { recipient } = mustHold(state, deps, item)
					const { value, bytes } = storedDocument(deps, item.documentId, item.sha256)
					const attachment =
						item.protection === 'password'
							? await protectedCopy(deps, value, item.password ?? '')
							: bytes
					const number = numberOf(item.itemId)
					const message = await composeMessage({
						from: smtp.from,
						to: { name: recipient.name, email: recipient.email ?? '' },
						subject: subjectFor(number, state.clinic),
						messageId: item.messageId,
						date: deps.now(),
						body: bodyFor({
							number,
							recipient: recipient.name,
							clinic: state.clinic,
							withPassword: item.protection === 'password',
						}),
						attachment: { fileName: fileNameFor(number), bytes: attachment },
					})
					const outcome = await this.#send(smtp, {
						from: smtp.from.email,
						to: recipient.email ?? '',
						message,
						envelopeId: item.itemId,
						beforeEnd: () => {
							if (!deps.store.isOpen)
								throw new Refusal('The records were locked. It is sent after the next unlock.')
							const { consentIds } = mustHold(state, deps, item)
							putItem(state, deps, { ...item, handing: true, consentIds })
						},
					})
					if (!deps.store.isOpen) {
						// before the end nothing was sent and nothing is to be written; after it the answer is
						// kept until the unlock
						if (outcome.kind !== 'stopped' && outcome.kind !== 'network')
							this.#late = { itemId: item.itemId, outcome }
						return 'halt'
					}
					return this.#settle(item.itemId, outcome)
				} catch (error) {
					if (!(error instanceof Refusal) || !deps.store.isOpen) {
						if (!deps.store.isOpen) return 'halt'
						this.#says =
							`${numberOf(item.itemId)} could not be prepared for sending. It waits; ` +
							'nothing was sent.'
						this.#waitForNetwork()
						return 'halt'
					}
					move(
						state,
						deps,
						state.outbox.get(item.itemId)?.item ?? item,
						'to-check',
						error.message,
						{ released: undefined, handing: false },
					)
					return 'on'
				} finally {
					this.#flying = undefined
				}
			},
		)
	}
	#waitForNetwork(): void {
		const failures = this.#network.failures + 1
		this.#network = {
			failures,
			notBefore: this.#deps.now().getTime() + waitMs('network', failures),
		}
	}
	#settleLate(): void {
		const late = this.#late
		this.#late = undefined
		const released = late && this.#state.outbox.get(late.itemId)?.item.released
		if (late && released)
			acting.run(
				{
					personId: released.personId,
					role: this.#state.people.get(released.personId)?.role ?? 'nobody',
					purpose: 'outbox',
				},
				() => this.#settle(late.itemId, late.outcome),
			)
	}
	#settle(itemId: string, outcome: Outcome): 'on' | 'halt' {
		const state = this.#state
		const deps = this.#deps
		const item = state.outbox.get(itemId)?.item
		if (!item) return 'on'
		const at = deps.now().toISOString()
		const attempts = item.attempts + 1
		const firstTriedAt = item.firstTriedAt ?? at
		switch (outcome.kind) {
			case 'accepted':
				sent(
					state,
					deps,
					item,
					'The mail server took it. That is no proof that it arrived.',
					'sent',
					{ attempts, firstTriedAt },
				)
				this.freshStart()
				return 'on'
			case 'uncertain':
				move(
					state,
					deps,
					item,
					'uncertain',
					`${outcome.says} Ask the recipient before sending again.`,
					{ attempts, firstTriedAt, handing: false },
				)
				this.#says = outcome.says
				this.#waitForNetwork()
				return 'halt'
			case 'refused':
				move(state, deps, item, 'returned', outcome.says, {
					attempts,
					firstTriedAt,
					handing: false,
					...(outcome.status ? { statusCode: outcome.status } : {}),
				})
				return 'on'
			case 'later':
				if (givesUp(firstTriedAt, at))
					move(state, deps, item, 'returned', `${outcome.says} It was tried for five days.`, {
						attempts,
						firstTriedAt,
						handing: false,
					})
				else
					putItem(state, deps, {
						...item,
						attempts,
						firstTriedAt,
						handing: false,
						notBefore: new Date(deps.now().getTime() + waitMs('refusal', attempts)).toISOString(),
						history: [
							...item.history,
							{ at, by: 'Lastwright', state: 'ready', says: outcome.says },
						],
					})
				return 'on'
			case 'settings':
				if (item.handing) putItem(state, deps, { ...item, handing: false })
				this.#stopped = true
				this.#says =
					`${outcome.says} The queue waits until the settings are saved anew or ` +
					'"Send now" is chosen.'
				return 'halt'
			case 'stopped':
				if (outcome.error instanceof Refusal)
					move(state, deps, item, 'to-check', outcome.error.message, {
						released: undefined,
						handing: false,
					})
				else {
					this.#says =
						'It could not be noted that the message leaves, so it was not sent. It is tried again.'
					this.#waitForNetwork()
				}
				return outcome.error instanceof Refusal ? 'on' : 'halt'
			case 'network':
				if (item.handing) putItem(state, deps, { ...item, handing: false })
				this.#says = outcome.says
				this.#waitForNetwork()
				return 'halt'
		}
	}
	/** A message to the clinic's own address. */
	async test(): Promise<string> {
		const { smtp } = this.#state.mail
		if (!smtp)
			throw new Refusal('No mail server is set. Fill in the mail settings and save them first.')
		const at = this.#deps.now()
		const message = await composeMessage({
			from: smtp.from,
			to: smtp.from,
			subject: testSubject,
			body: testBody,
			messageId: `<test-${at.getTime()}@${smtp.from.email.split('@')[1]}>`,
			date: at,
		})
		const outcome = await this.#send(smtp, {
			from: smtp.from.email,
			to: smtp.from.email,
			message,
			envelopeId: `test-${at.getTime()}`,
			beforeEnd: () => {},
		})
		if (outcome.kind === 'accepted')
			return `The mail server took a test message to ${smtp.from.email}. Look whether it arrives.`
		throw new Refusal(outcome.kind === 'stopped' ? 'The test was stopped.' : outcome.says)
	}
}
