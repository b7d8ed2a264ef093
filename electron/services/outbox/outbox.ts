/**
 * The outbox: documents of signed visits, checked beside their recipient, then sent, handed over or
 * returned.
 */
import { randomInt, randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { tidyAddress } from '../../../shared/desk/outbox/addresses.ts'
import { meaningOf, readDsn } from '../../../shared/desk/outbox/dsn.ts'
import {
	channelWords,
	isMail,
	numberOf,
	type OutboxItem,
	type Recipient,
} from '../../../shared/desk/outbox/item.ts'
import { bodyFor, fileNameFor, subjectFor } from '../../../shared/desk/outbox/message.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { composeDraft } from '../../mail/compose.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { keepDocument, makeDocument, protectedCopy, storedDocument } from '../visits/documents.ts'
import { alertsFor } from './alerts.ts'
import { blocked, consentsFor, mustHold, recipientOf } from './contacts.ts'
import { itemOf, move, putItem, recordSending, refuseInFlight, sent, viewsOf } from './items.ts'
import type { Post } from './post.ts'

/** Letters that are not taken for one another when read aloud; 4 groups of 4 give 76 bits. */
const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
const newPassword = (): string =>
	Array.from({ length: 4 }, () =>
		Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join(''),
	).join('-')
const me = (state: State) => {
	const { personId, name } = state.acts()
	return { personId, name }
}
const clinicOf = (state: State) => {
	if (!state.clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
	return state.clinic
}
const senderOf = (state: State) => {
	const clinic = clinicOf(state)
	const from =
		state.mail.smtp?.from ?? (clinic.email ? { name: clinic.name, email: clinic.email } : undefined)
	if (!from)
		throw new Refusal(
			'The clinic has no e-mail address. Add it to the letterhead or fill in the mail settings.',
		)
	return from
}
interface NewItem {
	visitId: string
	kind: OutboxItem['kind']
	recipient: Recipient
	channel: OutboxItem['channel']
	protection: OutboxItem['protection']
	due: string
	resend?: { of: string; reason: string }
}
/** Keeps a document and puts it into the queue as an item to check. */
function putNew(
	state: State,
	deps: Deps,
	{ visitId, kind, recipient, channel, protection, due, resend }: NewItem,
	document: { documentId: string; playerId: string; version: number; sha256: string },
): OutboxItem {
	const at = deps.now().toISOString()
	const itemId = randomUUID()
	const domain =
		(isMail(channel) ? senderOf(state).email.split('@')[1] : undefined) ?? 'local.invalid'
	const says =
		`${channelWords[channel]} to ${recipient.name}, version ` +
		`${document.version}.${resend ? ` Sent again: ${resend.reason}` : ''}`
	return putItem(state, deps, {
		itemId,
		playerId: document.playerId,
		visitId,
		documentId: document.documentId,
		kind,
		version: document.version,
		sha256: document.sha256,
		recipient,
		channel,
		protection,
		...(protection === 'password' ? { password: newPassword() } : {}),
		state: 'to-check',
		owner: me(state),
		due,
		createdAt: at,
		messageId: `<${itemId}@${domain}>`,
		attempts: 0,
		...(resend ? { resend } : {}),
		history: [{ at, by: me(state).name, state: 'to-check', says }],
	})
}
export async function addItem(
	state: State,
	deps: Deps,
	{
		visitId,
		kind,
		recipientId,
		channel,
		protection = isMail(channel) ? 'password' : 'open',
		due,
	}: InputOf<'outbox.add'>,
): Promise<OutputOf<'outbox.add'>> {
	if (!isMail(channel) && protection === 'password')
		throw new Refusal('A password is for copies that are mailed. Paper and hand-over go without.', [
			{
				path: 'protection',
				message: `given "${protection}" for ${channelWords[channel].toLowerCase()}, allowed: "open"`,
			},
		])
	// the visit tells whose record the recipient must stand on
	const card = deps.store.cardsOf('visit', visitId).at(-1)?.card as { playerId: string } | undefined
	if (!card) throw new Refusal('This visit is not in the records.')
	const recipient = recipientOf(state, card.playerId, recipientId)
	const block = blocked(state, deps, card.playerId, recipient, kind, channel)
	if (block) throw new Refusal(block)
	const person = state.acts()
	const document = await makeDocument(state, deps, { visitId, kind, recipient })
	if (protection === 'password' && !document.layout)
		throw new Refusal(
			'A copy with a password cannot be made: this report was drawn by an earlier version of ' +
				'the program and would not look the same. Print it or hand it over.',
		)
	if (state.person !== person)
		throw new Refusal(
			'Another person took over while the document was being drawn. Nothing was put into the ' +
				'outbox.',
		)
	return deps.store.together(() => {
		keepDocument(deps, document)
		return {
			itemId: putNew(state, deps, { visitId, kind, recipient, channel, protection, due }, document)
				.itemId,
		}
	})
}
/** Who looked at which bytes in this session: releasing asks for it. */
type Looked = Map<string, string>
const lookKey = (state: State, itemId: string) => `${itemId} ${state.acts().personId}`

export function outboxCalls(state: State, deps: Deps, post: Post) {
	const looked: Looked = new Map()
	const free = (itemId: string): OutboxItem => {
		const item = itemOf(state, itemId)
		refuseInFlight(item, post.inFlight(itemId) || (item.handing ?? false))
		return item
	}
	return {
		'outbox.add': (input: InputOf<'outbox.add'>) => addItem(state, deps, input),
		'outbox.list': async (): Promise<OutputOf<'outbox.list'>> => {
			// names what a stop of the program left uncertain before anything is shown; sending goes on
			// behind
			void post.run()
			return {
				items: viewsOf(state, deps, post.inFlight),
				queue: post.status(),
				mailSet: state.mail.smtp !== undefined,
			}
		},
		'outbox.look': ({ itemId }: InputOf<'outbox.look'>): OutputOf<'outbox.look'> => {
			const item = itemOf(state, itemId)
			const { bytes } = storedDocument(deps, item.documentId, item.sha256)
			const recipient = recipientOf(state, item.playerId, item.recipient.recipientId)
			const block = blocked(state, deps, item.playerId, recipient, item.kind, item.channel)
			const answers = consentsFor(state, deps, item.playerId, recipient, item.channel)
			looked.set(lookKey(state, itemId), item.sha256)
			deps.store.audit({
				function: 'read',
				objectRef: `document:${item.documentId}`,
				playerId: item.playerId,
			})
			return {
				base64: Buffer.from(bytes).toString('base64'),
				sha256: item.sha256,
				fileName: fileNameFor(numberOf(itemId)),
				warnings: alertsFor(state, deps, item, recipient),
				consents: answers.filter((answer) => answer.inForce).map((answer) => answer.because),
				missing: answers.filter((answer) => !answer.inForce).map((answer) => answer.because),
				...(block ? { blocked: block } : {}),
			}
		},
		'outbox.release': ({ itemId, sha256, warningsRead }: InputOf<'outbox.release'>) => {
			const item = free(itemId)
			if (item.state !== 'to-check')
				throw new Refusal(`${numberOf(itemId)} is not waiting to be checked.`)
			if (sha256 !== item.sha256 || looked.get(lookKey(state, itemId)) !== item.sha256)
				throw new Refusal(
					'The first page was not looked at yet. Open it beside the recipient first.',
				)
			const { recipient } = mustHold(state, deps, item)
			const warnings = alertsFor(state, deps, item, recipient)
			if (warnings.length > 0 && !warningsRead)
				throw new Refusal(
					`There ${warnings.length === 1 ? 'is a warning' : `are ${warnings.length} warnings`}. ` +
						'Read and tick that it was checked.',
					warnings.map((message) => ({ path: 'warningsRead', message })),
				)
			if (item.channel === 'smtp' && !state.mail.smtp)
				throw new Refusal(
					'No mail server is set. Fill in the mail settings first, or choose the draft for the ' +
						'mail program.',
				)
			move(
				state,
				deps,
				item,
				'ready',
				'First page, name, birth date and recipient were compared.',
				{
					released: { ...me(state), at: deps.now().toISOString() },
					notBefore: undefined,
					taken: undefined,
				},
			)
			void post.run()
			return {}
		},
		'outbox.back': ({ itemId, reason }: InputOf<'outbox.back'>) => {
			move(state, deps, free(itemId), 'to-check', reason, { released: undefined })
			return {}
		},
		'outbox.take': async ({ itemId }: InputOf<'outbox.take'>): Promise<OutputOf<'outbox.take'>> => {
			const item = free(itemId)
			if (item.channel === 'smtp') throw new Refusal('This goes by the mail server by itself.')
			if (item.state !== 'ready')
				throw new Refusal(`${numberOf(itemId)} is not ready. Check it beside its recipient first.`)
			const { recipient, consentIds } = mustHold(state, deps, item)
			const { value, bytes } = storedDocument(deps, item.documentId, item.sha256)
			const number = numberOf(itemId)
			const clinic = clinicOf(state)
			const copy =
				item.protection === 'password'
					? await protectedCopy(deps, value, item.password ?? '')
					: bytes
			const file =
				item.channel === 'eml'
					? {
							bytes: await composeDraft({
								from: senderOf(state),
								to: { name: recipient.name, email: recipient.email ?? '' },
								subject: subjectFor(number, clinic),
								body: bodyFor({
									number,
									recipient: recipient.name,
									clinic,
									withPassword: item.protection === 'password',
								}),
								messageId: item.messageId,
								date: deps.now(),
								attachment: { fileName: fileNameFor(number), bytes: copy },
							}),
							fileName: `message-${number}.eml`,
							mediaType: 'message/rfc822',
						}
					: { bytes: copy, fileName: fileNameFor(number), mediaType: 'application/pdf' }
			// drawing took time: the consents are asked once more before the bytes leave
			const still = free(itemId)
			if (still.state !== 'ready') throw new Refusal(`${numberOf(itemId)} is not ready any more.`)
			mustHold(state, deps, still)
			putItem(
				state,
				deps,
				{
					...still,
					taken: deps.now().toISOString(),
					consentIds,
					history: [
						...still.history,
						{
							at: deps.now().toISOString(),
							by: me(state).name,
							state: 'ready',
							says:
								item.channel === 'eml'
									? 'The draft was given to the mail program. A draft is no proof of sending.'
									: item.channel === 'print'
										? 'Given to the printer.'
										: 'Given out for handing over.',
						},
					],
				},
				item.channel === 'print' ? 'print' : 'export',
			)
			return {
				base64: Buffer.from(file.bytes).toString('base64'),
				fileName: file.fileName,
				mediaType: file.mediaType,
			}
		},
		'outbox.confirm': ({ itemId, what, note }: InputOf<'outbox.confirm'>) => {
			const item = free(itemId)
			const words = note ? ` ${note}` : ''
			if (what === 'again') {
				if (item.state !== 'uncertain')
					throw new Refusal('Only an uncertain sending is asked about like this.')
				move(
					state,
					deps,
					item,
					'to-check',
					`Held as not arrived, to be sent again; it may arrive twice.${words}`,
					{ released: undefined },
				)
			} else if (what === 'returned')
				move(state, deps, item, 'returned', `Noted as returned.${words}`)
			else if (item.state === 'uncertain')
				sent(state, deps, item, `Noted as ${what} after asking.${words}`, what)
			else if (what === 'delivered')
				move(state, deps, item, 'delivered', `Noted as delivered.${words}`)
			else {
				if (item.channel === 'smtp')
					throw new Refusal('The mail server says by itself when it took this.')
				if (item.taken === undefined)
					throw new Refusal('It was not given out yet. Print it, save the draft or open it first.')
				sent(
					state,
					deps,
					item,
					`${item.channel === 'eml' ? 'Sent from the mail program' : item.channel === 'print' ? 'Printed and posted' : 'Handed over'}.${words}`,
				)
			}
			return {}
		},
		'outbox.close': ({ itemId, note }: InputOf<'outbox.close'>) => {
			move(state, deps, free(itemId), 'closed', note || 'Closed.', { released: undefined })
			return {}
		},
		'outbox.mine': ({ itemId, due }: InputOf<'outbox.mine'>) => {
			const item = free(itemId)
			putItem(state, deps, {
				...item,
				owner: me(state),
				due,
				history: [
					...item.history,
					{
						at: deps.now().toISOString(),
						by: me(state).name,
						state: item.state,
						says: `Taken over, due ${due}.`,
					},
				],
			})
			return {}
		},
		'outbox.password': ({ itemId }: InputOf<'outbox.password'>): OutputOf<'outbox.password'> => {
			const item = itemOf(state, itemId)
			if (!item.password) throw new Refusal('This goes without a password.')
			deps.store.audit({
				function: 'read',
				objectRef: `password:${itemId}`,
				playerId: item.playerId,
			})
			const phone = recipientOf(state, item.playerId, item.recipient.recipientId).phone
			return {
				password: item.password,
				recipient: item.recipient.name,
				...(phone ? { phone } : {}),
			}
		},
		'outbox.resend': async ({
			itemId,
			version,
			reason,
		}: InputOf<'outbox.resend'>): Promise<OutputOf<'outbox.resend'>> => {
			const old = free(itemId)
			if (!['sent', 'delivered', 'returned', 'closed'].includes(old.state))
				throw new Refusal(
					'This was not sent yet, or it is not certain whether it was. Settle that first.',
				)
			const recipient = recipientOf(state, old.playerId, old.recipient.recipientId)
			const block = blocked(state, deps, old.playerId, recipient, old.kind, old.channel)
			if (block) throw new Refusal(block)
			const due = dayHere(deps.now())
			const made =
				version === 'newest'
					? await makeDocument(state, deps, { visitId: old.visitId, kind: old.kind, recipient })
					: undefined
			if (!made) storedDocument(deps, old.documentId, old.sha256)
			return deps.store.together(() => {
				if (made) keepDocument(deps, made)
				const next = putNew(
					state,
					deps,
					{ ...old, recipient, due, resend: { of: itemId, reason } },
					made ?? old,
				)
				// what came back is settled by the one that goes out in its place
				const now = itemOf(state, itemId)
				if (now.state === 'returned')
					move(state, deps, now, 'closed', `Sent again as ${numberOf(next.itemId)}: ${reason}`)
				return { itemId: next.itemId }
			})
		},
		/**
		 * A report of the mail system: matched by what we gave with the message, never by the address
		 * alone where two were sent.
		 */
		'outbox.readReport': ({
			text,
		}: InputOf<'outbox.readReport'>): OutputOf<'outbox.readReport'> => {
			const dsn = readDsn(text)
			if (!dsn.ok) throw new Refusal(dsn.message)
			const mailed = [...state.outbox.values()]
				.map((one) => one.item)
				.filter(
					(one) =>
						isMail(one.channel) &&
						(['sent', 'delivered', 'uncertain'].includes(one.state) ||
							(one.state === 'closed' && one.sentAt !== undefined)),
				)
			return {
				read: dsn.value.recipients.map((recipient) => {
					const byAddress = mailed.filter(
						(item) =>
							item.recipient.email &&
							tidyAddress(item.recipient.email) === tidyAddress(recipient.address),
					)
					const named = mailed.find(
						(item) =>
							item.itemId === dsn.value.envelopeId || item.messageId === dsn.value.messageId,
					)
					const found =
						named ??
						(dsn.value.envelopeId === undefined &&
						dsn.value.messageId === undefined &&
						byAddress.length === 1
							? byAddress[0]
							: undefined)
					if (!found)
						return {
							address: recipient.address,
							says:
								byAddress.length > 1
									? `Several messages went to ${recipient.address}, and the report does not say which ` +
										'one it is about. Mark the right one by hand.'
									: `No sent message fits this report about ${recipient.address}. It may be about a ` +
										'message from the mail program.',
						}
					const { state: to, badAddress, says } = meaningOf(recipient)
					const change = badAddress ? { statusCode: recipient.status } : {}
					if (found.state === 'uncertain' && to !== 'returned')
						sent(state, deps, found, says, to, change)
					// a late word that it is on its way says nothing new of one that arrived
					else if (
						to === 'returned' ||
						(found.state !== 'closed' && !(found.state === 'delivered' && to === 'sent'))
					)
						deps.store.together(() => {
							if (found.state === 'uncertain') recordSending(state, deps, found)
							move(state, deps, found, to, says, change)
						})
					return {
						itemId: found.itemId,
						address: recipient.address,
						says: `${numberOf(found.itemId)}: ${says}`,
					}
				}),
			}
		},
		'outbox.sendNow': async () => {
			await post.run(true)
			return {}
		},
	}
}
